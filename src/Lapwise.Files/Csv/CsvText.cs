using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using Lapwise.Core.Explain;

namespace Lapwise.Files.Csv;

/// <summary>One row of a CSV file by its heading, with its line from 1.</summary>
public sealed record CsvRow(int Line, IReadOnlyDictionary<string, string> Cells)
{
    public string this[string heading] => Cells.GetValueOrDefault(heading, "");
}

/// <summary>
/// Tables as CSV (RFC 4180). A cell that a spreadsheet would run as a formula is written with an apostrophe before it, as
/// OWASP advises against CSV injection (cells that begin with = + - @, tab or return), and read back without it.
/// </summary>
public static class CsvText
{
    private const char Apostrophe = '\'';

    /// <summary>Characters that begin a formula, their full-width forms among them.</summary>
    private static readonly char[] BeginsFormula = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠', '|', '%'];

    public const int MostRows = 200_000;

    public static string Write(IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n", ShouldQuote = cell => NeedsQuotes(cell.Field ?? "") }))
        {
            foreach (var row in rows.Prepend(headings))
            {
                foreach (var cell in row) csv.WriteField(Harmless(cell));
                csv.NextRecord();
            }
        }

        return text.ToString();
    }

    /// <summary>Reads a table with a heading row; commas, or semicolons as spreadsheets of comma countries write them.</summary>
    /// <param name="needed">Headings it must have.</param>
    public static (IReadOnlyList<CsvRow> Rows, IReadOnlyList<Fault> Faults) Read(string text, IReadOnlyList<string> needed)
    {
        text = text.TrimStart('\uFEFF');
        var (rows, faults) = (new List<CsvRow>(), new List<Fault>());
        var firstLine = text.Split('\n', 2)[0];
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = firstLine.Contains(';', StringComparison.Ordinal) && !firstLine.Contains(',', StringComparison.Ordinal) ? ";" : ",",
            BadDataFound = bad => faults.Add(new Fault("", "CsvNotRead",
                v => v.Say($"The quotes in {Cut(bad.RawRecord)} do not close.", $"Las comillas de {Cut(bad.RawRecord)} no se cierran."),
                v => v.Say("Put a cell with a comma, a quote or a line break in quotes, and double each quote in it.", "Ponga entre comillas la celda con coma, comilla o salto de línea, y doble cada comilla que lleve."))),
        };
        using var csv = new CsvParser(new StringReader(text), configuration);
        if (!csv.Read() || csv.Record is not { } first) return ([], [Missing(needed)]);
        var headings = first.Select(h => h.Trim()).ToList();
        if (needed.Except(headings, StringComparer.OrdinalIgnoreCase).ToList() is { Count: > 0 } missing) return ([], [Missing(missing)]);

        while (csv.Read() && csv.Record is { } record)
        {
            if (rows.Count == MostRows)
            {
                faults.Add(new Fault("", "TooMany", v => v.Say($"More than {MostRows} rows.", $"Más de {MostRows} filas."), v => v.Say("Split the file.", "Divida el archivo.")));
                break;
            }

            if (record.All(string.IsNullOrWhiteSpace)) continue;
            var cells = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
            for (var i = 0; i < Math.Min(headings.Count, record.Length); i++) cells[headings[i]] = AsWas(record[i]).Trim();
            rows.Add(new CsvRow(csv.RawRow, cells));
        }

        return (rows, faults);
    }

    private static bool NeedsQuotes(string cell) => cell.AsSpan().IndexOfAny(",;\"\r\n") >= 0 || cell != cell.Trim();

    internal static string Harmless(string cell) => cell.Length > 0 && (BeginsFormula.Contains(cell[0]) || IsEscaped(cell)) ? Apostrophe + cell : cell;

    private static string AsWas(string cell) => IsEscaped(cell) ? cell[1..] : cell;

    /// <summary>Begins with apostrophes before what could begin a formula: the one in front is ours.</summary>
    private static bool IsEscaped(string cell) =>
        cell.Length > 1 && cell[0] == Apostrophe && cell.TrimStart(Apostrophe) is { Length: > 0 } rest && BeginsFormula.Contains(rest[0]);

    private static Fault Missing(IReadOnlyList<string> headings) => new("", "CsvHeadingMissing",
        v => v.Say($"The first row lacks: {string.Join(", ", headings)}.", $"En la primera fila falta: {string.Join(", ", headings)}."),
        v => v.Say("Start from a file that this program wrote.", "Parta de un archivo escrito por este programa."));

    private static string Cut(string text) => text.Length > 40 ? text[..40] + "…" : text;
}
