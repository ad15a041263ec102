using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;

namespace Lapwise.Core.Tests.OnSite;

/// <summary>Nothing is done before it was begun, and nobody goes on before what they did last.</summary>
public sealed class DatingBackTests
{
    private const long Minute = Runs.Minute;

    private static Phone Prepared(int sections = 4)
    {
        var phone = new Phone("a").Taps(new What.Issued(Runs.Path(sections)));
        foreach (var point in Preparation.All) phone.Taps(new What.Checked(point.Id));
        return phone;
    }

    /// <summary>A minute into section 3, seven after the batch.</summary>
    private static Phone RollingThird() => Prepared()
        .Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute)
        .Taps(new What.SectionWet("1", 0)).Waits(2 * Minute).Taps(new What.SectionDry("1", 0)).Taps(new What.SectionWet("2", 0))
        .Waits(2 * Minute).Taps(new What.SectionDry("2", 0)).Taps(new What.SectionWet("3", 0)).Waits(Minute);

    private static string Plain(string text) => text.Replace('\u00a0', ' ').Replace('\u202f', ' ');

    private static void IsTooEarly(string what, string ago, (IReadOnlyList<ToMark> Marks, Reason? Refusal) tapped)
    {
        Assert.Empty(tapped.Marks);
        Assert.Equal("BeforeItsBeginning", tapped.Refusal!.Code);
        var text = Plain(tapped.Refusal.Text(Voice.Default));
        Assert.Contains(what, text, StringComparison.Ordinal);
        Assert.Contains($"{ago} ago", text, StringComparison.Ordinal);
        Assert.Contains("undo", tapped.Refusal.Remedy(Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void A_section_is_not_done_before_it_was_begun()
    {
        var phone = RollingThird();
        IsTooEarly("Section 3 begun", "1 min", Tapping.Main(phone.Run, phone.RunNow, 0, 5 * Minute));
        IsTooEarly("Section 3 begun", "1 min", Tapping.Here(phone.Run, phone.RunNow, "3", 0, 2 * Minute));
        // In the same moment is not before it, and later is as ever.
        Assert.Equal(2, Tapping.Main(phone.Run, phone.RunNow, 0, Minute).Marks.Count);
        Assert.All(Tapping.Main(phone.Run, phone.RunNow, 0, Minute / 2).Marks, m => Assert.Equal(Minute / 2, m.BackMs));
    }

    [Fact]
    public void Nobody_goes_on_before_what_they_did_last()
    {
        var phone = RollingThird().Taps(new What.SectionDry("3", 0)).Waits(2 * Minute);
        IsTooEarly("Section 3: dry pass done", "2 min", Tapping.Here(phone.Run, phone.RunNow, "4", 0, 3 * Minute));
        Assert.Single(Tapping.Here(phone.Run, phone.RunNow, "4", 0, 2 * Minute).Marks);
        // Somebody else may have.
        Assert.NotEmpty(Tapping.Here(phone.Run, phone.RunNow, "4", 1, 3 * Minute).Marks);
        // What is undone holds nobody back.
        phone.Taps(new What.Undone(phone.Run.Log.Last(l => l.Mark.What is What.SectionDry).Mark.Stamp.Id));
        Assert.Null(Tapping.Main(phone.Run, phone.RunNow, 0, 3 * Minute).Refusal);
    }

    [Fact]
    public void Nothing_is_rolled_before_its_batch_was_mixed()
    {
        var phone = Prepared().Waits(10 * Minute).Taps(new What.BatchMixed("A", 1)).Waits(2 * Minute);
        IsTooEarly("Batch A", "2 min", Tapping.Here(phone.Run, phone.RunNow, "1", 0, 5 * Minute));
        Assert.Null(Tapping.Here(phone.Run, phone.RunNow, "1", 0, 2 * Minute).Refusal);
    }

    [Fact]
    public void A_step_comes_after_its_sections_and_work_goes_on_after_it_stopped()
    {
        var phone = Prepared(1).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0)).Waits(2 * Minute).Taps(new What.SectionDry("1", 0)).Waits(Minute);
        var step = phone.Run.Plan.Steps.First(s => s.FromBegun != true);
        IsTooEarly("Section 1: dry pass done", "1 min", Dated(new What.StepDone(step.Id), 2 * Minute));
        Assert.Single(Dated(new What.StepDone(step.Id), Minute).Marks);
        IsTooEarly("Section 1: dry pass done", "1 min", Dated(new What.Paused(), 2 * Minute));

        phone.Taps(new What.Paused()).Waits(Minute);
        IsTooEarly("All hands stop", "1 min", Dated(new What.Resumed(), 2 * Minute));
        phone.Taps(new What.Resumed()).Waits(Minute);
        IsTooEarly("Work goes on", "1 min", Dated(new What.Paused(), 2 * Minute));

        (IReadOnlyList<ToMark> Marks, Reason? Refusal) Dated(What what, long backMs) => Tapping.Dated(phone.Run, phone.RunNow, [new ToMark(what, BackMs: backMs)]);
    }

    [Fact]
    public void A_device_takes_back_its_own_last_tap_whatever_another_marked_since()
    {
        var (here, there) = (RollingThird(), new Phone("b"));
        var own = Tapping.LastOf(here.Run, "a");
        Assert.Equal([new What.SectionDry("2", 0), new What.SectionWet("3", 0)], own.Select(l => l.Mark.What));
        var run = Folding.Fold([.. here.Marks, there.Waits(20 * Minute).Mark(new What.BatchMixed("B", 1))])!;
        Assert.Equal(own.Select(l => l.Mark.Stamp.Id), Tapping.LastOf(run, "a").Select(l => l.Mark.Stamp.Id));
        Assert.Equal(new What.BatchMixed("B", 1), Assert.Single(Tapping.LastOf(run, "b")).Mark.What);
    }

    [Fact]
    public void It_is_said_in_both_languages()
    {
        var phone = RollingThird();
        var refusal = Tapping.Main(phone.Run, phone.RunNow, 0, 5 * Minute).Refusal!;
        var spanish = new Voice(Language.Spanish, UnitSystem.Metric);
        Assert.StartsWith("No se marcó: hace 5 min es demasiado pronto.", Plain(refusal.Text(spanish)), StringComparison.Ordinal);
        Assert.Contains("hace 1 min: «Sección 3 empezada", Plain(refusal.Text(spanish)), StringComparison.Ordinal);
        Assert.Contains("deshágala", refusal.Remedy(spanish), StringComparison.Ordinal);
    }
}
