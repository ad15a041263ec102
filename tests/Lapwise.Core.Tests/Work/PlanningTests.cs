using CsCheck;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.Work;

public sealed class PlanningTests
{
    [Fact]
    public async Task Planning_with_pauses_gives_the_same_plan_as_at_one_go()
    {
        var (job, measured, conditions) = Island(open: 8, people: 2);
        var pauses = 0;
        var sliced = await Planning.PlanAsync(job, measured, conditions, new Effort(1, async () =>
        {
            pauses++;
            await Task.Yield();
        }));
        Assert.Equal(Describe(Planning.Plan(job, measured, conditions)), Describe(sliced));
        Assert.True(pauses > 5);
    }

    [Fact]
    public async Task A_pause_can_stop_the_planning()
    {
        var (job, measured, conditions) = Island(open: 8, people: 1);
        await Assert.ThrowsAsync<OperationCanceledException>(async () =>
            await Planning.PlanAsync(job, measured, conditions, new Effort(1, () => throw new OperationCanceledException())));
    }

    [Fact]
    public Task Ways_kept_from_a_plan_that_was_stopped_and_one_at_another_pace_give_the_same_plan_as_cutting_anew() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[5, 25], Gen.Int[1, 2]).SampleAsync(async (stopAfter, open, people) =>
        {
            var (job, measured, conditions) = Island(open, people);
            var slower = job with { Crew = [.. job.Crew.Select(p => p with { Pace = p.Pace with { ReloadS = p.Pace.ReloadS + 20 } })] };
            var ways = new TopWays();
            try
            {
                await Planning.PlanAsync(slower, measured, conditions, new Effort(1, () => --stopAfter < 0 ? throw new OperationCanceledException() : ValueTask.CompletedTask), ways);
            }
            catch (OperationCanceledException)
            {
                await Planning.PlanAsync(slower, measured, conditions, Effort.AtOnce, ways);
            }

            Assert.Equal(Describe(Planning.Plan(job, measured, conditions)), Describe(await Planning.PlanAsync(job, measured, conditions, Effort.AtOnce, ways)));
        }, iter: 20);

    [Fact]
    public void A_plan_is_worse_than_a_usual_way_only_where_it_keeps_its_target() =>
        Gen.Select(Gen.Int[5, 25], Gen.Int[1, 2]).Sample((open, people) =>
        {
            var (job, measured, conditions) = Island(open, people);
            var coat = Planning.Plan(job, measured, conditions).Coats[0];
            var worst = Math.Max(coat.WorstLapAgeMs, coat.WorstSectionAgeMs);
            Assert.True(coat.LapMarginMs >= coat.TargetMarginMs || coat.Batches.Count > 1 || coat.Baselines.All(b => worst <= b.WorstAgeMs));
        }, iter: 30);

    [Fact]
    public void One_rolls_and_the_other_mixes_where_that_keeps_the_margin()
    {
        var (job, measured, conditions) = Island(open: 15, people: 2);
        var coat = Planning.Plan(job, measured, conditions).Coats[0];
        Assert.All(coat.Sections, s => Assert.Equal(0, s.Person));
        Assert.All(coat.Batches, b => Assert.Equal(1, b.MixedBy));
        Assert.Contains(coat.Reasons, r => r.Code == "OneRolls");
        Assert.True(coat.LapMarginMs >= coat.TargetMarginMs);
    }

    [Fact]
    public void Of_a_large_crew_four_roll_and_the_fifth_mixes()
    {
        var (job, measured, conditions) = Island(open: 4, people: 9);
        var coat = Planning.Plan(job, measured, conditions).Coats[0];
        Assert.All(coat.Sections, s => Assert.InRange(s.Person, 0, 3));
        Assert.All(coat.Batches, b => Assert.DoesNotContain(coat.Sections, s => s.Person == b.MixedBy && s.StartMs < b.MixEndMs && b.MixStartMs < s.EndMs));
    }

    [Fact]
    public void Both_roll_where_one_alone_would_lose_a_lap()
    {
        var (job, measured, conditions) = Island(open: 5, people: 1);
        var alone = Planning.Plan(job, measured, conditions).Coats[0];
        (job, measured, conditions) = Island(open: 5, people: 2);
        var together = Planning.Plan(job, measured, conditions).Coats[0];
        Assert.True(alone.LapMarginMs < together.LapMarginMs);
        Assert.Contains(together.Sections, s => s.Person == 1);
    }

    /// <summary>
    /// One who rolls alone mixes ahead, or waits while a batch stands where that would grow hot in its cup; a helper mixes it that
    /// much earlier. Each time the life runs from the first contact.
    /// </summary>
    [Theory]
    [InlineData(1, false)]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void Nothing_is_rolled_before_a_batch_has_stood_as_long_as_the_product_asks(int people, bool growsHot)
    {
        var (job, measured, conditions) = Island(open: 15, people, Clear with { Induction = "10 min", LargestBatch = "24 fl oz", Hazards = growsHot ? [Hazard.HotMix] : [] });
        var coat = Planning.Plan(job, measured, conditions).Coats[0];
        Assert.True(coat.Batches.Count > 1);
        Assert.All(coat.Batches, b =>
        {
            Assert.Equal(b.MixEndMs + 600_000, b.ReadyMs);
            Assert.Equal(150_000, b.MixEndMs - b.MixStartMs);
            Assert.Equal(coat.PotLifeMs, b.UseByMs - b.MixStartMs);
            Assert.True(coat.Sections.Where(s => s.Batch == b.Id).Min(s => s.StartMs) >= b.ReadyMs);
        });
        // While it stands it ages: what reacts in the film has begun in the cup.
        var mixedMs = coat.Batches.ToDictionary(b => b.Id, b => b.MixEndMs);
        Assert.True(coat.BatchAgeShare > 0);
        Assert.All(coat.Sections, s => Assert.Equal(Math.Ceiling((coat.BatchAgeShare * (s.StartMs - mixedMs[s.Batch]) / 1000) - 1e-9) * 1000, s.UsedMs));
        // What was not tried is said, and only where it costs something.
        Assert.Equal(people == 1 && growsHot, coat.Reasons.Any(r => r.Code == "StandingIsWaitedOut"));
        Assert.Equal(people == 1 && !growsHot, coat.Reasons.Any(r => r.Code == "MixedAhead"));
        Assert.Equal(people == 1 && !growsHot, coat.Batches.Skip(1).All(coat.StandsMixed));
    }

    /// <summary>From two cups, once of a mix that may stand and once of one that grows hot and is mixed along the way.</summary>
    [Fact]
    public void One_who_rolls_alone_mixes_ahead_where_that_is_better()
    {
        var product = Clear with { LargestBatch = "24 fl oz", Hazards = [] };
        var table = Open("Table", new OutlineDocument { Length = "12 ft", Depth = "5 ft" }, "ABCD");
        var (ahead, along) = (Alone(11, product, table), Alone(11, product with { Hazards = [Hazard.HotMix] }, table));
        Assert.True(ahead.Batches.Count > 1 && ahead.Batches.Skip(1).All(ahead.StandsMixed));
        Assert.Equal(ahead.Batches[0].MixEndMs, ahead.Batches[1].MixStartMs);
        Assert.DoesNotContain(along.Batches, along.StandsMixed);
        Assert.Equal((0, true), (SpanMixing(ahead), SpanMixing(along) > 0));
        Assert.True(ahead.LapMarginMs >= ahead.TargetMarginMs);
        Assert.True((ahead.Sections.Count, -ahead.LapMarginMs).CompareTo((along.Sections.Count, -along.LapMarginMs)) < 0, $"{ahead.Sections.Count} and {along.Sections.Count} sections, {ahead.LapMarginMs} and {along.LapMarginMs} ms");

        static int SpanMixing(CoatWork work)
        {
            var at = work.Sections.ToDictionary(s => s.Id);
            return work.Laps.Count(l => work.Batches.Any(b => b.MixStartMs > Math.Min(at[l.A].StartMs, at[l.B].StartMs) && b.MixStartMs < Math.Max(at[l.A].EndMs, at[l.B].EndMs)));
        }
    }

    [Fact]
    public void A_mixing_that_falls_into_no_lap_stays_just_before_its_use()
    {
        TopDocument Table(string name) => Open(name, new OutlineDocument { Length = "7 ft", Depth = "3 ft" }, "ABCD");
        var work = Alone(11, Clear with { LargestBatch = "20 fl oz", Hazards = [] }, Table("One"), Table("Other"));
        Assert.Equal(2, work.Batches.Count);
        Assert.DoesNotContain(work.Batches, work.StandsMixed);
    }

    /// <summary>12 ft × 5 ft, walkable all round; the pace of the defaults.</summary>
    [Fact]
    public void One_who_rolls_alone_gets_finer_sections_where_only_the_age_of_the_batch_misses_the_target()
    {
        var coat = Alone(11, Clear, Open("Table", new OutlineDocument { Shape = OutlineShape.Ellipse, Length = "96 in", Depth = "54 in" }, "A"));
        Assert.Single(coat.Batches);
        Assert.True(coat.LapMarginMs >= coat.TargetMarginMs, $"{coat.LapMarginMs} of {coat.TargetMarginMs}");
    }

    /// <summary>Fewer sections would keep the target too, with a second batch and its change in the middle of a leg.</summary>
    [Fact]
    public void Finer_sections_come_before_a_further_batch_in_sight()
    {
        var outline = new OutlineDocument { Shape = OutlineShape.U, Length = "11 ft", Depth = "25 1/2 in", RightLegLength = "8 ft", RightLegDepth = "25 1/2 in", LeftLegLength = "7 ft", LeftLegDepth = "25 1/2 in" };
        var coat = Alone(11, Clear, Open("Run", outline, "CDEFG", splash: "A", wall: "BH"));
        Assert.Single(coat.Batches);
        Assert.True(coat.LapMarginMs >= coat.TargetMarginMs, $"{coat.LapMarginMs} of {coat.TargetMarginMs}");
    }

    [Fact]
    public void No_batch_is_mixed_too_small_for_its_ratio_to_be_measured()
    {
        var coat = Alone(40, Clear,
            Open("Run", new OutlineDocument { Length = "160 in", Depth = "44 in" }, "ABCD"),
            Open("Tray", new OutlineDocument { Length = "10 in", Depth = "8 in" }, "ABCD"));
        Assert.True(coat.Batches.Count > 1);
        Assert.All(coat.Batches, b => Assert.True(b.VolumeMl >= Defaults.Tools.RollerCharge.Value, $"{b.Id}: {b.VolumeMl} mL"));
    }

    [Fact]
    public void A_mix_that_is_never_ready_in_its_life_is_said_to_be_just_that()
    {
        var coat = Alone(11, Clear with { Induction = "44 min" }, Open("Table", new OutlineDocument { Length = "4 ft", Depth = "2 ft" }, "ABCD"));
        var reason = coat.Reasons.Single(r => r.Code == "BatchOutlivesPot");
        Assert.Contains("Mixing and standing take", reason.Text(Voice.Default), StringComparison.Ordinal);
        Assert.DoesNotContain("container", reason.Remedy(Voice.Default), StringComparison.Ordinal);
        Assert.All(coat.Batches, b => Assert.True(b.IsNotToBeMixed));
    }

    [Fact]
    public void Where_no_mixing_works_no_film_is_counted_from_a_batch_past_its_life()
    {
        var coat = Alone(11, Clear with { LargestBatch = "1 fl oz" }, Open("Island", new OutlineDocument { Length = "40 ft", Depth = "5 ft" }, "ABCD"));
        var batch = Assert.Single(coat.Batches);
        Assert.True(batch.IsNotToBeMixed);
        Assert.True(coat.Sections[^1].StartMs > batch.UseByMs);
        Assert.All(coat.Sections, s => Assert.True(s.UsedMs <= coat.BatchAgeShare * coat.PotLifeMs));
    }

    [Fact]
    public void Where_one_can_stand_nowhere_no_way_of_cutting_is_called_proven()
    {
        var coat = Alone(11, Clear, Open("Shelf", new OutlineDocument { Length = "4 ft", Depth = "2 ft" }, "", wall: "ABCD"));
        Assert.Contains(coat.Reasons, r => r.Code == "NowhereToStand");
        Assert.Null(coat.Proof.Ways);
    }

    private static CoatWork Alone(int open, ProductDocument product, params List<TopDocument> tops)
    {
        var (job, measured, conditions) = Read(open, 1, product, tops);
        return Planning.Plan(job, measured, conditions).Coats[0];
    }

    private static TopDocument Open(string name, OutlineDocument outline, string open, string splash = "", string wall = "") => new()
    {
        Name = name,
        Outline = outline,
        Edges = open.Select(c => (Letter: c, Edge: new EdgeDocument { Kind = EdgeKind.Open }))
            .Concat(splash.Select(c => (Letter: c, Edge: new EdgeDocument { Kind = EdgeKind.Splash, Height = "4 in" })))
            .Concat(wall.Select(c => (Letter: c, Edge: new EdgeDocument { Kind = EdgeKind.Wall })))
            .ToDictionary(e => $"{e.Letter}", e => e.Edge, StringComparer.Ordinal),
    };

    private static (Job, MeasuredJob, JobConditions) Island(int open, int people) => Island(open, people, Clear);

    private static (Job, MeasuredJob, JobConditions) Island(int open, int people, ProductDocument product) =>
        Read(open, people, product, [Open("Island", new OutlineDocument { Length = "12 ft", Depth = "5 ft" }, "ABCD")]);

    private static (Job, MeasuredJob, JobConditions) Read(int open, int people, ProductDocument product, List<TopDocument> tops)
    {
        var read = JobReading.Read(
            new JobDocument
            {
                Name = "Island",
                Room = new RoomDocument { Air = "73 °F", Humidity = "45 %", Surface = "73 °F", Material = "73 °F" },
                Crew = [.. Enumerable.Range(1, people).Select(i => new PersonDocument { Name = $"Person {i}" })],
                Tops = tops,
                System = [new CoatDocument { Product = "clear" }],
            },
            [product]);
        Assert.Empty(read.Faults.Select(f => f.Say(Voice.Default)));
        var job = read.Job! with { System = [read.Job.System[0] with { TestBoard = new OpenTime(open * 60, Origin.TestBoard) }] };
        return (job, Measuring.Measure(job), Judging.Judge(job));
    }

    internal static ProductDocument Clear => new()
    {
        Id = "clear", Name = "Clear", Mix = new MixDocument { A = 2, B = 1 }, DensityA = "1.05 g/mL", DensityB = "1.1 g/mL", VolumeSolids = "60 %",
        WetFilm = new WetFilmDocument { Least = "5 mil", Most = "8 mil" },
        PotLife = [new TimeAtDocument { Time = "45 min", At = "73 °F" }], OpenTime = [new TimeAtDocument { Time = "11 min", At = "73 °F" }],
        Kits = [new KitDocument { Size = "24 fl oz", Price = 80 }],
        Limits = new LimitsDocument { AirLeast = "60 °F", AirMost = "90 °F", HumidityMost = "80 %" },
    };

    private static string Describe(JobWork work) => string.Join('\n', work.Coats[0].Sections.Select(s => $"{s.Id} {s.Person} {s.StartMs} {s.EndMs} {s.Batch} {s.FilmM2}"));
}
