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
        yield return new Block.Table(
            [
                new(voice.Say("coat", "capa"), 3), new(voice.Say("needed", "necesario"), 1.5, Right: true), new(voice.Say("thinner", "diluyente"), 1.3, Right: true),
                new(voice.Say("kits", "juegos"), 2.4), new(voice.Say("left over", "sobrante"), 1.2, Right: true),
            ],
            [.. whole.Supply.Coats.Select((c, i) => Row(c, i, voice))]);
        var reasons = whole.Supply.Coats.SelectMany(c => c.Reasons).Select(r => Say.Reason(r, voice)).Distinct().ToList();
        if (reasons.Count > 0) yield return new Block.Items(reasons);
    }

    private static Row Row(CoatSupply supply, int i, Voice voice) => new(
    [
        $"{i + 1}. {Say.Coat(supply.Coat)}",
        voice.Volume(supply.NeedMl),
        supply.ThinnerMl > 0 ? voice.Volume(supply.ThinnerMl) : "–",
        string.Join(" + ", supply.Kits.Select(k => $"{k.Count} × {voice.Volume(k.SizeMl)}")),
        voice.Volume(supply.LeftOverMl),
    ]);
}
