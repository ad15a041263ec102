using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.Tests.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Core.Tests.Timeline;

/// <summary>One job on the days its shop has settled on.</summary>
public sealed class SettledDaysTests
{
    private static readonly Voice English = new(Language.English, UnitSystem.Metric);
    private static readonly Voice Spanish = new(Language.Spanish, UnitSystem.Metric);

    private static readonly JobDocument Document = Written.Job with
    {
        Tops = [Written.Island with { Substrate = Substrate.Laminate }],
        System = [Written.Job.System[0], Written.Job.System[0]],
        Timeline = new TimelineDocument { Start = "2026-12-07" },
        Products = [Written.Clear with { Recoat = new RecoatDocument { Earliest = "12 h", Latest = "72 h", At = "73 °F" }, UsableFrom = new UsableFromDocument { LightUse = "48 h", FullUse = "7 d", At = "73 °F" } }],
    };

    private static WholeJob Whole(JobDocument document)
    {
        var (whole, faults) = WholeJob.From(document, []);
        Assert.Empty(faults);
        return whole!;
    }

    /// <summary>The visits of a job's own days, each moved.</summary>
    private static IReadOnlyList<VisitDocument> Settled(WholeJob whole, Func<SiteVisit, TimeSpan> by) =>
    [
        .. SiteVisits.Of(whole.Timeline).Select(v => new VisitDocument
        {
            Job = "kitchen", Name = whole.Job.Name, Number = v.Number, From = (v.From + by(v)).ToString(DaysReading.Moment, CultureInfo.InvariantCulture), LengthMin = (int)v.Length.TotalMinutes, By = v.By,
            IsCoat = v.Steps.Any(s => whole.Timeline.Steps[s].Kind == SiteStep.Coat), Coat = v.Steps.Where(s => whole.Timeline.Steps[s].Kind == SiteStep.Coat).Min(s => whole.Timeline.Steps[s].Coat) + 1,
            En = string.Join('\n', v.Steps.Select(s => whole.Timeline.Steps[s].Name(English))), Es = string.Join('\n', v.Steps.Select(s => whole.Timeline.Steps[s].Name(Spanish))),
        }),
    ];

    private static int VisitOf(JobTimeline timeline, int coat) =>
        SiteVisits.Of(timeline).First(v => v.Steps.Any(s => timeline.Steps[s].Kind == SiteStep.Coat && timeline.Steps[s].Coat == coat)).Number;

    [Theory, InlineData("2026-12-07"), InlineData(null)]
    public void A_week_later_every_step_wait_and_date_of_use_is_a_week_later(string? start)
    {
        var whole = Whole(Document with { Timeline = new TimelineDocument { Start = start } });
        var own = whole.Timeline;
        var week = TimeSpan.FromDays(start is null ? 9_478 : 7); // without a first day they are counted from Monday 1 January 2001
        var on = whole.On(Settled(whole, _ => week)).Timeline;

        Assert.True(on.IsSettled && on.IsDated && on.Holds);
        Assert.Null(on.OutOfDate);
        Assert.Equal(own.Day1.AddDays((int)week.TotalDays), on.Day1);
        Assert.Equal(own.Steps.SelectMany(s => s.Parts).Select(p => (p.From + week, p.To + week)), on.Steps.SelectMany(s => s.Parts));
        Assert.Equal(own.Waits.Select(w => (w.Earliest + week, w.Latest + week)), on.Waits.Select(w => (w.Earliest, w.Latest)));
        Assert.Equal(own.UseDates.Select(u => u.From + week), on.UseDates.Select(u => u.From));
        Assert.Equal(own.DaysNotWorked, on.DaysNotWorked);
    }

    [Fact]
    public void A_coat_that_waits_for_its_crew_moves_the_dates_of_use_and_the_days_without_and_nothing_before_it()
    {
        var whole = Whole(Document);
        var second = VisitOf(whole.Timeline, 1);
        var on = whole.On(Settled(whole, v => TimeSpan.FromDays(v.Number < second ? 0 : 1)));

        Assert.True(on.Timeline.Holds);
        Assert.Equal(whole.Timeline.Day1, on.Timeline.Day1);
        Assert.Equal(whole.Timeline.CoatedOn(0), on.Timeline.CoatedOn(0));
        Assert.Equal(whole.Timeline.CoatedOn(1)!.Value.AddDays(1), on.Timeline.CoatedOn(1));
        Assert.Equal(whole.Timeline.UseDates.Select(u => u.From.AddDays(1)), on.Timeline.UseDates.Select(u => u.From));
        double? Without(WholeJob job) => Terms.Of(job.Job, job.Timeline, AgreementReading.Read(Document, Lapwise.Core.Quantities.Currency.UsDollar).Agreement).DaysWithoutKitchen;
        Assert.Equal(Without(whole) + 1, Without(on));
    }

    [Fact]
    public void A_date_promised_is_held_against_the_settled_days()
    {
        var whole = Whole(Document with { Timeline = Document.Timeline! with { PromisedBy = "2026-12-12" } });
        Assert.DoesNotContain(whole.Timeline.Reasons, r => r.Code == "PromiseMissed");
        var on = whole.On(Settled(whole, _ => TimeSpan.FromDays(7))).Timeline;
        Assert.True(on.IsSettled);
        Assert.Contains(on.Reasons, r => r.Code == "PromiseMissed");
    }

    [Fact]
    public void A_job_changed_since_stands_on_its_own_days_and_says_that_others_were_settled()
    {
        var settled = Settled(Whole(Document), _ => TimeSpan.FromDays(7));
        var changed = Whole(Document with { System = [Document.System[0]] });
        var on = changed.On(settled).Timeline;

        Assert.False(on.IsSettled || on.Holds);
        Assert.Equal(changed.Timeline.Steps.Select(s => s.Start), on.Steps.Select(s => s.Start));
        Assert.Contains(on.OutOfDate!, on.Reasons);
        Assert.Contains("settled for this job, Mon 14 Dec to", on.OutOfDate!.Text(English).Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Contains("settle the days again", on.OutOfDate.Remedy(English), StringComparison.Ordinal);
        Assert.Contains("se acordaron días", on.OutOfDate.Text(Spanish), StringComparison.Ordinal);
        Assert.Contains(on.OutOfDate, Terms.Of(changed.Job, on, AgreementReading.Read(Document, Lapwise.Core.Quantities.Currency.UsDollar).Agreement).Open);
    }

    [Fact]
    public void A_room_that_makes_a_settled_coat_come_too_early_is_said_by_the_name_of_its_wait()
    {
        var settled = Settled(Whole(Document), _ => TimeSpan.FromDays(7));
        var slower = Document with { Products = [Document.Products![0] with { Recoat = Document.Products[0].Recoat! with { Earliest = "30 h" } }] };
        var on = Whole(slower).On(settled).Timeline;

        Assert.Contains("coat 1 to coat 2 comes too early", on.OutOfDate!.Text(English), StringComparison.Ordinal);
        Assert.Contains("demasiado pronto", on.OutOfDate.Text(Spanish), StringComparison.Ordinal);
    }

    [Fact]
    public void A_coat_settled_after_its_latest_is_said()
    {
        var whole = Whole(Document);
        var second = VisitOf(whole.Timeline, 1);
        Assert.Contains("comes too late", whole.On(Settled(whole, v => TimeSpan.FromDays(v.Number < second ? 0 : 7))).Timeline.OutOfDate!.Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_later_first_day_or_a_day_off_entered_since_is_said()
    {
        var settled = Settled(Whole(Document), _ => TimeSpan.FromDays(7));
        Assert.Contains("first day", Whole(Document with { Timeline = new TimelineDocument { Start = "2026-12-21" } }).On(settled).Timeline.OutOfDate!.Text(English), StringComparison.Ordinal);
        Assert.Contains("nobody works", Whole(Document with { Timeline = Document.Timeline! with { DaysOff = ["2026-12-14"] } }).On(settled).Timeline.OutOfDate!.Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void The_day_of_each_coat_is_known_of_the_settled_visits_alone()
    {
        var whole = Whole(Document);
        var settled = Settled(whole, _ => TimeSpan.FromDays(7));
        Assert.All([0, 1], coat => Assert.Equal(whole.Timeline.CoatedOn(coat)!.Value.AddDays(7), Settling.CoatedOn(settled, coat)));
        // Settled before it was written which coat goes on: the first day stands for all.
        Assert.Equal(whole.Timeline.CoatedOn(0)!.Value.AddDays(7), Settling.CoatedOn(settled.Select(v => v with { Coat = null }), 1));
        Assert.Null(Settling.CoatedOn([], 0));
    }

    [Fact]
    public void Days_taken_in_leave_other_jobs_alone_and_change_nothing_the_second_time()
    {
        var whole = Whole(Document);
        var kitchen = Settled(whole, _ => TimeSpan.FromDays(7));
        var own = new SettledDaysDocument { Times = 5, Visits = [.. kitchen.Select(v => v with { Changed = 4 }), .. kitchen.Select(v => v with { Job = "vanity", Changed = 5 })] };
        own = Settling.Taken(null, own);
        var other = new SettledDaysDocument { Times = 2, Visits = [.. kitchen.Select((v, i) => i == 0 ? v with { From = "2026-12-14T09:00", Changed = 2 } : v with { Changed = 1 })] };

        var taken = Settling.Taken(own, other);
        Assert.Equal(6, taken.Times);
        Assert.Equal(kitchen.Count, taken.Visits.Count(v => v is { Job: "vanity", Changed: 5 }));
        Assert.Equal("2026-12-14T09:00", Assert.Single(taken.Visits, v => v.Changed == 6).From);
        Assert.Same(taken, Settling.Taken(taken, other));
    }
}
