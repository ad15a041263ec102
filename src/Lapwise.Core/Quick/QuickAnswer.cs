using System.Text.Json.Serialization;
using Lapwise.Core.Answers;
using Lapwise.Core.Conditions.Day;
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
    CurveAnswer? Curve,
    IReadOnlyList<HourAnswer>? Hours)
{
    /// <param name="voice">Language and units of the texts; the numbers do not change with it.</param>
    public static QuickAnswer Of(QuickSum sum, QuickResult result, Voice voice) => new(
        sum.Name,
        [.. result.Rows.Select(r => QuickNumber.Of(r, voice))],
        [.. result.Reasons.Select(r => new ReasonAnswer(r.Code, r.Limit.ToString(), r.Text(voice), r.Remedy(voice)))],
        [.. CautionsOf(result).Select(c => c(voice))],
        [.. result.Steps.Select(s => s(voice))],
        result.Curve is { } curve ? CurveAnswer.Of(curve, voice) : null,
        result.Day is { } day ? [.. day.Strip.Hours.Select(h => HourAnswer.Of(h, voice))] : null);

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

/// <summary>A sum and what it asks for.</summary>
public sealed record QuickAsk(string Sum, string Title, string Question, string Phase, IReadOnlyList<QuickAskField> Fields)
{
    public static QuickAsk Of(QuickSum sum, Voice voice) => new(
        sum.Name, sum.Title(voice), sum.Question(voice), sum.Phase.Route,
        [.. sum.Fields.Select(f => new QuickAskField(f.Name, f.Label(voice), f.Example(voice), f.Needed, f.Else, f.Words.Count > 0 ? [.. f.Words.Select(w => w.Word)] : null))]);
}

/// <param name="Else">What it takes where left out.</param>
/// <param name="Words">The words it takes, where it takes one of a few.</param>
public sealed record QuickAskField(string Name, string Label, string Example, bool Needed, string? Else, IReadOnlyList<string>? Words);

/// <param name="From">The clock on the wall; a forecast without dates is on 1970-01-01.</param>
/// <param name="Verdict">go, wait, noGo or unknown.</param>
public sealed record HourAnswer(DateTime From, Verdict Verdict, double? CoolestC, double? WarmestC, double? MostHumidity, double? LeastDewMarginC, IReadOnlyList<ReasonAnswer> Reasons)
{
    public static HourAnswer Of(RoomHour hour, Voice voice) => new(hour.From, hour.Verdict, hour.CoolestC, hour.WarmestC, hour.MostHumidity, hour.LeastDewMarginC,
        [.. hour.Reasons.Select(r => new ReasonAnswer(r.Code, r.Limit.ToString(), r.Text(voice), r.Remedy(voice)))]);
}

/// <summary>A curve with what is drawn into it.</summary>
public sealed record CurveAnswer(string Title, string X, IReadOnlyList<CurveLineAnswer> Lines, IReadOnlyList<CurvePlace> Marks, IReadOnlyList<CurvePlace> Limits)
{
    public static CurveAnswer Of(Curve curve, Voice voice) => new(
        curve.Title(voice), curve.X(voice),
        [.. new[] { curve.Line, curve.Second }.Concat(curve.Beside).OfType<CurveLine>().Select(l => new CurveLineAnswer(l.Name(voice), [.. l.Points.Select(p => new[] { p.X, p.Y })]))],
        [.. curve.Marks.Select(m => new CurvePlace(m.X, m.Words(voice)))],
        [.. curve.Limits.Select(l => new CurvePlace(l.Y, l.Words(voice)))]);
}

/// <param name="Points">Pairs of x and y in SI: seconds, °C, ppm, shares.</param>
public sealed record CurveLineAnswer(string Name, IReadOnlyList<double[]> Points);

public sealed record CurvePlace(double At, string Words);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(QuickAnswer))]
[JsonSerializable(typeof(IReadOnlyList<QuickAsk>))]
[JsonSerializable(typeof(Dictionary<string, string>))]
public sealed partial class QuickJson : JsonSerializerContext;
