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

    /// <summary>The roller alone waits while a batch stands; a helper mixes it that much earlier. Either way the life runs from the first contact.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Nothing_is_rolled_before_a_batch_has_stood_as_long_as_the_product_asks(int people)
    {
        var (job, measured, conditions) = Island(open: 15, people, Clear with { Induction = "10 min", LargestBatch = "24 fl oz" });
        var coat = Planning.Plan(job, measured, conditions).Coats[0];
        Assert.True(coat.Batches.Count > 1);
        Assert.All(coat.Batches, b =>
        {
            Assert.Equal(b.MixEndMs + 600_000, b.ReadyMs);
            Assert.Equal(150_000, b.MixEndMs - b.MixStartMs);
            Assert.Equal(coat.PotLifeMs, b.UseByMs - b.MixStartMs);
            Assert.True(coat.Sections.Where(s => s.Batch == b.Id).Min(s => s.StartMs) >= b.ReadyMs);
        });
        // What was not tried is said, and only where it costs something.
        Assert.Equal(people == 1, coat.Reasons.Any(r => r.Code == "StandingIsWaitedOut"));
    }

    /// <summary>12 ft × 5 ft, walkable all round; the pace of the defaults.</summary>
    private static (Job, MeasuredJob, JobConditions) Island(int open, int people) => Island(open, people, Clear);

    private static (Job, MeasuredJob, JobConditions) Island(int open, int people, ProductDocument product)
    {
        var read = JobReading.Read(
            new JobDocument
            {
                Name = "Island",
                Room = new RoomDocument { Air = "73 °F", Humidity = "45 %", Surface = "73 °F", Material = "73 °F" },
                Crew = [.. Enumerable.Range(1, people).Select(i => new PersonDocument { Name = $"Person {i}" })],
                Tops = [new TopDocument
                {
                    Name = "Island",
                    Outline = new OutlineDocument { Length = "12 ft", Depth = "5 ft" },
                    Edges = "ABCD".ToDictionary(c => $"{c}", _ => new EdgeDocument { Kind = EdgeKind.Open }, StringComparer.Ordinal),
                }],
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
