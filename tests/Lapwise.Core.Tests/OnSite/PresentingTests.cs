using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;

namespace Lapwise.Core.Tests.OnSite;

public sealed class PresentingTests
{
    private const long Minute = Runs.Minute;

    private static Phone Prepared(IssuedPlan plan)
    {
        var phone = new Phone("a").Taps(new What.Issued(plan));
        foreach (var point in Preparation.All) phone.Taps(new What.Checked(point.Id));
        return phone;
    }

    private static PersonNow Alba(Phone phone) => Assert.Single(Presenting.Present(phone.Run, phone.RunNow).People);

    private static Phone TapsMain(Phone phone)
    {
        var (marks, refusal) = Tapping.Main(phone.Run, phone.RunNow, 0);
        Assert.Null(refusal);
        Assert.NotEmpty(marks);
        foreach (var mark in marks) phone.Mark(mark.What, mark.IsAssumed, mark.BackMs);
        return phone;
    }

    [Fact]
    public void A_run_is_tapped_through_with_one_tap_a_step()
    {
        var phone = Prepared(Runs.Path(3));
        Assert.IsType<Duty.Mix>(Alba(phone).Now);
        TapsMain(phone);
        Assert.Equal(2 * Minute, Assert.IsType<Duty.Mixing>(Alba(phone).Now) is var _ ? Alba(phone).LeftMs : null);
        TapsMain(phone.Waits(2 * Minute));
        for (var i = 1; i <= 3; i++)
        {
            Assert.Equal($"{i}", Assert.IsType<Duty.Rolling>(Alba(phone).Now).Section.Id);
            Assert.Equal(2 * Minute, Alba(phone).LeftMs);
            TapsMain(phone.Waits(2 * Minute));
        }

        Assert.True(phone.Run.IsDone);
        Assert.All(JoinedLaps.Of(phone.Run), lap => Assert.Equal(4 * Minute, lap.AgeMs));
        // Batch, three sections begun and done: seven marks for five taps.
        Assert.Equal(7, phone.Run.Log.Count(l => l.Mark.What is What.BatchMixed or What.SectionWet or What.SectionDry));
    }

    [Fact]
    public void The_lap_that_runs_out_next_and_the_batch_are_on_the_clock()
    {
        var phone = Prepared(Runs.Path(3)).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0)).Waits(2 * Minute).Taps(new What.SectionDry("1", 0)).Waits(Minute);

        var present = Presenting.Present(phone.Run, phone.RunNow);
        Assert.Equal(("2", 7 * Minute, 5 * Minute), (present.NextLap!.JoinedBy!.Id, present.NextLap.LeftMs, present.NextLap.BeginWithinMs!.Value));
        Assert.Equal(present.NowMs + (55 * Minute), Assert.Single(present.Cups).UseByMs);
    }

    [Fact]
    public void Steps_beside_rolling_come_when_their_top_is_done()
    {
        var phone = Prepared(Runs.Path(1)).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0));
        Assert.Empty(Presenting.Present(phone.Run, phone.RunNow).Steps);
        phone.Waits(2 * Minute).Taps(new What.SectionDry("1", 0)).Waits(Minute);

        var steps = Presenting.Present(phone.Run, phone.RunNow).Steps;
        Assert.Equal([BesideKind.EdgesLookedUnder, BesideKind.TapeOff], steps.Select(s => s.Step.Kind));
        Assert.Equal(9 * Minute, steps[0].LeftMs);
        Assert.Single(Presenting.Present(phone.Taps(new What.StepDone(steps[0].Step.Id)).Run, phone.RunNow).Steps);
    }

    [Fact]
    public void I_am_here_fills_in_what_must_have_happened_and_says_that_it_is_assumed()
    {
        var phone = Prepared(Runs.Path(4)).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0)).Waits(6 * Minute);
        foreach (var mark in Tapping.Here(phone.Run, phone.RunNow, "4", 0).Marks) phone.Mark(mark.What, mark.IsAssumed, mark.BackMs);

        var sections = phone.Run.Sections;
        Assert.Equal(["1", "2", "3", "4"], sections.Keys.Order());
        Assert.All(new[] { "2", "3" }, id => Assert.True(sections[id] is { WetAssumed: true, DryAssumed: true, DryAtMs: not null }));
        Assert.Equal((false, true), (sections["1"].WetAssumed, sections["1"].DryAssumed));
        Assert.Equal(phone.RunNow, sections["4"].WetAtMs);
        Assert.Equal(2 * Minute, sections["2"].DryAtMs - sections["2"].WetAtMs);
        Assert.False(sections["4"].IsAssumed);
    }

    [Fact]
    public void A_section_tapped_twice_is_done()
    {
        var phone = Prepared(Runs.Path(2)).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0)).Waits(Minute);
        Assert.Equal(new What.SectionDry("1", 0), Assert.Single(Tapping.Here(phone.Run, phone.RunNow, "1", 0).Marks).What);
    }

    [Theory]
    [InlineData(Limit.Never, "MixingHeld")]
    [InlineData(Limit.AtYourWord, "WordMissing")]
    public void Nothing_is_mixed_against_a_limit(Limit limit, string code)
    {
        var phone = Prepared(Runs.Path(2, 600, new Reason("AirTooCold", limit, _ => "too cold", _ => "warm it")));
        var (marks, refusal) = Tapping.Main(phone.Run, phone.RunNow, 0);
        Assert.Empty(marks);
        Assert.Equal(code, refusal!.Code);
        // Nor by a tap on a section, which would assume the batch.
        Assert.Equal(code, Tapping.Here(phone.Run, phone.RunNow, "1", 0).Refusal!.Code);

        phone.Taps(new What.TakenUp("AirTooCold", "measured again"));
        Assert.Equal(limit is Limit.Never, Tapping.Main(phone.Run, phone.RunNow, 0).Refusal is not null);
    }

    [Fact]
    public void Mixing_waits_for_the_preparation()
    {
        var phone = new Phone("a").Taps(new What.Issued(Runs.Path(2)));
        Assert.Equal("NotPrepared", Tapping.Main(phone.Run, phone.RunNow, 0).Refusal!.Code);
        Assert.Equal(Preparation.All.Count, Holding.Of(phone.Run).Unchecked.Count);
    }

    [Fact]
    public void A_pause_says_what_it_costs_and_costs_it()
    {
        var phone = Prepared(Runs.Path(3)).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0)).Waits(Minute);
        var first = Pausing.CostOf(phone.Run, phone.RunNow)[0];
        Assert.Equal(("1", "2", 6 * Minute), (first.Lap!.A, first.Lap.B, first.AfterMs));

        phone.Taps(new What.Paused()).Waits(first.AfterMs).Taps(new What.Resumed());
        Assert.Empty(Presenting.Present(phone.Run, phone.RunNow).Forecast.Lost);
        phone.Waits(1000);
        // One second longer at a stand and the lap is gone.
        var late = Prepared(Runs.Path(3)).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0)).Waits(Minute).Taps(new What.Paused()).Waits(first.AfterMs + 1000).Taps(new What.Resumed());
        Assert.Equal(("1", "2"), Presenting.Present(late.Run, late.RunNow).Forecast.Lost.Select(l => (l.Lap.A, l.Lap.B)).Single());
    }

    [Fact]
    public void An_older_batch_leaves_less_open_time()
    {
        var plan = Runs.Path(3) with { BatchAgeShare = 0.25 };
        var phone = Prepared(plan).Taps(new What.BatchMixed("A", 0)).Waits(6 * Minute).Taps(new What.SectionWet("1", 0)).Waits(2 * Minute).Taps(new What.SectionDry("1", 0));
        // Four minutes after the end of mixing a quarter of them is gone: 10 less 1 less 2 worked.
        Assert.Equal(7 * Minute, Presenting.Present(phone.Run, phone.RunNow).NextLap!.LeftMs);

        phone.Taps(new What.SectionWet("2", 0)).Waits(2 * Minute).Taps(new What.SectionDry("2", 0));
        Assert.Equal(5 * Minute, JoinedLaps.Of(phone.Run).Single().AgeMs);
    }
}
