using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.OnSite;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Jobs;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.OnSite;

public sealed class IssuingTests
{
    private static readonly JobDocument Island = new()
    {
        Name = "Island", Tops = [Written.Island], System = [new CoatDocument { Product = "clear", WetFilm = "6.5 mil" }],
        Crew = [new PersonDocument { Name = "Alba" }, new PersonDocument { Name = "Bo" }],
        Room = new RoomDocument { Air = "73 °F", Humidity = "45 %", Surface = "72 °F", Material = "72 °F" },
    };

    private static readonly WholeJob Whole = WholeJob.From(Island, [Written.Clear]).Whole!;

    private static IssuedPlan Issue() => Issuing.Issue(Whole.Job, 0, Whole.Work.Coats[0], Whole.Supply.Coats[0], Whole.ReasonsOf(0), Whole.Job.Units, Issuing.FingerprintOf(Island, [Written.Clear]), "1.2.3");

    [Fact]
    public void The_issued_plan_holds_the_order_of_work_it_was_made_from()
    {
        var (plan, work) = (Issue(), Whole.Work.Coats[0]);
        Assert.NotEmpty(plan.Sections);
        Assert.Equal(work.Sections.Select(s => (s.Id, s.Person, s.StartMs, s.EndMs, s.Batch)), plan.Sections.Select(s => (s.Id, s.Person, s.StartMs, s.EndMs, s.Batch)));
        Assert.Equal(work.Laps.Count, plan.Laps.Count);
        Assert.All(plan.Sections, s => Assert.Equal(2, s.TakesMs.Count));
        Assert.All(plan.Batches, b => Assert.True(b.AMl > b.BMl && b.GivesMl <= b.VolumeMl && b.GivesMl > 0));
        Assert.Equal(work.Batches.Sum(b => b.NetMl), plan.Sections.Sum(s => s.TakesMl), work.Batches.Sum(b => b.VolumeMl - b.NetMl));
    }

    [Fact]
    public void A_batch_is_planned_as_its_ticket_has_it_measured()
    {
        var tickets = Whole.Supply.Coats[0].Tickets;
        Assert.Contains(tickets, t => Math.Abs(t.VolumeMl - t.WantedMl) > 0.1);
        Assert.Equal(tickets.Select(t => (t.Batch, Math.Round(t.VolumeMl, 1))), Issue().Batches.Select(b => (b.Id, b.VolumeMl)));
        Assert.All(Issue().Batches, b => Assert.Equal(b.AMl + b.BMl, b.VolumeMl, 0.05));
    }

    [Theory]
    [InlineData(UnitSystem.Metric, "too cold: 10 °C")]
    [InlineData(UnitSystem.Us, "too cold: 50 °F")]
    public void What_speaks_against_it_is_said_in_the_units_of_whoever_begins_the_run(UnitSystem units, string said)
    {
        var cold = new Reason("AirTooCold", Limit.AtYourWord, v => $"too cold: {v.Temperature(10)}", v => $"warm it to {v.Temperature(15)}");
        var plan = Issuing.Issue(Whole.Job, 0, Whole.Work.Coats[0], Whole.Supply.Coats[0], [cold], units, "", "1.2.3");
        Assert.Equal(said, Assert.Single(plan.Against).Say(new Voice(Language.English, Whole.Job.Units)));
    }

    [Theory]
    [InlineData(Limit.Never)]
    [InlineData(Limit.AtYourWord)]
    public void What_holds_the_mixing_says_what_would_cure_it(Limit limit)
    {
        var cold = new Reason("AirTooCold", limit, _ => "too cold", v => v.Say($"Warm it to {v.Temperature(15)}.", $"Caliéntelo a {v.Temperature(15)}."));
        var plan = Issuing.Issue(Whole.Job, 0, Whole.Work.Coats[0], Whole.Supply.Coats[0], [cold], UnitSystem.Metric, "", "1.2.3");
        var run = RunAgain(new Phone("a").Taps(new What.Issued(plan)));
        var hold = Holding.Of(run);
        var held = Assert.Single([.. hold.Never, .. hold.AtYourWord]);
        foreach (var (voice, said) in new[] { (new Voice(Language.English, UnitSystem.Us), "Warm it to 15 °C."), (new Voice(Language.Spanish, UnitSystem.Us), "Caliéntelo a 15 °C.") })
        {
            Assert.Equal(said, held.Remedy(voice));
            Assert.StartsWith(said, Tapping.Refused(run)!.Remedy(voice), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_run_begun_before_cures_were_kept_still_says_what_to_do()
    {
        var plan = Issue() with { Against = [new IssuedReason { Code = "AirTooCold", Limit = Limit.Never, En = "too cold", Es = "frío" }] };
        var phone = new Phone("a").Taps(new What.Issued(plan));
        Assert.DoesNotContain("remedy", RunFile.Write(new RunDocument { Marks = phone.Marks }), StringComparison.OrdinalIgnoreCase);
        var run = RunAgain(phone);
        Assert.Null(Assert.Single(Holding.Of(run).Never).Remedy(Voice.Default));
        Assert.StartsWith("Nothing is mixed", Tapping.Refused(run)!.Remedy(Voice.Default), StringComparison.Ordinal);
    }

    /// <summary>Before anything is marked, what is forecast is what was planned, one batch after the other.</summary>
    [Fact]
    public void Worked_exactly_as_planned_every_lap_has_its_planned_age()
    {
        var (plan, work) = (Issue(), Whole.Work.Coats[0]);
        var phone = new Phone("a").Taps(new What.Issued(plan));
        long clock = 0;
        var marks = plan.Batches.Select(b => (At: b.MixStartMs, What: (What)new What.BatchMixed(b.Id, b.MixedBy)))
            .Concat(plan.Sections.Select(s => (At: s.StartMs, What: (What)new What.SectionWet(s.Id, s.Person))))
            .Concat(plan.Sections.Select(s => (At: s.EndMs, What: (What)new What.SectionDry(s.Id, s.Person)))).OrderBy(m => m.At);
        foreach (var (at, what) in marks)
        {
            phone.Waits(at - clock).Taps(what);
            clock = at;
        }

        var joined = JoinedLaps.Of(phone.Run);
        Assert.Equal(plan.Laps.Count(l => l.Kind is not LapKind.Break), joined.Count);
        Assert.Equal(work.LapMarginMs >= 0, joined.All(l => !l.IsLost));
        Assert.True(phone.Run.IsDone);
        foreach (var (lap, planned) in joined.Zip(work.Laps.Where(l => l.Kind is not LapKind.Break))) Assert.True(lap.AgeMs >= planned.AgeMs);
    }

    [Fact]
    public void The_fingerprint_tells_inputs_apart_and_is_the_same_for_the_same()
    {
        Assert.Equal(Issuing.FingerprintOf(Island, [Written.Clear]), Issuing.FingerprintOf(Island with { }, [Written.Clear]));
        Assert.NotEqual(Issuing.FingerprintOf(Island, [Written.Clear]), Issuing.FingerprintOf(Island with { Name = "Island 2" }, [Written.Clear]));
        Assert.NotEqual(Issuing.FingerprintOf(Island, [Written.Clear]), Issuing.FingerprintOf(Island, [Written.Clear with { VolumeSolids = "63 %" }]));
        Assert.Matches("^[0-9a-f]{16}$", Issuing.FingerprintOf(Island, []));
    }

    [Fact]
    public void A_plan_written_and_read_again_is_the_same_plan()
    {
        var marks = new Phone("a").Taps(new What.Issued(Issue())).Marks;
        var text = RunFile.Write(new RunDocument { Marks = marks });
        Assert.Equal(text, RunFile.Write(RunFile.Read(text).Document!));
    }

    /// <summary>The run as it is found when its log is opened again.</summary>
    private static Run RunAgain(Phone phone) => Folding.Fold(RunFile.Read(RunFile.Write(new RunDocument { Marks = phone.Marks })).Document!.Marks)!;
}
