using CsCheck;
using Lapwise.Core.OnSite;

namespace Lapwise.Core.Tests.OnSite;

public sealed class FoldingTests
{
    private const long Minute = Runs.Minute;

    private static readonly IssuedPlan Plan = Runs.Path();

    [Fact]
    public void Without_the_mark_that_issued_the_plan_there_is_no_run_yet() =>
        Assert.Null(Folding.Fold(new Phone("a").Taps(new What.SectionWet("1", 0)).Marks));

    [Fact]
    public void A_section_is_begun_and_done_when_it_was_tapped()
    {
        var phone = new Phone("a").Taps(new What.Issued(Plan)).Waits(Minute).Taps(new What.SectionWet("1", 0)).Waits(2 * Minute).Taps(new What.SectionDry("1", 0));

        var section = phone.Run.Sections["1"];
        Assert.Equal((Runs.Nine + Minute, Runs.Nine + (3 * Minute), false), (section.WetAtMs, section.DryAtMs!.Value, section.IsAssumed));
    }

    [Fact]
    public void A_mark_dated_back_counts_from_then()
    {
        var phone = new Phone("a").Taps(new What.Issued(Plan)).Waits(5 * Minute).Taps(new What.SectionWet("1", 0), backMs: 2 * Minute);

        Assert.Equal(Runs.Nine + (3 * Minute), phone.Run.Sections["1"].WetAtMs);
    }

    [Fact]
    public void What_was_tapped_beats_what_was_assumed_whichever_came_first()
    {
        var phone = new Phone("a").Taps(new What.Issued(Plan)).Assumes(new What.SectionWet("1", 0)).Waits(Minute).Taps(new What.SectionWet("1", 0)).Waits(Minute).Assumes(new What.SectionDry("1", 0));

        var section = phone.Run.Sections["1"];
        Assert.Equal((Runs.Nine + Minute, false, true), (section.WetAtMs, section.WetAssumed, section.IsAssumed));
    }

    [Fact]
    public void Undoing_takes_a_mark_out_and_undoing_that_puts_it_back()
    {
        var phone = new Phone("a").Taps(new What.Issued(Plan));
        var wet = phone.Mark(new What.SectionWet("1", 0));
        var undone = phone.Mark(new What.Undone(wet.Id));
        Assert.Empty(phone.Run.Sections);
        Assert.Equal(3, phone.Run.Log.Count);

        phone.Taps(new What.Undone(undone.Id));
        Assert.Single(phone.Run.Sections);
    }

    [Fact]
    public void Undoings_that_name_each_other_come_to_an_end()
    {
        MarkDocument[] circle =
        [
            .. new Phone("a").Taps(new What.Issued(Plan)).Marks,
            new() { Id = "x", Device = "a", Number = 7, Kind = "undone", Of = "y" },
            new() { Id = "y", Device = "a", Number = 8, Kind = "undone", Of = "x" },
        ];
        Assert.Equal(3, Folding.Fold(circle)!.Log.Count);
    }

    [Fact]
    public void A_kind_that_is_not_known_is_kept_and_said()
    {
        var json = """{"lapwise":1,"marks":[{"id":"z","device":"b","number":1,"kind":"filmWeighed","clockMs":1,"session":"s","ticksMs":2,"weighedG":4.5}]}""";
        var (read, faults) = RunFile.Read(json);
        Assert.Empty(faults);

        var phone = new Phone("a").Taps(new What.Issued(Plan));
        var run = Folding.Fold([.. phone.Marks, .. read!.Marks])!;
        Assert.Contains(run.Notes, n => n(Core.Explain.Voice.Default).Contains("filmWeighed", StringComparison.Ordinal));
        Assert.Contains("4.5", RunFile.Write(new RunDocument { Marks = [.. run.Log.Select(l => l.Document)] }), StringComparison.Ordinal);
    }

    [Fact]
    public void The_lead_is_handed_over()
    {
        var phone = new Phone("a").Taps(new What.Issued(Plan));
        Assert.Equal("a", phone.Run.Lead);
        Assert.Equal("b", phone.Taps(new What.Led("b")).Run.Lead);
    }

    [Fact]
    public void A_pause_counts_until_it_is_resumed()
    {
        var phone = new Phone("a").Taps(new What.Issued(Plan)).Taps(new What.Paused()).Waits(3 * Minute);
        Assert.NotNull(phone.Run.PausedSince);
        phone.Taps(new What.Resumed()).Waits(Minute);
        Assert.Null(phone.Run.PausedSince);
        Assert.Equal(3 * Minute, phone.Run.HaltedMs(Runs.Nine, phone.RunNow));
    }

    /// <summary>Marks made at random on up to three devices with clocks of their own, some assumed, dated back or undone.</summary>
    private static readonly Gen<MarkDocument[]> AnyLog =
        from count in Gen.Int[1, 25]
        from steps in Gen.Select(Gen.Int[0, 2], Gen.Int[0, 11], Gen.Int[1, 4], Gen.Int[0, 200_000], Gen.Bool, Gen.Int[0, 60_000]).Array[count]
        select Log(steps);

    [Fact]
    public void Twice_or_in_another_order_comes_to_the_same() =>
        Gen.Select(AnyLog, Gen.Int[0, int.MaxValue]).Sample((log, seed) =>
        {
            var shuffled = log.Concat(log.Where((_, i) => (i + seed) % 3 == 0)).ToArray();
            new Random(seed).Shuffle(shuffled);
            var (one, other) = (Folding.Fold(log)!, Folding.Fold(shuffled)!);
            Assert.Equal(one.Log.Select(l => (l.Document.Id, l.AtMs, l.Counts)), other.Log.Select(l => (l.Document.Id, l.AtMs, l.Counts)));
            Assert.Equal(one.Sections.OrderBy(s => s.Key), other.Sections.OrderBy(s => s.Key));
            Assert.Equal(one.Batches, other.Batches);
            Assert.Equal(one.Halts, other.Halts);
            Assert.Equal(one.Turns, other.Turns);
            Assert.Equal(one.Lead, other.Lead);
            Assert.True(one.Left.SetEquals(other.Left));
        }, iter: 500);

    [Fact]
    public void A_log_written_and_read_again_comes_to_the_same() =>
        AnyLog.Sample(log =>
        {
            var (read, _) = RunFile.Read(RunFile.Write(new RunDocument { Marks = log }));
            Assert.Equal(Folding.Fold(log)!.Sections.OrderBy(s => s.Key), Folding.Fold(read!.Marks)!.Sections.OrderBy(s => s.Key));
        }, iter: 100);

    private static MarkDocument[] Log((int Phone, int Kind, int Section, int Wait, bool Assumed, int Back)[] steps)
    {
        Phone[] phones = [new("a"), new("b", Runs.Nine + (7 * Minute)), new("c", Runs.Nine - Minute)];
        phones[0].Taps(new What.Issued(Plan));
        foreach (var (which, kind, section, wait, assumed, back) in steps)
        {
            foreach (var p in phones) p.Waits(wait);
            var phone = phones[which];
            What what = kind switch
            {
                0 => new What.BatchMixed("A", 0),
                1 or 2 or 3 => new What.SectionWet($"{section}", which),
                4 or 5 => new What.SectionDry($"{section}", which),
                6 => new What.Paused(),
                7 => new What.Resumed(),
                8 => new What.Undone(phones[(which + 1) % 3].Marks is [.., var last] ? last.Id : "none"),
                9 => new What.Paired(which * 1000, 40 + back),
                10 => new What.Led(phones[section % 3].Now.Device),
                _ => new What.StoppedBefore([$"{section}"]),
            };
            phone.Mark(what, assumed, back);
            if (back % 11 == 0) phone.IsSet(-back);
            if (back % 7 == 0) phone.IsReopened();
        }

        return [.. phones.SelectMany(p => p.Marks)];
    }
}
