using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Work;

namespace Lapwise.Core.Answers;

// The shapes that leave the core as JSON: the command line, the API and the page carry the same ones.

public sealed record TakeOffAnswer(IReadOnlyList<TakeOffRow> Tops, TakeOffRow Total);

public sealed record TakeOffRow(string Name, double FlatM2, double EdgeM2, double SplashM2, double WaterfallM2, double RimM2, double CoatedM2, double MisclosureM);

public sealed record MaterialsAnswer(IReadOnlyList<CoatMaterialsAnswer> Coats);

public sealed record CoatMaterialsAnswer(string Product, double NetMl, double LossMl, double NeedMl, double ThinnerMl, IReadOnlyList<KitAnswer> Kits, decimal CostTotal)
{
    /// <summary>VOC as applied, with the thinner; left out where the sheet gives none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public VocAnswer? Voc { get; init; }
}

/// <param name="LessWaterGPerL">Less water and exempt solvent.</param>
public sealed record VocAnswer(double ActualGPerL, double LessWaterGPerL);

public sealed record KitAnswer(double SizeMl, int Count, decimal Price);

public sealed record PlanAnswer(IReadOnlyList<CoatPlanAnswer> Coats);

/// <summary>One coat's order of work. Times in seconds from the first step of the coat, whole milliseconds.</summary>
/// <param name="BatchAgeShare">Share of a batch's age, from the end of its mixing, that its film no longer stays open.</param>
/// <param name="LapMarginS">Open time less the worst of all lap and section ages, each with what the age of its batch had used.</param>
/// <param name="Holds">False: the reasons say why this plan does not work.</param>
public sealed record CoatPlanAnswer(
    string Product,
    string Method,
    double OpenTimeS,
    string OpenTimeOrigin,
    double PotLifeS,
    string PotLifeOrigin,
    double BatchAgeShare,
    double WorstLapAgeS,
    double WorstSectionAgeS,
    double LapMarginS,
    double TargetMarginS,
    bool Holds,
    ProofAnswer Proof,
    IReadOnlyList<SectionAnswer> Sections,
    IReadOnlyList<LapAnswer> Laps,
    IReadOnlyList<BatchAnswer> Batches,
    IReadOnlyList<StepAnswer> Steps,
    IReadOnlyList<BaselineAnswer> Baselines,
    IReadOnlyList<ReasonAnswer> Reasons)
{
    /// <summary>Only where it was asked for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public RiskAnswer? Risk { get; init; }

    /// <summary>Only where they were asked for; empty: the plan keeps its target, or nothing helps.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<RemedyAnswer>? Remedies { get; init; }
}

public sealed record ProofAnswer(ProofState State, string Of, double BoundS, int? Ways);

/// <summary>One section, in its face's own plane; a vertical face has x along the fold and y away from it.</summary>
/// <param name="Face">Id of the face, as <c>Sink run/flat</c>.</param>
/// <param name="AreaM2">Area of the outline less its holes.</param>
/// <param name="FilmM2">Film area: the same with the edges and rims it carries.</param>
/// <param name="EdgeM">Length of those edges and rims.</param>
/// <param name="StandAt">Where the person stands, in the flat's plan.</param>
/// <param name="UsedS">What the age of its batch has used of its open time when it is begun.</param>
public sealed record SectionAnswer(
    string Id, string Top, string Face, IReadOnlyList<double[]> OutlineM, IReadOnlyList<IReadOnlyList<double[]>> HolesM,
    double AreaM2, double FilmM2, double EdgeM, double[] StandAt, string? StandSide, double DryPassDeg,
    string Person, double StartS, double WetEndS, double EndS, string Batch, double UsedS);

/// <param name="JoinedBy">The section of the two that is begun later.</param>
public sealed record LapAnswer(string A, string B, LapKind Kind, double LengthM, double AgeS, double MarginS, string JoinedBy);

/// <summary>One batch with its ticket, rounded to what cup and scale can be read to.</summary>
/// <param name="NetMl">A and B that go on its sections.</param>
/// <param name="VolumeMl">A and B as measured.</param>
public sealed record BatchAnswer(
    string Id, string MixedBy, double MixStartS, double MixEndS, double UseByS, double NetMl, double VolumeMl,
    double AMl, double BMl, double ThinnerMl,
    // The naming rule takes two capitals for one word.
    [property: JsonPropertyName("aG")] double AG, [property: JsonPropertyName("bG")] double BG,
    double ThinnerG, double RatioError, double RatioErrorByMass)
{
    /// <summary>Of a three-part product.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? CMl { get; init; }

    /// <summary>Of a three-part product.</summary>
    [JsonPropertyName("cG"), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? CG { get; init; }
}

/// <summary>One step of a poured coat; none for a coat that is rolled or wiped.</summary>
/// <param name="FromS">When the product asks for it.</param>
/// <param name="ToS">Not after; null: no limit.</param>
public sealed record StepAnswer(StepKind Kind, string Top, IReadOnlyList<string> Sections, string Person, double StartS, double EndS, double FromS, double? ToS);

public sealed record BaselineAnswer(string Name, double WorstLapAgeS);

/// <param name="Limit">never, atYourWord, or note: a note does not stop the plan.</param>
public sealed record ReasonAnswer(string Code, string Limit, string Text, string Remedy)
{
    public static IReadOnlyList<ReasonAnswer> Of(IEnumerable<Reason> reasons, Voice voice) =>
        [.. reasons.Select(r => new ReasonAnswer(r.Code, System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(r.Limit.ToString()), r.Text(voice), r.Remedy(voice)))];
}

/// <summary>The answer of the bare <c>order</c> command.</summary>
public sealed record OrderAnswer(double WorstLapAgeS, double BoundS, bool Proven, IReadOnlyList<OrderedSectionAnswer> Sections);

/// <param name="Person">Number in the crew, from 0, as in the list of seconds.</param>
public sealed record OrderedSectionAnswer(string Id, int Person, double StartS, double EndS);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(TakeOffAnswer))]
[JsonSerializable(typeof(MaterialsAnswer))]
[JsonSerializable(typeof(PlanAnswer))]
[JsonSerializable(typeof(OrderAnswer))]
[JsonSerializable(typeof(PriceAnswer))]
[JsonSerializable(typeof(PurchaseAnswer))]
public sealed partial class AnswerJson : JsonSerializerContext;
