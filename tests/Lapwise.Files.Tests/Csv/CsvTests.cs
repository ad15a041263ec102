using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Files.Csv;

namespace Lapwise.Files.Tests.Csv;

/// <summary>RFC 4180 both ways, and no cell that a spreadsheet would run (OWASP, CSV Injection).</summary>
public sealed class CsvTests
{
    private static ProductDocument Product(string id, string name, params (string Size, decimal Price)[] kits) => new() { Id = id, Name = name, Kits = [.. kits.Select(k => new KitDocument { Size = k.Size, Price = k.Price })] };

    /// <summary>The examples of RFC 4180, section 2, rules 5 to 7.</summary>
    [Fact]
    public void Quotes_commas_and_line_breaks_are_read_as_the_standard_says()
    {
        var (rows, faults) = CsvText.Read("a,b,c\r\n\"aaa\",\"b \r\nbb\",\"ccc\"\r\nzzz,\"b\"\"bb\",\"x,y\"\r\n", ["a"]);
        Assert.Empty(faults);
        Assert.Equal(["aaa", "b \r\nbb", "ccc"], new[] { rows[0]["a"], rows[0]["b"], rows[0]["c"] });
        Assert.Equal(["zzz", "b\"bb", "x,y"], new[] { rows[1]["a"], rows[1]["b"], rows[1]["c"] });
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("=HYPERLINK(\"http://x.example\",\"y\")")]
    [InlineData("+1")]
    [InlineData("-2+3")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("＝1+1")]
    [InlineData("'=1")]
    public void A_cell_that_would_run_is_written_harmless_and_read_back_as_it_was(string name)
    {
        var csv = PricesCsv.Write([Product("clear", name, ("24 fl oz", 84m))]);
        var cell = csv.Split("\r\n")[1].Split(',', 2)[1].TrimStart('"');
        Assert.StartsWith("'", cell);
        Assert.Equal(name.Trim(), CsvText.Read(csv, ["name"]).Rows[0]["name"].Trim());
    }

    [Fact]
    public void Whatever_is_written_no_cell_begins_a_formula_and_all_of_it_comes_back() =>
        Gen.String[Gen.Char["=+-@\t\r\n\",;' ab1\uFF1D"], 0, 12].Array[1, 6].Sample(cells =>
        {
            var csv = CsvText.Write([.. cells.Select((_, i) => $"h{i}"), "end"], [[.. cells, "."]]);
            var (rows, faults) = CsvText.Read(csv, []);
            Assert.Empty(faults);
            // Read by a parser that knows nothing of the apostrophe, no cell begins with what a spreadsheet runs.
            foreach (var cell in Plain(csv)[1]) Assert.False(cell.Length > 0 && "=+-@\t\r\n\uFF1D".Contains(cell[0]), csv);
            for (var i = 0; i < cells.Length; i++) Assert.Equal(cells[i].Trim(), rows[0][$"h{i}"].Trim());
        });

    [Fact]
    public void Prices_come_back_and_only_what_changed_is_told()
    {
        ProductDocument[] products = [Product("clear", "Clear", ("24 fl oz", 84m), ("1 gal", 300m)), Product("base", "Base", ("32 fl oz", 58m))];
        var csv = PricesCsv.Write(products).Replace("300", "310,50", StringComparison.Ordinal).Replace("1 gal,310,50", "1 gal,\"310,50\"", StringComparison.Ordinal);
        var (changed, faults) = PricesCsv.Read(csv, products);
        Assert.Empty(faults);
        Assert.Equal(310.5m, changed.Single(p => p.Id == "clear").Kits[1].Price);
        Assert.Equal("clear", Assert.Single(changed).Id);
    }

    [Theory]
    [InlineData("product,size,price\r\nghost,24 fl oz,1\r\n", "ProductUnknown", 2)]
    [InlineData("product,size,price\r\nclear,24 bottles,1\r\n", "SizeNotRead", 2)]
    [InlineData("product,size,price\r\nclear,24 fl oz,=1+1\r\n", "PriceIsFormula", 2)]
    [InlineData("product,size,price\r\nclear,24 fl oz,@SUM(A1)\r\n", "PriceIsFormula", 2)]
    [InlineData("product,size,price,currency\r\nclear,24 fl oz,1,XQQ\r\n", "CurrencyUnknown", 2)]
    [InlineData("name,size\r\n", "CsvHeadingMissing", null)]
    [InlineData("", "CsvHeadingMissing", null)]
    public void What_cannot_be_used_is_said_with_its_line(string csv, string code, int? line)
    {
        var (_, faults) = PricesCsv.Read(csv, [Product("clear", "Clear", ("24 fl oz", 84m))]);
        var fault = Assert.Single(faults);
        Assert.Equal((code, line), (fault.Code, fault.Line));
    }

    [Fact]
    public void Semicolons_of_a_comma_country_are_read() =>
        Assert.Equal(84.5m, PricesCsv.Read("product;size;price\r\nclear;24 fl oz;84,50\r\n", [Product("clear", "Clear", ("24 fl oz", 1m))]).Products[0].Kits[0].Price);

    [Fact]
    public void A_table_of_the_shelf_is_receipts_and_counts_and_twice_is_once()
    {
        var day = new DateOnly(2026, 11, 25);
        var full = new Pack("p", Shade.Of("clear", null), "L1", 900, day.AddDays(90), null, [new PackPart("A", 2.0 / 3, 600), new PackPart("B", 1.0 / 3, 300)]);
        var shelf = new Shelf([full], []);
        Assert.Empty(ShelfCsv.Read(ShelfCsv.Write(shelf), shelf, day).Entries);

        var (entries, faults) = ShelfCsv.Read("pack,product,color,lot,size_ml,left_a_ml,left_b_ml,expires\r\np,clear,,L1,900,100,50,\r\nq,clear,blue,L2,900,,,2027-01-01\r\n", shelf, day);
        Assert.Empty(faults);
        Assert.Equal([(ShelfEntryKind.Counted, "p"), (ShelfEntryKind.Received, "q")], entries.Select(e => (e.Kind, e.Pack)));
        Assert.Equal(entries.Select(e => e.Id), ShelfCsv.Read("pack,product,color,lot,size_ml,left_a_ml,left_b_ml,expires\r\np,clear,,L1,900,100,50,\r\nq,clear,blue,L2,900,,,2027-01-01\r\n", shelf, day).Entries.Select(e => e.Id));
    }

    [Fact]
    public void A_table_of_the_shelf_says_what_is_left_of_a_third_part()
    {
        var day = new DateOnly(2026, 11, 25);
        var shelf = new Shelf([new Pack("p", Shade.Of("primer", null), "", 900, null, null, [new PackPart("A", 0.5, 450), new PackPart("B", 0.3, 270), new PackPart("C", 0.2, 180)])], []);
        Assert.Empty(ShelfCsv.Read(ShelfCsv.Write(shelf), shelf, day).Entries);
        var counted = Assert.Single(ShelfCsv.Read(ShelfCsv.Write(shelf).Replace(",180,", ",90,", StringComparison.Ordinal), shelf, day).Entries);
        Assert.Equal(("450 mL", "270 mL", "90 mL"), (counted.A?.Text, counted.B?.Text, counted.C?.Text));
    }

    /// <summary>A reader of RFC 4180 in a dozen lines, for the test only.</summary>
    private static List<List<string>> Plain(string csv)
    {
        var (rows, row, cell, quoted) = (new List<List<string>>(), new List<string>(), new System.Text.StringBuilder(), false);
        for (var i = 0; i < csv.Length; i++)
        {
            var c = csv[i];
            if (quoted && c == '"' && i + 1 < csv.Length && csv[i + 1] == '"') { cell.Append('"'); i++; }
            else if (c == '"') quoted = !quoted;
            else if (!quoted && (c == ',' || (c == '\r' && csv[i + 1] == '\n')))
            {
                row.Add(cell.ToString());
                cell.Clear();
                if (c == ',') continue;
                rows.Add(row);
                row = [];
                i++;
            }
            else cell.Append(c);
        }

        return rows;
    }
}
