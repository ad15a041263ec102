using Lapwise.Core.Explain;

namespace Lapwise.Core.Tests;

public sealed class PhasesTests
{
    [Fact]
    public void Every_phase_is_named_in_both_languages()
    {
        var english = new Voice(Language.English, UnitSystem.Us);
        var spanish = new Voice(Language.Spanish, UnitSystem.Metric);
        Assert.All(Phases.All, p => Assert.NotEqual(p.Name(english), p.Name(spanish)));
    }
}
