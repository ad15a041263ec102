using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;
using Lapwise.Shared;

namespace Lapwise.Scheduling.Tests;

public sealed class ShopDaysTests
{
    private static readonly IReadOnlyList<ShopJob> Jobs = [new("kitchen", Samples.Whole("l-kitchen")), new("vanity", Samples.Whole("vanity")), new("bar", Samples.Whole("bar-top"))];

    private static readonly DateOnly Monday = new(2026, 12, 7);

    private static Shop Shop(int crews = 2, int? tents = null, params IReadOnlyList<LostDayDocument> lost) => Asked(new DaysDocument
    {
        DaysAhead = 60, Crews = Crews(crews), Lost = lost,
        Gear = tents is { } count ? [new ShopGearDocument { Name = "tent", Count = count, Use = GearUse.Tented }] : null,
    });

    private static IReadOnlyList<ShopCrewDocument> Crews(int count) => [.. Enumerable.Range(1, count).Select(c => new ShopCrewDocument { Name = $"crew {c}" })];

    private static Shop Asked(DaysDocument document)
    {
        var read = DaysReading.Read(document, Voice.Default);
        Assert.Empty(read.Faults);
        return Scheduling.Shop.From(read.Asks!, Monday);
    }

    private static int PlaceOf(ScheduleProblem problem, string visit) => problem.Visits.ToList().FindIndex(v => v.Id == visit);

    private static (ScheduleProblem Problem, Schedule Schedule) Placed(Shop shop)
    {
        var problem = ShopDays.Problem(Jobs, shop);
        var schedule = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Schedule;
        Assert.Empty(Checking.Broken(problem, schedule.Visits));
        return (problem, schedule);
    }

    [Fact]
    public void Every_job_keeps_its_visits_and_one_crew()
    {
        var (problem, schedule) = Placed(Shop());

        Assert.Equal(Jobs.Sum(j => SiteVisits.Of(j.Whole.Timeline).Count), problem.Visits.Count);
        foreach (var job in Jobs)
            Assert.Single(problem.Visits.Select((v, i) => (v, schedule.Visits[i].Crew)).Where(p => p.v.Job == job.Id && p.v.NeedsCrew).Select(p => p.Crew).Distinct());
    }

    [Fact]
    public void Waits_of_the_film_are_kept_with_nobody_there()
    {
        var (problem, schedule) = Placed(Shop(crews: 1));
        var timeline = Jobs[0].Whole.Timeline;
        var visits = SiteVisits.Of(timeline);
        DateTime At(int step) => visits.Single(v => v.Steps.Contains(step)) is var v
            ? ShopDays.At(Shop(), schedule.Visits[problem.Visits.ToList().FindIndex(x => x.Id == $"kitchen/{v.Number}")].Start) + (timeline.Steps[step].Start - v.From)
            : default;
        var window = timeline.Waits.Single(w => w.Latest is not null && timeline.Steps[w.Before].Kind == SiteStep.Coat);
        var end = At(window.After) + timeline.Steps[window.After].Worked;

        Assert.InRange(At(window.Before) - end, window.AtAnyHour.Value.Needed, window.AtAnyHour.Value.Allowed!.Value);
    }

    [Fact]
    public void No_coat_goes_on_on_a_day_lost_to_humidity()
    {
        var lost = new LostDayDocument { Date = "2026-12-08" };
        var (problem, schedule) = Placed(Shop(2, null, lost));

        foreach (var job in Jobs)
        {
            foreach (var visit in SiteVisits.Of(job.Whole.Timeline).Where(v => v.Steps.Any(s => job.Whole.Timeline.Steps[s].Kind == SiteStep.Coat)))
            {
                var place = problem.Visits.ToList().FindIndex(v => v.Id == $"{job.Id}/{visit.Number}");
                Assert.NotEqual(new DateOnly(2026, 12, 8), DateOnly.FromDateTime(ShopDays.At(Shop(), schedule.Visits[place].Start)));
            }
        }
    }

    [Fact]
    public void With_one_tent_the_jobs_stand_in_line()
    {
        var (_, few) = Placed(Shop(crews: 3, tents: 1));
        var (_, many) = Placed(Shop(crews: 3));

        Assert.True(few.LastEnd > many.LastEnd);
    }

    [Fact]
    public void A_job_that_asks_for_a_skill_goes_to_the_crew_that_has_it()
    {
        var (problem, schedule) = Placed(Asked(new DaysDocument
        {
            Crews = [new ShopCrewDocument { Name = "north" }, new ShopCrewDocument { Name = "south", Skills = ["Pour"] }],
            Jobs = [new JobDaysDocument { Job = "bar", Skill = "pour" }],
        }));

        Assert.All(problem.Visits.Select((v, i) => (v, schedule.Visits[i].Crew)).Where(p => p.v.Job == "bar" && p.v.NeedsCrew), p => Assert.Equal(1, p.Crew));
    }

    [Fact]
    public void A_skill_that_no_crew_has_is_a_fault_at_its_field()
    {
        var fault = Assert.Single(DaysReading.Read(new DaysDocument { Jobs = [new JobDaysDocument { Job = "bar", Skill = "pour" }] }, Voice.Default).Faults);

        Assert.Equal(("jobs[0].skill", "NobodyCan"), (fault.Path, fault.Code));
    }

    [Fact]
    public void A_visit_that_stays_is_where_it_was_and_nothing_new_comes_before_today()
    {
        var (problem, schedule) = Placed(Asked(new DaysDocument
        {
            First = "2026-12-09", Crews = Crews(2),
            Stays = [new StayDocument { Visit = "kitchen/1", From = "2026-12-07T08:00", Crew = "crew 2" }],
        }));
        var stays = PlaceOf(problem, "kitchen/1");

        Assert.Equal(new PlacedVisit(8 * 60, 1), schedule.Visits[stays]);
        Assert.All(schedule.Visits.Where((_, i) => i != stays), v => Assert.True(v.Start >= 2 * ShopDays.DayMin));
    }

    [Fact]
    public void A_day_the_last_visit_must_end_by_that_cannot_be_met_is_told_with_how_much_and_the_window_to_blame()
    {
        var problem = ShopDays.Problem(Jobs, Asked(new DaysDocument { Jobs = [new JobDaysDocument { Job = "kitchen", EndBy = "2026-12-08" }] }));
        var late = Assert.Single(Assert.IsType<Answer.Found>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Schedule.Reasons);

        Assert.Equal("DeadlineMissed", late.Code);
        Assert.Contains("Even alone it would be", late.Text(Voice.Default), StringComparison.Ordinal);
        Assert.Contains("film hardens", late.Text(Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void Gear_of_which_there_is_none_is_refused_by_its_name()
    {
        var problem = ShopDays.Problem(Jobs, Shop(crews: 2, tents: 0));
        var refused = Assert.IsType<Answer.Refused>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken));

        Assert.Contains("tent", Assert.Single(refused.Reasons).Text(Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void A_way_of_its_own_lies_between_two_jobs_of_one_crew()
    {
        var problem = ShopDays.Problem(Jobs, Asked(new DaysDocument { BetweenSites = "10 min", Ways = [new WayDocument { From = "bar", To = "kitchen", Time = "2 h" }] }));

        Assert.Equal((120, 120, 10), (problem.Travel[0][2], problem.Travel[2][0], problem.Travel[0][1]));
    }

    [Fact]
    public void A_job_that_is_added_moves_nothing_that_was_settled_where_it_need_not()
    {
        var shop = Shop(crews: 1, tents: 1);
        IReadOnlyList<ShopJob> two = [.. Jobs.Take(2)];
        var settled = ShopDays.Written(two, shop, Assert.IsType<Answer.Found>(Scheduler.Solve(ShopDays.Problem(two, shop), Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Schedule);

        var problem = ShopDays.Problem(Jobs, shop, settled);
        var schedule = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(1), stop: TestContext.Current.CancellationToken)).Schedule;

        Assert.Empty(Checking.Broken(problem, schedule.Visits));
        Assert.Empty(Moves.Since(problem, schedule.Visits));
        Assert.Equal(settled.Count, problem.Before.Count);
    }

    [Fact]
    public void A_day_lost_moves_only_the_job_it_falls_on_and_what_that_pushes()
    {
        IReadOnlyList<ShopJob> apart = [.. Jobs.Take(2)];
        var settled = ShopDays.Written(apart, Shop(), Assert.IsType<Answer.Found>(Scheduler.Solve(ShopDays.Problem(apart, Shop()), Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Schedule);
        var coat = settled.First(v => v.IsCoat && v.Job == "kitchen");

        var shop = Shop(2, null, new LostDayDocument { Date = coat.From[..10], Job = "kitchen" });
        var problem = ShopDays.Problem(apart, shop, settled);
        var moves = Moves.Since(problem, Assert.IsType<Answer.Found>(Scheduler.Solve(problem, new Effort(1), stop: TestContext.Current.CancellationToken)).Schedule.Visits);

        Assert.Contains(moves, m => problem.Visits[m.Visit].Id == coat.Id);
        Assert.All(moves, m => Assert.Equal("kitchen", problem.Visits[m.Visit].Job));
        // One cause, in the reader's language whatever the job's own is.
        Assert.Single(moves.Select(m => m.Why(Spanish)).Distinct());
    }

    private static readonly Voice Spanish = new(Language.Spanish, UnitSystem.Metric);

    [Fact]
    public void What_moved_names_the_day_lost_and_its_visit_in_the_readers_language()
    {
        var shop = Shop(2, null, new LostDayDocument { Date = "2026-12-09" });
        var problem = ShopDays.Problem(Jobs, shop);
        var coat = ShopDays.Visits(Jobs).First(x => x.Visit.Steps.Any(s => x.Job.Whole.Timeline.Steps[s].Kind == SiteStep.Coat)).Place;

        Assert.Contains("mié 9 dic es un día perdido", ShopDays.Shut(Jobs, shop, coat, (2 * ShopDays.DayMin) + (8 * 60))!(Spanish), StringComparison.Ordinal);
        Assert.Contains("nobody works there on Sun Dec 13", ShopDays.Shut(Jobs, shop, coat, (6 * ShopDays.DayMin) + (8 * 60))!(Voice.Default), StringComparison.Ordinal);
        Assert.Null(ShopDays.Shut(Jobs, shop, coat, ShopDays.DayMin + (8 * 60)));
        Assert.EndsWith(": coat 1", problem.Visits[coat].Name(Voice.Default), StringComparison.Ordinal);
        var vanity = Jobs[1].Whole.Timeline.Steps[SiteVisits.Of(Jobs[1].Whole.Timeline)[1].Steps[0]].Name;
        Assert.EndsWith(vanity(Voice.Default), problem.Visits[PlaceOf(problem, "vanity/2")].Name(Voice.Default), StringComparison.Ordinal);
        Assert.EndsWith(vanity(Spanish), problem.Visits[PlaceOf(problem, "vanity/2")].Name(Spanish), StringComparison.Ordinal);
    }

    [Fact]
    public void A_coat_kept_on_a_day_lost_is_told_as_at_ones_own_word()
    {
        var (free, found) = Placed(Shop());
        // The whole kitchen is kept, so that nothing else stands against the coat on that day.
        var kitchen = ShopDays.Visits(Jobs).Where(x => x.Job.Id == "kitchen").ToList();
        var at = ShopDays.At(Shop(), found.Visits[kitchen.First(x => x.Visit.Steps.Any(s => x.Job.Whole.Timeline.Steps[s].Kind == SiteStep.Coat)).Place].Start);
        string Moment(DateTime when) => when.ToString(DaysReading.Moment, System.Globalization.CultureInfo.InvariantCulture);
        var asked = new DaysDocument { DaysAhead = 60, Crews = Crews(2), Stays = [.. kitchen.Select(x => new StayDocument { Visit = $"kitchen/{x.Visit.Number}", From = Moment(ShopDays.At(Shop(), found.Visits[x.Place].Start)) })] };
        var (problem, schedule) = Placed(Asked(asked));
        Assert.DoesNotContain(ShopNotes.Of(Jobs, Asked(asked), problem, schedule), n => n.Code == "KeptAtYourWord");

        var lost = Asked(asked with { Lost = [new LostDayDocument { Date = at.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) }] });
        (problem, schedule) = Placed(lost);
        var notes = ShopNotes.Of(Jobs, lost, problem, schedule).Where(n => n.Code == "KeptAtYourWord").ToList();
        Assert.NotEmpty(notes);
        Assert.All(notes, n => Assert.Equal(Limit.AtYourWord, n.Limit));
        Assert.All(notes, n => Assert.Contains("is a day lost", n.Text(Voice.Default), StringComparison.Ordinal));
        Assert.Equal(free.Visits.Count, problem.Visits.Count);
    }

    [Fact]
    public void A_visit_kept_on_a_sunday_that_cannot_be_is_named_as_what_stands_against_it()
    {
        var coats = ShopDays.Visits(Jobs).Where(x => x.Job.Id == "kitchen" && x.Visit.Steps.Any(s => x.Job.Whole.Timeline.Steps[s].Kind == SiteStep.Coat)).ToList();
        var problem = ShopDays.Problem(Jobs, Asked(new DaysDocument { DaysAhead = 60, Crews = Crews(2), Stays = [new StayDocument { Visit = $"kitchen/{coats[^1].Visit.Number}", From = "2026-12-20T08:00" }] }));
        var reasons = Assert.IsType<Answer.Impossible>(Scheduler.Solve(problem, Effort.AtOnce, stop: TestContext.Current.CancellationToken)).Reasons;

        var kept = Assert.Single(reasons, r => r.Code == "KeptVisitAgainst");
        Assert.Contains("Sun Dec 20", kept.Text(Voice.Default), StringComparison.Ordinal);
        Assert.Contains("nobody works there", kept.Text(Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void A_household_that_goes_without_for_longer_than_its_job_takes_is_told_by_how_many_days()
    {
        var (problem, schedule) = Placed(Shop());
        var (first, last) = (PlaceOf(problem, "kitchen/1"), problem.Visits.ToList().FindLastIndex(v => v.Job == "kitchen"));
        Assert.DoesNotContain(ShopNotes.Of(Jobs, Shop(), problem, schedule), n => n.Text(Voice.Default).StartsWith("Kitchen", StringComparison.Ordinal));

        // Everything after the first day is two weeks later.
        var opened = problem.Stretches.Last(s => problem.Visits[s.From].Job == "kitchen").From;
        var lying = schedule with { Visits = [.. schedule.Visits.Select((p, i) => i > opened && i <= last && i >= first ? p with { Start = p.Start + (14 * ShopDays.DayMin) } : p)] };
        var note = Assert.Single(ShopNotes.Of(Jobs, Shop(), problem, lying), n => n.Code == "LongWithout" && n.Text(Voice.Default).StartsWith("Kitchen", StringComparison.Ordinal));
        Assert.Contains("days longer", note.Text(Voice.Default), StringComparison.Ordinal);
        Assert.Contains("Longest without", note.Remedy(Voice.Default), StringComparison.Ordinal);
    }
}
