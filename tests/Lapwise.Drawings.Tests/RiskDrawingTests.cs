using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Risk;
using Lapwise.Shared;

namespace Lapwise.Drawings.Tests;

public class RiskDrawingTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Voice Metric = new(Language.Spanish, UnitSystem.Metric);

    /// <summary>The kitchen's clear at an open time.</summary>
    private static CoatRisk Risk(double openS)
    {
        var whole = Samples.Whole("l-kitchen");
        return Risking.Of(whole.Work.Coats[1] with { OpenTime = new OpenTime(openS, Origin.DataSheet) }, whole.Job, 2000, 1);
    }

    public static TheoryData<double> OpenTimes() => [60, 300, 480, 660, 3600];

    [Theory]
    [MemberData(nameof(OpenTimes))]
    public void Draw_texts_never_overlap_and_stay_on_the_sheet(double openS)
    {
        foreach (var voice in new[] { Us, Metric })
            foreach (var sheet in new[] { Sheet.Phone, Sheet.Wide })
                Overlaps.None(RiskDrawing.Draw(Risk(openS), voice, sheet));
    }

    [Theory]
    [MemberData(nameof(OpenTimes))]
    public void Draw_always_shows_zero_and_parts_the_bars_there(double openS)
    {
        var risk = Risk(openS);
        var read = new Read(RiskDrawing.Draw(risk, Us, Sheet.Phone).Svg());
        Assert.Contains("0", read.Words);
        // The line itself and its sample in the legend.
        var zero = Read.Points(read.OfClass("lw-lap-lost").First())[0].X;
        Assert.Equal(2, read.OfClass("lw-lap-lost").Count());
        var bins = risk.WorstMargins;
        bool IsLine(int i) => bins.FromMs + (i * bins.BinMs) < 0;
        var (lost, held) = (read.OfClass("lw-suspect").SkipLast(1).ToList(), read.OfClass("lw-section").SkipLast(1).ToList());
        Assert.Equal(bins.Counts.Where((count, i) => count > 0 && IsLine(i)).Count(), lost.Count);
        Assert.Equal(bins.Counts.Where((count, i) => count > 0 && !IsLine(i)).Count(), held.Count);
        Assert.All(lost, bar => Assert.True(Read.Points(bar).Max(p => p.X) <= zero + 0.1));
        Assert.All(held, bar => Assert.True(Read.Points(bar).Min(p => p.X) >= zero - 0.1));
    }

    [Fact]
    public void Draw_bars_are_as_high_as_their_counts()
    {
        var risk = Risk(480);
        var read = new Read(RiskDrawing.Draw(risk, Us, Sheet.Wide).Svg());
        var heights = read.OfClass("lw-suspect").SkipLast(1).Concat(read.OfClass("lw-section").SkipLast(1))
            .Select(bar => Read.Points(bar)).Select(p => p.Max(q => q.Y) - p.Min(q => q.Y)).ToList();
        var counts = risk.WorstMargins.Counts.Where(c => c > 0).ToList();
        var most = (double)counts.Max();
        Assert.All(counts.Zip(heights), pair => Assert.Equal(pair.First / most, pair.Second / heights.Max(), 0.01));
    }

    [Fact]
    public void Draw_a_lost_bar_is_told_apart_without_colour()
    {
        var hatched = new Read(RiskDrawing.Draw(Risk(300), Us, Sheet.Phone).Svg()).OfClass("lw-hatch").Count();
        var held = new Read(RiskDrawing.Draw(Risk(36000), Us, Sheet.Phone).Svg()).OfClass("lw-hatch").Count();
        Assert.True(hatched > 3 * held);
    }

    [Fact]
    public void Draw_says_the_chance_to_those_who_listen()
    {
        var risk = Risk(480);
        Assert.Contains($"{risk.Line.Times} of 2000", RiskDrawing.Draw(risk, Us, Sheet.Phone).Description);
        Assert.Contains($"{risk.Line.Times} de 2000", RiskDrawing.Draw(risk, Metric, Sheet.Phone).Description);
    }
}
