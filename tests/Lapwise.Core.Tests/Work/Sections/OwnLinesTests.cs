using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Jobs;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Sections;
using static Lapwise.Core.Tests.Work.Sections.CutTops;

namespace Lapwise.Core.Tests.Work.Sections;

public sealed class OwnLinesTests
{
    /// <summary>Whatever the planner cuts can be given as the finisher's own lines, and is then cut the same.</summary>
    [Fact]
    public void Lines_of_any_cut_written_down_cut_the_same_sections_again() => AnyCut.Where(c => c.Choice is CutChoice.Strips && FollowsTheFlat(c) && HasNoNeck(c)).Sample(cut =>
    {
        var lines = OwnLines.Of(cut);
        if (lines.Contains(null) || lines.Count == 0) return;
        var again = Sectioning.Cut(cut.Top with { Top = cut.Top.Top with { SectionLines = [.. lines.Select(l => l!)] } }, OneAim, new CutChoice.Given());
        Assert.Equal(cut.Sections.Count, again.Sections.Count);
        // A line bends to a corner within 0.2 mm of it, over a metre and a half at most.
        foreach (var (a, b) in Sorted(cut).Zip(Sorted(again))) Assert.Equal(a, b, 3e-4);
    }, iter: 100, print: Print, threads: 1);

    /// <summary>No upright is left whole beside several sections of the flat: with no line of its own it would follow theirs.</summary>
    private static bool FollowsTheFlat(CutTop cut) => cut.Top.Folds.Where(f => !f.IsJoint).All(f =>
        cut.Sections.Count(s => s.Face.Id == f.OtherFace) > 1 || cut.Seams.Count(s => cut.Sections[s.B].Face.Id == f.OtherFace) == 1);

    /// <summary>Through a neck of a few millimetres beside a cutout no line is drawn, so that what it joins is one section the next time.</summary>
    private static bool HasNoNeck(CutTop cut)
    {
        var flats = cut.Sections.Where(s => s.Face.Kind is FaceKind.Flat).ToList();
        return !flats.Exists(a => flats.Exists(b => a.Index < b.Index && !cut.Seams.Any(s => (s.A, s.B) == (a.Index, b.Index)) && SharedM(a, b) > 1e-3));
    }

    /// <summary>Only rows that no side reaches may be beyond words.</summary>
    [Fact]
    public void Lines_that_cannot_be_written_down_are_rare()
    {
        var (all, without) = (0, 0);
        AnyCut.Where(c => c.Choice is CutChoice.Strips).Sample(cut =>
        {
            all++;
            if (OwnLines.Of(cut).Contains(null)) without++;
        }, iter: 100, threads: 1);
        Assert.True(without <= all / 50, $"{without} of {all}");
    }

    [Fact]
    public void A_line_given_from_a_side_cuts_there_and_nowhere_else()
    {
        var cut = Given(new OutlineSpec.Rectangle(3, 0.6), "wwow", new SectionLine('C', 1.1, 0, null, SectionLineOn.Flat));
        Assert.Equal([0.6 * 1.1, 0.6 * 1.9], cut.Sections.Select(s => s.FaceM2).Order(), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.DoesNotContain(cut.Reasons, r => r.Code == "SectionLineMisses");
    }

    [Fact]
    public void A_line_in_one_row_stops_at_the_row()
    {
        var cut = Given(new OutlineSpec.Rectangle(3, 1.2), "oooo",
            new SectionLine('D', 0.6, 0, null, SectionLineOn.Flat), new SectionLine('A', 1, 0, null, SectionLineOn.Flat), new SectionLine('A', 2, 1, null, SectionLineOn.Flat));
        Assert.Equal([0.6, 0.6 * 1, 0.6 * 2, 0.6 * 2], cut.Sections.Select(s => s.FaceM2).Order(), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void A_slanted_line_runs_from_side_to_side()
    {
        var cut = Given(new OutlineSpec.Rectangle(2, 0.6), "ooow", new SectionLine('A', 0.5, 0, ('C', 1), SectionLineOn.Flat));
        Assert.Equal(Math.Sqrt((0.5 * 0.5) + (0.6 * 0.6)), Assert.Single(cut.Seams, s => s.Kind == LapKind.Flat).LengthM, 9);
    }

    [Fact]
    public void Uprights_are_cut_at_their_own_lines_only()
    {
        var cut = Given(new OutlineSpec.Rectangle(3, 0.6), "swow", new SectionLine('C', 1.5, 0, null, SectionLineOn.Flat), new SectionLine('A', 1, 0, null, SectionLineOn.Upright));
        Assert.Equal([0.1016, 0.2032], cut.Sections.Where(s => s.Face.Kind == FaceKind.Splash).Select(s => s.FaceM2).Order(), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void An_upright_with_no_line_of_its_own_follows_the_lines_of_the_flat()
    {
        var cut = Given(new OutlineSpec.Rectangle(2.7, 0.6), "sooo", new SectionLine('A', 0.6, 0, null, SectionLineOn.Flat), new SectionLine('C', 1.2, 0, null, SectionLineOn.Flat));
        Assert.Equal([0.6, 0.9, 1.2], cut.Sections.Where(s => s.Face.Kind == FaceKind.Splash).Select(s => s.FaceM2 / 0.1016).Order(), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(3, cut.Seams.Count(s => s.Kind == LapKind.Fold));
    }

    /// <summary>It bears no lap with the flat, and small pieces waste a roller charge each.</summary>
    [Fact]
    public void A_splash_with_a_caulked_joint_stays_whole_beside_lines_of_the_flat()
    {
        var cut = Given(new OutlineSpec.Rectangle(2.7, 0.6), "cooo", new SectionLine('A', 0.6, 0, null, SectionLineOn.Flat), new SectionLine('C', 1.2, 0, null, SectionLineOn.Flat));
        Assert.Single(cut.Sections, s => s.Face.Kind == FaceKind.Splash);
    }

    [Fact]
    public void A_line_that_meets_nothing_is_said()
    {
        var cut = Given(new OutlineSpec.Rectangle(3, 0.6), "wwow", new SectionLine('A', 9, 0, null, SectionLineOn.Flat));
        Assert.Equal(("SectionLineMisses", Limit.Note), cut.Reasons.Select(r => (r.Code, r.Limit)).Single(r => r.Code != "OwnSectionTooLarge"));
    }

    [Fact]
    public void Lines_that_leave_a_part_out_of_reach_give_the_usual_reason() =>
        Assert.Contains(Given(new OutlineSpec.Rectangle(2, 1.6), "oooo", new SectionLine('A', 1, 0, null, SectionLineOn.Flat)).Reasons, r => r.Code == "OutOfReach");

    [Fact]
    public void Lines_that_leave_a_section_larger_than_was_asked_for_say_so()
    {
        var largestM = OneAim.LargestSectionM2 / 0.6;
        var cut = Given(new OutlineSpec.Rectangle(largestM + 0.5, 0.6), "wwow", new SectionLine('C', 0.4, 0, null, SectionLineOn.Flat));
        var reason = Assert.Single(cut.Reasons);
        Assert.Equal(("OwnSectionTooLarge", Limit.Note), (reason.Code, reason.Limit));
        Said.InEveryVoice([reason.Text, reason.Remedy]);
        Assert.Empty(Given(new OutlineSpec.Rectangle(largestM + 0.5, 0.6), "wwow", new SectionLine('C', 0.6, 0, null, SectionLineOn.Flat)).Reasons);
    }

    [Fact]
    public void A_line_on_the_flat_is_moved_along_its_side_as_far_as_it_is_told()
    {
        var whole = WholeJob.From(Written.Job, [Written.Clear]).Whole!;
        var (top, work) = (whole.Measured.Tops[0], whole.Work.Coats[0]);
        var lines = OwnLines.OnFlat(top, work);
        Assert.NotEmpty(lines);
        foreach (var line in lines)
        {
            var moved = OwnLines.Move(Written.Job, top, work, line.Laps[0], line.MovedTo(line.Line.AtM + 0.05));
            var written = moved.Document!.Tops[0].SectionLines!.Select(l => (l.Side, AtM: ((Read<double>.Got)Reading.Length(l.At, Written.Job.Units)).Value));
            Assert.Contains(written, w => w.Side == line.Line.Side.ToString() && Math.Abs(w.AtM - line.Line.AtM - 0.05) < 2e-5);
        }
    }

    [Fact]
    public void A_dragged_seam_is_kept_in_the_document_and_the_order_is_planned_anew()
    {
        var document = Written.Job;
        var library = new[] { Written.Clear };
        var before = WholeJob.From(document, library).Whole!;
        var lap = before.Work.Coats[0].Laps.First(l => l.Kind == LapKind.Flat && before.Work.Coats[0].Sections.First(s => s.Id == l.A).Face.Kind == FaceKind.Flat);
        var dragged = new PointM(lap.Line[0].X + 0.1, lap.Line[0].Y);

        var moved = OwnLines.Move(document, before.Measured.Tops[0], before.Work.Coats[0], lap, dragged);
        Assert.Null(moved.Refused);
        var read = JobFile.ReadJob(JobFile.Write(moved.Document!));
        Assert.Empty(read.Faults);

        var (after, faults) = WholeJob.From(read.Document!, library);
        Assert.Empty(faults);
        var work = after!.Work.Coats[0];
        Assert.Equal(before.Work.Coats[0].Sections.Count, work.Sections.Count);
        Assert.Contains(work.Laps, l => l.Kind == LapKind.Flat && Math.Abs(l.Line[0].X - dragged.X) < 2e-5);
        Assert.DoesNotContain(work.Laps, l => l.Kind == LapKind.Flat && Math.Abs(l.Line[0].X - lap.Line[0].X) < 2e-5 && Math.Abs(l.LengthM - lap.LengthM) < 1e-4);

        Assert.Null(OwnLines.Release(read.Document!, "Island").Tops[0].SectionLines);
    }

    /// <summary>Each line of the flat that the splash was cut in line with takes the splash's line with it, and no other.</summary>
    [Fact]
    public void A_dragged_line_takes_the_line_of_the_splash_with_it()
    {
        var document = Written.Job with
        {
            Tops = [Written.Job.Tops[0] with
            {
                Outline = new OutlineDocument { Shape = OutlineShape.Rectangle, Length = "9 ft", Depth = "25 1/2 in" },
                Edges = new Dictionary<string, EdgeDocument> { ["A"] = new() { Kind = EdgeKind.Splash, Height = "4 in" }, ["B"] = new() { Kind = EdgeKind.Wall }, ["C"] = new() { Kind = EdgeKind.Open }, ["D"] = new() { Kind = EdgeKind.Wall } },
                Cutouts = null,
                SectionLines = [new() { Side = "C", At = "3 ft" }, new() { Side = "C", At = "6 ft" }],
            }],
        };
        var (whole, faults) = WholeJob.From(document, [Written.Clear]);
        Assert.Empty(faults);
        var (top, work) = (whole!.Measured.Tops[0], whole.Work.Coats[0]);
        var line = OwnLines.OnFlat(top, work)[0];
        var moved = OwnLines.Move(document, top, work, line.Laps[0], line.MovedTo(line.Line.AtM + 0.1)).Document!;
        var lines = moved.Tops[0].SectionLines!.Select(l => (l.On, AtM: ((Read<double>.Got)Reading.Length(l.At, document.Units)).Value)).ToList();
        var upright = lines.Where(l => l.On is SectionLineOn.Upright).Select(l => Math.Round(l.AtM, 4)).Order().ToList();
        Assert.Equal(2, upright.Count);
        Assert.Equal(upright, lines.Where(l => l.On is not SectionLineOn.Upright).Select(l => Math.Round(line.Line.Side == 'A' ? l.AtM : (9 * FootM) - l.AtM, 4)).Order());
        Assert.Contains(upright, x => Math.Abs(x - (3 * FootM)) < 1e-4 || Math.Abs(x - (6 * FootM)) < 1e-4);
    }

    [Fact]
    public void A_fold_is_no_line_to_move_and_a_line_stays_on_its_top()
    {
        var whole = WholeJob.From(Written.Job, [Written.Clear]).Whole!;
        var (top, work) = (whole.Measured.Tops[0], whole.Work.Coats[0]);
        var fold = work.Laps.First(l => l.Kind == LapKind.Fold);
        var flat = work.Laps.First(l => l.Kind == LapKind.Flat);
        Assert.Equal("NotALineToMove", OwnLines.Move(Written.Job, top, work, fold, new PointM(0.5, 0.5)).Refused!.Code);
        var off = OwnLines.Move(Written.Job, top, work, flat, new PointM(50, 50));
        Assert.Equal("LineOffTop", off.Refused!.Code);
        Said.InEveryVoice([off.Refused.Text, off.Refused.Remedy]);
    }

    private static CutTop Given(OutlineSpec outline, string edges, params IReadOnlyList<SectionLine> lines)
    {
        var top = Top(outline, edges);
        return Sectioning.Cut(top with { Top = top.Top with { SectionLines = lines } }, OneAim, new CutChoice.Given());
    }

    private static IEnumerable<double> Sorted(CutTop cut) => cut.Sections.Select(s => s.FaceM2).Order();
}
