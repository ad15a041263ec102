using System.Text.Json;
using System.Text.Json.Serialization;
using Lapwise.Core.Answers;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Measure;

namespace Lapwise.Cli;

/// <summary>What the check command answers as JSON.</summary>
internal sealed record CheckAnswer(IReadOnlyList<CheckedTop> Tops, double DewPointC, IReadOnlyList<CheckedCoat> Coats)
{
    public static CheckAnswer Of(MeasuredJob measured, JobConditions conditions, Voice voice) => new(
        [.. measured.Tops.Select(t => new CheckedTop(t.Top.Name, t.Closure.Closes, t.Closure.MisclosureM, t.Closure.AllowedM, [.. t.Closure.SuspectSides.Select(s => s.ToString())]))],
        conditions.DewPointC,
        [.. conditions.Coats.Select(c => new CheckedCoat(
            c.Coat.Product.Id, c.MayCoat, c.DewMarginC, c.OpenTime.Seconds, Word(c.OpenTime.Origin), c.PotLife.Seconds, Word(c.PotLife.Origin),
            [.. c.Reasons.Select(r => new ReasonAnswer(r.Code, Word(r.Limit), r.Text(voice), r.Remedy(voice)))],
            [.. c.Vapours.Select(x => new CheckedVapour(Word(x.From), x.Solvent.Id, x.LiquidMl, x.PeakPpm, x.ShareOfFlammable, x.ClearAfterS))]))]);

    private static string Word<T>(T value) where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}

internal sealed record CheckedTop(string Name, bool Closes, double MisclosureM, double AllowedM, IReadOnlyList<string> SuspectSides);

internal sealed record CheckedCoat(string Product, bool MayCoat, double DewMarginC, double OpenTimeS, string OpenTimeOrigin, double PotLifeS, string PotLifeOrigin, IReadOnlyList<ReasonAnswer> Reasons, IReadOnlyList<CheckedVapour> Vapours);

/// <param name="From">wipe or coat.</param>
/// <param name="ClearAfterS">Null: a closed room never clears.</param>
internal sealed record CheckedVapour(string From, string Solvent, double LiquidMl, double PeakPpm, double? ShareOfFlammable, double? ClearAfterS);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(CheckAnswer))]
internal sealed partial class CheckJson : JsonSerializerContext;
