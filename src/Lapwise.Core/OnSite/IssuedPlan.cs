using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;

namespace Lapwise.Core.OnSite;

/// <summary>
/// The plan of one coat as it was given out: frozen, with everything a phone without the job needs to work from it.
/// Times in milliseconds, from the first step of the coat.
/// </summary>
public sealed record IssuedPlan
{
    /// <summary>The name of the job.</summary>
    public string Job { get; set; } = "";
    /// <summary>Place of the coat in the system, from 0.</summary>
    public int Coat { get; set; }
    /// <summary>The product's name.</summary>
    public string Product { get; set; } = "";
    /// <summary>Colour of the coat, where it has one.</summary>
    public string? Color { get; set; }
    /// <summary>The product with its colour.</summary>
    public string Coating() => Jobs.Coat.Named(Product, Color);
    /// <summary>How it is applied.</summary>
    public ApplicationMethod Method { get; set; }
    /// <summary>Stands for everything the plan was made from; another value, another input.</summary>
    public string Fingerprint { get; set; } = "";
    /// <summary>Version of the program that made it.</summary>
    public string Core { get; set; } = "";
    /// <summary>How long the film still takes a lap without a line.</summary>
    public long OpenTimeMs { get; set; }
    /// <summary>What the open time rests on.</summary>
    public Origin OpenTimeOrigin { get; set; }
    /// <summary>How long a mixed batch can be used, from the first contact of A and B.</summary>
    public long PotLifeMs { get; set; }
    /// <summary>How a batch shows that it is past use.</summary>
    public EndOfPotLife EndsBy { get; set; }
    /// <summary>Share of a batch's age, from the end of its mixing, that its film no longer stays open; 0 to 1.</summary>
    public double BatchAgeShare { get; set; }
    /// <summary>Margin the plan was asked to keep.</summary>
    public long TargetMarginMs { get; set; }
    /// <summary>Mixing one batch.</summary>
    public long MixMs { get; set; }
    /// <summary>How long a mixed batch stands before its first use.</summary>
    public long StandMs { get; set; }
    /// <summary>The most that one batch gives to sections, A and B, mL.</summary>
    public double LargestGivesMl { get; set; }
    /// <summary>The people, by name; how many of them roll in the plan follows from the sections.</summary>
    public IReadOnlyList<string> Crew { get; set; } = [];
    /// <summary>What is rolled, in the plan's order.</summary>
    public IReadOnlyList<IssuedSection> Sections { get; set; } = [];
    /// <summary>Where sections meet.</summary>
    public IReadOnlyList<IssuedLap> Laps { get; set; } = [];
    /// <summary>What is mixed.</summary>
    public IReadOnlyList<IssuedBatch> Batches { get; set; } = [];
    /// <summary>What is done beside rolling.</summary>
    public IReadOnlyList<IssuedStep> Steps { get; set; } = [];
    /// <summary>What spoke against it when it was given out.</summary>
    public IReadOnlyList<IssuedReason> Against { get; set; } = [];
    /// <summary>What the data sheet warns of.</summary>
    public IReadOnlyList<Hazard> Hazards { get; set; } = [];
    /// <summary>The room it was made for, and how its times follow a reading; left out: readings change nothing.</summary>
    public IssuedRoom? Room { get; set; }
    /// <summary>When the next coat may follow without sanding, from the end of this one; left out: the data sheet gives none.</summary>
    public IssuedRecoat? Recoat { get; set; }
}

/// <summary>A part of a face that is rolled wet, then dry, before moving on.</summary>
public sealed record IssuedSection
{
    /// <summary>Number in the order of work, from 1.</summary>
    public string Id { get; set; } = "";
    /// <summary>The top it lies on.</summary>
    public string Top { get; set; } = "";
    /// <summary>The surface it is a part of.</summary>
    [JsonConverter(typeof(CamelCaseEnumConverter<FaceKind>))] public FaceKind Face { get; set; }
    /// <summary>Letter of the side a splash or panel stands at.</summary>
    public string? Side { get; set; }
    /// <summary>Outer boundary first, then holes, in the face's own plane, metres.</summary>
    public IReadOnlyList<IReadOnlyList<IssuedPoint>> Rings { get; set; } = [];
    /// <summary>Film area with the strips it carries, m².</summary>
    public double FilmM2 { get; set; }
    /// <summary>A and B it takes from a batch, mL.</summary>
    public double TakesMl { get; set; }
    /// <summary>Where its roller stands, in the flat's plan.</summary>
    public IssuedPoint StandAt { get; set; }
    /// <summary>Letter of the side stood at.</summary>
    public string? StandSide { get; set; }
    /// <summary>Direction of the dry pass in the face's plane, degrees.</summary>
    public double DryPassDeg { get; set; }
    /// <summary>Sections that must be done before it, so that nobody leans over wet film.</summary>
    public IReadOnlyList<string> After { get; set; } = [];
    /// <summary>How long each of the crew takes for it, milliseconds.</summary>
    public IReadOnlyList<long> TakesMs { get; set; } = [];
    /// <summary>Who rolls it: place in the crew, from 0.</summary>
    public int Person { get; set; }
    /// <summary>When the plan begins it.</summary>
    public long StartMs { get; set; }
    /// <summary>When the plan ends its dry pass.</summary>
    public long EndMs { get; set; }
    /// <summary>The batch it is rolled from.</summary>
    public string Batch { get; set; } = "";

    public long TimeOf(int person) => TakesMs.Count == 0 ? EndMs - StartMs : TakesMs[Math.Clamp(person, 0, TakesMs.Count - 1)];
}

/// <summary>A point in the plane of a face, metres.</summary>
public record struct IssuedPoint
{
    /// <summary>Along, metres.</summary>
    public double X { get; set; }
    /// <summary>Across, metres.</summary>
    public double Y { get; set; }
}

/// <summary>The line where two sections meet.</summary>
public sealed record IssuedLap
{
    /// <summary>One section.</summary>
    public string A { get; set; } = "";
    /// <summary>The other.</summary>
    public string B { get; set; } = "";
    /// <summary>What kind of line it is.</summary>
    public LapKind Kind { get; set; }
    /// <summary>It runs from an inner corner of the top, where an eye expects a joint.</summary>
    public bool? AtCorner { get; set; }
    /// <summary>Length, metres.</summary>
    public double LengthM { get; set; }
    /// <summary>In the plane of section <c>a</c>, metres.</summary>
    public IReadOnlyList<IssuedPoint> Line { get; set; } = [];
}

/// <summary>Material mixed at one time, and its ticket.</summary>
public sealed record IssuedBatch
{
    /// <summary>Its letter.</summary>
    public string Id { get; set; } = "";
    /// <summary>Who mixes it: place in the crew, from 0.</summary>
    public int MixedBy { get; set; }
    /// <summary>When the plan brings A and B together.</summary>
    public long MixStartMs { get; set; }
    /// <summary>All parts together, without thinner, as its ticket has them measured, mL.</summary>
    public double VolumeMl { get; set; }
    /// <summary>A and B that it gives to sections, mL.</summary>
    public double GivesMl { get; set; }
    /// <summary>Part A on the cup, mL.</summary>
    public double AMl { get; set; }
    /// <summary>Part B on the cup, mL.</summary>
    public double BMl { get; set; }
    /// <summary>Thinner on the cup, mL.</summary>
    public double? ThinnerMl { get; set; }
    /// <summary>Part A on the scale, g.</summary>
    public double AG { get; set; }
    /// <summary>Part B on the scale, g.</summary>
    public double BG { get; set; }
    /// <summary>Thinner on the scale, g.</summary>
    public double? ThinnerG { get; set; }
}

/// <summary>What is done beside rolling, on the same clock.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<BesideKind>))]
public enum BesideKind
{
    /// <summary>Masking tape is drawn while the film is still soft.</summary>
    TapeOff,
    /// <summary>Drips are scraped from the edges.</summary>
    DripsScraped,
    /// <summary>A look under the edges and along the nosings for runs.</summary>
    EdgesLookedUnder,
    /// <summary>Bubbles are brought out of a pour.</summary>
    BubblesBroughtOut,
}

/// <summary>A step beside rolling, due in a window that opens with its sections.</summary>
public sealed record IssuedStep
{
    /// <summary>Different for every step of the plan.</summary>
    public string Id { get; set; } = "";
    /// <summary>What is done.</summary>
    public BesideKind Kind { get; set; }
    /// <summary>On which top.</summary>
    public string Top { get; set; } = "";
    /// <summary>Its clock begins with the last of these sections.</summary>
    public IReadOnlyList<string> With { get; set; } = [];
    /// <summary>The clock begins when the section is begun, not when it is done.</summary>
    public bool? FromBegun { get; set; }
    /// <summary>Not before, milliseconds on its clock.</summary>
    public long FromMs { get; set; }
    /// <summary>Not after, milliseconds on its clock; left out: no limit.</summary>
    public long? ToMs { get; set; }
}

/// <summary>Something that spoke against the plan when it was given out.</summary>
public sealed record IssuedReason
{
    /// <summary>Stable name of the reason.</summary>
    public string Code { get; set; } = "";
    /// <summary>Never: mixing is not begun at all. At your word: only with a reason of the finisher, which is kept.</summary>
    [JsonConverter(typeof(CamelCaseEnumConverter<Limit>))] public Limit Limit { get; set; }
    /// <summary>What it says, in English.</summary>
    public string En { get; set; } = "";
    /// <summary>What it says, in Spanish.</summary>
    public string Es { get; set; } = "";
    /// <summary>What would cure it, in English; left out in runs begun before it was kept.</summary>
    public string? RemedyEn { get; set; }
    /// <summary>What would cure it, in Spanish; left out in runs begun before it was kept.</summary>
    public string? RemedyEs { get; set; }

    public string Say(Voice voice) => voice.Say(En, Es);

    /// <summary>What would cure it; null: not kept.</summary>
    public string? Remedy(Voice voice) => RemedyEn is { } en && RemedyEs is { } es ? voice.Say(en, es) : null;
}

/// <summary>The data sheet's window for the next coat.</summary>
public sealed record IssuedRecoat
{
    /// <summary>Earliest, milliseconds from the end of the coat.</summary>
    public long EarliestMs { get; set; }
    /// <summary>Latest without sanding, milliseconds from the end of the coat.</summary>
    public long LatestMs { get; set; }
    /// <summary>The temperature it holds at, °C.</summary>
    public double AtCelsius { get; set; }
}
