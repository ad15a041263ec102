using Lapwise.Core.Explain;
using Lapwise.Shared;

namespace Lapwise.Scheduling.Tests;

public sealed class SchedulerTests
{
    private static readonly Voice English = new(Language.English, UnitSystem.Metric);
    private static readonly IReadOnlyList<Window> Week = Shops.Hours(14);

    private static Visit Crewed(string id, string job, long length) => new(id, job, length) { NeedsCrew = true, Open = Week };

    private static ScheduleProblem Shop(IReadOnlyList<Visit> visits, params IReadOnlyList<Lag> lags) => new(visits, lags, [], [], [new Crew("north", [], [])], [], 14 * Shops.DayMin);

    private static Schedule Found(ScheduleProblem problem, double effort = 0.5)
    {
        var schedule = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(effort))).Schedule;
        Assert.Empty(Checking.Broken(problem, schedule.Visits));
        return schedule;
    }

    // Optima as published: PSPLIB j301_2 47; ProGen/max sm_j10 psp1 26 (see Published/SOURCE.md).
    [Theory]
    [InlineData("j301_2.sm", 47)]
    [InlineData("psp1.sch", 26)]
    public void A_published_instance_is_proven_at_its_listed_optimum(string file, long optimum)
    {
        var schedule = Found(PublishedSchedules.Read(Path.Combine(AppContext.BaseDirectory, "Published", file)), 30);

        Assert.True(schedule.IsProven);
        Assert.Equal(optimum, schedule.LastEnd);
    }

    [Fact]
    public void A_published_instance_without_a_schedule_is_refuted() =>
        Assert.IsType<Answer.Impossible>(Scheduler.Solve(PublishedSchedules.Read(Path.Combine(AppContext.BaseDirectory, "Published", "psp2.sch")), new Effort(30), stop: TestContext.Current.CancellationToken));

    [Fact]
    public void Thirty_jobs_get_an_answer_at_once_that_keeps_everything_and_says_its_gap()
    {
        var problem = Shops.Make(1, 30, 3, 60, tents: 3);
        var schedule = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Schedule;

        Assert.Empty(Checking.Broken(problem, schedule.Visits));
        Assert.InRange(schedule.Gap, 0, 0.5);
    }

    [Fact]
    public void The_same_shop_gets_the_same_schedule()
    {
        var problem = Shops.Make(2, 6, 2, 30, tents: 1);

        Assert.Equal(Found(problem).Visits, Found(problem).Visits);
    }

    [Fact]
    public void Searching_never_ends_later_than_the_first_answer()
    {
        var problem = Shops.Make(3, 6, 2, 30, tents: 1);
        var first = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Schedule;
        var searched = Found(problem);

        Assert.True(searched.LastEnd <= first.LastEnd);
        Assert.True(searched.Bound >= first.Bound);
        Assert.True(searched.Bound <= searched.LastEnd);
    }

    [Fact]
    public void Windows_that_contradict_are_named_before_anything_is_searched()
    {
        var problem = Shop([Crewed("coat 1", "a", 60), Crewed("coat 2", "a", 60)], new Lag(0, 1, 660, "earliest recoat"), new Lag(1, 0, -600, "latest recoat"));

        var reason = Assert.Single(Assert.IsType<Answer.Impossible>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Reasons);
        Assert.Equal("WindowsContradict", reason.Code);
        Assert.Contains("earliest recoat", reason.Text(English), StringComparison.Ordinal);
        Assert.Contains("latest recoat", reason.Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_locked_visit_stays_and_others_make_way()
    {
        var at = (Shops.DayMin * 1) + (8 * 60);
        var schedule = Found(Shop([Crewed("a", "a", 480), Crewed("b", "b", 480) with { Locked = new Locked(at, 0) }]));

        Assert.Equal(at, schedule.Visits[1].Start);
    }

    [Fact]
    public void A_deadline_that_cannot_be_met_says_by_how_much_and_why()
    {
        var problem = Shop([Crewed("coat", "a", 60), Crewed("sink back", "a", 60) with { DueBy = Shops.DayMin }], new Lag(0, 1, 60 + (48 * 60), "light use"));
        var reason = Assert.Single(Found(problem).Reasons);

        Assert.Equal("DeadlineMissed", reason.Code);
        Assert.Contains("light use", reason.Text(English), StringComparison.Ordinal);
        // Monday 8:00, an hour and two days: Wednesday 9:00 to 10:00, 34 h after Monday's end.
        Assert.Contains("34 h", reason.Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_deadline_missed_for_want_of_crews_says_so()
    {
        var problem = Shop([Crewed("a", "a", 480) with { DueBy = Shops.DayMin }, Crewed("b", "b", 480) with { DueBy = Shops.DayMin }]);

        Assert.Contains("other jobs hold the crews", Assert.Single(Found(problem).Reasons).Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_calendar_without_hours_is_refused_by_the_visit_that_finds_none()
    {
        var problem = Shop([Crewed("a", "a", 60) with { Open = [new Window(0, 30)] }]);

        Assert.Equal("NoHoursFor", Assert.Single(Assert.IsType<Answer.Impossible>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Reasons).Code);
    }

    [Fact]
    public void A_skill_that_nobody_has_is_refused() =>
        Assert.Equal("NobodyCan", Assert.Single(Assert.IsType<Answer.Refused>(Scheduler.Solve(Shop([Crewed("a", "a", 60) with { Skill = "stone" }]), Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Reasons).Code);

    [Fact]
    public void Ten_thousand_jobs_are_refused_and_say_how_many_are_planned()
    {
        var problem = new ScheduleProblem([.. Enumerable.Range(0, 20_000).Select(i => Crewed($"{i}", $"{i / 2}", 60))], [], [], [], [new Crew("north", [], [])], [], 14 * Shops.DayMin);

        Assert.Equal("TooManyVisits", Assert.Single(Assert.IsType<Answer.Refused>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Reasons).Code);
    }

    [Fact]
    public void Two_sites_of_one_crew_have_the_way_between_them()
    {
        var problem = Shop([Crewed("a", "a", 120) with { Site = 0 }, Crewed("b", "b", 120) with { Site = 1 }]) with { Travel = [[0, 45], [45, 0]] };
        var schedule = Found(problem);

        Assert.Equal(165, Math.Abs(schedule.Visits[0].Start - schedule.Visits[1].Start));
    }

    [Fact]
    public void A_tent_stays_on_site_while_the_film_dries_with_nobody_there()
    {
        Visit[] visits = [Crewed("coat a", "a", 60), Crewed("down a", "a", 60), Crewed("coat b", "b", 60), Crewed("down b", "b", 60)];
        var problem = Shop(visits, new Lag(0, 1, 60 + (20 * 60), "dry"), new Lag(2, 3, 60 + (20 * 60), "dry")) with { Gear = [new Gear("tent", 1)], Holds = [new Hold(0, 1, 0, 1), new Hold(0, 1, 2, 3)] };
        var schedule = Found(problem);

        Assert.True(schedule.Visits[2].Start >= schedule.Visits[1].Start + 60 || schedule.Visits[0].Start >= schedule.Visits[3].Start + 60);
    }

    [Fact]
    public void A_day_lost_moves_what_stood_there_and_says_why_and_the_rest_stays()
    {
        var problem = Shop([Crewed("a", "a", 480), Crewed("b", "b", 480), Crewed("c", "c", 480)]);
        var before = Found(problem);
        var known = problem.Visits.Select((v, i) => (v.Id, before.Visits[i])).ToDictionary(p => p.Id, p => p.Item2, StringComparer.Ordinal);
        var second = Enumerable.Range(0, 3).Single(i => before.Visits[i].Start / Shops.DayMin == 1);
        var lost = problem with { Before = known, Visits = [.. problem.Visits.Select((v, i) => i == second ? v with { Open = [.. Week.Where(w => w.From / Shops.DayMin != 1)] } : v)] };
        var after = Found(lost);
        var moves = Moves.Since(lost, after.Visits);

        var moved = Assert.Single(moves, m => m.Visit == second);
        Assert.Equal("the hours worked have changed", moved.Why(English));
        Assert.True(moves.Count <= 2);
    }

    private static long At(int day, int minute = 0) => (day * Shops.DayMin) + (8 * 60) + minute;

    private static Dictionary<string, PlacedVisit> Stood(params IReadOnlyList<(string Id, long Start)> visits) => visits.ToDictionary(v => v.Id, v => new PlacedVisit(v.Start, 0), StringComparer.Ordinal);

    [Fact]
    public void Settled_visits_stay_and_an_earlier_end_that_moves_them_is_told_with_how_many()
    {
        // Tuesday and Thursday are settled; the new job takes Monday, and only by moving the last could all be done by Wednesday.
        var problem = Shop([Crewed("a", "a", 480), Crewed("b", "b", 480), Crewed("new", "new", 480)]) with { Before = Stood(("a", At(1)), ("b", At(3))) };
        var calm = Found(problem);
        var soon = Found(problem with { EndsFirst = true });

        Assert.Equal((At(3, 480), 0), (calm.LastEnd, problem.Moved(calm.Visits)));
        Assert.Equal((At(2, 480), true), (soon.LastEnd, soon.IsProven));
        Assert.Equal(new Sooner(soon.LastEnd, problem.Moved(soon.Visits)), calm.Sooner);
        Assert.Equal(1, calm.Sooner!.Moved);
        Assert.Null(soon.Sooner);
    }

    [Fact]
    public void A_job_that_must_move_does_not_lie_opened_meanwhile()
    {
        // Its second visit finds no place before the second Monday at eight: the first goes to the end of the Friday before.
        var problem = Shop([Crewed("out", "a", 60), Crewed("coat", "a", 60) with { NotBefore = 7 * Shops.DayMin }], new Lag(0, 1, 60, "order")) with { Before = Stood(("out", At(0)), ("coat", At(1))), Stretches = [new Stretch(0, 1)] };

        Assert.Equal(new PlacedVisit(At(4, 450), 0), Found(problem).Visits[0]);
    }

    [Fact]
    public void Of_equally_early_ends_a_household_is_opened_for_the_shortest()
    {
        var problem = Shop([Crewed("out", "a", 60), Crewed("back", "a", 60) with { NotBefore = 4 * Shops.DayMin }], new Lag(0, 1, 60, "order")) with { Stretches = [new Stretch(0, 1)] };
        var schedule = Found(problem);

        Assert.True(schedule.IsProven);
        // The last hour of the day before: on the same day all would end an hour later.
        Assert.Equal((At(3, 450), At(4)), (schedule.Visits[0].Start, schedule.Visits[1].Start));
    }

    [Fact]
    public void What_moved_has_one_cause_for_each_job_that_leads_back_to_what_began_it()
    {
        Visit[] visits = [Crewed("a1", "a", 240) with { Open = [.. Week.Skip(1)] }, Crewed("a2", "a", 240), Crewed("b1", "b", 480), Crewed("b2", "b", 60), Crewed("new", "new", 480), Crewed("c", "c", 480)];
        var problem = Shop(visits, new Lag(0, 1, 240, "order"), new Lag(2, 3, 480, "order"))
            with { Before = Stood(("a1", At(0)), ("a2", At(0, 240)), ("b1", At(1)), ("b2", At(2)), ("c", At(3))) };
        PlacedVisit[] now = [new(At(1), 0), new(At(1, 240), 0), new(At(2), 0), new(At(4), 0), new(At(3), 0), new(At(7), 0)];
        Assert.Empty(Checking.Broken(problem, now));
        var why = Moves.Since(problem, now).ToDictionary(m => problem.Visits[m.Visit].Id, m => m.Why(English), StringComparer.Ordinal);

        Assert.Equal(why["a1"], why["a2"]);
        Assert.Equal("the hours worked have changed", why["a1"]);
        Assert.Equal("a has its crew then, and moved because the hours worked have changed", why["b1"]);
        Assert.Equal(why["b1"], why["b2"]);
        Assert.Equal("the new job new has its crew then", why["c"]);
    }

    [Fact]
    public void Two_that_changed_places_are_not_each_the_cause_of_the_other()
    {
        var problem = Shop([Crewed("a", "a", 480), Crewed("b", "b", 480)]) with { Before = Stood(("a", At(0)), ("b", At(1))) };
        var moves = Moves.Since(problem, [new(At(1), 0), new(At(0), 0)]);

        Assert.Equal(2, moves.Count);
        Assert.All(moves, m => Assert.DoesNotContain("moved because", m.Why(English), StringComparison.Ordinal));
    }

    [Fact]
    public void A_visit_kept_while_its_crew_is_away_is_refused_by_its_name()
    {
        var problem = Shop([Crewed("coat", "a", 60) with { Locked = new Locked(At(1), 0) }]) with { Crews = [new Crew("north", [], [new Window(Shops.DayMin, 2 * Shops.DayMin)])] };
        var reason = Assert.Single(Assert.IsType<Answer.Refused>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Reasons);

        Assert.Equal("KeptWhileAway", reason.Code);
        Assert.Contains("coat", reason.Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_schedule_is_caught()
    {
        var problem = Shop([Crewed("a", "a", 60), Crewed("b", "b", 60)], new Lag(0, 1, 60, "order"));

        Assert.NotEmpty(Checking.Broken(problem, [new PlacedVisit(480, 0), new PlacedVisit(500, 0)]));
        Assert.NotEmpty(Checking.Broken(problem, [new PlacedVisit(0, 0), new PlacedVisit(540, 0)]));
        Assert.NotEmpty(Checking.Broken(problem, [new PlacedVisit(480, null), new PlacedVisit(540, 0)]));
        Assert.Empty(Checking.Broken(problem, [new PlacedVisit(480, 0), new PlacedVisit(540, 0)]));
    }

    [Fact]
    public void Gear_that_is_held_bounds_the_end_where_crews_do_not()
    {
        // Four jobs of a day each that hold the one tent, for as many crews as jobs: nobody waits for a crew.
        var visits = Enumerable.Range(0, 4).Select(i => Crewed($"job {i}", $"job {i}", 300)).ToList();
        var problem = Shop(visits) with { Crews = [.. Enumerable.Range(0, 4).Select(c => new Crew($"crew {c}", [], []))], Gear = [new Gear("tent", 1)], Holds = [.. Enumerable.Range(0, 4).Select(i => new Hold(0, 1, i, i))] };
        var schedule = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Schedule;

        // One a day: 8:00 to 13:00 on the fourth, and no search was needed to know it.
        Assert.Equal((3 * Shops.DayMin) + (13 * 60), schedule.LastEnd);
        Assert.True(schedule.IsProven);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void The_bound_of_a_busy_shop_is_no_later_than_what_is_found_and_the_same_tries_find_the_same(int seed)
    {
        var problem = Shops.Make(seed, 12, 2, 60, tents: 2);
        var at = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Schedule;
        var one = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(0.5), stop: TestContext.Current.CancellationToken)).Schedule;
        var other = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(0.5), stop: TestContext.Current.CancellationToken)).Schedule;

        Assert.Empty(Checking.Broken(problem, one.Visits));
        Assert.True(one.Bound <= one.LastEnd && one.LastEnd <= at.LastEnd);
        Assert.Equal(one.Visits, other.Visits);
    }

    [Fact]
    public void Many_jobs_are_bettered_a_few_at_a_time_and_the_same_again()
    {
        var problem = Shops.Make(1, 30, 3, 60, tents: 3);
        var at = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Schedule;
        var one = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(2), stop: TestContext.Current.CancellationToken)).Schedule;
        var other = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(2), stop: TestContext.Current.CancellationToken)).Schedule;

        Assert.Empty(Checking.Broken(problem, one.Visits));
        // A week earlier: the first answer ends on day 50.
        Assert.True(one.LastEnd <= at.LastEnd - (7 * Shops.DayMin), $"{at.LastEnd / Shops.DayMin}, {one.LastEnd / Shops.DayMin}");
        Assert.Equal(one.Visits, other.Visits);
    }

    /// <summary>Three crews, with a tent each or without: what the whole, or a few jobs at a time, leave at a tenth is all but closed.</summary>
    [Theory]
    [InlineData(2, 3)]
    [InlineData(3, 0)]
    public void Crews_with_a_schedule_of_their_own_come_close_to_the_bound_of_the_whole(int seed, int tents)
    {
        var problem = Shops.Make(seed, 30, 3, 60, tents);
        var found = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(8), stop: TestContext.Current.CancellationToken)).Schedule;

        Assert.Empty(Checking.Broken(problem, found.Visits));
        Assert.InRange(found.Gap, 0, 0.05);
    }

    /// <summary>A skill that only one crew has, a visit that stays with a crew, and jobs bound to each other are dealt out whole.</summary>
    [Fact]
    public void Dealt_out_among_crews_skills_settled_crews_and_bound_jobs_are_kept()
    {
        var problem = Shops.Make(4, 16, 2, 60, tents: 2);
        problem = problem with
        {
            Crews = [problem.Crews[0] with { Skills = ["spray"] }, problem.Crews[1]],
            Visits = [.. problem.Visits.Select((v, i) => i == 7 ? v with { Skill = "spray" } : i == 12 ? v with { Locked = new Locked((7 * Shops.DayMin) + (8 * 60), 1) } : v)],
            Lags = [.. problem.Lags, new Lag(30, 36, Shops.DayMin, "one house after the other")],
        };
        var found = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(5), stop: TestContext.Current.CancellationToken)).Schedule;

        Assert.Empty(Checking.Broken(problem, found.Visits));
        Assert.Equal(0, found.Visits[7].Crew);
        Assert.Equal(new PlacedVisit((7 * Shops.DayMin) + (8 * 60), 1), found.Visits[12]);
    }

    [Fact]
    public void A_visit_that_stays_outside_the_hours_by_whatever_crew_is_no_contradiction()
    {
        // Promised for five in the morning, by whoever is free.
        var problem = Shops.Make(2, 6, 2, 30, tents: 1);
        var early = problem with { Visits = [problem.Visits[0] with { Locked = new Locked(5 * 60, null) }, .. problem.Visits.Skip(1)] };
        var found = Assert.IsType<Answer.Found>(Scheduler.Solve(early, new Effort(2), stop: TestContext.Current.CancellationToken)).Schedule;

        Assert.Equal(5 * 60, found.Visits[0].Start);
        Assert.Empty(Checking.Broken(early, found.Visits));
    }

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    public void Beside_visits_that_are_settled_the_others_find_the_places_they_had(int seed)
    {
        var problem = Shops.Make(seed, 6, 2, 30);
        var whole = Found(problem);
        Assert.True(whole.IsProven);
        // Every other job is settled where the proven schedule has it; the ways between sites are the same either way.
        var half = problem with { Visits = [.. problem.Visits.Select((v, i) => i / 6 % 2 == 0 ? v with { Locked = new Locked(whole.Visits[i].Start, whole.Visits[i].Crew) } : v)] };
        var again = Found(half);

        Assert.Empty(Checking.Broken(half, again.Visits));
        Assert.Equal((whole.LastEnd, true), (again.LastEnd, again.IsProven));
    }
}
