using System.Text;
using Lapwise.Core.Explain;
using Spectre.Console;

namespace Lapwise.Cli;

/// <summary>How text and tables are put on a screen of 80 columns. Names a person entered are shown and never obeyed.</summary>
internal static class Screen
{
    /// <summary>Text on one line, without characters that move a terminal's cursor.</summary>
    public static string OneLine(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (var c in text) line.Append(char.IsControl(c) ? ' ' : c);
        return line.ToString();
    }

    /// <summary>Wraps text at 80 columns; later lines are indented.</summary>
    public static IEnumerable<string> Wrap(string text, int indent = 0, int columns = Terminal.Columns)
    {
        var line = new StringBuilder();
        var left = "";
        foreach (var word in OneLine(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > left.Length && line.Length + 1 + word.Length > columns)
            {
                yield return line.ToString();
                left = new string(' ', indent);
                line.Clear().Append(left);
            }

            if (line.Length > left.Length) line.Append(' ');
            line.Append(word);
        }

        yield return line.ToString();
    }

    public static Table Table(params ReadOnlySpan<(string Title, bool IsNumber)> columns)
    {
        var table = new Table().Border(TableBorder.Simple);
        foreach (var (title, isNumber) in columns)
        {
            var column = new TableColumn(new Text(title));
            table.AddColumn(isNumber ? column.RightAligned().NoWrap() : column);
        }

        return table;
    }

    public static void Row(this Table table, params IEnumerable<string> cells) =>
        table.AddRow(cells.Select(cell => new Text(OneLine(cell))));

    public static void Line(this Terminal terminal, string text = "", int indent = 0)
    {
        foreach (var line in Wrap(text, indent)) terminal.Out.WriteLine(line);
    }

    /// <summary>A reason with its next step, marked by a word and a sign.</summary>
    public static void Reason(this Terminal terminal, Reason reason, Voice voice)
    {
        var mark = reason.Limit switch
        {
            Limit.Never => voice.Say("✗ never: ", "✗ nunca: "),
            Limit.AtYourWord => voice.Say("✗ not as given: ", "✗ así no: "),
            _ => voice.Say("· note: ", "· nota: "),
        };
        terminal.Line(mark + reason.Text(voice), indent: 2);
        terminal.Line("  → " + reason.Remedy(voice), indent: 4);
    }
}
