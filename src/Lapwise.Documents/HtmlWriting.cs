using System.Globalization;
using System.Net;
using System.Text;
using Lapwise.Core.Explain;
using Lapwise.Drawings;

namespace Lapwise.Documents;

/// <summary>Writes a document as one page of HTML that prints as it should and needs nothing from elsewhere.</summary>
internal static class HtmlWriting
{
    public static string Write(Document document)
    {
        var html = new StringBuilder(65536);
        html.Append(CultureInfo.InvariantCulture, $$"""
            <!doctype html>
            <html lang="{{document.Language}}">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{{Text(document.Title)}}</title>{{(document.Fingerprint is { } whole ? $"\n<meta name=\"keywords\" content=\"{Text(whole)}\">" : "")}}
            <style>
            @page { size: {{document.Paper.CssName}}; margin: 15mm; }
            {{Style}}
            </style>
            </head>
            <body>
            <main>

            """);
        foreach (var block in document.Blocks) Append(html, block);
        return html.Append("</main>\n<footer>").Append(Text(document.Footer)).Append("</footer>\n</body>\n</html>\n").ToString();
    }

    private static void Append(StringBuilder html, Block block)
    {
        switch (block)
        {
            case Block.Title title:
                html.Append("<h1>").Append(Text(title.Text)).Append("</h1>\n<p class=\"below\">").Append(Text(title.Below)).Append("</p>\n");
                break;
            case Block.Heading heading:
                var level = heading.Level + 1;
                html.Append(CultureInfo.InvariantCulture, $"<h{level}{(heading.OwnPage ? " class=\"own\"" : "")}>{Text(heading.Text)}</h{level}>\n");
                break;
            case Block.Verdict verdict:
                html.Append("<p class=\"verdict ").Append(Class(verdict.Tone)).Append("\">").Append(Text(verdict.Text)).Append("</p>\n");
                break;
            case Block.Paragraph paragraph:
                html.Append("<p>").Append(Text(paragraph.Text)).Append("</p>\n");
                break;
            case Block.Items items:
                AppendItems(html, items.Lines);
                break;
            case Block.Facts facts:
                AppendFacts(html, "facts", facts.Pairs);
                break;
            case Block.Table table:
                AppendTable(html, table);
                break;
            case Block.Figures figures:
                html.Append("<div class=\"figures\">\n");
                foreach (var (caption, drawing) in figures.Drawings)
                    html.Append(CultureInfo.InvariantCulture, $"<figure tabindex=\"0\" style=\"--width:{drawing.Width:0.##}pt\"><figcaption>").Append(Text(caption)).Append("</figcaption>\n").Append(drawing.Svg()).Append("</figure>\n");
                html.Append("</div>\n");
                break;
            case Block.Signatures signatures:
                html.Append("<div class=\"sign\">\n");
                foreach (var name in signatures.Names) html.Append("<p>").Append(Text(name)).Append("</p>\n");
                html.Append("</div>\n");
                break;
            case Block.Ticket ticket:
                html.Append("<section class=\"ticket\">\n");
                if (ticket.Code is { } code) html.Append("<figure class=\"code\">").Append(code.Svg()).Append("<figcaption>").Append(Text(code.Title)).Append("</figcaption></figure>\n");
                html.Append("<h3>").Append(Text(ticket.Name)).Append("</h3>\n");
                AppendFacts(html, "large", ticket.Large);
                AppendFacts(html, "facts", ticket.Small);
                AppendItems(html, ticket.Lines);
                html.Append("</section>\n");
                break;
        }
    }

    private static void AppendItems(StringBuilder html, IReadOnlyList<Item> items)
    {
        if (items.Count == 0) return;
        html.Append("<ul>\n");
        foreach (var item in items)
            html.Append("<li><span class=\"mark\" aria-hidden=\"true\">").Append(Signs.Of(item.Mark)).Append("</span><span>").Append(Text(item.Text)).Append("</span></li>\n");
        html.Append("</ul>\n");
    }

    private static void AppendFacts(StringBuilder html, string name, IReadOnlyList<Fact> facts)
    {
        if (facts.Count == 0) return;
        html.Append("<dl class=\"").Append(name).Append("\">\n");
        foreach (var fact in facts)
            html.Append("<div><dt>").Append(Text(fact.Name)).Append("</dt><dd>").Append(Text(fact.Value)).Append("</dd></div>\n");
        html.Append("</dl>\n");
    }

    private static void AppendTable(StringBuilder html, Block.Table table)
    {
        html.Append("<div class=\"table\" tabindex=\"0\"><table>\n<thead><tr>");
        foreach (var column in table.Columns)
            html.Append(column.Right ? "<th scope=\"col\" class=\"right\">" : "<th scope=\"col\">").Append(Text(column.Heading)).Append("</th>");
        html.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            html.Append(row.Strong ? "<tr class=\"strong\">" : "<tr>");
            for (var i = 0; i < row.Cells.Count; i++)
                html.Append(table.Columns[i].Right ? "<td class=\"right\">" : "<td>").Append(Text(row.Cells[i])).Append("</td>");
            html.Append("</tr>\n");
        }
        html.Append("</tbody>\n</table></div>\n");
    }

    private static string Class(Tone tone) => tone switch { Tone.Works => "works", Tone.Narrow => "narrow", _ => "stop" };

    private static string Text(string text) => WebUtility.HtmlEncode(UnitGap.Keep(text));

    private const string Style = """
        :root { color: #20282d; background: #fff; font: 15px/1.4 'DejaVu Sans Condensed','Segoe UI',Roboto,'Helvetica Neue',Arial,sans-serif; }
        body { margin: 0 auto; max-width: 52rem; padding: 1rem; }
        h1 { font-size: 1.6rem; margin: 0; border-bottom: 3px solid #20282d; }
        h2 { font-size: 1.2rem; margin: 1.6em 0 .4em; border-bottom: 1px solid #66727a; }
        h3 { font-size: 1rem; margin: 1.2em 0 .3em; }
        h2, h3 { break-after: avoid; }
        h2.own { break-before: page; }
        p { margin: .4em 0; }
        .below { color: #4d585f; }
        .verdict { border: 1px solid #20282d; border-left-width: 8px; padding: .5em .8em; font-weight: 700; break-inside: avoid; break-after: avoid; }
        .verdict.narrow { border-color: #774c00; }
        .verdict.stop { border: 3px solid #8c1c13; border-left-width: 12px; color: #8c1c13; }
        dl { display: flex; flex-wrap: wrap; gap: .5em 1.6em; margin: .6em 0; break-inside: avoid; }
        dt { font-size: .8rem; color: #4d585f; }
        dd { margin: 0; font-weight: 700; }
        ul { list-style: none; margin: .4em 0; padding: 0; }
        li { margin: .25em 0; display: flex; break-inside: avoid; }
        .mark { flex: 0 0 1.6em; font-weight: 700; }
        .table { overflow-x: auto; }
        table { border-collapse: collapse; width: 100%; font-size: .87rem; }
        th { text-align: left; border-bottom: 2px solid #20282d; vertical-align: bottom; }
        td { border-bottom: 1px solid #c9cdd0; vertical-align: top; }
        th, td { padding: .2em .9em .2em 0; }
        th.right, td.right { text-align: right; font-variant-numeric: tabular-nums; }
        tr { break-inside: avoid; }
        tr.strong { font-weight: 700; }
        .figures { display: flex; flex-wrap: wrap; gap: 1rem; align-items: flex-start; margin: .8em 0; }
        figure { margin: 0; max-width: 100%; break-inside: avoid; overflow-x: auto; }
        figcaption { font-weight: 700; margin-bottom: .3em; }
        figure svg { width: var(--width); height: auto; display: block; }
        .ticket { border: 2px dashed #20282d; padding: .6em .9em; margin: .8em 0; break-inside: avoid; }
        .ticket h3 { margin: 0; }
        .code { float: right; width: 78pt; margin: 0 0 .4em 1em; overflow: visible; }
        .code svg { width: 100%; }
        .code figcaption { font-weight: 400; font-size: .7rem; text-align: center; }
        .ticket::after { content: ""; display: block; clear: both; }
        .sign { display: flex; gap: 1.6em; break-inside: avoid; }
        .sign p { flex: 1; margin-top: 3.4em; border-top: 1px solid #20282d; font-size: .8rem; color: #4d585f; }
        .large dd { font-size: 1.25rem; }
        footer { color: #4d585f; font-size: .8rem; margin-top: 2em; border-top: 1px solid #66727a; }
        @media print, (min-width: 40rem) { figure svg { max-width: 100%; } }
        @media print { body { max-width: none; padding: 0; } :root { font-size: 12px; } .table { overflow: visible; } }
        """;
}
