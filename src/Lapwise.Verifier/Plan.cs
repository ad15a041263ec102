using System.Text.Json;
using System.Text.Json.Serialization;
using Lapwise.Core.Explain;

namespace Lapwise.Verifier;

// A plan as data: what the plan command writes, read again without any type of the search. Times in seconds from the
// first step of a coat, lengths in metres, areas in square metres, volumes in mL, masses in g.

public sealed record Plan(IReadOnlyList<PlannedCoat> Coats)
{
    /// <summary>Reads a plan; a member that is missing or of the wrong kind is a fault with its place.</summary>
    public static (Plan? Plan, IReadOnlyList<Fault> Faults) Read(string json)
    {
        try
        {
            if (JsonSerializer.Deserialize(json, PlanJson.Default.Plan) is { } plan) return (plan, []);
            return (null, [NotAPlan("", null)]);
        }
        catch (JsonException slip)
        {
            return (null, [NotAPlan(slip.Path is ['$', '.', .. var path] ? path : "", slip.LineNumber)]);
        }
    }

    private static Fault NotAPlan(string path, long? line) => new(path, "PlanNotUnderstood",
        v => v.Say("From here on this is not a plan.", "Desde aquí no es un plan."),
        v => v.Say("Write it with `lapwise plan JOB --json`.", "Escríbalo con `lapwise plan TRABAJO --json`."))
        { Line = line is { } at ? (int)at + 1 : null };
}

public sealed record PlannedCoat(
    string Product,
    string Method,
    double OpenTimeS,
    string OpenTimeOrigin,
    double PotLifeS,
    double BatchAgeShare,
    double WorstLapAgeS,
    double WorstSectionAgeS,
    double LapMarginS,
    bool Holds,
    PlannedProof Proof,
    IReadOnlyList<PlannedSection> Sections,
    IReadOnlyList<PlannedLap> Laps,
    IReadOnlyList<PlannedBatch> Batches,
    IReadOnlyList<PlannedStep> Steps,
    IReadOnlyList<PlannedBaseline> Baselines,
    IReadOnlyList<PlannedReason> Reasons);

public sealed record PlannedProof(string State, string Of, double BoundS)
{
    /// <summary>Of a proof that holds for several ways of cutting a top.</summary>
    public int? Ways { get; init; }
}

public sealed record PlannedSection(
    string Id, string Top, string Face, IReadOnlyList<double[]> OutlineM, IReadOnlyList<IReadOnlyList<double[]>> HolesM,
    double AreaM2, double FilmM2, double EdgeM, double[] StandAt, string? StandSide, double DryPassDeg,
    string Person, double StartS, double WetEndS, double EndS, string Batch, double UsedS);

public sealed record PlannedLap(string A, string B, string Kind, double LengthM, double AgeS, double MarginS, string JoinedBy);

public sealed record PlannedBatch(
    string Id, string MixedBy, double MixStartS, double MixEndS, double UseByS, double NetMl, double VolumeMl,
    double AMl, double BMl, double ThinnerMl,
    [property: JsonPropertyName("aG")] double AG, [property: JsonPropertyName("bG")] double BG,
    double ThinnerG, double RatioError, double RatioErrorByMass)
{
    /// <summary>Of a three-part product.</summary>
    public double? CMl { get; init; }

    /// <summary>Of a three-part product.</summary>
    [JsonPropertyName("cG")]
    public double? CG { get; init; }
}

public sealed record PlannedStep(string Kind, string Top, IReadOnlyList<string> Sections, string Person, double StartS, double EndS, double FromS, double? ToS);

public sealed record PlannedBaseline(string Name, double WorstLapAgeS);

public sealed record PlannedReason(string Code, string Limit, string Text, string Remedy);

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    MaxDepth = 16)]
[JsonSerializable(typeof(Plan))]
internal sealed partial class PlanJson : JsonSerializerContext;
