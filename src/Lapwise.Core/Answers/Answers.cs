using System.Text.Json.Serialization;
using Lapwise.Core.Work;

namespace Lapwise.Core.Answers;

// The shapes that leave the core as JSON: the command line, the API and the page carry the same ones.

public sealed record TakeOffAnswer(IReadOnlyList<TakeOffRow> Tops, TakeOffRow Total);

public sealed record TakeOffRow(string Name, double FlatM2, double EdgeM2, double SplashM2, double WaterfallM2, double RimM2, double CoatedM2, double MisclosureM);

public sealed record MaterialsAnswer(IReadOnlyList<CoatMaterialsAnswer> Coats);

public sealed record CoatMaterialsAnswer(string Product, double NetMl, double LossMl, double NeedMl, double ThinnerMl, IReadOnlyList<KitAnswer> Kits, decimal CostTotal);

public sealed record KitAnswer(double SizeMl, int Count, decimal Price);

public sealed record PlanAnswer(IReadOnlyList<CoatPlanAnswer> Coats);

public sealed record CoatPlanAnswer(
    string Product,
    string Method,
    double OpenTimeS,
    string OpenTimeOrigin,
    double PotLifeS,
    double WorstLapAgeS,
    double WorstSectionAgeS,
    double LapMarginS,
    ProofAnswer Proof,
    IReadOnlyList<SectionAnswer> Sections,
    IReadOnlyList<LapAnswer> Laps,
    IReadOnlyList<BatchAnswer> Batches,
    IReadOnlyList<BaselineAnswer> Baselines,
    IReadOnlyList<ReasonAnswer> Reasons);

public sealed record ProofAnswer(ProofState State, string Of, double BoundS);

public sealed record SectionAnswer(
    string Id, string Top, string Face, IReadOnlyList<double[]> OutlineM, IReadOnlyList<IReadOnlyList<double[]>> HolesM,
    double AreaM2, double[] StandAt, double DryPassDeg, string Person, double StartS, double WetEndS, double EndS, string Batch);

public sealed record LapAnswer(string A, string B, LapKind Kind, double LengthM, double AgeS, double MarginS);

public sealed record BatchAnswer(
    string Id, double MixStartS, double MixEndS, double UseByS, double VolumeMl,
    double AMl, double BMl, double ThinnerMl, double AG, double BG, double ThinnerG, double RatioError);

public sealed record BaselineAnswer(string Name, double WorstLapAgeS);

public sealed record ReasonAnswer(string Code, string Text, string Remedy);

/// <summary>The answer of the bare <c>order</c> command.</summary>
public sealed record OrderAnswer(double WorstLapAgeS, double BoundS, bool Proven, IReadOnlyList<OrderedSectionAnswer> Sections);

public sealed record OrderedSectionAnswer(string Id, int Person, double StartS, double EndS);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(TakeOffAnswer))]
[JsonSerializable(typeof(MaterialsAnswer))]
[JsonSerializable(typeof(PlanAnswer))]
[JsonSerializable(typeof(OrderAnswer))]
public sealed partial class AnswerJson : JsonSerializerContext;
