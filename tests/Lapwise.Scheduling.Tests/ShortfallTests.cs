using Lapwise.Core.Explain;
using Lapwise.Shared;

namespace Lapwise.Scheduling.Tests;

/// <summary>Jobs that do not fit into the days planned: told at once where it is proven, and how far off it is where it is not.</summary>
public sealed class ShortfallTests
{
    private static readonly Voice English = new(Language.English, UnitSystem.Us);
    private static readonly Voice Spanish = new(Language.Spanish, UnitSystem.Metric);
    // Ten days of eight and a half hours.
    private static readonly IReadOnlyList<Window> Hours = Shops.Hours(14);

    private static ScheduleProblem Shop(int jobs, long length, params IReadOnlyList<Crew> crews) => new(
        [.. Enumerable.Range(0, jobs).Select(i => new Visit($"{i}", $"job {i}", length) { NeedsCrew = true, Open = Hours })], [], [], [], crews, [], 14 * Shops.DayMin);

    private static Crew Crew(string name, params IReadOnlyList<string> skills) => new(name, skills, []);

    private static Reason Only(ScheduleProblem problem) =>
        Assert.Single(Assert.IsType<Answer.Impossible>(Scheduler.Solve(problem, Effort.Patient, stop: TestContext.Current.CancellationToken)).Reasons);

    [Fact]
    public void More_work_than_hours_says_by_how_much_and_what_would_cure_it()
    {
        var reason = Only(Shop(12, 480, Crew("north")));

        Assert.Equal("WorkBeyondHours", reason.Code);
        Assert.Equal("12 jobs come to 96 h of work; for it 1 crew has 85 h in the days planned, less what must dry after it: 11 h too much.", reason.Text(English));
        Assert.Equal("1 crew more, about 2 days more, or at least 2 jobs later.", reason.Remedy(English));
        Assert.Equal("12 trabajos suman 96 h de labor; para ella 1 equipo tiene 85 h en los días previstos, descontado lo que debe secar después: sobran 11 h.", reason.Text(Spanish));
        Assert.Equal("1 equipo más, unos 2 días más, o al menos 2 trabajos para más adelante.", reason.Remedy(Spanish));
    }

    [Fact]
    public void A_day_away_and_a_visit_that_stays_take_their_hours()
    {
        var ten = Shop(10, 480, Crew("north"));

        Assert.IsType<Answer.Found>(Scheduler.Solve(ten, Effort.AtOnce, stop: TestContext.Current.CancellationToken));
        Assert.Contains("76.5 h", Only(ten with { Crews = [new Crew("north", [], [new Window(0, Shops.DayMin)])] }).Text(English), StringComparison.Ordinal);
        Assert.Contains("76.5 h", Only(ten with { Visits = [.. ten.Visits, new Visit("stays", "stays", 540) { NeedsCrew = true, Locked = new Locked(8 * 60, 0) }] }).Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void Visits_that_leave_no_room_for_another_fill_their_days()
    {
        // Of five hours each: 55 hours of work in 85, but only one to a day.
        var reason = Only(Shop(11, 300, Crew("north")));

        Assert.Contains("93.5 h of work; for it 1 crew has 85 h", reason.Text(English), StringComparison.Ordinal);
        Assert.Contains("Visits are not split over two days", reason.Text(English), StringComparison.Ordinal);
        Assert.EndsWith("at least 1 job later.", reason.Remedy(English), StringComparison.Ordinal);
    }

    [Fact]
    public void What_only_some_crews_can_do_is_counted_for_those_by_name()
    {
        var problem = Shop(12, 480, Crew("north", "stone"), Crew("south"), Crew("east"));
        var reason = Only(problem with { Visits = [.. problem.Visits.Select(v => v with { Skill = "stone" })] });

        Assert.StartsWith("Not every crew can do it: only north.", reason.Text(English), StringComparison.Ordinal);
        Assert.Contains("11 h too much", reason.Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_at_gear_that_is_held_is_counted_in_jobs()
    {
        var problem = Shop(23, 300, [.. Enumerable.Range(0, 23).Select(c => Crew($"crew {c}"))]);
        var reason = Only(problem with { Gear = [new Gear("tent", 2)], Holds = [.. Enumerable.Range(0, 23).Select(i => new Hold(0, 1, i, i))] });

        Assert.Equal("LineBeyondDays", reason.Code);
        Assert.Contains("at most 10 fit into these days at each: 3 jobs too many", reason.Text(English), StringComparison.Ordinal);
        Assert.Equal("1 more of tent, or more days, or at least 3 jobs later.", reason.Remedy(English));
        Assert.Equal("1 más de tent, o más días, o al menos 3 trabajos para más adelante.", reason.Remedy(Spanish));
    }

    [Fact]
    public void A_job_that_outlasts_the_days_is_named()
    {
        var problem = Shop(2, 60, Crew("north"));

        Assert.Contains(": 1.", Only(problem with { Lags = [new Lag(0, 1, 20 * Shops.DayMin, "dry")] }).Text(English), StringComparison.Ordinal);
    }

    /// <summary>One crew, no waits: trying every order finds the best there is.</summary>
    [Fact]
    public void What_is_proven_agrees_with_every_order_of_a_few_visits()
    {
        var refuted = 0;
        for (var seed = 1; seed <= 300; seed++)
        {
            var random = new Random(seed);
            var problem = Shop(6, 0, Crew("north"));
            problem = problem with { Horizon = (2 + random.Next(3)) * Shops.DayMin, Visits = [.. problem.Visits.Select(v => v with { Length = 15 * random.Next(1, 28) })] };
            var best = Orders([.. problem.Visits.Select(v => v.Length)]).Min(o => EndOf(o, problem.Horizon));
            var answer = Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken);

            if (answer is Answer.Impossible) refuted++;
            if (answer is Answer.Impossible) Assert.Equal(long.MaxValue, best);
            else if (answer is Answer.Found(var found)) Assert.InRange(best, found.Bound, found.LastEnd);
        }

        Assert.InRange(refuted, 20, 280);
    }

    /// <summary>Jobs of two visits with a wait that may be too short or too long, one crew, hours of four a day: every place of every visit is tried.</summary>
    [Fact]
    public void Nothing_ends_before_the_bound_whatever_the_waits()
    {
        var (tight, beyondEachAlone) = (0, 0);
        for (var seed = 1; seed <= 200; seed++)
        {
            var random = new Random(seed);
            IReadOnlyList<Window> hours = [.. Enumerable.Range(0, 21).Where(d => d % 7 < 5).Select(d => new Window((d * Shops.DayMin) + (8 * 60), (d * Shops.DayMin) + (12 * 60)))];
            var visits = Enumerable.Range(0, 6).Select(i => new Visit($"{i}", $"job {i / 2}", 60 * random.Next(1, 5)) { NeedsCrew = true, Open = hours }).ToList();
            var lags = Enumerable.Range(0, 3).SelectMany(j => (Lag[])
            [
                new Lag(2 * j, (2 * j) + 1, visits[2 * j].Length + (60 * random.Next(4, 40)), "least"),
                new Lag((2 * j) + 1, 2 * j, -(visits[2 * j].Length + (60 * random.Next(40, 70))), "most"),
            ]).ToList();
            var problem = new ScheduleProblem(visits, lags, [], [], [Crew("north")], [], 21 * Shops.DayMin);
            if (Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken) is not Answer.Found(var found)) continue;

            Assert.False(Fits(problem, hours, found.Bound - 60), $"seed {seed}: something ends before {found.Bound}");
            if (Fits(problem, hours, found.Bound)) tight++;
            if (found.Bound > Enumerable.Range(0, 3).Max(j => Alone(problem, hours, j))) beyondEachAlone++;
        }

        Assert.InRange(tight, 40, 200);
        Assert.InRange(beyondEachAlone, 40, 200);
    }

    [Fact]
    public void A_wait_that_falls_between_working_days_is_named()
    {
        // Only Mondays, and the second visit no later than three days after the first.
        IReadOnlyList<Window> mondays = [.. Enumerable.Range(0, 6).Select(w => new Window((w * 7 * Shops.DayMin) + (8 * 60), (w * 7 * Shops.DayMin) + (16 * 60)))];
        var problem = Shop(2, 300, Crew("north")) with { Horizon = 42 * Shops.DayMin, Lags = [new Lag(0, 1, 20 * 60, "earliest recoat"), new Lag(1, 0, -3 * Shops.DayMin, "latest recoat")] };
        var reason = Only(problem with { Visits = [.. problem.Visits.Select(v => v with { Open = mondays })] });

        Assert.Equal("WaitsMissHours", reason.Code);
        Assert.StartsWith("Between the shortest and the longest wait there are no working hours for:", reason.Text(English), StringComparison.Ordinal);
        Assert.StartsWith("Entre la espera más corta y la más larga", reason.Text(Spanish), StringComparison.Ordinal);
    }

    private static long Alone(ScheduleProblem problem, IReadOnlyList<Window> hours, int job) =>
        Enumerable.Range(0, 21 * 24).Select(h => 60L * h).First(end => Fits(problem, hours, end, 2 * job, (2 * job) + 2));

    /// <summary>Whether visits can be placed on full hours so that none ends later; all lengths, hours and waits are full hours.</summary>
    private static bool Fits(ScheduleProblem problem, IReadOnlyList<Window> hours, long end, int from = 0, int? to = null)
    {
        var starts = new long[problem.Visits.Count];
        return Rest(from);

        bool Rest(int i) => i == (to ?? starts.Length) || hours.Any(h => Enumerable.Range(0, 24).Select(k => h.From + (60 * k)).TakeWhile(s => s + problem.Visits[i].Length <= Math.Min(h.To, end)).Any(s =>
        {
            starts[i] = s;
            return Enumerable.Range(from, i - from).All(j => s + problem.Visits[i].Length <= starts[j] || starts[j] + problem.Visits[j].Length <= s)
                && problem.Lags.Where(l => l.From >= from && l.From <= i && l.To >= from && l.To <= i).All(l => starts[l.To] >= starts[l.From] + l.Least) && Rest(i + 1);
        }));
    }

    [Fact]
    public void What_does_not_fit_at_once_is_brought_in_and_how_far_off_it_is_is_told_meanwhile()
    {
        // The first answer ends on day 49.
        var problem = Shops.Make(2, 30, 3, 100, tents: 3) with { Horizon = 45 * Shops.DayMin };
        List<Reason> told = [];
        var found = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(4), told: told.Add, stop: TestContext.Current.CancellationToken)).Schedule;

        Assert.Empty(Checking.Broken(problem, found.Visits));
        Assert.Contains("ends 4 d 11 h after the days planned", told[0].Text(English), StringComparison.Ordinal);
        Assert.StartsWith("Plan 5 days more, add a crew", told[0].Remedy(English), StringComparison.Ordinal);
    }

    [Fact]
    public void What_neither_fits_nor_is_refuted_ends_after_counted_work_and_says_how_far_off_it_is()
    {
        var problem = Shops.Make(2, 30, 3, 100, tents: 3) with { Horizon = 36 * Shops.DayMin };
        Reason Left() => Assert.Single(Assert.IsType<Answer.Undecided>(Scheduler.Solve(problem, new Effort(0.5), stop: TestContext.Current.CancellationToken)).Reasons);
        var reason = Left();

        Assert.Equal("NoDaysFound", reason.Code);
        Assert.Contains("not ruled out", reason.Text(English), StringComparison.Ordinal);
        Assert.Contains("No se descarta", reason.Text(Spanish), StringComparison.Ordinal);
        Assert.Equal(reason.Text(English), Left().Text(English));
    }

    private static IEnumerable<IReadOnlyList<long>> Orders(IReadOnlyList<long> of) => of.Count == 0
        ? [[]]
        : Enumerable.Range(0, of.Count).SelectMany(i => Orders([.. of.Take(i), .. of.Skip(i + 1)]).Select(rest => (IReadOnlyList<long>)[of[i], .. rest]));

    /// <summary>Each as early as it can be after the one before.</summary>
    private static long EndOf(IReadOnlyList<long> lengths, long horizon)
    {
        var at = 0L;
        foreach (var length in lengths)
        {
            var next = Hours.Select(h => (long?)Math.Max(h.From, at) + length).Where((end, i) => end <= Hours[i].To).FirstOrDefault();
            if (next is not { } end || end > horizon) return long.MaxValue;
            at = end;
        }

        return at;
    }
}
