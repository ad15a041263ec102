using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Work.Sections;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Remedies;

namespace Lapwise.Core.Tests.Work.Remedies;

/// <summary>Remedies of jobs made to fail in one way each.</summary>
public sealed class RemedyingTests
{
    private static readonly Job Slow = Invented.Job with
    {
        Crew = [new Person("Alba", new Pace(0.006, 0.012, 0.05, 20, 10, 150))],
        Aims = CutTops.OneAim,
        Tools = Invented.Tools with { LargestBatchMl = 420 },
    };

    private static MeasuredJob Measured(params IReadOnlyList<MeasuredTop> tops) => new(tops, tops[0].TakeOff, []);

    private static Job InRoom(Job job, double surfaceC, double materialC = 23) => job with
    {
        Room = Invented.Room with { Air = new AirTemperature(Math.Min(surfaceC, 30)), Surface = new SurfaceTemperature(surfaceC), Material = new MaterialTemperature(materialC) },
    };

    private static Job With(Job job, Func<Product, Product> change) => job with { System = [job.System[0] with { Product = change(job.System[0].Product) }] };

    private static IReadOnlyList<Remedy> Remedies(Job job, MeasuredJob measured, params IReadOnlyList<Product> library) => [.. Remedying.For(job, measured, 0, library)];

    /// <summary>An L in a hot room, from small batches: it holds, but not with a fifth of the open time in hand.</summary>
    private static readonly Job Hot = InRoom(Slow, 29);
    private static readonly MeasuredJob Kitchen = Measured(CutTops.LKitchen);
    private static readonly Product Patient = Invented.Clear with { Id = "patient", Name = "Patient clear", OpenTime = [new TimeAt(30 * 60, 23)] };
    private static readonly Product Base = Patient with { Id = "base", Hazards = [Hazard.EpoxyAmine] };
    private static readonly Lazy<IReadOnlyList<Remedy>> OfHot = new(() => Remedies(Hot, Kitchen, Patient, Base, Invented.Clear));

    /// <summary>Null where there is none; nothing that comes later is planned.</summary>
    private static Remedy? First(Job job, MeasuredJob measured, RemedyKind kind) =>
        Remedying.For(job, measured, 0, []).TakeWhile(r => r.Kind <= kind).FirstOrDefault(r => r.Kind == kind);

    private static Remedy Only(IEnumerable<Remedy> remedies, RemedyKind kind) => Assert.Single(remedies, r => r.Kind == kind);

    [Fact]
    public void For_a_plan_that_keeps_its_target_finds_none() =>
        Assert.Empty(Remedying.For(InRoom(Slow, 15), Kitchen, 0, [Patient]));

    [Fact]
    public void For_a_pour_over_its_batch_finds_a_larger_one_though_the_margin_is_kept()
    {
        var job = With(Slow, p => p with { Method = ApplicationMethod.Poured, WholeTopAtOnce = true, LargestBatchMl = 4000 });
        var small = job with { Tools = job.Tools with { LargestBatchMl = 80 } };
        var remedies = Remedies(small, Measured(CutTops.Top(new OutlineSpec.Rectangle(1.2, 0.6), "wwow")));
        Assert.True(Only(remedies, RemedyKind.LargerBatch).KeepsTarget);
        Assert.DoesNotContain(remedies, r => r.Kind == RemedyKind.Thinner);
    }

    [Fact] // Twenty seconds of life, and mixing takes longer: nothing but the life itself is a cure, and a wider margin is none.
    public void For_batches_that_outlive_their_pot_a_wider_margin_alone_is_no_remedy()
    {
        var job = With(Slow, p => p with { PotLife = [new TimeAt(20, 23)] });
        var now = Assert.Single(Planning.Plan(job, Kitchen, Judging.Judge(job)).Coats);
        Assert.Contains(now.Reasons, r => r.Code == "BatchOutlivesPot");
        Assert.All(Remedies(job, Kitchen).Select(r => r.Tried).OfType<Attempt>(), tried =>
        {
            Assert.NotEmpty(tried.Work.Batches);
            Assert.True(!tried.OutlivesPot || Overdue(tried.Work) < Overdue(now));
        });

        static long Overdue(CoatWork work) => work.Batches.Sum(b => Math.Max(0, work.Sections.Where(s => s.Batch == b.Id).Max(s => s.WetEndMs) - b.UseByMs));
    }

    [Fact]
    public void For_every_number_is_what_planning_with_the_change_gives()
    {
        Assert.True(OfHot.Value.Count(r => r.Tried is not null) > 3);
        Assert.All(OfHot.Value.Select(r => r.Tried).OfType<Attempt>(), tried =>
        {
            var again = Assert.Single(Planning.Plan(tried.Job, tried.Measured, Judging.Judge(tried.Job)).Coats);
            Assert.Equal(again.LapMarginMs, tried.Work.LapMarginMs);
            Assert.True(again.Holds || !tried.Holds);
        });
    }

    [Fact]
    public void For_what_does_not_help_is_left_out()
    {
        var now = Planning.Plan(Hot, Kitchen, Judging.Judge(Hot)).Coats[0];
        Assert.True(now.LapMarginMs < now.TargetMarginMs);
        Assert.All(OfHot.Value, r => Assert.True(r.Tried is null || r.KeepsTarget || r.LapMarginMs > now.LapMarginMs));
    }

    [Fact]
    public void Ranked_puts_what_keeps_the_target_first_and_then_the_least_trouble()
    {
        var ranked = Remedy.Ranked(OfHot.Value.Reverse());
        Assert.Equal(OfHot.Value.Count, ranked.Count);
        Assert.All(ranked.Zip(ranked.Skip(1)), pair =>
        {
            var (a, b) = (Standing(pair.First), Standing(pair.Second));
            Assert.True(a > b || (a == b && pair.First.Kind <= pair.Second.Kind));
        });

        static int Standing(Remedy r) => r.KeepsTarget ? 3 : r.Holds ? 2 : r.Tried is not null ? 1 : 0;
    }

    [Fact]
    public void For_every_text_is_said_in_both_languages() =>
        Said.InEveryVoice([.. OfHot.Value.SelectMany(r => new[] { r.Text, r.Change }), .. OfCrowded.Value.Select(r => r.Text)]);

    [Fact]
    public void Cooler_hour_is_the_warmest_whole_degree_that_keeps_the_target()
    {
        var tried = Only(OfHot.Value, RemedyKind.CoolerHour).Tried!;
        Assert.True(tried.KeepsTarget);
        var surface = tried.Job.Room.Surface.Celsius;
        Assert.Equal(Math.Round(surface), surface, 9);
        var warmer = InRoom(Slow, surface + 1);
        var work = Planning.Plan(warmer, Kitchen, Judging.Judge(warmer)).Coats[0];
        Assert.True(work.LapMarginMs < work.TargetMarginMs);
    }

    [Fact]
    public void Cooler_hour_keeps_the_moisture_of_the_room()
    {
        var (before, after) = (Judging.Judge(Hot).DewPointC, Judging.Judge(Only(OfHot.Value, RemedyKind.CoolerHour).Tried!.Job).DewPointC);
        Assert.Equal(before, after, 6);
    }

    [Fact]
    public void Cooler_hour_never_goes_below_the_dew_margin()
    {
        // 24 °C air at 75 %: dew point 19.3 °C, so no top under 22.3 °C.
        var damp = Slow with { Room = Invented.Room with { RelativeHumidity = 0.75, Surface = new SurfaceTemperature(24) } };
        var hasty = With(damp, p => p with { OpenTime = [new TimeAt(300, 23)] });
        if (First(hasty, Kitchen, RemedyKind.CoolerHour) is { } remedy)
            Assert.True(remedy.Tried!.Job.Room.Surface.Celsius >= Judging.Judge(hasty).DewPointC + 3);
    }

    [Fact]
    public void Cooler_hour_with_a_test_board_claims_no_number()
    {
        var board = Slow with { System = [Slow.System[0] with { TestBoard = new OpenTime(240, Origin.TestBoard) }] };
        var remedy = First(board, Kitchen, RemedyKind.CoolerHour);
        Assert.NotNull(remedy);
        Assert.Null(remedy.Tried);
        Assert.Null(remedy.LapMarginMs);
    }

    [Fact]
    public void Thinner_claims_no_number_and_never_passes_its_limit()
    {
        var remedy = Only(OfHot.Value, RemedyKind.Thinner);
        Assert.Null(remedy.Tried);
        Assert.Contains("2 %", remedy.Text(Voice.Default), StringComparison.Ordinal);
        var atLimit = Hot with { System = [Hot.System[0] with { ThinnerFraction = 0.02 }] };
        Assert.Null(First(atLimit, Kitchen, RemedyKind.Thinner));
    }

    [Fact]
    public void Slower_product_is_of_the_same_chemistry_and_within_its_own_film()
    {
        var thick = Patient with { LeastWetFilm = new WetFilm(180), MostWetFilm = new WetFilm(190) };
        var remedy = Only(Remedies(Crowded, Big, thick, Base, Patient with { Id = "poured", Method = ApplicationMethod.Poured }), RemedyKind.SlowerProduct);
        Assert.True(remedy.KeepsTarget);
        Assert.Equal(("patient", 180), (remedy.Tried!.Work.Coat.Product.Id, remedy.Tried.Work.Coat.WetFilm.Micrometres));
    }

    [Fact]
    public void A_break_at_the_corner_ends_at_the_inner_corner()
    {
        var outline = new OutlineSpec.L(3.2, 0.65, 2.4, 0.65);
        var remedy = Remedying.For(With(Slow, p => p with { OpenTime = [new TimeAt(330, 23)] }), Measured(CutTops.Top(outline, "wwooow")), 0, []).FirstOrDefault(r => r.Kind == RemedyKind.BreakAtCorner);
        Assert.NotNull(remedy);
        var joints = remedy.Tried!.Work.Laps.Where(l => l.Kind == LapKind.Break).ToList();
        Assert.NotEmpty(joints);
        // The inner corner of 3.2 × 0.65 with a leg 0.65 wide at the right.
        Assert.Contains(joints.SelectMany(j => j.Line), p => p.DistanceTo(new PointM(2.55, 0.65)) < 0.001);
    }

    [Theory]
    [InlineData(RemedyKind.BreakNearEnd)]
    [InlineData(RemedyKind.BreakInMiddle)]
    public void A_break_on_a_straight_top_falls_inside_its_longest_side(RemedyKind kind)
    {
        var remedies = Remedies(With(Slow, p => p with { OpenTime = [new TimeAt(500, 23)] }), Measured(CutTops.Island(3.6, 1.5)));
        Assert.All(remedies.Where(r => r.Kind == kind), r =>
        {
            var joint = Assert.Single(r.Tried!.Measured.Tops[0].Top.Breaks);
            Assert.Equal('A', joint.Side);
            Assert.InRange(joint.AtM, 0.1, 3.5);
            Assert.Contains(r.Tried.Work.Laps, l => l.Kind == LapKind.Break);
        });
        Assert.DoesNotContain(remedies, r => r.Kind == RemedyKind.BreakAtCorner);
    }

    /// <summary>A big island from small batches, one person, of a mix that grows hot where it stands: mixing falls inside its laps.</summary>
    private static readonly MeasuredJob Big = Measured(CutTops.Island(4, 0.9));
    private static readonly Job Crowded = With(
        Slow with { Crew = [new Person("Alba", Slow.Crew[0].Pace with { WetOutM2PerS = 0.005, DryPassM2PerS = 0.01 })] },
        p => p with { LargestBatchMl = 1400, Hazards = [.. p.Hazards, Hazard.HotMix], OpenTime = [new TimeAt(486, 23)], PotLife = [new TimeAt(4 * 3600, 23)] });

    private static readonly Lazy<IReadOnlyList<Remedy>> OfCrowded = new(() => Remedies(Crowded, Big));

    [Fact]
    public void A_larger_batch_keeps_to_the_data_sheet_and_mixes_less_often()
    {
        var tried = Only(OfCrowded.Value, RemedyKind.LargerBatch).Tried!;
        Assert.Equal(1400, tried.Job.Tools.LargestBatchMl);
        Assert.True(tried.Work.Batches.Count < Planning.Plan(Crowded, Big, Judging.Judge(Crowded)).Coats[0].Batches.Count);
        Assert.All(tried.Work.Batches, b => Assert.True(b.VolumeMl <= 1400));
    }

    [Fact]
    public void A_larger_batch_without_a_limit_on_the_data_sheet_claims_no_number() =>
        Assert.Null(First(With(Crowded, p => p with { LargestBatchMl = null }), Big, RemedyKind.LargerBatch)!.Tried);

    [Fact]
    public void A_helper_who_mixes_leaves_one_to_roll()
    {
        var remedy = Only(OfCrowded.Value, RemedyKind.HelperMixes);
        Assert.Equal(2, remedy.Tried!.Job.Crew.Count);
        Assert.All(remedy.Tried.Work.Sections, s => Assert.Equal(0, s.Person));
        Assert.All(remedy.Tried.Work.Batches, b => Assert.Equal(1, b.MixedBy));
    }

    [Fact]
    public void More_people_are_of_the_crew_s_own_pace_and_four_at_most() =>
        Assert.All(OfHot.Value.Concat(OfCrowded.Value).Where(r => r.Kind is RemedyKind.AnotherPersonRolls or RemedyKind.HelperMixes), r =>
        {
            Assert.InRange(r.Tried!.Job.Crew.Count, 2, 4);
            Assert.All(r.Tried.Job.Crew, p => Assert.Equal(r.Tried.Job.Crew[0].Pace, p.Pace));
        });

    [Fact]
    public void Cooler_material_makes_a_batch_outlive_its_rolling()
    {
        // Sections of about three minutes from batches that live four, mixed in two and a half.
        var warm = InRoom(With(Slow, p => p with { PotLife = [new TimeAt(240, 30)] }), 23, materialC: 30);
        var remedy = First(warm, Measured(CutTops.Island(1.6, 0.6)), RemedyKind.CoolerMaterial);
        Assert.NotNull(remedy);
        Assert.False(remedy.Tried!.OutlivesPot);
        Assert.True(remedy.Tried.Job.Room.Material.Celsius < 30);
        Assert.Equal(warm.Room.Surface, remedy.Tried.Job.Room.Surface);
    }

    [Fact]
    public void Narrower_sections_are_only_offered_where_sections_are_cut()
    {
        var poured = With(Hot, p => p with { Method = ApplicationMethod.Poured });
        Assert.DoesNotContain(Remedying.For(poured, Kitchen, 0, []), r => r.Kind == RemedyKind.NarrowerSections);
    }

    [Fact]
    public async Task ForAsync_in_slices_finds_the_same()
    {
        var pauses = 0;
        var effort = new Effort(1, async () =>
        {
            pauses++;
            await Task.Yield();
        });
        var texts = new List<string>();
        await foreach (var remedy in Remedying.ForAsync(Crowded, Big, 0, [], effort)) texts.Add($"{remedy.Text(Voice.Default)} {remedy.LapMarginMs}");
        Assert.Equal(OfCrowded.Value.Select(r => $"{r.Text(Voice.Default)} {r.LapMarginMs}"), texts);
        Assert.True(pauses > texts.Count);
    }

    [Fact]
    public async Task ForAsync_can_be_stopped()
    {
        var effort = new Effort(1, () => throw new OperationCanceledException());
        await Assert.ThrowsAsync<OperationCanceledException>(async () => await Remedying.ForAsync(Crowded, Big, 0, [], effort).GetAsyncEnumerator(TestContext.Current.CancellationToken).MoveNextAsync());
    }

    [Fact]
    public void A_break_is_never_offered_where_the_product_allows_none()
    {
        var unbroken = With(Crowded, p => p with { BreakAllowed = false });
        Assert.Contains(OfCrowded.Value, r => r.Kind is RemedyKind.BreakNearEnd or RemedyKind.BreakInMiddle);
        Assert.DoesNotContain(Remedies(unbroken, Big), r => r.Kind is RemedyKind.BreakNearEnd or RemedyKind.BreakInMiddle);
    }

    [Fact]
    public void For_a_coat_that_is_not_there_throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Remedying.For(Hot, Kitchen, 1, []));

    [Fact]
    public void For_nobody_to_work_finds_none() => Assert.Empty(Remedying.For(Hot with { Crew = [] }, Kitchen, 0, []));
}
