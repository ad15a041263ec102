using System.Text.Json.Serialization;
using Lapwise.Core.Answers;
using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;

namespace Lapwise.Core.Quick;

// The shapes in which a quick sum leaves the core as JSON: the command line, the API and the page carry the same ones.

public sealed record QuickAnswer(
    string Sum,
    IReadOnlyList<QuickNumber> Numbers,
    IReadOnlyList<ReasonAnswer> Reasons,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<string> Steps,
    QuickPoints? Curve)
{
    /// <param name="voice">Language and units of the texts; the numbers do not change with it.</param>
    public static QuickAnswer Of(QuickSum sum, QuickResult result, Voice voice) => new(
        sum.Name,
        [.. result.Rows.Select(r => QuickNumber.Of(r, voice))],
        [.. result.Reasons.Select(r => new ReasonAnswer(r.Code, r.Limit.ToString(), r.Text(voice), r.Remedy(voice)))],
        [.. CautionsOf(result).Select(c => c(voice))],
        [.. result.Steps.Select(s => s(voice))],
        result.Curve is { } curve ? new QuickPoints(curve.X(voice), curve.Y(voice), [.. curve.Points.Select(p => new[] { p.X, p.Y })]) : null);

    /// <summary>The cautions that go with a result, the deferral last; none where nothing can hurt.</summary>
    public static IReadOnlyList<Phrase> CautionsOf(QuickResult result) =>
        result.Hazards.Count == 0 ? [] : [.. Explain.Cautions.For(result.Hazards), .. Ghs.Label(result.Hazards) is { } label ? [label] : Array.Empty<Phrase>(), Explain.Cautions.Deferral];
}

/// <param name="Value">In the unit its name ends in; null: without end.</param>
/// <param name="Shown">As a person reads it.</param>
public sealed record QuickNumber(string Name, double? Value, string Label, string Shown, QuickBasis Basis)
{
    public static QuickNumber Of(QuickRow row, Voice voice) => new(
        row.Name, double.IsFinite(row.Value) ? row.Value : null, row.Label(voice), row.Shown(voice),
        new QuickBasis(row.Basis.Formula, [.. row.Basis.Inputs.Select(i => new QuickInput(i.Name(voice), i.Value(voice)))], row.Basis.Source.Title(voice), Sources.Say(row.Basis.Source.Standing, voice)));
}

public sealed record QuickBasis(string Formula, IReadOnlyList<QuickInput> Inputs, string Source, string Standing);

public sealed record QuickInput(string Name, string Value);

/// <param name="Points">Pairs of x and y in SI: seconds, °C, ppm.</param>
public sealed record QuickPoints(string X, string Y, IReadOnlyList<double[]> Points);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(QuickAnswer))]
public sealed partial class QuickJson : JsonSerializerContext;
