using Lapwise.Core.Explain;
using Lapwise.Core.Quick;

namespace Lapwise.Drawings.Tests;

/// <summary>Curves and hour strips as the quick sums give them.</summary>
public class CurveDrawingTests
{
    private static readonly Voice[] Voices = [new(Language.English, UnitSystem.Us), new(Language.Spanish, UnitSystem.Metric)];

    private static QuickResult Sum(string name, params (string Name, string Value)[] written)
    {
        var (result, faults) = QuickSum.All.Single(s => s.Name == name).Answer(written.ToDictionary(w => w.Name, w => w.Value), UnitSystem.Metric);
        Assert.Empty(faults.Select(f => f.Say(Voice.Default)));
        return result!;
    }

    private static QuickResult Wipe(string amount, string changes) =>
        Sum("vapour", ("of", "acetone"), ("amount", amount), ("over", "10 min"), ("length", "4 m"), ("width", "4 m"), ("height", "2.5 m"), ("changes", changes));

    private static QuickResult Batch(string mass) =>
        Sum("pot-life", ("time", "40 min"), ("at", "25 °C"), ("of", "100 g"), ("mass", mass), ("material", "28 °C"));

    private static QuickResult Cure(string time) => Sum("cure", ("time", time), ("at", "23 °C"), ("room", "17 °C"), ("swing", "8 °C"));

    public static TheoryData<string, Curve> Curves() => new()
    {
        { "a wipe in moving air", Wipe("60 mL", "4").Curve! }, { "a spill in a closed room", Wipe("2 L", "0").Curve! }, { "a drop", Wipe("1 mL", "20").Curve! },
        { "a batch that runs hot", Batch("2 kg").Curve! }, { "a cup that stays cool", Batch("50 g").Curve! },
        { "recoat within hours", Cure("4 h").Curve! }, { "cure over days", Cure("5 d").Curve! },
    };

    [Theory]
    [MemberData(nameof(Curves))]
    public void Draw_texts_never_overlap_and_stay_on_the_sheet(string name, Curve curve)
    {
        Assert.NotEmpty(name);
        foreach (var voice in Voices)
            foreach (var sheet in new[] { Sheet.Phone, Sheet.Wide })
                Overlaps.None(CurveDrawing.Draw(curve, voice, sheet));
    }

    [Theory]
    [MemberData(nameof(Curves))]
    public void Draw_names_every_limit_and_moment_to_eye_and_ear(string name, Curve curve)
    {
        Assert.NotEmpty(name);
        foreach (var voice in Voices)
        {
            var drawing = CurveDrawing.Draw(curve, voice, Sheet.Phone);
            var words = string.Join(' ', new Read(drawing.Svg()).Words);
            Assert.All(curve.Marks, m => Assert.Contains(m.Words(voice), words));
            Assert.All(curve.Limits, l => Assert.Contains(l.Words(voice), words));
            Assert.All(curve.Limits, l => Assert.Contains(l.Words(voice), drawing.Description));
            Assert.All(curve.Marks, m => Assert.Contains(m.Words(voice), drawing.Description));
        }
    }

    [Fact]
    public void Draw_what_comes_after_a_deadline_is_hatched_and_nothing_before_it()
    {
        var read = new Read(CurveDrawing.Draw(Batch("50 g").Curve!, Voices[1], Sheet.Wide).Svg());
        var deadline = Read.Points(read.OfClass("lw-moment").Single())[0].X;
        var hatches = read.OfClass("lw-hatch").Select(Read.Points).ToList();
        Assert.True(hatches.Count(h => h.Min(p => p.X) >= deadline - 0.1) > 10);
        // The sample in the legend is the only other hatch.
        var chartFoot = Read.Points(read.OfClass("lw-moment").Single()).Max(p => p.Y);
        Assert.All(hatches.Where(h => h.Min(p => p.X) < deadline - 0.1), h => Assert.True(h.Min(p => p.Y) > chartFoot));
    }

    [Fact]
    public void Draw_the_line_is_as_high_as_its_numbers()
    {
        var curve = Wipe("60 mL", "4").Curve!;
        var line = Read.Points(new Read(CurveDrawing.Draw(curve, Voices[1], Sheet.Wide).Svg()).OfClass("lw-curve").First());
        var (foot, head) = (line.Max(p => p.Y), line.Min(p => p.Y));
        var top = curve.Line.Points.Max(p => p.Y);
        Assert.All(curve.Line.Points.Zip(line), pair => Assert.Equal(pair.First.Y / top, (foot - pair.Second.Y) / (foot - head), 0.01));
    }

    [Fact]
    public void The_table_holds_the_moments_and_the_ends()
    {
        var curve = Cure("4 h").Curve!;
        var rows = curve.RowsAt().ToList();
        Assert.Equal(0, rows[0]);
        Assert.Equal(curve.Line.Points[^1].X, rows[^1]);
        Assert.All(curve.Marks, m => Assert.Contains(m.X, rows));
        // At the end of the wait all of it is done.
        Assert.Equal(1, curve.Second!.At(curve.Marks[0].X), 0.02);
    }
}
