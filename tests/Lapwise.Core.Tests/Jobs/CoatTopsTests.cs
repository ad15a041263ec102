using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

/// <summary>Coats that go on some of the tops: how the document holds them while tops come, go and are renamed.</summary>
public sealed class CoatTopsTests
{
    private static TopDocument Named(string name) => Written.Island with { Name = name };

    private static JobDocument Job(params IReadOnlyList<string>?[] onTops) => Written.Job with
    {
        Tops = [Named("Run"), Named("Island"), Named("Bar")],
        System = [.. onTops.Select(on => new CoatDocument { Product = "clear", OnTops = on })],
        Products = [Written.Clear],
    };

    private static IReadOnlyList<string>?[] OnTops(JobDocument job) => [.. job.System.Select(c => c.OnTops)];

    [Fact]
    public void A_coat_taken_off_one_top_names_the_others_and_put_on_all_names_none()
    {
        var job = Job((IReadOnlyList<string>?)null);

        var off = job.System[0].Put(job.Tops[1], on: false, job.Tops);
        var back = off.Put(job.Tops[1], on: true, job.Tops);

        Assert.Equal(["Run", "Bar"], off.OnTops);
        Assert.Null(back.OnTops);
        Assert.Equal([true, false, true], job.Tops.Select(off.GoesOn));
    }

    [Fact]
    public void A_coat_stays_on_the_last_of_its_tops()
    {
        var job = Job(["Island"]);
        Assert.Equal(["Island"], job.System[0].Put(job.Tops[1], on: false, job.Tops).OnTops);
    }

    [Fact]
    public void Coats_follow_a_top_to_its_new_name()
    {
        var job = Job(["Island", "Bar"], null, ["Run"]).Renamed(1, "Island by the window");

        Assert.Equal([["Island by the window", "Bar"], null, ["Run"]], OnTops(job));
        Assert.Empty(JobReading.Read(job, []).Faults);
    }

    [Fact]
    public void Coats_follow_a_name_that_is_typed_through_that_of_another_top()
    {
        var job = Job(["Island", "Bar"], ["Run"]) with { Tops = [Named("Run"), Named("Island"), Named("Bar")] };
        foreach (var typed in new[] { "Ba", "Bar", "Bar by", "Bar by the window" }) job = job.Renamed(1, typed);

        Assert.Equal([["Bar by the window", "Bar"], ["Run"]], OnTops(job));
    }

    [Fact]
    public void Of_two_tops_of_one_name_none_is_followed()
    {
        var twice = Job(["Island"]).Renamed(0, "island");
        Assert.Equal([["Island"]], OnTops(twice.Renamed(0, "Run by the window")));
    }

    [Fact]
    public void A_top_taken_out_leaves_the_coats_that_have_others_and_is_missed_by_one_that_has_none()
    {
        var job = Job(["Island", "Bar"], ["Island"]).WithoutTop(1);

        Assert.Equal([["Bar"], ["Island"]], OnTops(job));
        var fault = Assert.Single(JobReading.Read(job, []).Faults);
        Assert.Equal(("system[1].onTops", "TopUnknown"), (fault.Path, fault.Code));
    }

    [Fact]
    public void Tops_are_read_as_they_are_written_themselves_and_naming_all_is_naming_none()
    {
        var read = JobReading.Read(Job([" island "], ["Bar", "Run", "Island"]), []);

        Assert.Empty(read.Faults);
        Assert.Equal(["Island"], read.Job!.System[0].OnTops);
        Assert.Empty(read.Job.System[1].OnTops);
    }
}
