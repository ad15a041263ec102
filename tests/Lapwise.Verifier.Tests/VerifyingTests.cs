using Lapwise.Core.Explain;

namespace Lapwise.Verifier.Tests;

public sealed class VerifyingTests
{
    private const string Jointed = """
        lapwise: 1
        name: Run with a planned joint, Wrenlow
        room: { air: 73 °F, humidity: 45 %, surface: 73 °F, material: 73 °F }
        crew: [{ name: Ines }]
        tops:
          - name: Long run
            outline: { shape: rectangle, length: 14 ft, depth: 25 in }
            edges:
              A: { kind: splash, height: 4 in, joint: true }
              B: { kind: waterfall, drop: 34 in }
              C: { kind: open }
              D: { kind: wall }
            breaks: [{ side: A, at: 7 ft }]
        system: [{ product: clear-fast-two-part, thinner: 1 % }]
        """;

    /// <summary>Four strips of the same length, and one splash behind them all.</summary>
    private const string InStrips = """
        lapwise: 1
        name: Run with lines of its own, Wrenlow
        room: { air: 73 °F, humidity: 45 %, surface: 73 °F, material: 73 °F }
        crew: [{ name: Ines }]
        tops:
          - name: Run
            outline: { shape: rectangle, length: 9 ft, depth: 25 1/2 in }
            edges:
              A: { kind: splash, height: 4 in, joint: true }
              B: { kind: open }
              C: { kind: open }
              D: { kind: open }
            sectionLines: [{ side: C, at: 27 in }, { side: C, at: 54 in }, { side: C, at: 81 in }]
        system: [{ product: clear-fast-two-part, thinner: 1 % }]
        """;

    /// <summary>Too deep to reach across: its ends are rolled standing in front of the panels.</summary>
    private const string Panelled = """
        lapwise: 1
        name: Island between two panels, Wrenlow
        room: { air: 73 °F, humidity: 45 %, surface: 73 °F, material: 73 °F }
        crew: [{ name: Ines }]
        tops:
          - name: Island
            outline: { shape: rectangle, length: 8 ft, depth: 42 in }
            edges:
              A: { kind: open }
              B: { kind: waterfall, drop: 34 1/2 in }
              C: { kind: open }
              D: { kind: waterfall, drop: 34 1/2 in }
            cutouts: [{ name: Hob, shape: rectangle, length: 30 in, depth: 20 in, along: 4 ft, in: 21 in }]
        system: [{ product: clear-fast-two-part, thinner: 1 % }]
        """;

    /// <summary>So deep that its middle is out of reach, as the plan says itself.</summary>
    private const string Deep = """
        lapwise: 1
        name: Deep bench, Wrenlow
        room: { air: 73 °F, humidity: 45 %, surface: 73 °F, material: 73 °F }
        crew: [{ name: Ines }]
        tops:
          - name: Deep
            outline: { shape: rectangle, length: 8 ft, depth: 60 in }
            edges: { A: { kind: wall }, B: { kind: wall }, C: { kind: open }, D: { kind: wall } }
        system: [{ product: clear-fast-two-part, thinner: 1 % }]
        """;

    private const string Pair = """
        lapwise: 1
        name: Bench for two, Wrenlow
        room: { air: 73 °F, humidity: 45 %, surface: 92 °F, material: 73 °F }
        crew: [{ name: Ines, pace: { wetOut: 3 ft²/min } }, { name: Tomas, pace: { wetOut: 3 ft²/min } }]
        tops:
          - name: Bench
            outline: { shape: rectangle, length: 8 ft, depth: 60 in }
            edges: { A: { kind: open }, B: { kind: open }, C: { kind: open }, D: { kind: open } }
        system: [{ product: clear-fast-two-part, thinner: 1 % }]
        """;

    /// <summary>From two small cups, by one person: both are mixed before the first section.</summary>
    private const string TwoCups = """
        lapwise: 1
        name: Island from two cups, Wrenlow
        room: { air: 73 °F, humidity: 45 %, surface: 73 °F, material: 73 °F }
        crew: [{ name: Ines }]
        tools: { largestBatch: 16 fl oz }
        tops:
          - name: Island
            outline: { shape: rectangle, length: 10 ft, depth: 48 in }
            edges: { A: { kind: open }, B: { kind: open }, C: { kind: open }, D: { kind: open } }
        system: [{ product: clear-fast-two-part, thinner: 1 % }]
        """;

    /// <summary>Of a mix that grows hot in its cup, so each is mixed when it is wanted.</summary>
    private static readonly string HotCups = TwoCups.Replace("clear-fast-two-part, thinner: 1 %", "base-epoxy-amine, wetFilm: 8 mil", StringComparison.Ordinal);

    private static readonly Dictionary<string, string> Written = new() { [nameof(Jointed)] = Jointed, [nameof(InStrips)] = InStrips, [nameof(Panelled)] = Panelled, [nameof(Deep)] = Deep, [nameof(Pair)] = Pair, [nameof(TwoCups)] = TwoCups, [nameof(HotCups)] = HotCups };

    public static TheoryData<string> WrittenJobs => [.. Written.Keys];

    [Theory]
    [MemberData(nameof(WrittenJobs))]
    public void A_written_job_is_planned_as_its_plan_says(string job)
    {
        var planned = PlannedJob.Of(Written[job]);
        Assert.Empty(planned.Violations(planned.Plan));
    }

    public static TheoryData<string> Samples => [.. PlannedJob.AllSamples];

    [Theory]
    [MemberData(nameof(Samples))]
    public void Every_sample_is_planned_as_its_plan_says(string sample)
    {
        var planned = PlannedJob.Sample(sample);
        var verification = Verifying.Verify(planned.Job, planned.Measured, planned.Conditions, planned.Plan);
        Assert.Empty(verification.Violations.Select(v => v.Say(Voice.Default)));
        Assert.All(verification.Looked.Where(l => !l.At(Voice.Default).Contains("lap,")), l => Assert.True(l.Times > 0, l.At(Voice.Default)));
    }

    [Fact]
    public void ACoatPlannedOnTheTopOfAnother_isFound()
    {
        var planned = PlannedJob.Sample("two-colours.job.yaml");
        Assert.Contains("FaceUnknown", planned.Violations(planned.Plan with { Coats = [planned.Plan.Coats[1], planned.Plan.Coats[0], planned.Plan.Coats[2]] }));
    }

    [Fact]
    public void Planned_joints_are_known_as_breaks()
    {
        var planned = PlannedJob.Of(Jointed);
        Assert.Empty(planned.Violations(planned.Plan));
        var kinds = planned.Plan.Coats[0].Laps.Select(l => l.Kind).ToHashSet();
        Assert.Superset(new HashSet<string> { "break", "flat", "fold" }, kinds);
    }

    [Fact]
    public void Batches_mixed_ahead_are_looked_at()
    {
        var coat = PlannedJob.Of(TwoCups).Plan.Coats[0];
        Assert.True(coat.Batches.Count > 1);
        Assert.All(coat.Batches, b => Assert.True(b.MixEndS <= coat.Sections.Min(s => s.StartS)));
    }

    /// <summary>One thing is broken at a time; the checker must name it.</summary>
    public static TheoryData<string, string> Mutations => [.. Changes.Keys.Select(k => (k.Job, k.Code))];

    [Theory]
    [MemberData(nameof(Mutations))]
    public void A_broken_plan_is_named_for_what_is_broken(string job, string code)
    {
        var planned = Written.TryGetValue(job, out var yaml) ? PlannedJob.Of(yaml) : PlannedJob.Sample(job + ".job.yaml");
        Assert.Contains(code, planned.Violations(Changes[(job, code)]));
    }

    [Fact]
    public void A_pour_levelled_by_another_than_who_pours_it_is_named()
    {
        var planned = PlannedJob.Sample(Bar + ".job.yaml");
        var other = planned.Plan.Coats[^1].Batches[0].MixedBy;
        Assert.Contains("StepDiffersFromSection", planned.Violations(Step("level", s => s with { Person = other })));
    }

    [Fact]
    public void A_coat_left_out_is_named()
    {
        var planned = PlannedJob.Sample("vanity.job.yaml");
        Assert.Contains("CoatsDiffer", planned.Violations(planned.Plan with { Coats = [.. planned.Plan.Coats.Take(1)] }));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("null")]
    [InlineData("""{ "coats": [ { "product": "x" } ] }""")]
    [InlineData("""{ "coats": 5 }""")]
    public void What_is_no_plan_is_a_fault(string json)
    {
        var (plan, faults) = Plan.Read(json);
        Assert.Null(plan);
        Assert.Equal("PlanNotUnderstood", Assert.Single(faults).Code);
    }

    private const string Kitchen = "l-kitchen";
    private const string Island = "jumbo-island";
    private const string Bar = "bar-top";

    private static readonly Dictionary<(string Job, string Code), Func<PlannedCoat, PlannedCoat>> Changes = new()
    {
        // clocks
        [(Island, "ProductDiffers")] = c => c with { Product = "another" },
        [(Island, "MethodDiffers")] = c => c with { Method = "poured" },
        [(Island, "OriginDiffers")] = c => c with { OpenTimeOrigin = "testBoard" },
        [(Island, "OpenTimeWrong")] = c => c with { OpenTimeS = c.OpenTimeS + 60 },
        [(Island, "PotLifeWrong")] = c => c with { PotLifeS = c.PotLifeS + 60 },
        // partition
        [(Kitchen, "SectionTwice")] = c => c with { Sections = [.. c.Sections, c.Sections[0]] },
        [(Kitchen, "FaceUnknown")] = First(s => s with { Face = "Nowhere/flat" }),
        [(Kitchen, "OutlineUnusable")] = First(s => s with { OutlineM = [[0, 0], [1, 1]] }),
        [(Kitchen, "FaceNotCovered")] = c => c with { Sections = [.. c.Sections.Skip(1)] },
        [(Island, "FaceNotCovered")] = First(s => s with { OutlineM = Moved(s.OutlineM, p => [p[0], p[1] * 0.999]) }),
        [(Kitchen, "FilmNotCovered")] = First(s => s with { FilmM2 = s.FilmM2 * 0.95 }),
        [(Kitchen, "EdgesNotCovered")] = Section(s => s.EdgeM > 0.1, s => s with { EdgeM = s.EdgeM - 0.1 }),
        [(Kitchen, "SectionAreaWrong")] = First(s => s with { AreaM2 = s.AreaM2 + 0.001 }),
        [(Island, "SectionLeavesFace")] = First(s => s with { OutlineM = Moved(s.OutlineM, p => [p[0] - 0.01, p[1]]) }),
        [(Island, "SectionsOverlap")] = First(s => s with { OutlineM = Moved(s.OutlineM, p => [p[0] + 0.01, p[1]]) }),
        // crew
        [(Kitchen, "PersonUnknown")] = First(s => s with { Person = "Nobody" }),
        [(Kitchen, "TwoPlacesAtOnce")] = Section(s => s.Id == "2", s => Shifted(s, -5)),
        [(Island, "TwoPlacesAtOnce")] = Batch(b => b with { MixEndS = b.MixEndS + 30 }),
        // section times
        [(Kitchen, "TimesOutOfOrder")] = First(s => s with { WetEndS = s.StartS - 1 }),
        [(Kitchen, "WetTimeWrong")] = First(s => s with { WetEndS = s.StartS + 5 }),
        [(Kitchen, "DryTimeWrong")] = First(s => s with { EndS = s.WetEndS + 1 }),
        // reach
        [(Island, "StandsNowhere")] = First(s => s with { StandAt = [1.5, 0.7] }),
        [(Island, "OutOfReach")] = First(s => s with { StandSide = s.StandSide == "A" ? "C" : "A", StandAt = [s.StandAt[0], s.StandAt[1] < 0.1 ? 1.524 : 0] }),
        [(Island, "LeansOverWet")] = c => c with { Sections = [.. c.Sections.Select(s => s.Id != c.Sections[^1].Id ? s : s with { StandSide = "D", StandAt = [0, s.StandAt[1]] })] },
        [(nameof(InStrips), "LeansOverWet")] = c => c with { Sections = [.. c.Sections.Select(s => s.Face == "Run/splash A" ? s with { StartS = c.Sections[^1].EndS, EndS = c.Sections[^1].EndS + 60 } : s)] },
        [(nameof(Panelled), "StandsAgainstWet")] = c => c with { Sections = [.. c.Sections.Select(s => s.Face.StartsWith("Island/waterfall", StringComparison.Ordinal) ? s with { StartS = 0, WetEndS = 1, EndS = 2 } : s)] },
        [(nameof(Deep), "LeansOverWet")] = c => c with { Sections = [.. c.Sections.Reverse().Select((s, i) => s with { StartS = 100 * i, EndS = (100 * i) + 90 })] },
        [(nameof(Deep), "OutOfReach")] = c => c with { Reasons = [] },
        [(nameof(Pair), "NoElbowRoom")] = c => c with { Sections = [.. c.Sections.Select(s => s with { StandAt = c.Sections[0].StandAt })] },
        // laps
        [(Kitchen, "LapMissing")] = c => c with { Laps = [.. c.Laps.Where(l => Key(l) != Key(c.Laps[0]))] },
        [(Kitchen, "LapLengthWrong")] = Lap(l => l.LengthM > 0.3, l => l with { LengthM = l.LengthM + 0.05 }),
        [(Kitchen, "LapKindWrong")] = Lap(l => l.Kind == "fold", l => l with { Kind = "break" }),
        [(nameof(Jointed), "LapKindWrong")] = Lap(l => l.Kind == "break", l => l with { Kind = "flat" }),
        [(Kitchen, "LapWithoutTouch")] = c => c with { Laps = [.. c.Laps, c.Laps[0] with { A = c.Sections[0].Id, B = c.Sections[^1].Id }] },
        // ages
        [(Kitchen, "LapAgeWrong")] = Lap(_ => true, l => l with { AgeS = l.AgeS - 1 }),
        [(Kitchen, "LapMarginWrong")] = Lap(_ => true, l => l with { MarginS = l.MarginS + 1 }),
        [(Kitchen, "WorstLapAgeWrong")] = c => c with { WorstLapAgeS = c.WorstLapAgeS - 1 },
        [(Kitchen, "WorstSectionAgeWrong")] = c => c with { WorstSectionAgeS = c.WorstSectionAgeS - 1 },
        [(Kitchen, "MarginWrong")] = c => c with { LapMarginS = c.LapMarginS + 1 },
        [(Kitchen, "BatchAgeShareWrong")] = c => c with { BatchAgeShare = 0 },
        [(Kitchen, "UsedWrong")] = Section(s => s.UsedS > 0, s => s with { UsedS = 0 }),
        // batches
        [(Kitchen, "BatchTwice")] = c => c with { Batches = [.. c.Batches, c.Batches[0]] },
        [(Kitchen, "BatchUnknown")] = First(s => s with { Batch = "Z" }),
        [(Kitchen, "UsedBeforeMixed")] = Batch(b => b with { MixStartS = b.MixStartS + 400, MixEndS = b.MixEndS + 400, UseByS = b.UseByS + 400 }),
        [(Kitchen, "BatchOutlivesPot")] = Batch(b => b with { UseByS = b.MixEndS + 60 }),
        [(Kitchen, "BatchForNothing")] = c => c with { Batches = [.. c.Batches, c.Batches[^1] with { Id = "Z" }] },
        [(Kitchen, "BatchNetWrong")] = Batch(b => b with { NetMl = b.NetMl - 20 }),
        [(Kitchen, "BatchTooSmall")] = Batch(b => b with { VolumeMl = b.NetMl * 0.9, AMl = b.NetMl * 0.6, BMl = b.NetMl * 0.3 }),
        [(Kitchen, "BatchMoreThanWanted")] = Batch(b => b with { VolumeMl = b.VolumeMl + 150, AMl = b.AMl + 100, BMl = b.BMl + 50 }),
        [(Kitchen, "BatchTooLarge")] = Batch(b => b with { VolumeMl = 3000, AMl = 2000, BMl = 1000 }),
        [(Kitchen, "UseByWrong")] = Batch(b => b with { UseByS = b.MixEndS + (b.UseByS - b.MixStartS) }),
        [(Kitchen, "MixTimeWrong")] = Batch(b => b with { MixEndS = b.MixEndS - 60 }),
        [(nameof(TwoCups), "UsedBeforeMixed")] = c => c with { Batches = [.. c.Batches.Select(b => Mixed(b, b.MixStartS + 900))] },
        [(nameof(TwoCups), "TwoPlacesAtOnce")] = c => c with { Batches = [.. c.Batches.Select(b => Mixed(b, 0))] },
        [(nameof(TwoCups), "MixedOutOfOrder")] = c => c with { Batches = [Mixed(c.Batches[0], c.Batches[1].MixStartS), Mixed(c.Batches[1], c.Batches[0].MixStartS), .. c.Batches.Skip(2)] },
        [(nameof(TwoCups), "UsedWrong")] = Section(s => s.Batch == "B", s => s with { UsedS = 0 }),
        [(nameof(TwoCups), "BatchOutlivesPot")] = c => c with { Sections = [.. c.Sections.Select(s => s.Batch == "A" ? s : Shifted(s, 3600))] },
        [(nameof(HotCups), "HotMixStands")] = c => c with { Batches = [.. c.Batches.Select(b => Mixed(b, 0))] },
        // steps of a pour
        [(Island, "StepsOfCoatNotPoured")] = c => c with { Steps = [new("level", "Great island", ["1"], c.Sections[0].Person, 0, 5, 0, 60)] },
        [(Bar, "StepMissing")] = c => c with { Steps = [.. c.Steps.Where(s => s.Kind != "scrapeDrips")] },
        [(Bar, "StepForNothing")] = c => c with { Steps = [.. c.Steps, c.Steps.First(s => s.Kind == "bubblePass")] },
        [(Bar, "StepTooLate")] = Step("bubblePass", s => s with { StartS = s.StartS + 200, EndS = s.EndS + 200 }),
        [(Bar, "StepTooEarly")] = Step("bubblePass", s => s with { StartS = s.StartS - 60, EndS = s.EndS - 60 }),
        [(Bar, "StepOfOtherSections")] = Step("scrapeDrips", s => s with { Sections = ["1"] }),
        [(Bar, "StepDiffersFromSection")] = Step("level", s => s with { EndS = s.EndS + 30 }),
        [(Bar, "StepWindowWrong")] = Step("level", s => s with { ToS = s.ToS + 300 }),
        [(Bar, "StepTimeWrong")] = Step("bubblePass", s => s with { EndS = s.StartS + 5 }),
        [(Bar, "TwoPlacesAtOnce")] = Step("scrapeDrips", s => s with { EndS = s.EndS + 120 }),
        [(Bar, "JoinedByWrong")] = Lap(_ => true, l => l with { JoinedBy = l.JoinedBy == l.A ? l.B : l.A }),
        // tickets
        [(Kitchen, "PartsDoNotAddUp")] = Batch(b => b with { AMl = b.AMl + 10 }),
        [(Kitchen, "RatioErrorWrong")] = Batch(b => b with { AMl = b.AMl + 10, VolumeMl = b.VolumeMl + 10 }),
        [(Kitchen, "RatioErrorByMassWrong")] = Batch(b => b with { AG = b.AG + 10 }),
        [(Kitchen, "MassAWrong")] = Batch(b => b with { AG = b.AG * 2 }),
        [(Kitchen, "MassBWrong")] = Batch(b => b with { BG = b.BG * 2 }),
        [(Kitchen, "MassThinnerWrong")] = Batch(b => b with { ThinnerG = b.ThinnerG + 200 }),
        [(Kitchen, "ThinnerWrong")] = Batch(b => b with { ThinnerMl = b.ThinnerMl + 20 }),
        [(Kitchen, "ThinnerOverLimit")] = Batch(b => b with { ThinnerMl = b.VolumeMl * 0.021 }),
        // claims
        [(Kitchen, "ClosedLapHidden")] = c => c with { LapMarginS = -5 },
        [(Kitchen, "HoldsAgainstReasons")] = c => c with { Holds = false },
        [(Island, "HoldsAgainstReasons")] = c => c with { Reasons = [.. c.Reasons, new PlannedReason("X", "never", "x", "y")] },
        [(Kitchen, "ReasonEmpty")] = c => c with { Reasons = [.. c.Reasons, new PlannedReason("X", "note", "x", "")] },
        [(Kitchen, "BoundAboveWorst")] = c => c with { Proof = c.Proof with { BoundS = c.OpenTimeS - c.LapMarginS + 60 } },
        [(Kitchen, "ProofWrong")] = c => c with { Proof = c.Proof with { State = "proven", BoundS = c.WorstLapAgeS - 60 } },
        [(Kitchen, "ProofOfWrong")] = c => c with { Proof = c.Proof with { Of = "order and sections" } },
        [(Kitchen, "BaselineMissing")] = c => c with { Baselines = [] },
    };

    private static Func<PlannedCoat, PlannedCoat> First(Func<PlannedSection, PlannedSection> change) => Section(_ => true, change);

    private static Func<PlannedCoat, PlannedCoat> Section(Func<PlannedSection, bool> which, Func<PlannedSection, PlannedSection> change) =>
        c => c with { Sections = [.. Once(c.Sections, which, change)] };

    private static Func<PlannedCoat, PlannedCoat> Step(string kind, Func<PlannedStep, PlannedStep> change) =>
        c => c with { Steps = [.. Once(c.Steps, s => s.Kind == kind, change)] };

    private static Func<PlannedCoat, PlannedCoat> Lap(Func<PlannedLap, bool> which, Func<PlannedLap, PlannedLap> change) =>
        c => c with { Laps = [.. Once(c.Laps, which, change)] };

    private static Func<PlannedCoat, PlannedCoat> Batch(Func<PlannedBatch, PlannedBatch> change) =>
        c => c with { Batches = [.. Once(c.Batches, _ => true, change)] };

    private static IEnumerable<T> Once<T>(IReadOnlyList<T> items, Func<T, bool> which, Func<T, T> change)
    {
        var at = items.Select((item, i) => (item, i)).First(x => which(x.item)).i;
        return items.Select((item, i) => i == at ? change(item) : item);
    }

    private static PlannedBatch Mixed(PlannedBatch b, double atS) =>
        b with { MixStartS = atS, MixEndS = atS + b.MixEndS - b.MixStartS, UseByS = atS + b.UseByS - b.MixStartS };

    private static PlannedSection Shifted(PlannedSection s, double seconds) =>
        s with { StartS = s.StartS + seconds, WetEndS = s.WetEndS + seconds, EndS = s.EndS + seconds };

    private static List<double[]> Moved(IReadOnlyList<double[]> ring, Func<double[], double[]> to) => [.. ring.Select(to)];

    private static string Key(PlannedLap l) => string.CompareOrdinal(l.A, l.B) < 0 ? $"{l.A}-{l.B}" : $"{l.B}-{l.A}";
}
