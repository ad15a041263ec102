using Lapwise.Core;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;

namespace Lapwise.Documents.Parts;

/// <summary>What can hurt, before the numbers that lead to it.</summary>
internal static class CautionsPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice)
    {
        var cautions = JobCautions.Of(whole.Job);
        if (cautions.Count == 0) yield break;
        yield return new Block.Heading(1, voice.Say("Cautions", "Precauciones"));
        yield return new Block.Items([.. cautions.Select(c => new Item(ItemMark.Caution, c(voice)))]);
        yield return new Block.Paragraph(Cautions.Deferral(voice));
    }
}
