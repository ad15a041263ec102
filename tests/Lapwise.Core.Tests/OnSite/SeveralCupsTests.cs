using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.OnSite;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Jobs;
using Lapwise.Core.Tests.Work;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.OnSite;

/// <summary>Two and more batches mixed before the first section: each section is rolled from its own.</summary>
public sealed class SeveralCupsTests
{
    private const long Minute = Runs.Minute;
    private const double Share = 0.25;

    /// <summary>Alba mixes every batch before the first section, then rolls so many two-minute sections from each.</summary>
    private static IssuedPlan Ahead(int sectionsEach = 2, int batches = 2, int openMinutes = 15)
    {
        var now = batches * 2 * Minute;
        var sections = Enumerable.Range(0, batches * sectionsEach)
            .Select(i => Plans.Section($"{i + 1}", 0, now + (i * 2 * Minute), now + ((i + 1) * 2 * Minute), Letter(i / sectionsEach))).ToList();
        return Issue(openMinutes, sections, [.. Enumerable.Range(0, batches).Select(b => Mixed(Letter(b), 0, b * 2 * Minute, sections))]);
    }

    /// <summary>Alba and Bo mix one each and roll side by side, Alba from A, Bo from B, which Bo has mixed.</summary>
    private static IssuedPlan BothMix()
    {
        List<Section> sections =
        [
            Plans.Section("1", 0, 2 * Minute, 4 * Minute, "A"), Plans.Section("2", 1, 3 * Minute, 5 * Minute, "A"),
            Plans.Section("3", 0, 4 * Minute, 6 * Minute, "B"), Plans.Section("4", 1, 5 * Minute, 7 * Minute, "B"),
        ];
        for (var i = 0; i < sections.Count; i++) sections[i] = sections[i] with { StandAt = new(i, 0) };
        return Issue(15, sections, [Mixed("A", 0, 0, sections), Mixed("B", 1, Minute, sections)]);
    }

    private static IssuedPlan Issue(int openMinutes, IReadOnlyList<Section> sections, IReadOnlyList<Batch> batches)
    {
        var laps = sections.Zip(sections.Skip(1), (a, b) => new Lap(a.Id, b.Id, LapKind.Flat, 0.6, [], b.EndMs - a.StartMs));
        var plan = Runs.Issue(Plans.Of(openMinutes * 60, Origin.DataSheet, sections, [.. laps], batches));
        return plan with { BatchAgeShare = Share, Crew = ["Alba", "Bo"], Sections = [.. plan.Sections.Select(s => s with { TakesMs = [2 * Minute, 2 * Minute] })] };
    }

    private static Batch Mixed(string id, int by, long atMs, IEnumerable<Section> sections) =>
        new(id, by, atMs, atMs + (2 * Minute), atMs + (60 * Minute), 300, 360, [.. sections.Where(s => s.Batch == id).Select(s => s.Id)]);

    private static string Letter(int batch) => $"{(char)('A' + batch)}";

    private static Phone Prepared(IssuedPlan plan)
    {
        var phone = new Phone("a").Taps(new What.Issued(plan));
        foreach (var point in Preparation.All) phone.Taps(new What.Checked(point.Id));
        return phone;
    }

    private static Present Now(Phone phone) => Presenting.Present(phone.Run, phone.RunNow);

    private static Phone TapsMain(Phone phone, int person = 0)
    {
        var (marks, refusal) = Tapping.Main(phone.Run, phone.RunNow, person);
        Assert.Null(refusal);
        Assert.NotEmpty(marks);
        foreach (var mark in marks) phone.Mark(mark.What, mark.IsAssumed, mark.BackMs);
        return phone;
    }

    /// <summary>Both cups are mixed, and the first section begins.</summary>
    private static Phone BothStand(IssuedPlan plan) => TapsMain(TapsMain(TapsMain(Prepared(plan)).Waits(2 * Minute)).Waits(2 * Minute));

    public static TheoryData<bool> Crews => [false, true];

    [Theory]
    [MemberData(nameof(Crews))]
    public void Before_anything_is_marked_the_forecast_is_the_plan(bool isCrew)
    {
        var plan = isCrew ? BothMix() : Ahead(batches: 3);
        var phone = Prepared(plan);
        var forecast = Now(phone).Forecast;
        Assert.Equal(plan.Sections.Select(s => (s.Id, s.Person, s.StartMs, s.EndMs, s.Batch)),
            forecast.Sections.OrderBy(s => s.Section.Id, StringComparer.Ordinal).Select(s => (s.Section.Id, s.Person, s.StartMs - phone.RunNow, s.EndMs - phone.RunNow, s.Batch)));
        Assert.Equal(isCrew ? [("A", 0, 0), ("B", 1, Minute)] : [("A", 0, 0L), ("B", 0, 2 * Minute), ("C", 0, 4 * Minute)],
            forecast.Batches.Select(b => (b.Id, b.Person, b.StartMs - phone.RunNow)));
    }

    /// <summary>One who rolls alone, one with a helper, and two who both roll and mix, with batches small enough to need many.</summary>
    [Theory]
    [InlineData(1, 11, 1, 0)]
    [InlineData(1, 11, 1, 4)]
    [InlineData(2, 11, 1, 0)]
    [InlineData(2, 5, 2, 0)]
    public void Before_anything_is_marked_the_forecast_of_a_whole_job_is_its_plan(int crew, int openMinutes, int rollers, int standsMinutes)
    {
        var job = Written.Job with
        {
            Tops = [Written.Island with { Edges = "ABCD".ToDictionary(c => $"{c}", _ => new EdgeDocument { Kind = EdgeKind.Open }), Cutouts = [], Outline = new OutlineDocument { Shape = OutlineShape.Rectangle, Length = "12 ft", Depth = "42 in" } }],
            Crew = [.. Enumerable.Range(1, crew).Select(i => new PersonDocument { Name = $"Person {i}" })],
        };
        var product = Written.Clear with { OpenTime = [new TimeAtDocument { Time = $"{openMinutes} min", At = "73 °F" }], LargestBatch = "12 fl oz" };
        if (standsMinutes > 0) product.Induction = $"{standsMinutes} min";
        var whole = WholeJob.From(job, [product]).Whole!;
        var plan = Issuing.Issue(whole.Job, 0, whole.Work.Coats[0], whole.Supply.Coats[0], [], whole.Job.Units, "", "1.2.3");
        var phone = Prepared(plan);
        Assert.True(plan.Batches.Count > 1);
        Assert.Equal(crew == 1, whole.Work.Coats[0].Batches.Skip(1).Any(whole.Work.Coats[0].StandsMixed));
        Assert.Equal(rollers, plan.Sections.Select(s => s.Person).Distinct().Count());
        var now = phone.RunNow;
        var forecast = Presenting.Present(phone.Run, now).Forecast;
        Assert.Equal(plan.Sections.Select(s => (s.Id, s.Person, s.StartMs / 1000, s.EndMs / 1000, s.Batch)).Order(),
            forecast.Sections.Select(s => (s.Section.Id, s.Person, (s.StartMs - now) / 1000, (s.EndMs - now) / 1000, s.Batch)).Order());
        Assert.Equal(plan.Batches.Select(b => (b.Id, b.MixedBy, b.MixStartMs / 1000)), forecast.Batches.Select(b => (b.Id, b.Person, (b.StartMs - now) / 1000)).OrderBy(b => b.Id));
    }

    [Fact]
    public void A_wait_passes_while_others_work()
    {
        // Bo mixes a minute after Alba: as long as Alba has been mixing, Bo has waited.
        var phone = Prepared(BothMix()).Taps(new What.BatchMixed("A", 0)).Waits(Minute / 2);
        Assert.Equal(Minute / 2, Now(phone).People[1].LeftMs);
        Assert.Equal("B", Assert.IsType<Duty.Mix>(Now(phone.Waits(Minute / 2)).People[1].Now).Batch.Id);
    }

    [Fact]
    public void A_run_with_two_cups_mixed_ahead_is_tapped_through_each_section_from_its_own()
    {
        var plan = Ahead();
        var phone = Prepared(plan);
        Assert.Equal("A", Assert.IsType<Duty.Mix>(Assert.Single(Now(phone).People).Now).Batch.Id);
        TapsMain(phone);
        var mixing = Assert.Single(Now(phone).People);
        Assert.Equal(("A", "B", 2 * Minute), (Assert.IsType<Duty.Mixing>(mixing.Now).Batch.Id, Assert.IsType<Duty.Mix>(mixing.Then).Batch.Id, mixing.LeftMs));
        TapsMain(phone.Waits(2 * Minute));
        Assert.Equal("B", Assert.IsType<Duty.Mixing>(Now(phone).People[0].Now).Batch.Id);
        TapsMain(phone.Waits(2 * Minute));
        for (var i = 1; i <= 4; i++)
        {
            Assert.Equal($"{i}", Assert.IsType<Duty.Rolling>(Now(phone).People[0].Now).Section.Id);
            TapsMain(phone.Waits(2 * Minute));
        }

        Assert.True(phone.Run.IsDone);
        Assert.Equal(["A", "A", "B", "B"], phone.Run.Sections.Values.OrderBy(s => s.WetAtMs).Select(s => phone.Run.BatchOf(s)!.Batch));
        // What the plan counted: film from A is a quarter of two and four minutes older, film from B of four and six.
        Assert.Equal([120_000L - 90_000, 60_000, 60_000, 90_000], phone.Run.Sections.Values.OrderBy(s => s.WetAtMs).Select(s => s.WetAtMs - phone.Run.FilmSinceMs(s)));
    }

    [Fact]
    public void Each_cup_is_as_old_as_its_own_mixing_and_says_what_it_is_for()
    {
        var phone = BothStand(Ahead());
        var cups = Now(phone).Cups;
        Assert.Equal([("A", 56 * Minute, "2"), ("B", 58 * Minute, "3 4")], cups.Select(c => (c.Id, c.UseByMs - phone.RunNow, string.Join(' ', c.For))));
        // The second from A as well; then B alone is open.
        TapsMain(phone.Waits(2 * Minute));
        Assert.Equal(["", "3 4"], Now(phone).Cups.Select(c => string.Join(' ', c.For)));
        TapsMain(phone.Waits(2 * Minute));
        Assert.Equal("B", Assert.Single(Now(phone).Cups).Id);
    }

    [Fact]
    public void A_mark_that_names_no_batch_counts_from_the_cup_mixed_last()
    {
        var phone = Prepared(Ahead()).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.BatchMixed("B", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0));
        Assert.Equal("B", phone.Run.BatchOf(phone.Run.Sections["1"])!.Batch);
        // So does one that names a batch whose mixing is undone, or was never marked.
        phone.Taps(new What.SectionWet("2", 0, "C"));
        Assert.Equal("B", phone.Run.BatchOf(phone.Run.Sections["2"])!.Batch);
    }

    [Fact]
    public void Marks_of_before_are_read_without_a_batch_and_new_ones_keep_it()
    {
        var old = """{"lapwise":1,"marks":[{"id":"z","device":"b","number":1,"kind":"sectionWet","section":"1","person":0,"clockMs":1,"session":"s","ticksMs":2}]}""";
        Assert.Equal(new What.SectionWet("1", 0), MarkReading.Read(RunFile.Read(old).Document!.Marks[0]).What);
        var phone = BothStand(Ahead());
        var read = Folding.Fold(RunFile.Read(RunFile.Write(new RunDocument { Marks = phone.Marks })).Document!.Marks)!;
        Assert.Equal("A", read.Sections["1"].Batch);
        Assert.Contains("from batch A", MarkWords.Of(read.Log[^1], read, Voice.Default), StringComparison.Ordinal);
        Assert.Contains("con la mezcla A", MarkWords.Of(read.Log[^1], read, new Voice(Language.Spanish, UnitSystem.Metric)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_cup_that_is_past_use_is_shown_so_and_the_other_is_gone_on_with()
    {
        var phone = BothStand(Ahead());
        // Called away for nearly an hour: A is gone, B has a minute.
        TapsMain(phone.Waits(2 * Minute)).Waits(55 * Minute);
        var present = Now(phone);
        Assert.Equal(["A", "B"], present.Cups.Select(c => c.Id));
        Assert.True(present.Cups[0].UseByMs < phone.RunNow && present.Cups[1].UseByMs > phone.RunNow);
    }

    [Fact]
    public void A_section_whose_own_cup_is_past_use_is_rolled_from_the_other()
    {
        var phone = BothStand(Ahead());
        phone.Waits(2 * Minute).Taps(new What.SectionDry("1", 0)).Waits(53 * Minute);
        // A has a minute, B three: section 2 takes two.
        Assert.Equal("B", Now(phone).Forecast.Sections.Single(s => s.Section.Id == "2").Batch);
        Assert.Equal(["A", "B"], Now(phone).Cups.Select(c => c.Id));
    }

    [Fact]
    public void A_replan_keeps_what_stands_and_what_is_to_be_mixed_ahead()
    {
        // Begun in the middle, from the right cup: a new order is given, and both cups are used.
        var phone = Prepared(Ahead(3, openMinutes: 10)).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.BatchMixed("B", 0)).Waits(2 * Minute)
            .Taps(new What.SectionWet("3", 0, "A")).Waits(2 * Minute).Taps(new What.SectionDry("3", 0));
        var replan = Replanning.Replan(phone.Run, phone.RunNow);
        Assert.True(replan.IsChanged);
        Assert.Equal(["A", "B"], replan.Forecast.Batches.Select(b => b.Id));
        Assert.Equal(["A", "A", "B", "B", "B"], replan.Turns.Select(t => t.Batch));

        // With only A mixed so far nothing is changed: B is still mixed before the first section.
        var mixed = Prepared(Ahead()).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute);
        Assert.Equal(["A", "B"], Replanning.Replan(mixed.Run, mixed.RunNow).Turns[0].Mixes);
        Assert.Equal("B", Assert.IsType<Duty.Mix>(Now(mixed).People[0].Now).Batch.Id);
    }

    /// <summary>The order in force is written with a mark: it comes back as it was.</summary>
    [Fact]
    public void An_order_that_mixes_ahead_comes_back_from_its_mark()
    {
        var phone = Prepared(Ahead());
        var turns = phone.Run.Turns;
        Assert.Equal(["A", "B"], turns[0].Mixes);
        Assert.All(turns.Skip(1), t => Assert.Null(t.Mixes));
        phone.Taps(new What.Replanned(turns));
        var read = Folding.Fold(RunFile.Read(RunFile.Write(new RunDocument { Marks = phone.Marks })).Document!.Marks)!;
        Assert.Equal(turns, read.Turns);
        Assert.NotEqual(turns[0], turns[0] with { Mixes = ["B", "A"] });
    }

    [Fact]
    public void I_am_here_assumes_what_was_mixed_ahead_as_well()
    {
        var phone = Prepared(Ahead()).Waits(10 * Minute);
        var (marks, refusal) = Tapping.Here(phone.Run, phone.RunNow, "2", 0);
        Assert.Null(refusal);
        foreach (var mark in marks) phone.Mark(mark.What, mark.IsAssumed, mark.BackMs);
        Assert.Equal([("A", -4 * Minute), ("B", -2 * Minute)], phone.Run.Batches.Select(b => (b.Batch, b.AtMs - phone.RunNow)));
        Assert.Equal(["A", "A"], phone.Run.Sections.Values.Select(s => s.Batch));
    }

    /// <summary>Its film must not look younger than it is.</summary>
    [Fact]
    public void A_batch_mixed_ahead_that_nobody_marked_is_as_old_as_the_first_section()
    {
        var phone = Prepared(Ahead()).Taps(new What.BatchMixed("A", 0)).Waits(4 * Minute);
        foreach (var id in new[] { "1", "2" }) phone.Taps(new What.SectionWet(id, 0, "A")).Waits(2 * Minute).Taps(new What.SectionDry(id, 0));
        foreach (var mark in Tapping.Here(phone.Run, phone.RunNow, "3", 0).Marks) phone.Mark(mark.What, mark.IsAssumed, mark.BackMs);
        var cup = Assert.Single(phone.Run.Batches, b => b.Batch == "B");
        Assert.Equal((true, Runs.Nine + (2 * Minute), "B"), (cup.Assumed, cup.AtMs, phone.Run.Sections["3"].Batch));
    }

    /// <summary>
    /// However long each step takes and whoever is late: worked by the one big tap, every section is rolled from the batch the
    /// plan gives it as long as that lives, and its film counts from that one's mixing.
    /// </summary>
    [Fact]
    public void Tapped_through_at_any_pace_each_section_comes_from_its_batch_while_it_lives() =>
        Gen.Select(Gen.Int[1, 3], Gen.Int[1, 3], Gen.Int[20, 400].Array[20]).Sample((sectionsEach, batches, tookS) =>
        {
            var plan = Ahead(sectionsEach, batches, openMinutes: 30);
            var phone = Prepared(plan);
            foreach (var s in tookS)
            {
                if (phone.Run.IsDone) break;
                TapsMain(phone).Waits(s * 1000);
            }

            foreach (var done in phone.Run.Sections.Values)
            {
                var planned = phone.Run.SectionOf(done.Section).Batch;
                Assert.Equal(planned, done.Batch);
                var mixed = phone.Run.Batches.Single(b => b.Batch == planned).AtMs + (2 * Minute);
                Assert.Equal(Math.Ceiling(Math.Max(0, done.WetAtMs - mixed) * Share / 1000 - 1e-9) * 1000, done.WetAtMs - phone.Run.FilmSinceMs(done));
            }
        }, iter: 60);
}
