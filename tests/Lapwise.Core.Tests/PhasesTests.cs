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

    [Theory]
    [InlineData("tops[0].outline.length", "measure"), InlineData("crew[0].pace.walk", "work"), InlineData("timeline.daysOff[1]", "timeline"), InlineData("agreement.discount", "money")]
    public void A_field_stands_on_the_page_of_its_phase(string path, string route) => Assert.Equal(route, Phases.OfField(path).Route);
}
