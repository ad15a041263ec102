using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;
using Lapwise.Shared;

namespace Lapwise.Scheduling.Tests;

public sealed class ShopDaysTests
{
    private static readonly IReadOnlyList<ShopJob> Jobs = [new("kitchen", Samples.Whole("l-kitchen")), new("vanity", Samples.Whole("vanity")), new("bar", Samples.Whole("bar-top"))];

    private static Shop Shop(int crews = 2, int? tents = null, params IReadOnlyList<LostDay> lost) => new(
        new DateOnly(2026, 12, 7), 60, [.. Enumerable.Range(1, crews).Select(c => new ShopCrew($"crew {c}", []))], tents, 30, lost, new Dictionary<string, Locked>(StringComparer.Ordinal));

    private static (ScheduleProblem Problem, Schedule Schedule) Placed(Shop shop)
    {
        var problem = ShopDays.Problem(Jobs, shop);
        var schedule = Assert.IsType<Answer.Found>(Scheduler.Solve(problem, Effort.AtOnce)).Schedule;
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

        Assert.InRange(At(window.Before) - end, window.AtMostNeeded, window.AtLeastAllowed!.Value);
    }

    [Fact]
    public void No_coat_goes_on_on_a_day_lost_to_humidity()
    {
        var lost = new LostDay(new DateOnly(2026, 12, 8), null);
        var (problem, schedule) = Placed(Shop(2, null, lost));

        foreach (var job in Jobs)
        {
            foreach (var visit in SiteVisits.Of(job.Whole.Timeline).Where(v => v.Steps.Any(s => job.Whole.Timeline.Steps[s].Kind == SiteStep.Coat)))
            {
                var place = problem.Visits.ToList().FindIndex(v => v.Id == $"{job.Id}/{visit.Number}");
                Assert.NotEqual(lost.Date, DateOnly.FromDateTime(ShopDays.At(Shop(), schedule.Visits[place].Start)));
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
}
