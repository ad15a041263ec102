using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Drawings;

namespace Lapwise.Documents.Parts;

/// <summary>How a section is rolled, once for the whole sheet; nothing where no coat is rolled.</summary>
internal static class SectionPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice, Paper paper)
    {
        if (whole.Work.Coats.All(c => c.Coat.Product.Method != ApplicationMethod.Rolled)) yield break;
        yield return new Block.Heading(1, voice.Say("How each section is rolled", "Cómo se aplica cada sección"));
        yield return new Block.Figures([new Figure(voice.Say("Common practice", "Práctica común"), SectionDrawing.Draw(voice, new Sheet(paper.InnerWidthPt - 4, 225, 8)))]);
    }
}
