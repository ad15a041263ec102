using System.Globalization;
using Lapwise.Drawings;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Part = PdfSharp.UniversalAccessibility.PdfBlockLevelElementTag;

namespace Lapwise.Documents;

/// <summary>Sets a document on pages, top to bottom; what must stay whole moves to the next page whole.</summary>
internal sealed class PdfWriting : IDisposable
{
    private const double Body = 9;
    private const double Small = 7.5;
    private const double Leading = 1.32;
    private const double Gap = 5;
    private const double FooterHeight = 16;
    private const double CellGap = 9;

    private static readonly XColor Ink = Colour(Pens.Hex(Drawings.Colour.Ink));
    private static readonly XColor Soft = XColor.FromArgb(0x4d, 0x58, 0x5f);
    private static readonly XColor Hairline = XColor.FromArgb(0xc9, 0xcd, 0xd0);

    private readonly Document document;
    private readonly PdfDocument pdf = new();
    private readonly PdfTags tags;
    private readonly int? pageCount;
    private readonly Dictionary<(double Size, bool Bold), XFont> fonts = [];
    private XGraphics page = null!;
    private double y;

    private PdfWriting(Document document, int? pageCount)
    {
        (this.document, this.pageCount) = (document, pageCount);
        tags = new PdfTags(pdf, document.Language);
    }

    /// <param name="made">Written into the file as its date; the same document with the same date is the same bytes.</param>
    public static byte[] Write(Document document, DateTimeOffset made)
    {
        // A foot is set as its page begins, in the order a reader is told; how many pages there are, only a first setting tells.
        using var first = new PdfWriting(document, pageCount: null);
        first.SetBlocks();
        using var writing = new PdfWriting(document, first.pdf.PageCount);
        writing.SetBlocks();
        return writing.Saved(made);
    }

    private void SetBlocks()
    {
        NewPage();
        for (var i = 0; i < document.Blocks.Count; i++) Set(i);
        page.Dispose();
    }

    public void Dispose() => pdf.Dispose();

    private double Width => document.Paper.InnerWidthPt;
    private static double Left => Paper.MarginPt;
    private double Bottom => document.Paper.HeightPt - Paper.MarginPt - FooterHeight;

    private void NewPage()
    {
        // What is being said goes on over the page: it is closed on the one it began on, which must still be open.
        var added = pdf.AddPage();
        page?.Dispose();
        (added.Width, added.Height) = (XUnit.FromPoint(document.Paper.WidthPt), XUnit.FromPoint(document.Paper.HeightPt));
        page = XGraphics.FromPdfPage(added);
        y = Paper.MarginPt;
        tags.Ornament(SetFooter);
    }

    /// <summary>Begins a new page unless this much is left on this one.</summary>
    private void Need(double height)
    {
        if (y + height > Bottom && y > Paper.MarginPt) NewPage();
    }

    private void Set(int index)
    {
        switch (document.Blocks[index])
        {
            case Block.Title title:
                tags.As(Part.Heading1, () => SetText(title.Text, 17, bold: true, Ink));
                Rule(Ink, 2);
                y += 2;
                tags.As(Part.Paragraph, () => SetText(title.Below, Body, bold: false, Soft));
                y += Gap;
                break;
            case Block.Heading heading:
                if (heading.OwnPage && y > Paper.MarginPt) NewPage();
                Need(StartFrom(index, Bottom - y));
                y += y > Paper.MarginPt ? Gap * (heading.Level == 1 ? 2.4 : 0.8) : 0;
                tags.As(heading.Level == 1 ? Part.Heading2 : Part.Heading3, () => SetText(heading.Text, heading.Level == 1 ? 13 : 10.5, bold: true, Ink));
                if (heading.Level == 1) Rule(Soft, 0.7);
                y += Gap * 0.6;
                break;
            case Block.Verdict verdict:
                SetVerdict(verdict);
                break;
            case Block.Paragraph paragraph:
                tags.As(Part.Paragraph, () => SetText(paragraph.Text, Body, bold: false, Ink));
                y += Gap * 0.6;
                break;
            case Block.Items items:
                SetItems(items.Lines, Left, Width, after: HeightOfTail(index));
                y += Gap * 0.6;
                break;
            case Block.Facts facts:
                Need(HeightOfFacts(facts.Pairs, Width, Body));
                SetFacts(facts.Pairs, Left, Width, Body);
                break;
            case Block.Table table:
                SetTable(table);
                break;
            case Block.Figures figures:
                SetFigures(figures.Drawings);
                break;
            case Block.Signatures signatures:
                SetSignatures(signatures.Names);
                break;
            case Block.Ticket ticket:
                SetTicket(ticket);
                break;
        }
    }

    // What leads in to something stays with it: no heading or verdict stands alone at the foot of a page. A heading begins anew.
    private double StartFrom(int index, double room)
    {
        var (block, own) = (document.Blocks[index], StartOf(document.Blocks[index], room));
        var next = index + 1 < document.Blocks.Count ? document.Blocks[index + 1] : null;
        var leadsIn = block switch
        {
            _ when next is null => false,
            Block.Verdict or Block.Facts or Block.Items when next is Block.Heading => false,
            Block.Heading or Block.Verdict or Block.Facts or Block.Items { Lines.Count: <= 4 } => true,
            Block.Paragraph => next is Block.Paragraph or Block.Ticket or Block.Figures or Block.Table,
            _ => false,
        };
        return leadsIn ? own + Gap + StartFrom(index + 1, room - own - Gap) : own;
    }

    private double StartOf(Block block, double room) => block switch
    {
        Block.Heading heading => HeightOf(heading),
        Block.Facts facts => HeightOfFacts(facts.Pairs, Width, Body),
        Block.Table table => StartOf(table),
        Block.Figures figures => RowsOf(figures.Drawings).Take(1).Sum(row => HeightOf(Within(row, room) ?? row)),
        Block.Ticket ticket => HeightOf(ticket),
        Block.Signatures => HeightOfSignatures,
        Block.Verdict verdict => HeightOf(verdict),
        Block.Items items => HeightOfItems(items.Lines.Count <= 4 ? items.Lines : [.. items.Lines.Take(2)], Width),
        _ => Body * Leading * 2,
    };

    private double StartOf(Block.Table table) => HalvesOf(table) is { } halves ? halves.Height : HeightOfTable(table, table.Rows.Take(LeastRows), Width);

    private static double HeightOf(Block.Heading heading) => heading.Level == 1 ? (13 * Leading) + (Gap * 3.6) : (10.5 * Leading) + (Gap * 1.6);

    private static IReadOnlyList<string> Lines(string text, double size, bool bold, double width) => TextWidth.Wrap(text, width / size, bold);

    // A reader that speaks runs the lines together: the space they were broken at stays.
    private static IEnumerable<string> Spoken(IReadOnlyList<string> lines) => lines.Select((line, i) => i + 1 < lines.Count ? line + " " : line);

    private void SetText(string text, double size, bool bold, XColor colour) => SetText(text, size, bold, colour, Left, Width);

    private void SetText(string text, double size, bool bold, XColor colour, double x, double width)
    {
        foreach (var line in Spoken(Lines(text, size, bold, width)))
        {
            Need(size * Leading);
            Put(line, size, bold, colour, x, y);
            y += size * Leading;
        }
    }

    /// <summary>One line of text, its box beginning at the given top.</summary>
    private void Put(string text, double size, bool bold, XColor colour, double x, double top, XStringFormat? format = null) =>
        page.DrawString(text, Font(size, bold), new XSolidBrush(colour), x, top + (size * 1.0), format ?? XStringFormats.BaseLineLeft);

    private void Rule(XColor colour, double width)
    {
        tags.Ornament(() => page.DrawLine(new XPen(colour, width), Left, y + width, Left + Width, y + width));
        y += width + 2;
    }

    private double HeightOf(Block.Verdict verdict) => (Lines(verdict.Text, 10, true, Width - 24).Count * 10 * Leading) + 12;

    private void SetVerdict(Block.Verdict verdict)
    {
        var height = HeightOf(verdict);
        Need(height + Gap);
        var stop = verdict.Tone == Tone.DoesNotWork;
        var colour = verdict.Tone switch
        {
            Tone.Works => Ink,
            Tone.Narrow => Colour(Pens.Hex(Drawings.Colour.Narrow)),
            _ => Colour(Pens.Hex(Drawings.Colour.Lost)),
        };
        tags.Ornament(() =>
        {
            page.DrawRectangle(new XPen(colour, stop ? 2 : 0.8), Left, y, Width, height);
            page.DrawRectangle(new XSolidBrush(colour), Left, y, stop ? 8 : 5, height);
        });
        var after = y + height + Gap;
        y += 6;
        tags.As(Part.Paragraph, () => SetText(verdict.Text, 10, bold: true, stop ? colour : Ink, Left + 14, Width - 24));
        y = after;
    }

    /// <summary>A line or two that end a list stay with its last item: alone on the next page they end nothing.</summary>
    private double HeightOfTail(int index)
    {
        if (index + 1 >= document.Blocks.Count || document.Blocks[index + 1] is not Block.Paragraph tail) return 0;
        var lines = Lines(tail.Text, Body, bold: false, Width).Count;
        return lines > 2 ? 0 : (lines * Body * Leading) + (Gap * 0.6);
    }

    private void SetItems(IReadOnlyList<Item> items, double x, double width, double after = 0) => tags.As(Part.List, () =>
    {
        foreach (var (item, i) in items.Select((item, i) => (item, i)))
        {
            var lines = Lines(item.Text, Body, bold: false, width - 14);
            // An item of a few lines stays together.
            Need((Math.Min(lines.Count, 5) * Body * Leading) + (i == items.Count - 1 ? 1.5 + after : 0));
            tags.As(Part.ListItem, () =>
            {
                tags.As(Part.Label, () => Put(Signs.Of(item.Mark), Body, bold: true, Ink, x, y));
                tags.As(Part.ListBody, () => SetText(item.Text, Body, bold: false, Ink, x + 14, width - 14));
            });
            y += 1.5;
        }
    });

    private static double HeightOfItems(IReadOnlyList<Item> items, double width) =>
        items.Sum(i => (Lines(i.Text, Body, false, width - 14).Count * Body * Leading) + 1.5);

    /// <summary>Facts flow in rows, each as wide as its longer line; what is longer than a row takes more lines.</summary>
    private static IEnumerable<(Fact Fact, IReadOnlyList<string> Value, double X, double Top, double Below)> Flow(IReadOnlyList<Fact> facts, double width, double size)
    {
        var (x, top, below) = (0.0, 0.0, 0.0);
        foreach (var fact in facts)
        {
            var value = Lines(fact.Value, size, bold: true, width);
            var own = Math.Max(TextWidth.Of(fact.Name) * Small, value.Select(l => TextWidth.Of(l, bold: true) * size).DefaultIfEmpty(0).Max());
            if (x > 0 && x + own > width) (x, top) = (0, below);
            below = Math.Max(below, top + ((Small + (Math.Max(1, value.Count) * size)) * Leading) + 3);
            yield return (fact, value, x, top, below);
            x += own + 16;
        }
    }

    private static double HeightOfFacts(IReadOnlyList<Fact> facts, double width, double size) => facts.Count == 0 ? 0 : Flow(facts, width, size).Last().Below;

    private void SetFacts(IReadOnlyList<Fact> facts, double x, double width, double size)
    {
        tags.As(Part.List, () =>
        {
            foreach (var (fact, value, across, top, _) in Flow(facts, width, size))
            {
                tags.As(Part.ListItem, () =>
                {
                    tags.As(Part.Label, () => Put(fact.Name, Small, bold: false, Soft, x + across, y + top));
                    tags.As(Part.ListBody, () =>
                    {
                        foreach (var (line, i) in Spoken(value).Select((l, i) => (l, i))) Put(line, size, bold: true, Ink, x + across, y + top + ((Small + (i * size)) * Leading));
                    });
                });
            }
        });
        y += HeightOfFacts(facts, width, size) + 2;
    }

    private const double Cell = Small + 0.7;

    /// <summary>By shares, but no column narrower than the longest word of its heading: the others make room for it.</summary>
    private static double[] WidthsOf(Block.Table table, double width)
    {
        var shares = table.Columns.Sum(c => c.Share);
        var own = table.Columns.Select(c => width * c.Share / shares).ToArray();
        var least = table.Columns.Select(c => (c.Heading.Split(' ').Max(w => TextWidth.Of(w, bold: true)) * Cell) + CellGap).ToArray();
        var (lacking, spare) = (own.Zip(least, (o, l) => Math.Max(0, l - o)).Sum(), own.Zip(least, (o, l) => Math.Max(0, o - l)).Sum());
        return lacking == 0 || lacking > spare ? own : [.. own.Zip(least, (o, l) => o < l ? l : o - (lacking * (o - l) / spare))];
    }

    private static IReadOnlyList<string>[] Wrapped(IReadOnlyList<string> cells, Block.Table table, bool bold, double width)
    {
        var widths = WidthsOf(table, width);
        return [.. cells.Select((cell, i) => Lines(cell, Cell, bold, widths[i] - CellGap))];
    }

    private static double HeightOfRow(IReadOnlyList<string> cells, Block.Table table, bool bold, double width) =>
        (Math.Max(1, Wrapped(cells, table, bold, width).Max(l => l.Count)) * Cell * Leading) + 3;

    private static double HeightOfHead(Block.Table table, double width) => HeightOfRow([.. table.Columns.Select(c => c.Heading)], table, bold: true, width);

    private static double HeightOfTable(Block.Table table, IEnumerable<Row> rows, double width) =>
        HeightOfHead(table, width) + rows.Sum(r => HeightOfRow(r.Cells, table, r.Strong, width));

    private void SetTable(Block.Table table)
    {
        tags.As(Part.Table, () =>
        {
            if (HalvesOf(table) is { } halves) SetInHalves(table, halves);
            else SetWhole(table);
        });
        y += Gap;
    }

    /// <summary>So many rows begin a table on a page.</summary>
    private const int LeastRows = 3;

    private void SetWhole(Block.Table table)
    {
        Need(StartOf(table));
        SetHead(table, Left, Width);
        for (var i = 0; i < table.Rows.Count; i++)
        {
            // The last row takes the one before it along: alone under a heading it looks like a table of its own.
            var together = i == table.Rows.Count - 2 ? 2 : 1;
            if (i > 0 && y + table.Rows.Skip(i).Take(together).Sum(r => HeightOfRow(r.Cells, table, r.Strong, Width)) > Bottom)
            {
                NewPage();
                SetHeadAgain(table, Left, Width);
            }
            SetRow(table.Rows[i], table, Left, Width);
        }
    }

    private const double BetweenHalves = 22;

    private readonly record struct Halves(int Rows, double Width, double Height);

    /// <summary>How a table of few short columns stands as two halves side by side; null where it does not, or not on one page.</summary>
    private Halves? HalvesOf(Block.Table table)
    {
        if (!table.Narrow || table.Rows.Count <= LeastRows) return null;
        var width = (Width - BetweenHalves) / 2;
        var rows = (table.Rows.Count + 1) / 2;
        var height = Math.Max(HeightOfTable(table, table.Rows.Take(rows), width), HeightOfTable(table, table.Rows.Skip(rows), width));
        return height > Bottom - Paper.MarginPt ? null : new(rows, width, height);
    }

    private void SetInHalves(Block.Table table, Halves halves)
    {
        Need(halves.Height);
        var (top, right) = (y, Left + halves.Width + BetweenHalves);
        SetHead(table, Left, halves.Width);
        foreach (var row in table.Rows.Take(halves.Rows)) SetRow(row, table, Left, halves.Width);
        y = top;
        SetHeadAgain(table, right, halves.Width);
        foreach (var row in table.Rows.Skip(halves.Rows)) SetRow(row, table, right, halves.Width);
        y = top + halves.Height;
    }

    private void SetHead(Block.Table table, double x, double width) =>
        SetRow([.. table.Columns.Select(c => c.Heading)], table, bold: true, Part.TableHeaderCell, x, width);

    // Who listens has heard it.
    private void SetHeadAgain(Block.Table table, double x, double width) => tags.Ornament(() => SetHead(table, x, width));

    private void SetRow(Row row, Block.Table table, double x, double width) =>
        SetRow(row.Cells, table, row.Strong, Part.TableDataCell, x, width);

    private void SetRow(IReadOnlyList<string> cells, Block.Table table, bool bold, Part kind, double left, double width)
    {
        var widths = WidthsOf(table, width);
        var wrapped = Wrapped(cells, table, bold, width);
        tags.As(Part.TableRow, () =>
        {
            var x = left;
            for (var i = 0; i < cells.Count; i++)
            {
                var own = widths[i];
                var (lines, edge, format) = table.Columns[i].Right ? (wrapped[i], x + own - CellGap, XStringFormats.BaseLineRight) : ([.. Spoken(wrapped[i])], x, XStringFormats.BaseLineLeft);
                tags.As(kind, () =>
                {
                    for (var line = 0; line < lines.Count; line++) Put(lines[line], Cell, bold, Ink, edge, y + 1 + (line * Cell * Leading), format);
                });
                x += own;
            }
        });
        y += HeightOfRow(cells, table, bold, width);
        var pen = kind == Part.TableHeaderCell ? new XPen(Ink, 1) : new XPen(Hairline, 0.5);
        tags.Ornament(() => page.DrawLine(pen, left, y - 0.5, left + width, y - 0.5));
    }

    private void SetFigures(IReadOnlyList<Figure> figures)
    {
        foreach (var whole in RowsOf(figures))
        {
            var row = Within(whole, Bottom - y) ?? whole;
            var height = HeightOf(row);
            Need(height);
            var (x, top) = (Left, y);
            foreach (var (caption, drawing) in row)
            {
                y = top;
                tags.As(Part.Paragraph, () => SetText(caption, Body, bold: true, Ink, x, drawing.Width));
                SetPicture(drawing, new Spot(x, top + HeightOfCaptions(row)));
                x += drawing.Width + Between;
            }
            y = top + height + Gap;
        }
    }

    private const double Between = 12;

    /// <summary>The row as it is, or its drawings a little lower, where that keeps it on this page; null: it has no room here.</summary>
    private static IReadOnlyList<Figure>? Within(IReadOnlyList<Figure> row, double height)
    {
        if (HeightOf(row) <= height) return row;
        var room = height - HeightOfCaptions(row);
        var lower = row.Select(f => f.Drawing.Height <= room ? f.Drawing : f.Within(room)).OfType<Drawing>().ToList();
        return lower.Count < row.Count ? null : [.. row.Zip(lower, (f, drawing) => f with { Drawing = drawing })];
    }

    /// <summary>As many side by side as have room.</summary>
    private IEnumerable<IReadOnlyList<Figure>> RowsOf(IReadOnlyList<Figure> figures)
    {
        for (var i = 0; i < figures.Count;)
        {
            var row = new List<Figure> { figures[i] };
            while (i + row.Count < figures.Count && row.Sum(f => f.Drawing.Width + Between) + figures[i + row.Count].Drawing.Width <= Width + 1) row.Add(figures[i + row.Count]);
            yield return row;
            i += row.Count;
        }
    }

    private static double HeightOfCaptions(IReadOnlyList<Figure> row) => row.Max(f => Lines(f.Caption, Body, bold: true, f.Drawing.Width).Count) * Body * Leading;

    private static double HeightOf(IReadOnlyList<Figure> row) => HeightOfCaptions(row) + row.Max(f => f.Drawing.Height);

    private const double CodeGap = 10;
    private const double NameGap = 3;

    /// <summary>What the code leaves of a ticket's width.</summary>
    private double InnerOf(Block.Ticket ticket) => Width - 24 - (ticket.Code is { } code ? code.Width + CodeGap : 0);

    private double HeightOf(Block.Ticket ticket)
    {
        var inner = InnerOf(ticket);
        var words = (Lines(ticket.Name, 11, true, inner).Count * 11 * Leading) + NameGap + HeightOfFacts(ticket.Large, inner, 12) + 2 + HeightOfFacts(ticket.Small, inner, Body) + 2 + HeightOfItems(ticket.Lines, inner);
        return 16 + Math.Max(words, ticket.Code is { } code ? code.Height + (Small * Leading * Lines(code.Title, Small, false, code.Width).Count) : 0);
    }

    private void SetTicket(Block.Ticket ticket)
    {
        var height = HeightOf(ticket);
        Need(height + Gap);
        tags.Ornament(() => page.DrawRectangle(new XPen(Ink, 1) { DashPattern = [5, 3] }, Left, y, Width, height));
        var after = y + height + (Gap * 1.4);
        y += 8;
        tags.Section(() => SetWithin(ticket));
        y = after;
    }

    private void SetWithin(Block.Ticket ticket)
    {
        var (top, inner) = (y, InnerOf(ticket));
        tags.As(Part.Heading3, () => SetText(ticket.Name, 11, bold: true, Ink, Left + 12, inner));
        y += NameGap;
        SetFacts(ticket.Large, Left + 12, inner, 12);
        SetFacts(ticket.Small, Left + 12, inner, Body);
        SetItems(ticket.Lines, Left + 12, inner);
        if (ticket.Code is not { } code) return;
        var x = Left + Width - 12 - code.Width;
        SetPicture(code, new Spot(x, top));
        y = top + code.Height;
        tags.As(Part.Paragraph, () => SetText(code.Title, Small, bold: false, Soft, x, code.Width));
    }

    private const double HeightOfSignatures = 34 + (Small * Leading) + (Gap * 2);

    /// <summary>Room to write, then the line with what it is for under it.</summary>
    private void SetSignatures(IReadOnlyList<string> names)
    {
        Need(HeightOfSignatures);
        var own = (Width - ((names.Count - 1) * BetweenHalves)) / names.Count;
        foreach (var (name, i) in names.Select((n, i) => (n, i)))
        {
            var x = Left + (i * (own + BetweenHalves));
            tags.Ornament(() => page.DrawLine(new XPen(Ink, 0.7), x, y + 34, x + own, y + 34));
            tags.As(Part.Paragraph, () => Put(name, Small, bold: false, Soft, x, y + 36));
        }
        y += HeightOfSignatures;
    }

    private void SetPicture(Drawing drawing, Spot at) =>
        tags.Picture(drawing.Description, new XRect(at.X, at.Y, drawing.Width, drawing.Height), () => Draw(drawing, at));

    private void Draw(Drawing drawing, Spot at)
    {
        foreach (var mark in drawing.Marks)
        {
            switch (mark)
            {
                case Mark.Line { Closed: true } line:
                    page.DrawPolygon(PenOf(line.Ink, drawing.Unit), [.. line.Points.Select(p => Point(p + at))]);
                    break;
                case Mark.Line line:
                    page.DrawLines(PenOf(line.Ink, drawing.Unit), [.. line.Points.Select(p => Point(p + at))]);
                    break;
                case Mark.Arrow arrow:
                    foreach (var stroke in arrow.Strokes(drawing.Unit)) page.DrawLines(PenOf(arrow.Ink, drawing.Unit), [.. stroke.Select(p => Point(p + at))]);
                    break;
                case Mark.Area area:
                    var path = new XGraphicsPath { FillMode = XFillMode.Alternate };
                    foreach (var ring in area.Rings) path.AddPolygon([.. ring.Select(p => Point(p + at))]);
                    page.DrawPath(new XSolidBrush(Colour(Pens.Hex(Pens.Of(area.Wash).Colour))), path);
                    break;
                case Mark.Text text:
                    DrawText(text, text.At + at);
                    break;
            }
        }
    }

    private void DrawText(Mark.Text text, Spot at)
    {
        var type = Pens.Of(text.Style);
        var (font, brush) = (Font(text.Size, type.Bold), new XSolidBrush(Colour(Pens.Hex(type.Colour))));
        var format = text.Anchor == Anchor.Middle ? XStringFormats.BaseLineCenter : XStringFormats.BaseLineLeft;
        var state = page.Save();
        page.TranslateTransform(at.X, at.Y);
        if (text.Upright) page.RotateTransform(-90);
        page.DrawString(text.Words, font, brush, 0, text.Size * 0.36, format);
        page.Restore(state);
    }

    private static XPen PenOf(Ink ink, double unit)
    {
        var pen = Pens.Of(ink);
        var made = new XPen(Colour(Pens.Hex(pen.Colour)), pen.Width * unit);
        // PDFsharp counts dashes in pen widths.
        if (pen.Dash.Count > 0) made.DashPattern = [.. pen.Dash.Select(d => d / pen.Width)];
        return made;
    }

    private static XPoint Point(Spot spot) => new(spot.X, spot.Y);

    private XFont Font(double size, bool bold)
    {
        if (!fonts.TryGetValue((size, bold), out var font)) fonts[(size, bold)] = font = Typefaces.Of(size, bold);
        return font;
    }

    private void SetFooter()
    {
        var top = document.Paper.HeightPt - Paper.MarginPt - (Small * Leading);
        var number = $"{pdf.PageCount} / {pageCount}";
        Put(TextWidth.Cut(document.Footer, (Width / Small) - TextWidth.Of(number) - 2), Small, bold: false, Soft, Left, top);
        Put(number, Small, bold: false, Soft, Left + Width, top, XStringFormats.BaseLineRight);
    }

    private byte[] Saved(DateTimeOffset made)
    {
        pdf.Info.Title = document.Title;
        if (document.Fingerprint is { } whole) pdf.Info.Keywords = whole;
        pdf.Info.CreationDate = made.UtcDateTime;
        using var stream = new MemoryStream();
        pdf.Save(stream);
        return PdfNames.Settle(stream.ToArray());
    }

    private static XColor Colour(string hex) => XColor.FromArgb(int.Parse(hex.AsSpan(1), NumberStyles.HexNumber, CultureInfo.InvariantCulture) | unchecked((int)0xff000000));
}
