using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Core.Tests.Timeline;

public sealed class TimingTests
{
    private static readonly Voice English = new(Language.English, UnitSystem.Metric);

    private static JobDocument Two(string earliest = "4 h", string latest = "24 h", string surface = "73 °F", TimelineDocument? timeline = null, Substrate? substrate = Substrate.Laminate) => Written.Job with
    {
        Room = Written.Job.Room with { Surface = surface },
        Tops = [Written.Island with { Substrate = substrate }],
        System = [Written.Job.System[0], Written.Job.System[0]],
        Timeline = timeline,
        Products = [Written.Clear with { Recoat = new RecoatDocument { Earliest = earliest, Latest = latest, At = "73 °F" } }],
    };

    private static JobTimeline Timed(JobDocument document)
    {
        var (whole, faults) = WholeJob.From(document, []);
        Assert.Empty(faults);
        return whole!.Timeline;
    }

    private static PlannedStep Coat(JobTimeline t, int coat) => t.Steps.Single(s => s.Kind == SiteStep.Coat && s.Coat == coat);

    [Fact]
    public void Every_step_lies_in_working_hours_in_order_and_every_window_is_met()
    {
        var t = Timed(Two());

        Assert.True(t.Steps.Count > 12);
        Assert.All(t.Steps.SelectMany(s => s.Parts), p =>
        {
            Assert.InRange(p.From.TimeOfDay, TimeSpan.FromHours(8), TimeSpan.FromHours(16.5));
            Assert.InRange(p.To.TimeOfDay, TimeSpan.FromHours(8), TimeSpan.FromHours(16.5));
            Assert.True(p.From.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday));
        });
        Assert.All(t.Steps.Zip(t.Steps.Skip(1)), p => Assert.True(p.First.End <= p.Second.Start));
        Assert.All(t.Waits, w => Assert.True(t.Steps[w.Before].Start >= w.Earliest && !(t.Steps[w.Before].Start > w.Latest)));
        Assert.Contains(t.Waits, w => w.Latest is not null);
    }

    // One hour to the next coat, two at most: within hours it can only be met on one day, by moving the first coat.
    [Fact]
    public void A_narrow_window_moves_the_first_coat_rather_than_put_sanding_in()
    {
        var t = Timed(Two("2 h", "3 h"));

        Assert.DoesNotContain(t.Steps, s => s.Kind == SiteStep.SandBetween);
        Assert.Equal(Coat(t, 0).Start.Date, Coat(t, 1).Start.Date);
    }

    // 10 to 12 h after any coat of an 8.5 h day that begins at 8:00 is night.
    [Fact]
    public void A_window_that_falls_into_the_night_puts_in_the_sanding_that_the_product_asks_for()
    {
        var document = Two("10 h", "12 h");
        document = document with { Products = [document.Products![0] with { Recoat = document.Products[0].Recoat! with { Sanding = "320 grit" } }] };
        var t = Timed(document);

        var sanding = Assert.Single(t.Steps, s => s.Kind == SiteStep.SandBetween);
        Assert.True(sanding.IsInserted);
        Assert.Equal("320 grit", sanding.How!(English));
        var reason = Assert.Single(t.Reasons, r => r.Code == "RecoatMissed");
        Assert.Contains(Voice.Span(sanding.Worked.TotalSeconds), reason.Text(English), StringComparison.Ordinal);
        Assert.True(sanding.Start >= Coat(t, 0).End.AddHours(10));
    }

    [Fact]
    public void A_sheet_that_always_asks_for_sanding_gets_it_and_no_latest_is_left()
    {
        var document = Two();
        document = document with { Products = [document.Products![0] with { Recoat = document.Products[0].Recoat! with { AlwaysSand = true } }] };
        var t = Timed(document);

        Assert.False(Assert.Single(t.Steps, s => s.Kind == SiteStep.SandBetween).IsInserted);
        Assert.DoesNotContain(t.Reasons, r => r.Code == "RecoatMissed");
    }

    // Rule of ten (UFGS-09971): ten degrees colder, twice the wait. No second point of the pot life, so the rule holds.
    [Fact]
    public void Ten_degrees_colder_the_film_waits_twice_as_long()
    {
        double LightUseH(string surface)
        {
            var document = Two(surface: surface);
            document = document with { Products = [document.Products![0] with { PotLife = [document.Products[0].PotLife[0]], UsableFrom = new UsableFromDocument { LightUse = "48 h", FullUse = "7 d", At = "23 °C" } }] };
            var t = Timed(document);
            return (t.UseDates.Single(u => u.Use == UseOf.LightUse).From - Coat(t, 1).End).TotalHours;
        }

        Assert.Equal(48, LightUseH("23 °C"), 0.02);
        Assert.Equal(96, LightUseH("13 °C"), 0.02);
    }

    // By Jensen's inequality a swing about the same mean speeds an exponential law up on the whole.
    [Fact]
    public void A_room_that_swings_cures_a_week_sooner_than_its_mean_says()
    {
        double FullUseH(TimelineDocument? timeline)
        {
            var t = Timed(Two(timeline: timeline));
            return (t.UseDates.Single(u => u.Use == UseOf.HeavyUse).From - Coat(t, 1).End).TotalHours;
        }

        Assert.InRange(FullUseH(new TimelineDocument { DaySwing = "18 °F" }) / FullUseH(null), 0.9, 0.999);
    }

    [Fact]
    public void Windows_that_contradict_are_named_and_the_plan_does_not_hold()
    {
        var t = Timed(Two(timeline: new TimelineDocument { LongestWithout = "1 d" }));

        var reason = Assert.Single(t.Reasons, r => r.Code == "WindowsContradict");
        Assert.Equal(Limit.AtYourWord, reason.Limit);
        Assert.Contains("light use", reason.Text(English), StringComparison.Ordinal);
        Assert.Contains("without what was taken out for at most 24 h", reason.Text(English), StringComparison.Ordinal);
        var (gone, back) = (t.Steps.First(s => s.Kind == SiteStep.TakeOut).End, t.Steps.Last(s => s.Kind == SiteStep.PutBack).End);
        Assert.Contains($"by {Voice.Span((back - gone).TotalSeconds - (24 * 3600))}.", reason.Text(English), StringComparison.Ordinal);
        Assert.False(t.Holds);
        Assert.DoesNotContain(t.Steps, s => s.IsInserted);
        Assert.Contains(t.Steps, s => s.Kind == SiteStep.Handover);
    }

    [Fact]
    public void A_promise_that_cannot_be_kept_says_by_how_much_and_which_wait_is_to_blame()
    {
        var t = Timed(Two(timeline: new TimelineDocument { Start = "2026-12-07", PromisedBy = "2026-12-08" }));

        var light = t.UseDates.Single(u => u.Use == UseOf.LightUse).From;
        var text = Assert.Single(t.Reasons, r => r.Code == "PromiseMissed").Text(English);
        Assert.Contains(Voice.Span((light - new DateTime(2026, 12, 9)).TotalSeconds), text, StringComparison.Ordinal);
        Assert.Contains("light use, ", text, StringComparison.Ordinal);
        Assert.Contains(English.WeekDay(new DateOnly(2026, 12, 8)), text, StringComparison.Ordinal);
        Assert.DoesNotContain(Timed(Two(timeline: new TimelineDocument { Start = "2026-12-07", PromisedBy = "2026-12-24" })).Reasons, r => r.Code == "PromiseMissed");
    }

    /// <summary>Days that leave room for the wipe but not for the coat after it, in every way they can be short.</summary>
    [Fact]
    public void A_surface_is_wiped_right_before_it_is_coated_and_not_on_the_evening_before()
    {
        foreach (var workTo in Enumerable.Range(10, 14).Select(h => $"{h / 2 + 8}:{(h % 2 == 0 ? "00" : "30")}").Append("9:45"))
        {
            var t = Timed(Two("4 h", "3 d", timeline: new TimelineDocument { WorkTo = workTo }));
            foreach (var wipe in t.Steps.Where(s => s.Kind == SiteStep.Wipe))
                Assert.InRange((Coat(t, wipe.Coat!.Value).Start - wipe.End).TotalMinutes, 0, 30);
        }
    }

    [Fact]
    public void Where_a_day_is_too_short_for_wiping_and_coating_they_are_still_both_placed()
    {
        static PlannedStep Wipe(JobTimeline t) => t.Steps.First(s => s.Kind == SiteStep.Wipe);
        var ample = Timed(Two("4 h", "30 d"));
        var longerMin = Math.Max(Wipe(ample).Worked.TotalMinutes, Coat(ample, 0).Worked.TotalMinutes);
        var t = Timed(Two("4 h", "30 d", timeline: new TimelineDocument { WorkTo = $"8:{longerMin + 1:00}" }));
        Assert.True(Coat(t, 0).Start.Date > Wipe(t).End.Date);
    }

    [Fact]
    public void Nothing_is_put_back_before_light_use_and_no_caulk_before_the_film_takes_it()
    {
        var t = Timed(Two());
        Assert.All(t.Steps.Where(s => s.Kind == SiteStep.PutBack), s => Assert.True(s.Start >= t.UseDates.Single(u => u.Use == UseOf.LightUse).From));
        Assert.True(t.Steps.Single(s => s.Kind == SiteStep.NewCaulk).Start >= t.UseDates.Single(u => u.Use == UseOf.HeavyUse).From);
    }

    [Fact]
    public void A_surface_in_doubt_is_tested_for_bond_and_a_stated_one_is_not()
    {
        Assert.DoesNotContain(Timed(Two()).Steps, s => s.Kind == SiteStep.BondTest);
        Assert.Contains(Timed(Two(substrate: null)).Steps, s => s.Kind == SiteStep.BondTest);
        Assert.Contains(Timed(Two(substrate: Substrate.OldCoating)).Steps, s => s.Kind == SiteStep.BondTest);
        Assert.Contains(Timed(Two(substrate: Substrate.Tile)).Steps, s => s.Kind == SiteStep.Prime);
    }

    [Fact]
    public void Entered_times_and_steps_left_out_are_taken_as_entered()
    {
        var t = Timed(Two(timeline: new TimelineDocument
        {
            Fixtures = [new FixtureDocument { Name = "hob", By = Doer.Customer, Out = "10 min" }],
            Steps = [new SiteStepDocument { Step = SiteStep.Tent, LeaveOut = true }, new SiteStepDocument { Step = SiteStep.Mask, Time = "95 min" }],
        }));

        Assert.DoesNotContain(t.Steps, s => s.Kind == SiteStep.Tent);
        Assert.Equal(95, t.Steps.Single(s => s.Kind == SiteStep.Mask).Worked.TotalMinutes);
        var hob = t.Steps.Single(s => s.Kind == SiteStep.TakeOut);
        Assert.Equal((Doer.Customer, 10.0), (hob.By, hob.Worked.TotalMinutes));
        Assert.Equal(Sources.AsEntered, hob.TimeBasis.Source);
    }

    [Fact]
    public void The_own_time_of_taking_out_holds_for_every_fixture_that_names_none()
    {
        var t = Timed(Two(timeline: new TimelineDocument
        {
            Fixtures = [new FixtureDocument { Name = "hob", Out = "10 min" }, new FixtureDocument { Name = "sink" }],
            Steps = [new SiteStepDocument { Step = SiteStep.TakeOut, Time = "25 min" }],
        }));

        Assert.Equal([10.0, 25.0], t.Steps.Where(s => s.Kind == SiteStep.TakeOut).Select(s => s.Worked.TotalMinutes));
        Assert.All(t.Steps.Where(s => s.Kind == SiteStep.TakeOut), s => Assert.Equal(Sources.AsEntered, s.TimeBasis.Source));
    }

    [Fact]
    public void A_coat_longer_than_the_day_is_said() =>
        Assert.Contains(Timed(Two(timeline: new TimelineDocument { WorkFrom = "8:00", WorkTo = "8:15" })).Reasons, r => r.Code == "StepLongerThanDay" && r.Limit == Limit.AtYourWord);

    public static TheoryData<string, string, TimelineDocument> Slips() => new()
    {
        { "timeline.workTo", "NoWorkingHours", new TimelineDocument { WorkFrom = "16:00", WorkTo = "8:00" } },
        { "timeline.workDays", "NoWorkingHours", new TimelineDocument { WorkDays = [] } },
        { "timeline.start", "DateNotUnderstood", new TimelineDocument { Start = "7 December" } },
        { "timeline.daysOff[1]", "DateNotUnderstood", new TimelineDocument { DaysOff = ["2026-12-24", "x"] } },
        { "timeline.workFrom", "ClockNotUnderstood", new TimelineDocument { WorkFrom = "8 o'clock" } },
        { "timeline.zone", "ZoneNotUnderstood", new TimelineDocument { Zone = "local" } },
        { "timeline.promisedBy", "PromiseWithoutStart", new TimelineDocument { PromisedBy = "2026-12-24" } },
        { "timeline.promisedBy", "PromiseBeforeStart", new TimelineDocument { Start = "2026-12-24", PromisedBy = "2026-12-01" } },
        { "timeline.steps[0].time", "UnitMissing", new TimelineDocument { Steps = [new SiteStepDocument { Step = SiteStep.Mask, Time = "30" }] } },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void A_slip_is_said_with_its_place_and_the_days_go_on_by_the_default(string path, string code, TimelineDocument timeline)
    {
        var read = JobReading.Read(Written.Job with { Timeline = timeline }, [Written.Clear]);

        var fault = Assert.Single(read.Faults);
        Assert.Equal((path, code), (fault.Path, fault.Code));
        Said.InEveryVoice([fault.Text, fault.Cure]);
        Assert.Single(read.Job!.System);
    }

    [Fact]
    public void All_is_said_in_every_voice()
    {
        var t = Timed(Two("10 h", "12 h", substrate: null, timeline: new TimelineDocument { Start = "2026-12-07", PromisedBy = "2026-12-08", LongestWithout = "1 d" }));
        Said.InEveryVoice([.. t.Steps.Where(s => s.Kind is not (SiteStep.TakeOut or SiteStep.PutBack)).Select(s => s.Name), .. t.Waits.Select(w => w.Name), .. t.Reasons.SelectMany(r => new[] { r.Text, r.Remedy })]);
    }

    [Fact]
    public void The_same_job_gets_the_same_days() =>
        Assert.Equal(Timed(Two()).Steps.SelectMany(s => s.Parts), Timed(Two()).Steps.SelectMany(s => s.Parts));
}
