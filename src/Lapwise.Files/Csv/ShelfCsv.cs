using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Files.Csv;

/// <summary>What stands on the shelf: one row a pack, amounts in mL.</summary>
public static class ShelfCsv
{
    private static readonly string[] Headings = ["pack", "product", "color", "lot", "size_ml", "left_a_ml", "left_b_ml", "left_c_ml", "opened", "expires"];
    private static readonly string[] Needed = ["pack", "product", "size_ml"];

    public static string Write(Shelf shelf) => CsvText.Write(Headings, shelf.Packs.Select(p => (IReadOnlyList<string>)
    [
        p.Id, p.Shade.Product, p.Shade.Color, p.Lot, Ml(p.SizeMl), Left(p, 0), Left(p, 1), Left(p, 2), Day(p.Opened), Day(p.Expires),
    ]));

    /// <summary>
    /// The entries that would bring the shelf to the file: a receipt for a pack that is not known, a count where less or more is
    /// left. A pack the file leaves out is left as it is.
    /// </summary>
    /// <param name="on">The day the entries are dated.</param>
    public static (IReadOnlyList<ShelfEntryDocument> Entries, IReadOnlyList<Fault> Faults) Read(string csv, Shelf shelf, DateOnly on)
    {
        var (rows, faults) = CsvText.Read(csv, Needed);
        var packs = shelf.Packs.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var entries = new List<ShelfEntryDocument>();
        foreach (var row in rows)
        {
            var id = row["pack"];
            var known = packs.GetValueOrDefault(id);
            if (known is null)
            {
                entries.Add(Entry(id, ShelfEntryKind.Received, on, "") with
                {
                    Product = row["product"], Color = Blank(row["color"]), Lot = Blank(row["lot"]), Size = row["size_ml"] + " mL", Expires = Blank(row["expires"]),
                });
            }

            // A pack just received is full; a row that says nothing of what is left says that it is.
            var (a, b, c) = (row["left_a_ml"], row["left_b_ml"], row["left_c_ml"]);
            if (a.Length == 0 || b.Length == 0 || (known is not null && a == Left(known, 0) && b == Left(known, 1) && (c.Length == 0 || c == Left(known, 2)))) continue;
            entries.Add(Entry(id, ShelfEntryKind.Counted, on, $"{a} {b} {c}".TrimEnd()) with { A = a + " mL", B = b + " mL", C = c.Length == 0 ? (Entry?)null : new Entry(c + " mL") });
        }

        return (entries, faults);
    }

    private static ShelfEntryDocument Entry(string pack, ShelfEntryKind kind, DateOnly on, string left) => new()
    {
        // The same file read twice on one day is the same entries, and they count once.
        Id = string.Create(CultureInfo.InvariantCulture, $"csv-{on:yyyyMMdd}-{(kind == ShelfEntryKind.Received ? 'r' : 'c')}-{Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes($"{pack} {left}")))[..24]}"),
        On = Day(on), Kind = kind, Pack = pack,
    };

    /// <summary>Empty where the pack has no such part.</summary>
    private static string Left(Pack pack, int part) => part < pack.Parts.Count ? Ml(pack.Parts[part].LeftMl) : "";

    private static string Ml(double ml) => ml.ToString("0.###", CultureInfo.InvariantCulture);
    private static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";
    private static string? Blank(string text) => text.Length > 0 ? text : null;
}
