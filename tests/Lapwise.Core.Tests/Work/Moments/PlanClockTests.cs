using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Moments;

namespace Lapwise.Core.Tests.Work.Moments;

/// <summary>A plan at a moment, against counting by hand and against what the plan says of itself.</summary>
public sealed class PlanClockTests
{
    private static readonly IReadOnlyList<Person> Crew = [Invented.Person];

    /// <summary>Mixed for 100 s, then three sections of 300 s each; the film stays open 700 s.</summary>
    private static readonly CoatWork Three = Plans.Path(700, Origin.DataSheet, 100_000, 300_000, 300_000, 300_000);

    [Fact]
    public void At_the_beginning_a_batch_is_mixed_and_nothing_is_wet()
    {
        var moment = At(Three, 0);
        Assert.All(moment.Sections, s => Assert.Equal(SectionState.Untouched, s.State));
        Assert.Equal(BatchState.BeingMixed, Assert.Single(moment.Batches).State);
        Assert.IsType<Doing.Mixes>(moment.People[0].Doing);
    }

    [Fact]
    public void In_the_middle_one_section_waits_open_while_the_next_is_wetted_then_dry_rolled()
    {
        var wetting = At(Three, 500_000);
        Assert.Equal([SectionState.Open, SectionState.Wetting, SectionState.Untouched], wetting.Sections.Select(s => s.State));
        Assert.Equal(100_000 + 700_000 - 500_000, wetting.Sections[0].OpenLeftMs);
        Assert.Equal([LapState.Waiting, LapState.Waiting], wetting.Laps.Select(l => l.State));
        Assert.Equal([300_000, 600_000], wetting.Laps.Select(l => l.LeftMs));
        Assert.Equal(new Doing.Rolls(Three.Sections[1], false, 600_000), wetting.People[0].Doing);
        Assert.Equal((BatchState.InUse, 500_000L, 3_100_000L), (wetting.Batches[0].State, wetting.Batches[0].AgeMs, wetting.Batches[0].LeftMs));

        Assert.Equal(SectionState.Finishing, At(Three, 650_000).Sections[1].State);
        Assert.Equal(new Doing.Rolls(Three.Sections[1], true, 700_000), At(Three, 650_000).People[0].Doing);
    }

    [Fact]
    public void A_section_whose_laps_are_joined_waits_for_nobody()
    {
        var moment = At(Three, 700_000);
        Assert.Equal([SectionState.Joined, SectionState.Open, SectionState.Wetting], moment.Sections.Select(s => s.State));
        Assert.Equal([LapState.Joined, LapState.Waiting], moment.Laps.Select(l => l.State));
    }

    [Fact]
    public void A_film_that_closes_before_its_lap_is_joined_is_lost_from_then_on()
    {
        var slow = Plans.Path(500, Origin.DataSheet, 100_000, 300_000, 300_000);
        Assert.Equal(LapState.Waiting, At(slow, 600_000).Laps[0].State);
        foreach (var later in new[] { 600_001L, 699_999, 700_000 })
        {
            var moment = At(slow, later);
            Assert.Equal(LapState.Lost, moment.Laps[0].State);
            Assert.Equal(SectionState.Closed, moment.Sections[0].State);
        }
    }

    [Fact]
    public void A_batch_still_needed_after_its_use_by_time_is_said_to_have_outlived_it()
    {
        var batch = Three.Batches[0] with { UseByMs = 800_000 };
        var work = Three with { Batches = [batch] };
        Assert.Equal(BatchState.InUse, At(work, 800_000).Batches[0].State);
        Assert.Equal(BatchState.Outlived, At(work, 800_001).Batches[0].State);
        Assert.Equal(BatchState.UsedUp, At(work, work.Sections[^1].WetEndMs).Batches[0].State);
    }

    [Fact]
    public void A_planned_joint_waits_for_nobody()
    {
        var work = Three with { Laps = [Three.Laps[0] with { Kind = LapKind.Break }, Three.Laps[1]] };
        Assert.Equal(LapState.Joint, At(work, 500_000).Laps[0].State);
        Assert.Equal(SectionState.Joined, At(work, 450_000).Sections[0].State);
    }

    [Fact]
    public void A_time_outside_the_plan_is_its_beginning_or_its_end()
    {
        Assert.Equal(0, At(Three, -5).AtMs);
        Assert.Equal(1_000_000, At(Three, long.MaxValue).AtMs);
        Assert.IsType<Doing.Through>(At(Three, long.MaxValue).People[0].Doing);
    }

    /// <summary>Whatever the plan: at its end a lap is lost exactly where its age is over the open time, and states only go on.</summary>
    [Fact]
    public void Played_to_the_end_any_plan_comes_out_as_it_says_of_itself() => Any.Sample(work =>
    {
        var end = At(work, PlanClock.EndMs(work));
        Assert.All(end.Laps, l => Assert.Equal(l.Lap.AgeMs > work.OpenTimeMs ? LapState.Lost : LapState.Joined, l.State));
        Assert.All(end.Sections, s => Assert.Contains(s.State, new[] { SectionState.Joined, SectionState.Closed }));
        Assert.Equal(work.LapMarginMs < 0, end.Sections.Any(s => s.State == SectionState.Closed));

        var before = At(work, 0);
        foreach (var turn in PlanClock.Turns(work))
        {
            var moment = At(work, turn);
            Assert.All(before.Laps.Zip(moment.Laps), p => Assert.True(p.First.State <= p.Second.State));
            Assert.All(before.Sections.Zip(moment.Sections), p => Assert.True(p.First.State <= p.Second.State));
            Assert.True(moment.Sections.Count(s => s.State is SectionState.Wetting or SectionState.Finishing) <= 1);
            before = moment;
        }
    }, iter: 200, threads: 1);

    [Fact]
    public void Every_moment_is_told_in_every_voice()
    {
        var work = Three with { Batches = [Three.Batches[0] with { UseByMs = 800_000 }] };
        foreach (var atMs in PlanClock.Turns(work))
        {
            var moment = PlanClock.At(work, Crew, atMs);
            Said.InEveryVoice([v => string.Join(" ", MomentWords.People(moment, Crew, v)), v => string.Join(" ", MomentWords.Film(moment, v))]);
        }
        Assert.Contains("Next lap to run out: 1–2, in 5 min", string.Join(" ", MomentWords.Film(At(work, 500_000), Voice.Default)), StringComparison.Ordinal);
        Assert.Contains("Do not use it", string.Join(" ", MomentWords.Batches(At(work, 850_000), Voice.Default)), StringComparison.Ordinal);
    }

    private static readonly Gen<CoatWork> Any =
        from openS in Gen.Int[200, 1500]
        from mixS in Gen.Int[0, 200]
        from took in Gen.Int[30, 400].Array[1, 8]
        select Plans.Path(openS, Origin.Guess, mixS * 1000L, [.. took.Select(s => s * 1000L)]);

    private static Moment At(CoatWork work, long atMs) => PlanClock.At(work, Crew, atMs);
}
