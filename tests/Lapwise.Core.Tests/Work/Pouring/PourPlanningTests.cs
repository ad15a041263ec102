using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Work.Sections;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Pouring;

namespace Lapwise.Core.Tests.Work.Pouring;

/// <summary>
/// Poured coats, checked against arithmetic by hand. Paces, losses and the rule of the order are common practice, no source.
/// </summary>
public sealed class PourPlanningTests
{
    /// <summary>1.6 mm at 100 % solids; levels for 12 min, passes at 10 and 25 min, drips from 3 to 6 h.</summary>
    private static readonly Product Flood = Invented.Clear with
    {
        Method = ApplicationMethod.Poured,
        LeastWetFilm = new WetFilm(1000),
        MostWetFilm = new WetFilm(3000),
        SagLimit = null,
        OpenTime = [new TimeAt(35 * 60, 23)],
        PotLife = [new TimeAt(40 * 60, 23)],
        LargestBatchMl = 3785,
        Hazards = [Hazard.EpoxyAmine, Hazard.HotMix],
        Pour = new PourTimes(12 * 60, [600, 1500], (3 * 3600, 6 * 3600)),
    };

    private static readonly MeasuredTop Bar = CutTops.Top(new OutlineSpec.Rectangle(3.6, 0.7), "owoo");

    [Fact]
    public void A_top_that_one_batch_covers_is_one_pour_with_no_lap()
    {
        var work = Plan(Flood, [CutTops.Top(new OutlineSpec.Rectangle(1.2, 0.6), "wwow")]);
        Assert.True(work.Holds);
        Assert.Empty(work.Laps);
        Assert.Single(work.Sections);
        Assert.Equal([StepKind.Pour, StepKind.Level, StepKind.BubblePass, StepKind.BubblePass, StepKind.ScrapeDrips], work.Steps.Select(s => s.Kind));
    }

    /// <summary>3.6 m × 0.7 m at 1.6 mm is 4.03 L, over a gallon: two pours, and the second joins the first.</summary>
    [Fact]
    public void A_top_over_one_batch_is_poured_in_two_parts_joined_while_open()
    {
        var work = Plan(Flood, [Bar]);
        Assert.True(work.Holds);
        Assert.Equal(["A", "B"], work.Sections.Select(s => s.Batch));
        var lap = Assert.Single(work.Laps);
        Assert.Equal((LapKind.Flat, "2"), (lap.Kind, lap.JoinedBy));
        Assert.Equal(0.7, lap.LengthM, 9);
        Assert.InRange(lap.AgeMs, 1, work.OpenTimeMs);
        Assert.All(work.Batches, b => Assert.InRange(b.VolumeMl, 1, 3785));
        Assert.All(work.Sections, s => Assert.True(s.WetEndMs <= work.Batches.Single(b => b.Id == s.Batch).UseByMs));
    }

    [Fact]
    public void Bubble_passes_and_scraping_count_from_when_a_pour_lies_spread()
    {
        var work = Plan(Flood, [Bar]);
        foreach (var section in work.Sections)
            Assert.Equal([section.WetEndMs + 600_000, section.WetEndMs + 1_500_000], work.Steps.Where(s => s.Kind == StepKind.BubblePass && s.Sections[0] == section.Id).Select(s => s.FromMs));
        var scrape = work.Steps.Single(s => s.Kind == StepKind.ScrapeDrips);
        Assert.Equal(work.Sections.Max(s => s.WetEndMs) + (3 * 3_600_000), scrape.FromMs);
        Assert.Equal(work.Sections.Min(s => s.WetEndMs) + (6 * 3_600_000), scrape.ToMs);
    }

    [Fact]
    public void Nobody_is_in_two_places_at_once()
    {
        foreach (var crew in new[] { 1, 2 })
        {
            var work = Plan(Flood, [Bar, .. Enumerable.Range(0, 5).Select(_ => CutTops.Top(new OutlineSpec.Rectangle(2, 0.6), "sfoo"))], crew);
            var busy = work.Batches.Select(b => (b.MixedBy, b.MixStartMs, b.MixEndMs))
                .Concat(work.Sections.Select(s => (s.Person, s.StartMs, s.EndMs)))
                .Concat(work.Steps.Where(s => s.Kind is StepKind.BubblePass or StepKind.ScrapeDrips).Select(s => (s.Person, s.StartMs, s.EndMs)));
            foreach (var person in busy.GroupBy(b => b.Item1))
            {
                var inTurn = person.OrderBy(b => b.Item2).ThenBy(b => b.Item3).ToList();
                Assert.All(inTurn.Zip(inTurn.Skip(1)), pair => Assert.True(pair.First.Item3 <= pair.Second.Item2));
            }
        }
    }

    [Fact]
    public void Splashes_are_brushed_before_their_flat_and_panels_after_it()
    {
        var work = Plan(Flood, [CutTops.Top(new OutlineSpec.Rectangle(2, 0.6), "sfow")]);
        Assert.Equal([FaceKind.Splash, FaceKind.Flat, FaceKind.Waterfall], work.Sections.Select(s => s.Face.Kind));
        Assert.Equal([StepKind.Brush, StepKind.Pour, StepKind.Level, StepKind.Brush], work.Steps.Take(4).Select(s => s.Kind));
    }

    [Fact]
    public void A_top_that_one_can_walk_round_is_reached_from_both_sides()
    {
        Assert.True(Plan(Flood, [CutTops.Top(new OutlineSpec.Rectangle(1.6, 1.5), "oooo")]).Holds);
        Assert.Equal("OutOfReach", Plan(Flood, [CutTops.Top(new OutlineSpec.Rectangle(1.6, 1.5), "wwow")]).Reasons.First(r => r.Limit != Limit.Note).Code);
    }

    public static TheoryData<string, string> Refusals => new()
    {
        { "a film that closes before two pours are level", "PoursJoinTooLate" },
        { "a pot life shorter than the pour", "PourOutlivesPot" },
        { "a whole top at once over one batch", "PourOverBatch" },
        { "a film that stops flowing at once", "LevelledTooLate" },
        { "drips that harden before the last pour's are soft", "DripWindowMissed" },
    };

    [Theory]
    [MemberData(nameof(Refusals))]
    public void What_cannot_be_is_refused_with_its_remedy(string what, string code)
    {
        var product = what switch
        {
            "a film that closes before two pours are level" => Flood with { OpenTime = [new TimeAt(5 * 60, 23)] },
            "a pot life shorter than the pour" => Flood with { PotLife = [new TimeAt(200, 23)] },
            "a whole top at once over one batch" => Flood with { WholeTopAtOnce = true },
            "a film that stops flowing at once" => Flood with { Pour = Flood.Pour with { LevelWithinS = 5 } },
            _ => Flood with { Pour = Flood.Pour with { ScrapeDrips = (3600, 3700) } },
        };
        var work = Plan(product, [Bar]);
        Assert.False(work.Holds);
        var reason = Assert.Single(work.Reasons, r => r.Code == code);
        Said.InEveryVoice([reason.Text, reason.Remedy]);
    }

    [Fact]
    public void A_batch_stands_as_long_as_its_product_asks_before_it_is_poured()
    {
        foreach (var crew in new[] { 1, 2 })
        {
            var work = Plan(Flood with { InductionS = 300 }, [Bar], crew);
            Assert.All(work.Sections, s => Assert.True(s.StartMs >= work.Batches.Single(b => b.Id == s.Batch).MixEndMs + 300_000));
        }
    }

    /// <summary>Alone, each of many tops is poured only once the passes of those before it are done.</summary>
    [Fact]
    public void Alone_no_pass_comes_too_late_for_another_top()
    {
        var work = Plan(Flood, [.. Enumerable.Range(0, 6).Select(_ => CutTops.Top(new OutlineSpec.Rectangle(2, 0.6), "wwow"))]);
        Assert.All(work.Steps.Where(s => s.Kind == StepKind.BubblePass), s => Assert.True(s.IsInTime));
        Assert.True(work.Holds);
    }

    /// <summary>Six tops of three pours each, from small batches that stand 5 min: hands are always wanted somewhere.</summary>
    private static readonly IReadOnlyList<MeasuredTop> Many = [.. Enumerable.Range(0, 6).Select(_ => CutTops.Top(new OutlineSpec.Rectangle(1.8, 0.75), "oooo"))];
    private static readonly Product Standing = Flood with { InductionS = 300, LargestBatchMl = 950 };

    /// <summary>What falls due is done before a batch is mixed or while it stands; a top is begun only when all its steps find a hand in time.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void No_step_comes_late_while_a_hand_could_be_free(int crew)
    {
        var work = Plan(Standing, Many, crew);
        Assert.True(work.Batches.Count > 12);
        Assert.All(work.Steps, s => Assert.True(s.IsInTime, $"{s}"));
        Assert.True(work.Holds);
        Assert.Equal(Enumerable.Range(0, crew), work.Steps.Select(s => s.Person).Concat(work.Batches.Select(b => b.MixedBy)).Distinct().Order());
    }

    /// <summary>Drips that can wait for hours leave a due pass its turn.</summary>
    [Fact]
    public void What_must_be_done_first_is_done_first()
    {
        var work = Plan(Standing with { Pour = Standing.Pour with { ScrapeDrips = (1500, 6 * 3600) } }, Many);
        Assert.All(work.Steps, s => Assert.True(s.IsInTime, $"{s}"));
    }

    /// <summary>One pour a top, from a batch that stands 5 min: the worst age is the longest pour and what that took of the open time.</summary>
    [Fact]
    public void The_proof_counts_what_the_age_of_the_batch_has_used()
    {
        var work = Plan(Flood with { InductionS = 300, Drying = null }, [CutTops.Top(new OutlineSpec.Rectangle(1.2, 0.6), "wwow")]);
        Assert.True(work.Sections[0].UsedMs > 0);
        Assert.Equal((ProofState.Proven, work.WorstCountedMs), (work.Proof.State, work.Proof.BoundMs));
    }

    [Fact]
    public void Where_vapour_can_catch_fire_no_flame_is_ever_named_for_bubbles()
    {
        var note = Plan(Flood with { Hazards = [Hazard.FlammableVapour] }, [Bar]).Reasons.Single(r => r.Code == "HowBubblesAreBroughtOut");
        Assert.Contains("never a flame", note.Text(Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_step_is_told_in_every_voice()
    {
        var work = Plan(Flood, [CutTops.Top(new OutlineSpec.Rectangle(2, 0.6), "sfoo")]);
        Assert.All(work.Steps, s => Said.InEveryVoice([v => StepWords.What(s, v)]));
    }

    private static CoatWork Plan(Product product, IReadOnlyList<MeasuredTop> tops, int crew = 1)
    {
        var named = tops.Select((t, i) => i == 0 ? t : Renamed(t, $"Top {i + 1}")).ToList();
        var job = Invented.Job with
        {
            Crew = [.. Enumerable.Range(0, crew).Select(i => Invented.Person with { Name = $"Person {i + 1}" })],
            Tops = [.. named.Select(t => t.Top)],
            System = [new Coat(product, null, new WetFilm(1600), 0, null)],
            Tools = Invented.Tools with { LargestBatchMl = 4000 },
        };
        var measured = new MeasuredJob(named, new TakeOff("", 0, 0, 0, 0, 0, 0), []);
        return Planning.Plan(job, measured, Judging.Judge(job)).Coats[0];
    }

    private static MeasuredTop Renamed(MeasuredTop top, string name) => Measuring.Measure(Invented.Job with { Tops = [top.Top with { Name = name }] }).Tops[0];
}
