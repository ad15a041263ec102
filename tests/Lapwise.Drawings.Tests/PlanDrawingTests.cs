using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work;
using Lapwise.Shared;

namespace Lapwise.Drawings.Tests;

public class PlanDrawingTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Voice Metric = new(Language.Spanish, UnitSystem.Metric);

    public static TheoryData<string> EverySample() => [.. Samples.Names];

    private static IEnumerable<(MeasuredTop Top, CoatWork Work, IReadOnlyList<Person> Crew)> Plans(string sample)
    {
        var whole = Samples.Whole(sample);
        return from work in whole.Work.Coats from top in whole.Measured.Tops select (top, work, whole.Job.Crew);
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_every_section_of_the_top_has_its_number_once(string sample)
    {
        foreach (var (top, work, crew) in Plans(sample))
        {
            var read = new Read(PlanDrawing.Draw(top, work, crew, Us, Sheet.Phone).Svg());
            Assert.Equal(
                work.Sections.Where(s => s.Face.Top == top.Top.Name).Select(s => s.Id).Order(StringComparer.Ordinal),
                read.OfClass("lw-t-number").Select(t => t.Value).Order(StringComparer.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_every_lap_has_its_line_and_its_label_once(string sample)
    {
        foreach (var (top, work, crew) in Plans(sample))
        {
            var mine = work.Sections.Where(s => s.Face.Top == top.Top.Name).Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
            var read = new Read(PlanDrawing.Draw(top, work, crew, Metric, Sheet.Wide).Svg());
            foreach (var (standing, name) in new[] { (LapStanding.Good, "lap-good"), (LapStanding.Narrow, "lap-narrow"), (LapStanding.Lost, "lap-lost"), (LapStanding.Joint, "break") })
            {
                var laps = work.Laps.Count(l => mine.Contains(l.A) && LapMargin.Of(work, l) == standing);
                Assert.Equal(laps, read.OfClass("lw-t-" + name).Count());
                // One more line stands in the legend.
                Assert.Equal(laps > 0 ? laps + 1 : 0, read.OfClass("lw-" + name).Count());
            }
        }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_texts_never_overlap_and_stay_on_the_sheet(string sample)
    {
        foreach (var (top, work, crew) in Plans(sample))
            foreach (var voice in new[] { Us, Metric })
                foreach (var sheet in new[] { Sheet.Phone, Sheet.Tall, Sheet.Wide })
                    Overlaps.None(PlanDrawing.Draw(top, work, crew, voice, sheet));
    }

    [Fact]
    public void Draw_a_long_top_lies_along_a_tall_sheet_and_no_other_is_turned()
    {
        var plans = Plans("l-kitchen").ToList();
        // A waterfall unfolds beside the end of the island and makes it three times as long as deep.
        Assert.True(Size("Island", Sheet.Tall) is var (across, down) && down > 2 * across);
        Assert.True(Size("Island", Sheet.Tall).Y > 1.3 * Size("Island", Sheet.Phone).X);
        Assert.True(Size("Sink run", Sheet.Tall) is var (length, depth) && length > depth);

        Spot Size(string name, Sheet sheet)
        {
            var (top, work, crew) = plans.Last(p => p.Top.Top.Name == name);
            var box = Box.Over(PlanDrawing.Draw(top, work, crew, Us, sheet).Marks.OfType<Mark.Line>().Where(l => l.Ink is Ink.Section).SelectMany(l => l.Points));
            return new Spot(box.Width, box.Height);
        }
    }

    /// <summary>Over an edge, a cutout or the outline of a panel a margin is read by nobody; a bare sign has no other place in a narrow strip.</summary>
    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_no_edge_runs_through_the_margin_of_a_lap(string sample)
    {
        foreach (var (top, work, crew) in Plans(sample))
            foreach (var (sheet, voice) in new[] { (Sheet.Phone, Us), (Sheet.Wide, Us), (new Sheet(524, 225, 8.5), Metric), (new Sheet(507, 225, 8.5), Us) })
            {
                var drawing = PlanDrawing.Draw(top, work, crew, voice, sheet);
                var edges = drawing.Marks.OfType<Mark.Line>().Where(l => l.Ink is Ink.OpenEdge or Ink.WallEdge or Ink.SplashEdge or Ink.WaterfallEdge or Ink.Cutout)
                    .SelectMany(l => Shapes.Sides(l.Points).Take(l.Closed ? l.Points.Count : l.Points.Count - 1)).ToList();
                foreach (var margin in drawing.Marks.OfType<Mark.Text>().Where(t => t.Style is Lettering.LapGood or Lettering.LapNarrow or Lettering.LapLost && t.Words.Length > 1))
                    Assert.DoesNotContain(edges, e => Shapes.Overlap(margin.Box.Corners, [e.A, e.B]));
            }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_no_label_of_a_stand_lies_on_a_wedge(string sample)
    {
        foreach (var (top, work, crew) in Plans(sample))
        {
            var drawing = PlanDrawing.Draw(top, work, crew, Us, Sheet.Wide);
            var wedges = drawing.Marks.OfType<Mark.Area>().Where(a => a.Wash == Wash.Stand).Select(a => Box.Over(a.Rings[0])).ToList();
            foreach (var text in drawing.Marks.OfType<Mark.Text>()) Assert.DoesNotContain(wedges, w => w.Overlaps(text.Box));
        }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_says_every_section_and_lap_to_those_who_listen(string sample)
    {
        foreach (var (top, work, crew) in Plans(sample))
        {
            var said = PlanDrawing.Draw(top, work, crew, Us, Sheet.Phone).Description;
            foreach (var section in work.Sections.Where(s => s.Face.Top == top.Top.Name)) Assert.Contains($"Section {section.Id}: {crew[section.Person].Name}", said);
        }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_every_section_shows_the_way_of_its_dry_pass(string sample)
    {
        foreach (var (top, work, crew) in Plans(sample))
            foreach (var sheet in new[] { Sheet.Phone, Sheet.Wide })
            {
                var sections = work.Sections.Count(s => s.Face.Top == top.Top.Name);
                // One more stands in the legend.
                Assert.Equal(sections + 1, new Read(PlanDrawing.Draw(top, work, crew, Us, sheet).Svg()).OfClass("lw-dry-pass").Count());
            }
    }

    [Fact]
    public void Draw_the_number_of_a_section_too_narrow_for_it_stands_in_the_cutout_on_a_leader()
    {
        // Small sections leave one between the sink and the front.
        var job = Samples.Document("l-kitchen");
        var whole = WholeJob.From(job with { Aims = new AimsDocument { LargestSection = "4 ft2" } }, Samples.Library).Whole!;
        var drawing = PlanDrawing.Draw(whole.Measured.Tops[0], whole.Work.Coats[1], whole.Job.Crew, Us, new Sheet(524, 225, 8.5));
        var cutout = Box.Over(drawing.Marks.OfType<Mark.Line>().Single(l => l.Ink == Ink.Cutout).Points);
        var number = Assert.Single(drawing.Marks.OfType<Mark.Text>(), t => t.Style == Lettering.Number && cutout.Overlaps(t.Box));
        Assert.True(cutout.Nearest(new(number.Box.Left, number.Box.Top)) == new Spot(number.Box.Left, number.Box.Top) && number.Size > 8.5);
        var leader = Assert.Single(drawing.Marks.OfType<Mark.Line>(), l => l.Ink == Ink.Leader);
        Assert.False(Box.Over([leader.Points[1]]).Overlaps(cutout));
        // The cutout is named all the same.
        Assert.Contains(drawing.Marks.OfType<Mark.Text>(), t => t.Words == "Sink");
    }

    [Fact]
    public void Draw_a_lost_lap_says_so_in_words_and_by_weight()
    {
        var (top, work, crew) = Plans("jumbo-island").Last();
        var open = work.OpenTime with { Seconds = work.Laps.Max(l => l.AgeMs + l.UsedMs) / 1000.0 - 1 };
        var read = new Read(PlanDrawing.Draw(top, work with { OpenTime = open }, crew, Us, Sheet.Wide).Svg());

        Assert.Contains(read.OfClass("lw-t-lap-lost"), t => t.Value.StartsWith("lost −0:01", StringComparison.Ordinal));
        Assert.True(Read.Value(read.OfClass("lw-lap-lost").First(), "stroke-width") > 2.5 * Read.Value(read.OfClass("lw-lap-good").First(), "stroke-width"));
        Assert.Contains(read.Words, w => w.Contains("a line will show", StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_a_second_person_is_told_apart_by_a_pattern()
    {
        var (top, work, crew) = Plans("jumbo-island").Last();
        IReadOnlyList<Person> two = [crew[0], crew[0] with { Name = "Abel" }];
        var shared = work with { Sections = [.. work.Sections.Select((s, i) => s with { Person = i % 2 })] };

        Assert.Empty(new Read(PlanDrawing.Draw(top, work, two, Us, Sheet.Wide).Svg()).OfClass("lw-hatch"));
        var read = new Read(PlanDrawing.Draw(top, shared, two, Us, Sheet.Wide).Svg());
        Assert.NotEmpty(read.OfClass("lw-hatch"));
        Assert.Contains("Abel", read.Words);
    }

    [Fact]
    public void Draw_a_planned_joint_is_dashed_and_named()
    {
        var (top, work, crew) = Plans("jumbo-island").Last();
        var joined = work with { Laps = [.. work.Laps.Select((l, i) => i == 0 ? l with { Kind = LapKind.Break } : l)] };
        var read = new Read(PlanDrawing.Draw(top, joined, crew, Us, Sheet.Wide).Svg());
        Assert.Equal("joint", Assert.Single(read.OfClass("lw-t-break")).Value);
        Assert.All(read.OfClass("lw-break"), line => Assert.NotNull(line.Attribute("stroke-dasharray")));
    }

    [Fact]
    public void Draw_marks_where_to_stand_and_which_way_the_dry_pass_goes()
    {
        var (top, work, crew) = Plans("jumbo-island").Last();
        var read = new Read(PlanDrawing.Draw(top, work, crew, Us, Sheet.Wide).Svg());
        Assert.True(read.OfClass("lw-stand").Count() > 1);
        // One arrow a section, and one in the legend.
        Assert.Equal(work.Sections.Count + 1, read.OfClass("lw-dry-pass").Count());
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Draw_every_lap_points_from_the_section_wet_first_into_the_one_that_joins_it(string sample)
    {
        foreach (var (top, work, crew) in Plans(sample))
        {
            var laps = work.Laps.Where(l => l.Kind != LapKind.Break && work.Sections.First(s => s.Id == l.A).Face.Top == top.Top.Name).ToList();
            foreach (var (sheet, voice) in new[] { (Sheet.Phone, Us), (Sheet.Wide, Us), (Sheet.Phone, Metric), (new Sheet(524, 225, 8.5), Metric) })
            {
                var drawing = PlanDrawing.Draw(top, work, crew, voice, sheet);
                var arrows = drawing.Marks.OfType<Mark.Arrow>().Where(a => a.Ink == Ink.Joining).ToList();
                // One more stands in the legend.
                Assert.Equal(laps.Count == 0 ? 0 : laps.Count + 1, arrows.Count);
                var texts = drawing.Marks.OfType<Mark.Text>().ToList();
                foreach (var arrow in arrows)
                    Assert.Empty(texts.Where(t => t.Box.Overlaps(Box.Over([arrow.From, arrow.To]).Grown(drawing.Unit))).Select(t => $"{drawing.Title} {sheet.Width}: {t.Words}"));
            }

            var flat = laps.Where(l => l.Kind == LapKind.Flat).ToList();
            var wide = PlanDrawing.Draw(top, work with { Laps = flat }, crew, Us, Sheet.Wide);
            var turned = PlanDrawing.Draw(top, work with { Laps = [.. flat.Select(l => l with { JoinedBy = l.JoinedBy == l.A ? l.B : l.A })] }, crew, Us, Sheet.Wide);
            foreach (var (one, other) in Joins(wide).Zip(Joins(turned)).Take(flat.Count)) Assert.True((one.To - one.From).Dot(other.To - other.From) < 0);
        }

        static IEnumerable<Mark.Arrow> Joins(Drawing drawing) => drawing.Marks.OfType<Mark.Arrow>().Where(a => a.Ink == Ink.Joining);
    }

    [Fact]
    public void Draw_a_poured_coat_lists_what_follows_the_pour()
    {
        var (top, work, crew) = Plans("bar-top").Last(p => p.Work.Steps.Count > 0);
        var read = new Read(PlanDrawing.Draw(top, work, crew, Metric, Sheet.Phone).Svg());
        Assert.Equal(work.Steps.Count(s => s.Top == top.Top.Name && s.Kind is StepKind.BubblePass), read.Words.Count(w => w.Contains("pasada contra burbujas", StringComparison.Ordinal)));
        Assert.Contains(read.Words, w => w.Contains("raspar las gotas", StringComparison.Ordinal));
        Assert.DoesNotContain("pasada en seco", read.Words);
    }

    [Fact]
    public void Draw_survives_any_open_time_and_crew()
    {
        var (top, work, crew) = Plans("vanity").Last();
        CsCheck.Check.Sample(CsCheck.Gen.Select(CsCheck.Gen.Double[0, 1e5], CsCheck.Gen.String), t =>
        {
            var (seconds, name) = t;
            var drawing = PlanDrawing.Draw(top, work with { OpenTime = work.OpenTime with { Seconds = seconds } }, [crew[0] with { Name = name }], Metric, Sheet.Phone);
            Assert.True(double.IsFinite(drawing.Height));
            _ = new Read(drawing.Svg());
        }, iter: 60);
    }
}
