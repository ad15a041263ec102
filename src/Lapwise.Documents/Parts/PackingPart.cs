using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Supply;

namespace Lapwise.Documents.Parts;

/// <summary>What to bring.</summary>
internal static class PackingPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice)
    {
        if (whole.Supply.Coats.Count == 0) yield break;
        yield return new Block.Heading(1, voice.Say("Kits to bring", "Juegos que llevar"));
        var amount = voice.Volumes(whole.Supply.Coats.SelectMany(c => new[] { c.NeedMl, c.LeftOverMl }));
        var kit = voice.Volumes(whole.Supply.Coats.SelectMany(c => c.Kits).Select(k => k.SizeMl));
        yield return new Block.Table(
            [
                new(voice.Say("coat", "capa"), 3), new(voice.Say("needed", "necesario"), 1.5, Right: true), new(voice.Say("thinner", "diluyente"), 1.3, Right: true),
                new(voice.Say("kits", "juegos"), 2.4), new(voice.Say("left over", "sobrante"), 1.2, Right: true),
            ],
            [.. whole.Supply.Coats.Select((c, i) => Row(c, i, amount, kit, voice))]);
        var reasons = whole.Supply.Coats.SelectMany((c, i) => c.Reasons.Select(r => (Item: Say.Reason(r, voice), Coat: i + 1))).GroupBy(r => r.Item, r => $"{r.Coat}").ToList();
        if (reasons.Count > 0) yield return new Block.Items([.. reasons.Select(r => r.Key with { Text = Of([.. r.Distinct()], whole.Supply.Coats.Count, voice) + r.Key.Text })]);
    }

    /// <summary>Which coats a reason is for: batches of all coats have the same letters.</summary>
    private static string Of(List<string> coats, int all, Voice voice) => all < 2 ? "" : coats.Count == 1
        ? voice.Say($"Coat {coats[0]}. ", $"Capa {coats[0]}. ")
        : voice.Say($"Coats {voice.List(coats)}. ", $"Capas {voice.List(coats)}. ");

    private static Row Row(CoatSupply supply, int i, Func<double, string> amount, Func<double, string> kit, Voice voice) => new(
    [
        $"{i + 1}. {supply.Coat.Title(voice)}",
        amount(supply.NeedMl),
        supply.ThinnerMl > 0 ? voice.Volume(supply.ThinnerMl) : "–",
        string.Join(" + ", supply.Kits.Select(k => $"{k.Count} × {kit(k.SizeMl)}")),
        amount(supply.LeftOverMl),
    ]);
}
