using Lapwise.Drawings;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Lapwise.Documents.Tests;

public class TypefacesTests
{
    // The layout's own table of widths against the font itself, as PDFsharp reads it.
    [Theory]
    [InlineData("A · 8' 10 1/2\" · open", false)]
    [InlineData("Capa 1: base pigmentada, 12,5 °C", false)]
    [InlineData("good +13:06", false)]
    [InlineData("This plan works: 13 min 06 s in hand at the tightest lap or section.", true)]
    [InlineData("El tiempo abierto sale de: ficha técnica. ñáéíóú 2,4 m²", true)]
    public void Widths_of_the_layout_are_those_of_the_font(string text, bool bold)
    {
        using var pdf = new PdfDocument();
        using var page = XGraphics.FromPdfPage(pdf.AddPage());
        var real = page.MeasureString(text, Typefaces.Of(100, bold)).Width / 100;
        Assert.InRange(TextWidth.Of(text, bold), real * 0.97, real * 1.06);
    }

    [Theory]
    [InlineData("½¼¾″′°²µ−×ñáéíóúü¿¡✓✗⚠☐–·ø≈")]
    public void The_font_has_every_sign_the_sheets_use(string signs)
    {
        foreach (var bold in new[] { false, true })
        {
            using var pdf = new PdfDocument();
            using var page = XGraphics.FromPdfPage(pdf.AddPage());
            var font = Typefaces.Of(20, bold);
            // A sign that the font lacks is set as the missing glyph, which has this width.
            var missing = page.MeasureString("\uE0F0", font).Width;
            foreach (var sign in signs) Assert.NotEqual(missing, page.MeasureString(sign.ToString(), font).Width);
        }
    }
}
