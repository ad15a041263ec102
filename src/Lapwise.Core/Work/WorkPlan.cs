using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work;

// Result records of the order of work. Times in whole milliseconds from the first step of the coat.

public sealed record JobWork(IReadOnlyList<CoatWork> Coats)
{
    /// <summary>How many roll each coat.</summary>
    public IReadOnlyList<int> Rollers => [.. Coats.Select(c => c.Rollers)];
}

/// <summary>The order of work for one coat.</summary>
/// <param name="TargetMarginMs">Margin the plan was asked to keep.</param>
/// <param name="Reasons">What does not work or is narrow, with its remedy. Empty of limits: the plan works.</param>
public sealed record CoatWork(
    Coat Coat,
    OpenTime OpenTime,
    PotLife PotLife,
    IReadOnlyList<Section> Sections,
    IReadOnlyList<Lap> Laps,
    IReadOnlyList<Batch> Batches,
    Proof Proof,
    IReadOnlyList<Baseline> Baselines,
    long TargetMarginMs,
    IReadOnlyList<Reason> Reasons)
{
    /// <summary>A poured coat by the clock: pours, levelling, bubble passes, scraping. Empty for a coat that is rolled or wiped.</summary>
    public IReadOnlyList<TimedStep> Steps { get; init; } = [];

    /// <summary>How many people roll or pour it.</summary>
    public int Rollers => Sections.Select(s => s.Person).Distinct().Count();

    public long OpenTimeMs => (long)Math.Floor(OpenTime.Seconds * 1000);
    /// <summary>Whole seconds, rounded down: what the batches' use-by times count with.</summary>
    public long PotLifeMs => (long)Math.Floor(PotLife.Seconds) * 1000;
    public long WorstLapAgeMs => Laps.Where(l => l.Kind != LapKind.Break).Select(l => l.AgeMs).DefaultIfEmpty(0).Max();
    public long WorstSectionAgeMs => Sections.Select(s => s.EndMs - s.StartMs).DefaultIfEmpty(0).Max();
    /// <summary>Share of a batch's age, from the end of its mixing, that its film no longer stays open.</summary>
    public double BatchAgeShare { get; init; }
    /// <summary>The worst of all lap and section ages, each with what the age of its batch had already used.</summary>
    public long WorstCountedMs => Laps.Where(l => l.Kind != LapKind.Break).Select(l => l.AgeMs + l.UsedMs)
        .Concat(Sections.Select(s => s.EndMs - s.StartMs + s.UsedMs)).DefaultIfEmpty(0).Max();
    /// <summary>Open time less the worst of all lap and section ages, and less what the age of the batch has used of it.</summary>
    public long LapMarginMs => OpenTimeMs - WorstCountedMs;
    /// <summary>Whoever mixed it rolls from another batch first: it is mixed ahead of its use.</summary>
    public bool StandsMixed(Batch batch) =>
        Sections.Where(s => s.Batch == batch.Id).Select(s => s.StartMs).DefaultIfEmpty(0).Min() is var first
        && Sections.Any(s => s.Person == batch.MixedBy && s.StartMs >= batch.MixStartMs && s.StartMs < first);

    public long MarginMs(Lap lap) => OpenTimeMs - lap.UsedMs - lap.AgeMs;
    public long MarginMs(Section section) => OpenTimeMs - section.UsedMs - (section.EndMs - section.StartMs);
    public bool Holds => LapMarginMs >= 0 && Reasons.All(r => r.Limit == Limit.Note);
}

/// <summary>A part of a face that is rolled wet, then dry, before moving on.</summary>
/// <param name="Id">Number in the order of work, from 1.</param>
/// <param name="Rings">Outer boundary first, then holes, in the face's own plane.</param>
/// <param name="FilmM2">Film area with the strips it carries.</param>
/// <param name="EdgeM">Length of strips it carries.</param>
/// <param name="StandAt">Where the roller stands, in the flat's plan.</param>
/// <param name="StandSide">Letter of the side stood at.</param>
/// <param name="DryPassDeg">Direction of the dry pass in the face's plane; 90 on vertical faces (top down).</param>
public sealed record Section(
    string Id,
    Face Face,
    IReadOnlyList<IReadOnlyList<PointM>> Rings,
    double FaceM2,
    double FilmM2,
    double EdgeM,
    PointM StandAt,
    char? StandSide,
    double DryPassDeg,
    int Person,
    long StartMs,
    long WetEndMs,
    long EndMs,
    string Batch)
{
    /// <summary>Sections that come before it, so that nobody leans over wet film.</summary>
    public IReadOnlyList<string> After { get; init; } = [];
    /// <summary>What the age of its batch has used of its open time when it is begun.</summary>
    public long UsedMs { get; init; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<StepKind>))]
public enum StepKind
{
    /// <summary>Poured out and spread.</summary>
    Pour,
    /// <summary>Levelled; its window ends when the film no longer flows.</summary>
    Level,
    /// <summary>A splash or panel, brushed top down from the same batch.</summary>
    Brush,
    BubblePass,
    ScrapeDrips,
}

/// <summary>One thing done at its time on a poured coat.</summary>
/// <param name="Sections">What it is done to.</param>
/// <param name="FromMs">When the product asks for it: not before.</param>
/// <param name="ToMs">Not after; null: no limit.</param>
public sealed record TimedStep(StepKind Kind, string Top, IReadOnlyList<string> Sections, int Person, long StartMs, long EndMs, long FromMs, long? ToMs)
{
    /// <summary>By how much it comes after its time; 0: it does not.</summary>
    public long LateMs => ToMs is { } to ? Math.Max(0, (Kind == StepKind.BubblePass ? StartMs : EndMs) - to) : 0;

    public bool IsInTime => LateMs == 0;
}

[JsonConverter(typeof(CamelCaseEnumConverter<LapKind>))]
public enum LapKind
{
    Flat,
    Fold,
    /// <summary>A planned joint: it has no age limit.</summary>
    Break,
}

/// <summary>The line where two sections meet.</summary>
/// <param name="Line">In the plane of section <paramref name="A"/>.</param>
public sealed record Lap(string A, string B, LapKind Kind, double LengthM, IReadOnlyList<PointM> Line, long AgeMs)
{
    /// <summary>Of the two, the section that is begun later: it joins the one that is already wet.</summary>
    public string JoinedBy { get; init; } = B;
    /// <summary>What the age of the batches has used of its open time: counted with its age, it is what the lap takes.</summary>
    public long UsedMs { get; init; }
    /// <summary>Number, within its top, of the line it is a part of: what is moved together. Null at a fold.</summary>
    public int? Cut { get; init; }
    /// <summary>It lies where two arms of a top meet: a step between two batches does not catch the eye there.</summary>
    public bool AtCorner { get; init; }
}

/// <summary>Material mixed at one time, as the plan places it.</summary>
/// <param name="NetMl">A and B that go on the sections of the batch.</param>
/// <param name="VolumeMl">A and B to mix: net and losses.</param>
public sealed record Batch(string Id, int MixedBy, long MixStartMs, long MixEndMs, long UseByMs, double NetMl, double VolumeMl, IReadOnlyList<string> Sections)
{
    /// <summary>Mixed, and stood as long as the product asks; nothing is rolled from it before.</summary>
    public long ReadyMs { get; init; } = MixEndMs;
    /// <summary>More than may be mixed at one time, or rolled past its pot life: it stands in a plan that does not work, for its order to be seen.</summary>
    public bool IsNotToBeMixed { get; init; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<ProofState>))]
public enum ProofState { Proven, Bounded }

/// <summary>What is proven of the worst age: best possible, or no better than the bound; for those who roll and their times.</summary>
/// <param name="Of"><see cref="Order"/> or <see cref="OrderAndSections"/>.</param>
/// <param name="BoundMs">No order of these sections has a smaller worst age; with sections, none of any of the ways tried.</param>
public sealed record Proof(ProofState State, string Of, long BoundMs)
{
    public const string Order = "order";
    public const string OrderAndSections = "order and sections";

    /// <summary>How many ways of cutting <see cref="Top"/> the proof holds for; null where it holds for the sections of the plan alone.</summary>
    public int? Ways { get; init; }
    /// <summary>The top that sets the age: however the others are cut and ordered, it is no smaller.</summary>
    public string? Top { get; init; }
}

/// <summary>The usual way at the same pace, for comparison.</summary>
public sealed record Baseline(string Name, Phrase Text, long WorstAgeMs);
