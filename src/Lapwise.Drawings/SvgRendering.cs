using System.Globalization;
using System.Text;

namespace Lapwise.Drawings;

/// <summary>Writes a drawing as SVG text that stands alone and that a page can theme.</summary>
public static class SvgRendering
{
    private const string Family = "'DejaVu Sans Condensed','Segoe UI',Roboto,'Helvetica Neue',Arial,sans-serif";

    /// <summary>
    /// Every mark has a class and plain attributes. The colours are also set through custom properties
    /// (<c>--lw-ink</c> and so on, see <see cref="Pens.Property"/>), for viewers that know them.
    /// </summary>
    public static string Svg(this Drawing drawing)
    {
        var svg = new StringBuilder(8192);
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"lw-drawing\" role=\"img\" viewBox=\"0 0 {N(drawing.Width)} {N(drawing.Height)}\" width=\"{N(drawing.Width)}\" height=\"{N(drawing.Height)}\" font-family=\"{Family}\">\n");
        svg.Append("<title>").Append(Escape(drawing.Title)).Append("</title>\n<desc>").Append(Escape(drawing.Description)).Append("</desc>\n");
        AppendTheme(svg, drawing);
        foreach (var mark in drawing.Marks) Append(svg, mark, drawing.Unit);
        return svg.Append("</svg>\n").ToString();
    }

    private static void Append(StringBuilder svg, Mark mark, double unit)
    {
        switch (mark)
        {
            case Mark.Line line:
                AppendPath(svg, Pens.Of(line.Ink), unit, Path(line.Points, line.Closed));
                break;
            case Mark.Arrow arrow:
                AppendPath(svg, Pens.Of(arrow.Ink), unit, string.Concat(arrow.Strokes(unit).Select(s => Path(s, closed: false))));
                break;
            case Mark.Area area:
                var fill = Pens.Of(area.Wash);
                svg.Append("<path class=\"").Append(fill.Class).Append("\" fill=\"").Append(Pens.Hex(fill.Colour))
                    .Append("\" fill-rule=\"evenodd\" d=\"").Append(string.Concat(area.Rings.Select(r => Path(r, closed: true)))).Append("\"/>\n");
                break;
            case Mark.Text text:
                AppendText(svg, text);
                break;
        }
    }

    private static void AppendPath(StringBuilder svg, Pen pen, double unit, string path)
    {
        svg.Append("<path class=\"").Append(pen.Class).Append("\" fill=\"none\" stroke=\"").Append(Pens.Hex(pen.Colour))
            .Append("\" stroke-width=\"").Append(N(pen.Width * unit)).Append('"');
        if (pen.Dash.Count > 0) svg.Append(" stroke-dasharray=\"").AppendJoin(' ', pen.Dash.Select(d => N(d * unit))).Append('"');
        svg.Append(" d=\"").Append(path).Append("\"/>\n");
    }

    private static void AppendText(StringBuilder svg, Mark.Text text)
    {
        var type = Pens.Of(text.Style);
        svg.Append("<text class=\"").Append(type.Class).Append("\" fill=\"").Append(Pens.Hex(type.Colour))
            .Append("\" font-size=\"").Append(N(text.Size)).Append('"');
        if (type.Bold) svg.Append(" font-weight=\"700\"");
        if (text.Anchor == Anchor.Middle) svg.Append(" text-anchor=\"middle\"");
        // The middle of the capitals lies 0.36 of the size above the base line.
        if (text.Upright) svg.Append(CultureInfo.InvariantCulture, $" transform=\"translate({N(text.At.X)} {N(text.At.Y)}) rotate(-90)\" y=\"{N(text.Size * 0.36)}\"");
        else svg.Append(CultureInfo.InvariantCulture, $" x=\"{N(text.At.X)}\" y=\"{N(text.At.Y + (text.Size * 0.36))}\"");
        svg.Append('>').Append(Escape(text.Words)).Append("</text>\n");
    }

    private static void AppendTheme(StringBuilder svg, Drawing drawing)
    {
        svg.Append("<style>");
        foreach (var rule in drawing.Marks.Select(Rule).Distinct().Order(StringComparer.Ordinal)) svg.Append(rule);
        svg.Append("</style>\n");
    }

    private static string Rule(Mark mark)
    {
        var (name, what, colour) = mark switch
        {
            Mark.Line line => (Pens.Of(line.Ink).Class, "stroke", Pens.Of(line.Ink).Colour),
            Mark.Arrow arrow => (Pens.Of(arrow.Ink).Class, "stroke", Pens.Of(arrow.Ink).Colour),
            Mark.Area area => (Pens.Of(area.Wash).Class, "fill", Pens.Of(area.Wash).Colour),
            Mark.Text text => (Pens.Of(text.Style).Class, "fill", Pens.Of(text.Style).Colour),
            _ => throw new ArgumentOutOfRangeException(nameof(mark)),
        };
        return $".lw-drawing .{name}{{{what}:var({Pens.Property(colour)},{Pens.Hex(colour)})}}";
    }

    private static string Path(IReadOnlyList<Spot> points, bool closed)
    {
        var path = new StringBuilder();
        for (var i = 0; i < points.Count; i++) path.Append(i == 0 ? 'M' : 'L').Append(N(points[i].X)).Append(' ').Append(N(points[i].Y));
        return closed ? path.Append('Z').ToString() : path.ToString();
    }

    private static string N(double value)
    {
        var text = value.ToString("0.##", CultureInfo.InvariantCulture);
        return text is "-0" ? "0" : text;
    }

    private static string Escape(string text)
    {
        var clean = new StringBuilder(text.Length);
        // By runes, so that half a surrogate pair, which XML cannot carry, becomes the replacement sign.
        foreach (var rune in text.EnumerateRunes())
        {
            clean.Append(rune.Value switch
            {
                '&' => "&amp;",
                '<' => "&lt;",
                '>' => "&gt;",
                '"' => "&quot;",
                < ' ' or 0xFFFE or 0xFFFF => " ",
                _ => rune.ToString(),
            });
        }
        return clean.ToString();
    }
}
