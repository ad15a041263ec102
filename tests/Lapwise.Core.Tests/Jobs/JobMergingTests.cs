using CsCheck;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

/// <summary>Two edits of one job: nothing of either is lost, and nothing is mixed that nobody measured.</summary>
public sealed class JobMergingTests
{
    private static readonly JobDocument From = new()
    {
        Name = "Kitchen at the mill",
        Room = new RoomDocument { Air = "70 °F", Humidity = "45 %", Surface = "68 °F", Material = "70 °F" },
        Crew = [new PersonDocument { Name = "Ada" }],
        Tops = [Top("Island", "6 ft"), Top("Run", "11 ft"), Top("Vanity", "4 ft")],
        System = [new CoatDocument { Product = "base", Color = "grey" }, new CoatDocument { Product = "clear" }, new CoatDocument { Product = "clear" }],
    };

    [Fact]
    public void Edits_of_different_tops_are_both_taken()
    {
        var merged = JobMerging.Merge(From, WithTop(From, 0, t => t with { Thickness = "2 in" }), WithTop(From, 2, t => t with { Name = "Bath" }));
        Assert.Empty(merged.Clashes);
        Assert.Equal("2 in", merged.Job.Tops[0].Thickness?.Text);
        Assert.Equal(["Island", "Run", "Bath"], merged.Job.Tops.Select(t => t.Name));
    }

    [Fact]
    public void Two_edits_of_one_top_clash_and_the_choice_decides_for_the_whole_top()
    {
        var mine = WithTop(From, 0, t => t with { Thickness = "2 in" });
        var other = WithTop(From, 0, t => t with { Outline = t.Outline with { Depth = "40 in" } });

        var merged = JobMerging.Merge(From, mine, other);
        var clash = Assert.Single(merged.Clashes);
        Assert.Equal(new JobPlace("tops", "Island"), clash.Place);
        Assert.Equal([new("thickness", "2 in", "1 1/2 in"), new("outline.depth", "36 in", "40 in")], clash.Differences.OrderByDescending(d => d.Path));
        Assert.Equal(JobFile.Write(mine), JobFile.Write(merged.Job));

        var decided = JobMerging.Merge(From, mine, other, new Dictionary<JobPlace, Side> { [clash.Place] = Side.Other });
        Assert.Empty(decided.Clashes);
        Assert.Equal("40 in", decided.Job.Tops[0].Outline.Depth?.Text);
        Assert.Equal("1 1/2 in", decided.Job.Tops[0].Thickness?.Text);
    }

    [Fact]
    public void A_top_edited_here_and_taken_out_there_is_a_clash()
    {
        var mine = WithTop(From, 1, t => t with { Thickness = "2 in" });
        var other = From with { Tops = [From.Tops[0], From.Tops[2]] };
        Assert.Equal(new JobPlace("tops", "Run"), Assert.Single(JobMerging.Merge(From, mine, other).Clashes).Place);
        Assert.Equal(3, JobMerging.Merge(From, mine, other).Job.Tops.Count);
    }

    [Fact]
    public void Tops_added_on_both_sides_stand_where_they_were_added()
    {
        var mine = From with { Tops = [.. From.Tops, Top("Desk", "5 ft")] };
        var other = From with { Tops = [Top("Hearth", "3 ft"), .. From.Tops] };
        Assert.Equal(["Hearth", "Island", "Run", "Vanity", "Desk"], JobMerging.Merge(From, mine, other).Job.Tops.Select(t => t.Name));
    }

    [Fact]
    public void The_two_clear_coats_are_told_apart_by_their_turn()
    {
        var mine = From with { System = [From.System[0], From.System[1] with { WetFilm = "6 mil" }, From.System[2]] };
        var other = From with { System = [From.System[0], From.System[1], From.System[2] with { WetFilm = "7 mil" }] };
        var merged = JobMerging.Merge(From, mine, other);
        Assert.Empty(merged.Clashes);
        Assert.Equal([null, "6 mil", "7 mil"], merged.Job.System.Select(c => c.WetFilm?.Text));
    }

    [Fact]
    public void A_new_order_on_one_side_is_kept_with_an_edit_from_the_other()
    {
        var mine = WithTop(From, 0, t => t with { Thickness = "2 in" });
        var other = From with { Tops = [From.Tops[2], From.Tops[0], From.Tops[1]] };
        var merged = JobMerging.Merge(From, mine, other);
        Assert.Empty(merged.Clashes);
        Assert.Equal(["Vanity", "Island", "Run"], merged.Job.Tops.Select(t => t.Name));
        Assert.Equal("2 in", merged.Job.Tops[1].Thickness?.Text);
    }

    [Fact]
    public void Two_new_orders_of_one_list_clash()
    {
        var mine = From with { Tops = [From.Tops[2], From.Tops[0], From.Tops[1]] };
        var other = From with { Tops = [From.Tops[1], From.Tops[0], From.Tops[2]] };
        Assert.Equal(new JobPlace("tops", null), Assert.Single(JobMerging.Merge(From, mine, other).Clashes).Place);
    }

    [Fact]
    public void The_room_is_merged_by_reading()
    {
        var merged = JobMerging.Merge(From, From with { Room = From.Room with { Air = "80 °F" } }, From with { Room = From.Room with { Surface = "64 °F", Air = "79 °F" } });
        Assert.Equal(new JobPlace("room", "air"), Assert.Single(merged.Clashes).Place);
        Assert.Equal(("80 °F", "64 °F"), (merged.Job.Room.Air.Text, merged.Job.Room.Surface.Text));
    }

    private static readonly Gen<Func<JobDocument, JobDocument>> Edit = Gen.OneOf(
        Gen.Select(Gen.Int[0, 9], Gen.Int[1, 9]).Select((i, v) => (Func<JobDocument, JobDocument>)(d => d.Tops.Count == 0 ? d : WithTop(d, i % d.Tops.Count, t => t with { Thickness = v + " in" }))),
        Gen.Select(Gen.Int[0, 9], Gen.Int[1, 9]).Select((i, v) => (Func<JobDocument, JobDocument>)(d => d.Tops.Count == 0 ? d : WithTop(d, i % d.Tops.Count, t => t with { Name = "Top " + v }))),
        Gen.Int[0, 9].Select(i => (Func<JobDocument, JobDocument>)(d => d.Tops.Count == 0 ? d : d with { Tops = [.. d.Tops.Where((_, n) => n != i % d.Tops.Count)] })),
        Gen.Int[1, 9].Select(v => (Func<JobDocument, JobDocument>)(d => d with { Tops = [.. d.Tops, Top("New " + v, v + " ft")] })),
        Gen.Int[0, 9].Select(i => (Func<JobDocument, JobDocument>)(d => d.Tops.Count == 0 ? d : d with { Tops = [.. d.Tops.Skip(i % d.Tops.Count), .. d.Tops.Take(i % d.Tops.Count)] })),
        Gen.Int[60, 90].Select(t => (Func<JobDocument, JobDocument>)(d => d with { Room = d.Room with { Air = t + " °F" } })),
        Gen.Const((Func<JobDocument, JobDocument>)(d => d with { Tools = new ToolsDocument { CupStep = "1 fl oz" } })),
        Gen.Int[1, 9].Select(v => (Func<JobDocument, JobDocument>)(d => d with { Name = "Job " + v })));

    private static readonly Gen<JobDocument> Edited = Edit.List[0, 4].Select(edits => edits.Aggregate(From, (d, e) => e(d)));

    [Fact]
    public void An_edit_on_one_side_only_is_taken_as_it_is() => Edited.Sample(edited =>
    {
        var (here, there) = (JobMerging.Merge(From, edited, From), JobMerging.Merge(From, From, edited));
        return here.Clashes.Count == 0 && there.Clashes.Count == 0 && Same(here.Job, edited) && Same(there.Job, edited);
    });

    [Fact]
    public void The_same_edit_on_both_sides_is_no_clash() => Edited.Sample(edited =>
        JobMerging.Merge(From, edited, edited) is { Clashes.Count: 0 } merged && Same(merged.Job, edited));

    [Fact]
    public void Both_sides_clash_at_the_same_places() => Gen.Select(Edited, Edited).Sample((a, b) =>
        JobMerging.Merge(From, a, b).Clashes.Select(c => c.Place).ToHashSet().SetEquals(JobMerging.Merge(From, b, a).Clashes.Select(c => c.Place)));

    [Fact]
    public void Once_every_clash_is_chosen_none_is_left_and_merging_again_changes_nothing() => Gen.Select(Edited, Edited, Gen.Bool).Sample((a, b, mine) =>
    {
        var chosen = JobMerging.Merge(From, a, b).Clashes.ToDictionary(c => c.Place, _ => mine ? Side.Mine : Side.Other);
        var merged = JobMerging.Merge(From, a, b, chosen);
        return merged.Clashes.Count == 0 && Same(JobMerging.Merge(b, merged.Job, b).Job, merged.Job);
    });

    [Fact]
    public void No_top_is_mixed_from_two_edits() => Gen.Select(Edited, Edited).Sample((a, b) =>
    {
        var known = a.Tops.Concat(b.Tops).Select(Json).ToHashSet(StringComparer.Ordinal);
        return JobMerging.Merge(From, a, b).Job.Tops.All(t => known.Contains(Json(t)));
    });

    private static TopDocument Top(string name, string length) => new()
    {
        Name = name,
        Thickness = "1 1/2 in",
        Outline = new OutlineDocument { Length = length, Depth = "36 in" },
    };

    private static JobDocument WithTop(JobDocument job, int at, Func<TopDocument, TopDocument> change) =>
        job with { Tops = [.. job.Tops.Select((t, i) => i == at ? change(t) : t)] };

    private static bool Same(JobDocument a, JobDocument b) => JobFile.Write(a) == JobFile.Write(b);

    private static string Json(TopDocument top) => JobFile.Write(new JobDocument { Tops = [top] });
}
