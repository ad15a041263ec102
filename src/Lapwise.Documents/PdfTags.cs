using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Lapwise.Documents;

/// <summary>What each part of a page is, for a reader that speaks it (ISO 32000-1, 14.8: tagged PDF).</summary>
internal sealed class PdfTags
{
    private readonly StructureBuilder builder;
    private bool isOrnament;

    public PdfTags(PdfDocument pdf, string language)
    {
        var manager = UAManager.ForDocument(pdf);
        manager.SetDocumentLanguage(language);
        builder = manager.StructureBuilder;
    }

    /// <summary>All that is set within is one part of this kind.</summary>
    public void As(PdfBlockLevelElementTag kind, Action set) => Within(() => builder.BeginElement(kind), set);

    /// <summary>A part made of parts, such as a ticket.</summary>
    public void Section(Action set) => Within(() => builder.BeginElement(PdfGroupingElementTag.Section), set);

    /// <summary>A drawing, with the words that stand for it.</summary>
    public void Picture(string words, XRect box, Action draw) => Within(() => builder.BeginElement(PdfIllustrationElementTag.Figure, words, box), draw);

    /// <summary>For the eye only: rules, boxes, the foot of a page, a head said before. Nothing within is a part.</summary>
    public void Ornament(Action draw) => Within(
        () =>
        {
            builder.BeginArtifact();
            isOrnament = true;
        },
        draw);

    private void Within(Action begin, Action set)
    {
        if (isOrnament)
        {
            set();
            return;
        }

        begin();
        set();
        builder.End();
        isOrnament = false;
    }
}
