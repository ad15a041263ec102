using System.Text;
using Lapwise.Core.Conditions;
using Lapwise.Core.Bases;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
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
        var left = new string(' ', text.Length - text.TrimStart(' ').Length);
        var line = new StringBuilder(left);
        foreach (var word in UnitGap.Keep(OneLine(text)).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(UnitGap.Plain))
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

    /// <summary>A table; only columns of <see cref="Column.Text"/> may break a cell over lines.</summary>
    public static Table Table(params ReadOnlySpan<Column> columns)
    {
        var table = new Table().Border(TableBorder.Simple);
        foreach (var column in columns)
        {
            var shown = new TableColumn(new Text(column.Title)).PadLeft(0).PadRight(1);
            table.AddColumn(column switch
            {
                Column.Number => shown.RightAligned().NoWrap(),
                Column.Word => shown.NoWrap(),
                _ => shown,
            });
        }

        return table;
    }

    public static void Row(this Table table, params IEnumerable<string> cells) =>
        table.AddRow(cells.Select(cell => new Text(string.Join('\n', cell.Split('\n').Select(line => HeldGaps.Hold(OneLine(line)))))));

    public static void Line(this Terminal terminal, string text = "", int indent = 0)
    {
        foreach (var line in Wrap(text, indent)) terminal.Out.WriteLine(line);
    }

    /// <summary>The cautions of a job, beside the numbers they go with.</summary>
    public static void Cautions(this Terminal terminal, Job job, Voice voice)
    {
        var cautions = JobCautions.Of(job);
        if (cautions.Count == 0) return;
        terminal.Line();
        terminal.Line(voice.Say("Cautions", "Precauciones"));
        foreach (var caution in cautions) terminal.Line("! " + caution(voice), indent: 2);
        terminal.Line(Core.Explain.Cautions.Deferral(voice));
    }

    /// <summary>What a number rests on: formula, inputs, source.</summary>
    public static void Basis(this Terminal terminal, Basis basis, Voice v)
    {
        terminal.Line(v.Formula(basis.Formula), 2);
        foreach (var input in basis.Inputs) terminal.Line($"  {input.Name(v)}: {input.Value(v)}", 4);
        terminal.Line($"  {v.Say("source", "fuente")}: {basis.Source.Title(v)} ({Sources.Say(basis.Source.Standing, v)})", 4);
    }

    /// <summary>The numbers of a job, each with what it rests on.</summary>
    public static void Bases(this Terminal terminal, IEnumerable<BasedNumber> numbers, Voice v)
    {
        terminal.Line();
        terminal.Line(v.Say("Where the numbers come from", "De dónde salen los números"));
        foreach (var number in numbers)
        {
            terminal.Line();
            terminal.Line($"{(number.Of.Length > 0 ? number.Of + ", " : "")}{number.Name(v)}: {number.Shown(v)}");
            terminal.Basis(number.Basis, v);
        }
    }

    /// <summary>What a time rests on, in words.</summary>
    public static string Of(Origin origin, Voice v) => origin switch
    {
        Origin.DataSheet => v.Say("data sheet", "ficha técnica"),
        Origin.TestBoard => v.Say("test board", "placa de prueba"),
        _ => v.Say("a guess", "suposición"),
    };

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

/// <summary>A column of a table.</summary>
internal abstract record Column(string Title)
{
    public sealed record Number(string Title) : Column(Title);
    /// <summary>Short text that stays on one line.</summary>
    public sealed record Word(string Title) : Column(Title);
    /// <summary>Text that may be long: names a person chose.</summary>
    public sealed record Text(string Title) : Column(Title);
}
