using System.Reflection;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

public sealed class DefaultsTests
{
    private const double SquareFoot = 0.3048 * 0.3048;

    [Fact]
    public void Each_default_says_what_it_assumes_in_both_languages_and_on_what_it_rests()
    {
        var all = new[] { typeof(Defaults) }.Concat(typeof(Defaults).GetNestedTypes())
            .SelectMany(t => t.GetFields(BindingFlags.Public | BindingFlags.Static))
            .Select(f => f.GetValue(null)).OfType<Assumption>()
            .Concat([Defaults.TapeStep(UnitSystem.Us), Defaults.TapeStep(UnitSystem.Metric), Defaults.Tools.CupStep(UnitSystem.Us), Defaults.Tools.CupStep(UnitSystem.Metric)])
            .ToList();

        Assert.True(all.Count > 15);
        Said.InEveryVoice([.. all.Select(a => a.Note)]);
        Assert.All(all, a => Assert.Contains(a.Source, Sources.All));
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void Defaults_keep_to_the_practice_of_the_trade()
    {
        Assert.InRange(Defaults.Pace.Mix.Value, 2 * 60, 3 * 60);
        Assert.InRange(Defaults.Aims.LargestSection.Value, 4 * 2 * SquareFoot, 1.5 * 4 * 2 * SquareFoot);
        Assert.Equal(0.2, Defaults.Aims.MarginShare.Value);
    }

    /// <summary>MIL-STD-1472G, Appendix B: functional reach of the 5th percentile woman, 26.7 in; a counter is about 25 1/2 in deep.</summary>
    [Fact]
    public void A_roller_lengthens_the_published_reach() => Assert.InRange(Defaults.Aims.Reach.Value, 26.7 * 0.0254, (26.7 + 12) * 0.0254);
}
