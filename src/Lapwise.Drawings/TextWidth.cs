using Lapwise.Core.Explain;

namespace Lapwise.Drawings;

/// <summary>
/// How wide a text is, without a font at hand: the advance widths of DejaVu Sans Condensed, read from the font file,
/// in thousandths of the size. Common screen fonts are no wider, so what fits by this table fits on screen.
/// </summary>
public static class TextWidth
{
    private const double BoldOverRegular = 1.13;

    // U+0020 to U+007E.
    private static readonly short[] Ascii =
    [
        286, 360, 414, 754, 572, 855, 702, 247, 351, 351, 450, 754, 286, 325, 286, 303, 572, 572, 572, 572, 572, 572, 572, 572,
        572, 572, 303, 303, 754, 754, 754, 478, 900, 615, 617, 628, 693, 568, 518, 697, 677, 265, 265, 590, 501, 776, 673, 708,
        542, 708, 625, 571, 549, 659, 615, 890, 616, 549, 616, 351, 303, 351, 754, 450, 450, 551, 571, 495, 571, 554, 316, 571,
        570, 250, 250, 521, 250, 876, 570, 550, 571, 571, 370, 469, 353, 570, 532, 736, 532, 532, 472, 572, 303, 572, 754,
    ];

    /// <summary>Width of a text set at size 1.</summary>
    public static double Of(string text, bool bold = false)
    {
        var thousandths = 0;
        foreach (var letter in text) thousandths += Advance(letter);
        return thousandths / 1000.0 * (bold ? BoldOverRegular : 1);
    }

    /// <summary>
    /// Breaks a text into lines no wider than <paramref name="width"/> at size 1; a longer word is broken too. A number stays with
    /// its unit where both fit on a line.
    /// </summary>
    public static IReadOnlyList<string> Wrap(string text, double width, bool bold = false)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in UnitGap.Keep(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(UnitGap.Plain)
            .SelectMany(piece => Of(piece, bold) > width ? piece.Split(' ').SelectMany(w => Broken(w, width, bold)) : [piece]))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Of(longer, bold) > width)
            {
                lines.Add(line);
                longer = word;
            }
            line = longer;
        }
        if (line.Length > 0) lines.Add(line);
        return lines;
    }

    /// <summary>A text short enough for one line: what is too much is left out before its last part, which tells it apart.</summary>
    public static string Cut(string text, double width)
    {
        if (Of(text) <= width) return text;
        var part = text.LastIndexOf(" · ", StringComparison.Ordinal);
        var last = part < 0 ? "" : text[part..];
        var head = text[..^last.Length];
        while (head.Length > 0 && Of(head + "…" + last) > width) head = head[..^1];
        return head.TrimEnd() + "…" + last;
    }

    /// <summary>A word wider than a line, after its hyphens and slashes where it has some, else anywhere.</summary>
    private static IEnumerable<string> Broken(string word, double width, bool bold)
    {
        while (Of(word, bold) > width && word.Length > 1)
        {
            var fits = 1;
            while (fits + 1 < word.Length && Of(word[..(fits + 1)], bold) <= width) fits++;
            var seam = word.AsSpan(0, fits).LastIndexOfAny("-/_.");
            var cut = seam > 0 ? seam + 1 : fits;
            yield return word[..cut];
            word = word[cut..];
        }

        yield return word;
    }

    private static int Advance(char letter) => letter switch
    {
        >= ' ' and <= '~' => Ascii[letter - ' '],
        UnitGap.NoBreak => Ascii[0],
        'á' or 'à' or 'ä' => 551,
        'é' or 'è' => 554,
        'í' or '·' => 286,
        'ó' or 'ö' => 550,
        'ú' or 'ü' or 'ñ' => 570,
        '°' or '–' => 450,
        '²' or '″' => 360,
        _ => 760,
    };
}
