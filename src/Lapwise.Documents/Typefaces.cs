using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace Lapwise.Documents;

/// <summary>The one type family of the sheets, carried inside the program so that paper looks the same everywhere.</summary>
internal sealed class Typefaces : IFontResolver
{
    private const string Family = "DejaVu Sans Condensed";

    private Typefaces() { }

    // PDFsharp takes its resolver for the whole process, once, before the first font is made.
    static Typefaces() => GlobalFontSettings.FontResolver ??= new Typefaces();

    public static XFont Of(double size, bool bold) => new(Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        new(isBold ? "DejaVuSansCondensed-Bold.ttf" : "DejaVuSansCondensed.ttf");

    public byte[]? GetFont(string faceName)
    {
        using var font = typeof(Typefaces).Assembly.GetManifestResourceStream(faceName)
            ?? throw new InvalidOperationException($"The typeface {faceName} is missing from the program.");
        var bytes = new byte[font.Length];
        font.ReadExactly(bytes);
        return bytes;
    }
}
