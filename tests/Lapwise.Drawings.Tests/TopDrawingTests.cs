using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Shared;

namespace Lapwise.Drawings.Tests;

public class TopDrawingTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Voice Metric = new(Language.Spanish, UnitSystem.Metric);

    public static TheoryData<string, string, string> EverySample()
    {
        var data = new TheoryData<string, string, string>();
        foreach (var name in Samples.Names)
            foreach (var voice in new[] { "us", "metric" })
                foreach (var sheet in new[] { "phone", "wide" })
                    data.Add(name, voice, sheet);
        return data;
    }

    private static IEnumerable<MeasuredTop> Tops(string sample) => Measuring.Measure(Samples.Job(sample)).Tops;

    private static Drawing Draw(MeasuredTop top, string voice, string sheet) =>
        TopDrawing.Draw(top, voice == "us" ? Us : Metric, sheet == "phone" ? Sheet.Phone : Sheet.Wide);

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_every_side_stands_once_with_its_letter_and_length(string sample, string voice, string sheet)
    {
        foreach (var top in Tops(sample))
        {
            var words = new Read(Draw(top, voice, sheet).Svg()).Words;
            foreach (var side in top.Outline.Segments.GroupBy(s => s.Side))
            {
                var label = Assert.Single(words, w => w.StartsWith($"{side.Key} · ", StringComparison.Ordinal));
                if (side.Count() > 1 || side.First() is not Segment.Line) continue;
                Assert.Contains((voice == "us" ? Us : Metric).Length(side.First().LengthM), label);
            }
        }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_texts_never_overlap_and_stay_on_the_sheet(string sample, string voice, string sheet)
    {
        foreach (var top in Tops(sample)) Overlaps.None(Draw(top, voice, sheet));
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_is_to_scale(string sample, string voice, string sheet)
    {
        foreach (var top in Tops(sample))
        {
            // Without a panel beside it the washed surface is the outline: its sides keep the ratios of the measured ones.
            var drawn = Read.Points(new Read(Draw(top, voice, sheet).Svg()).OfClass("lw-top").First());
            var corners = top.Outline.Segments.Select(s => s.To).ToList();
            if (top.Outline.Segments.Any(s => s is not Segment.Line)) continue;
            var scales = corners.Select((c, i) => (drawn[(i + 1) % corners.Count] - drawn[i]).Length / c.DistanceTo(corners[(i + 1) % corners.Count])).ToList();
            // The SVG carries hundredths of a unit.
            Assert.True(scales.Max() / scales.Min() < 1.005, $"{top.Top.Name}: {string.Join(", ", scales)}");
        }
    }

    [Fact]
    public void Draw_gives_every_kind_of_edge_its_own_line_and_word()
    {
        var top = Tops("l-kitchen").First();
        var read = new Read(Draw(top, "us", "wide").Svg());
        Assert.NotEmpty(read.OfClass("lw-open"));
        Assert.NotEmpty(read.OfClass("lw-wall"));
        Assert.NotEmpty(read.OfClass("lw-splash"));
        foreach (var word in new[] { "open", "wall", "splash" }) Assert.Contains(word, read.Words);
    }

    [Fact]
    public void Draw_names_a_cutout_and_says_where_it_lies()
    {
        var read = new Read(Draw(Tops("l-kitchen").First(), "us", "wide").Svg());
        Assert.Contains("Sink", read.Words);
        Assert.Contains(read.Words, w => w.StartsWith("Sink: 2' 6\" × 1' 4\", centre 4' 6\" along A", StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_marks_every_suspect_side_when_the_tape_does_not_close()
    {
        var kitchen = Samples.Document("l-kitchen");
        OutlineDocument walk = new()
        {
            Shape = OutlineShape.Walk,
            Sides = [new() { Length = "2400 mm" }, new() { Length = "900 mm" }, new() { Length = "2460 mm" }, new() { Length = "900 mm" }],
            TapeStep = "1 mm",
        };
        IReadOnlyDictionary<string, EdgeDocument> walls = "ABCD".ToDictionary(c => c.ToString(), _ => new EdgeDocument(), StringComparer.Ordinal);
        kitchen = kitchen with { Tops = [new TopDocument { Name = "Bar", Thickness = "38 mm", Outline = walk, Edges = walls }] };
        var top = Measuring.Measure(JobReading.Read(kitchen, Samples.Library).Job!).Tops.Single();
        Assert.False(top.Closure.Closes);

        var read = new Read(TopDrawing.Draw(top, Metric, Sheet.Wide).Svg());
        Assert.Equal(top.Closure.SuspectSides.Count, read.OfClass("lw-suspect").Count());
        foreach (var side in top.Closure.SuspectSides) Assert.Contains(read.Words, w => w.StartsWith($"{side} ?", StringComparison.Ordinal));
        Assert.Contains(read.Words, w => w.StartsWith("La medida no cierra", StringComparison.Ordinal));
        // The labels are what the tape said; what it is drawn as stands with the check.
        foreach (var taped in new[] { "A ? · 2400 mm", "C ? · 2460 mm" }) Assert.Contains(read.Words, w => w.StartsWith(taped, StringComparison.Ordinal));
        Assert.Contains("Dibujado para que cierre: A ", string.Join(' ', read.Words), StringComparison.Ordinal);
        Assert.Contains("lado A 2400 mm", new Read(TopDrawing.Draw(top, Metric, Sheet.Wide).Svg()).Named("desc").Single().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_survives_hostile_names_and_odd_proportions()
    {
        var kitchen = Samples.Document("l-kitchen");
        foreach (var (length, depth) in new[] { ("10 m", "20 mm"), ("20 mm", "4 m"), ("50 mm", "50 mm") })
        {
            var document = kitchen with
            {
                Tops = [new TopDocument { Name = "<b>&\"" + new string('W', 60), Thickness = "20 mm", Outline = new() { Length = length, Depth = depth }, Edges = new Dictionary<string, EdgeDocument>(StringComparer.Ordinal) { ["A"] = new() { Kind = EdgeKind.Waterfall, Drop = "900 mm" }, ["B"] = new(), ["C"] = new() { Kind = EdgeKind.Open }, ["D"] = new() } }],
            };
            foreach (var top in Measuring.Measure(JobReading.Read(document, Samples.Library).Job!).Tops)
            {
                var drawing = TopDrawing.Draw(top, Us, Sheet.Phone);
                Assert.True(double.IsFinite(drawing.Width) && double.IsFinite(drawing.Height) && drawing.Height < 3000);
                Assert.Equal(drawing.Title, new Read(drawing.Svg()).Named("title").Single().Value);
            }
        }
    }
}
