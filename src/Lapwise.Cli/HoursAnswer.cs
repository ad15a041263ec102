using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Lapwise.Core.Answers;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Cli;

/// <summary>What the hours command answers as JSON. Times are the clock on the wall; of no date where the readings have none.</summary>
internal sealed record HoursAnswer(IReadOnlyList<ReasonAnswer> Notes, IReadOnlyList<CoatHours> Coats)
{
    public static HoursAnswer Of(IReadOnlyList<(Coat Coat, RoomDay Day)> days, RoomCourse room, Voice voice) => new(
        [.. room.Notes.Select(r => Reason(r, voice))],
        [.. days.Select(d => new CoatHours(
            d.Coat.Product.Id,
            [.. d.Day.Strip.Hours.Select(h => new HourAnswer(At(h.From), h.Verdict, h.CoolestC, h.WarmestC, h.MostHumidity, h.LeastDewMarginC, [.. h.Reasons.Select(r => Reason(r, voice))]))],
            d.Day.Strip.Best is { } best ? new BestHours(At(best.From), At(best.To), best.LeastDewMarginC) : null,
            [.. d.Day.Strip.Gaps.Select(g => new GapAnswer(At(g.From), At(g.To)))],
            d.Day.Strip.Best is { } from ? [.. HourStrip.WaitsAfter(d.Coat.Product, d.Day.Record, from.From).Select(w => new WaitAnswer(Word(w.For), w.SheetS, w.SheetCelsius, w.Seconds))] : []))]);

    private static ReasonAnswer Reason(Reason r, Voice voice) => new(r.Code, Word(r.Limit), r.Text(voice), r.Remedy(voice));

    private static string At(DateTime at) => at.ToString(at.Year == DateTime.UnixEpoch.Year ? "HH:mm" : "yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);

    private static string Word<T>(T value) where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}

/// <param name="Best">The longest run of go; null: there is none.</param>
/// <param name="Waits">For a coat that ends when the best hours begin.</param>
internal sealed record CoatHours(string Product, IReadOnlyList<HourAnswer> Hours, BestHours? Best, IReadOnlyList<GapAnswer> Gaps, IReadOnlyList<WaitAnswer> Waits);

/// <summary>Its figures are null in an hour without a reading.</summary>
internal sealed record HourAnswer(string From, Verdict Verdict, double? CoolestC, double? WarmestC, double? MostHumidity, double? LeastDewMarginC, IReadOnlyList<ReasonAnswer> Reasons);

internal sealed record BestHours(string From, string To, double LeastDewMarginC);

internal sealed record GapAnswer(string From, string To);

/// <param name="Seconds">In this room; null: the readings end before.</param>
internal sealed record WaitAnswer(string For, double SheetS, double SheetC, double? Seconds);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(HoursAnswer))]
internal sealed partial class HoursJson : JsonSerializerContext;
