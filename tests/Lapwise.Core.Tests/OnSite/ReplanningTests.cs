using CsCheck;
using Lapwise.Core.OnSite;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Work;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.OnSite;

public sealed class ReplanningTests
{
    private const long Minute = Runs.Minute;

    private static Phone Mixed(IssuedPlan plan) => new Phone("a").Taps(new What.Issued(plan)).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute);

    [Fact]
    public void An_order_that_keeps_its_margin_is_left_alone()
    {
        var phone = Mixed(Runs.Path(4)).Taps(new What.SectionWet("1", 0)).Waits(2 * Minute).Taps(new What.SectionDry("1", 0));
        var replan = Replanning.Replan(phone.Run, phone.RunNow);
        Assert.False(replan.IsChanged);
        Assert.Empty(replan.Changes);
        Assert.Null(replan.Salvage);
    }

    [Fact]
    public void The_pace_seen_is_that_of_tapped_sections_only()
    {
        var slow = Mixed(Runs.Path(4)).Taps(new What.SectionWet("1", 0)).Waits(4 * Minute).Taps(new What.SectionDry("1", 0));
        // One section at twice the time, held back by two at the plan's: 2^(1/3).
        Assert.Equal(2 * Minute * Math.Cbrt(2), Ahead(slow), 2.0);

        var assumed = Mixed(Runs.Path(4)).Taps(new What.SectionWet("1", 0)).Waits(4 * Minute).Assumes(new What.SectionDry("1", 0));
        Assert.Equal(2 * Minute, Ahead(assumed), 2.0);

        static double Ahead(Phone phone) => Replanning.Replan(phone.Run, phone.RunNow).Forecast.Sections.First(s => s.Progress is Progress.Ahead) is var s ? s.EndMs - s.StartMs : 0;
    }

    /// <summary>On a path begun in the middle the plan would go on to one end and let the other lap set; the new order takes that lap first.</summary>
    [Fact]
    public void Somebody_who_began_elsewhere_is_given_a_new_order()
    {
        var phone = Mixed(Runs.Path(5, openS: 9 * 60)).Taps(new What.SectionWet("3", 0)).Waits(2 * Minute).Taps(new What.SectionDry("3", 0));
        var replan = Replanning.Replan(phone.Run, phone.RunNow);

        Assert.True(replan.IsChanged);
        Assert.NotEmpty(replan.Changes);
        Assert.Empty(replan.Forecast.Lost);
        Assert.True(replan.Forecast.LeastMarginMs > Presenting.Present(phone.Run, phone.RunNow).Forecast.LeastMarginMs);
        Assert.Contains("New order", string.Join(' ', replan.Changes.Select(c => c(Core.Explain.Voice.Default))));

        phone.Taps(new What.Replanned(replan.Turns));
        Assert.False(Replanning.Replan(phone.Run, phone.RunNow).IsChanged);
    }

    [Fact]
    public void Twice_from_the_same_state_is_the_same_order()
    {
        var phone = Mixed(Grid(3, 3)).Taps(new What.SectionWet("5", 0)).Waits(3 * Minute).Taps(new What.SectionDry("5", 0));
        Assert.Equal(Replanning.Replan(phone.Run, phone.RunNow).Turns, Replanning.Replan(phone.Run, phone.RunNow).Turns);
    }

    [Fact]
    public void A_lost_lap_brings_the_least_harm_and_its_mend()
    {
        var phone = Mixed(Runs.Path(4)).Taps(new What.SectionWet("1", 0)).Waits(2 * Minute).Taps(new What.SectionDry("1", 0)).Waits(20 * Minute);
        var salvage = Replanning.Replan(phone.Run, phone.RunNow).Salvage!;

        // The lap is lost either way; nothing is gained by leaving the rest.
        Assert.Equal(("1", "2"), (Assert.Single(salvage.Lines).Lap.A, salvage.Lines[0].Lap.B));
        Assert.Empty(salvage.Left);
        Assert.Equal(0.6, salvage.SeenM, 6);
        Assert.Contains(salvage.Mend, m => m(Core.Explain.Voice.Default).Contains("Run", StringComparison.Ordinal));
    }

    /// <summary>A slow hand on a path with a short open time loses every lap from here on; a corner two sections on is where to stop.</summary>
    [Fact]
    public void Where_every_lap_would_be_lost_it_stops_at_the_least_seen_line()
    {
        var plan = Runs.Path(5, openS: 3.5 * 60);
        plan.Laps = [.. plan.Laps.Select((l, i) => i == 2 ? l with { AtCorner = true } : l)];
        var phone = Mixed(plan).Taps(new What.SectionWet("1", 0)).Waits(2 * Minute).Taps(new What.SectionDry("1", 0));
        var salvage = Replanning.Replan(phone.Run, phone.RunNow).Salvage!;

        // 1–2 is lost on any way on, but for stopping here; every section more adds another line.
        Assert.Single(salvage.Lines);
        Assert.True(salvage.Lines[0].IsStop);
        Assert.Equal(4, salvage.Left.Count);
    }

    [Fact]
    public void Salvage_is_never_worse_than_going_on_or_stopping_at_once_and_lists_exactly_its_lines() =>
        Gen.Select(Gen.Int[2, 3], Gen.Int[2, 4], Gen.Int[1, 4], Gen.Int[4, 12], Gen.Int[0, 1000]).Sample((rows, columns, done, openMinutes, seed) =>
        {
            var plan = Grid(rows, columns, openMinutes * 60);
            var phone = Mixed(plan);
            var random = new Random(seed);
            foreach (var id in plan.Sections.Select(s => s.Id).OrderBy(_ => random.Next()).Take(done))
                phone.Taps(new What.SectionWet(id, 0)).Waits(2 * Minute).Taps(new What.SectionDry(id, 0)).Waits(random.Next(3) * Minute);
            var replan = Replanning.Replan(phone.Run, phone.RunNow);
            Assert.Equal(plan.Sections.Count - done, replan.Turns.Count);
            if (replan.Salvage is not { } salvage) return;

            var goingOn = Presenting.Present(phone.Run, phone.RunNow).Forecast.Lost.Sum(l => LineHarm.SeenM(l.Lap, plan));
            var begun = phone.Run.Sections.Keys.ToHashSet();
            var stoppingNow = plan.Laps.Where(l => begun.Contains(l.A) != begun.Contains(l.B)).Sum(l => LineHarm.SeenM(l, plan)) + JoinedLaps.Of(phone.Run).Where(l => l.IsLost).Sum(l => LineHarm.SeenM(l.Lap, plan));
            Assert.True(salvage.SeenM <= goingOn + 1e-9, $"{salvage.SeenM} > {goingOn} going on");
            Assert.True(salvage.SeenM <= stoppingNow + 1e-9, $"{salvage.SeenM} > {stoppingNow} stopping now");

            // Walked through as it says: what is lost is what was listed, and what is left is where it stops.
            phone.Taps(new What.StoppedBefore(salvage.Left)).Taps(new What.Replanned(salvage.Turns));
            foreach (var turn in salvage.Turns)
                phone.Taps(new What.SectionWet(turn.Section, 0)).Waits(2 * Minute).Taps(new What.SectionDry(turn.Section, 0));
            var late = JoinedLaps.Of(phone.Run).Where(l => l.IsLost).Select(l => l.Lap).ToHashSet();
            Assert.Equal(salvage.Lines.Where(l => !l.IsStop).Select(l => l.Lap).ToHashSet(), late);
            Assert.All(salvage.Lines.Where(l => l.IsStop), l => Assert.True(salvage.Left.Contains(l.Lap.A) != salvage.Left.Contains(l.Lap.B)));
            Assert.True(phone.Run.IsDone);
        }, iter: 60);

    /// <summary>Every order of what is ahead and every place to stop, on a clock of this test's own.</summary>
    [Fact]
    public void Salvage_finds_the_least_harm_that_any_order_and_any_stop_can_have()
    {
        var (asked, met) = (0, 0);
        for (var seed = 0; seed < 120; seed++)
        {
            var random = new Random(seed);
            var plan = Grid(2, 3, random.Next(4, 9) * 60);
            var phone = Mixed(plan);
            foreach (var id in plan.Sections.Select(s => s.Id).OrderBy(_ => random.Next()).Take(random.Next(1, 4)))
                phone.Taps(new What.SectionWet(id, 0)).Waits(2 * Minute).Taps(new What.SectionDry(id, 0)).Waits(random.Next(4) * Minute);
            if (Replanning.Replan(phone.Run, phone.RunNow).Salvage is not { } salvage) continue;
            asked++;
            var least = LeastHarm(phone.Run, phone.RunNow);
            Assert.True(salvage.SeenM >= least - 1e-9, $"seed {seed}: {salvage.SeenM} is less than is possible, {least}");
            if (salvage.SeenM <= least + 1e-9) met++;
        }

        Assert.True(asked > 30, $"only {asked} cases lost a lap");
        Assert.True(met >= asked * 0.9, $"the least harm was found {met} times of {asked}");
    }

    private static double LeastHarm(Run run, long now)
    {
        var begun = run.Sections.Values.ToDictionary(s => s.Section, s => (s.WetAtMs, s.DryAtMs!.Value));
        var ahead = run.Plan.Sections.Select(s => s.Id).Where(id => !begun.ContainsKey(id)).ToList();
        var least = double.MaxValue;
        Try(new Dictionary<string, (long, long)>(begun), ahead, now);
        return least;

        void Try(Dictionary<string, (long Wet, long Dry)> at, List<string> left, long clock)
        {
            least = Math.Min(least, run.Plan.Laps.Sum(l =>
                (at.ContainsKey(l.A), at.ContainsKey(l.B)) switch
                {
                    (true, true) => Math.Max(at[l.A].Dry, at[l.B].Dry) - Math.Min(at[l.A].Wet, at[l.B].Wet) > run.Plan.OpenTimeMs ? l.LengthM : 0,
                    (false, false) => 0,
                    _ => l.LengthM,
                }));
            foreach (var id in left.ToList())
            {
                at[id] = (clock, clock + (2 * Minute));
                Try(at, [.. left.Where(x => x != id)], clock + (2 * Minute));
                at.Remove(id);
            }
        }
    }

    /// <summary>Two-minute sections in rows and columns, in the order of columns, laps of 0.6 m.</summary>
    internal static IssuedPlan Grid(int rows, int columns, double openS = 600)
    {
        var sections = Enumerable.Range(0, rows * columns).Select(i => Plans.Section($"{i + 1}", 0, (2 + (2 * i)) * Minute, (4 + (2 * i)) * Minute, "A")).ToList();
        var laps = new List<Lap>();
        for (var c = 0; c < columns; c++)
        {
            for (var r = 0; r < rows; r++)
            {
                var at = (c * rows) + r;
                if (r + 1 < rows) laps.Add(new Lap($"{at + 1}", $"{at + 2}", LapKind.Flat, 0.6, [], 0));
                if (c + 1 < columns) laps.Add(new Lap($"{at + 1}", $"{at + rows + 1}", LapKind.Flat, 0.6, [], 0));
            }
        }

        return Runs.Issue(Plans.Of(openS, Origin.DataSheet, sections, laps, [new Batch("A", 0, 0, 2 * Minute, 3600_000, 300, 360, [.. sections.Select(s => s.Id)])]));
    }
}
