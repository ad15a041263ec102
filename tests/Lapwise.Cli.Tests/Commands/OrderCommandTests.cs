namespace Lapwise.Cli.Tests.Commands;

public sealed class OrderCommandTests
{
    private const string Row = """{ "sections": [ { "id": "a", "seconds": 90 }, { "id": "b", "seconds": [80] }, { "id": "c", "seconds": 100.5 } ], "laps": [ ["a", "b"], { "a": "b", "b": "c" } ] }""";

    [Fact]
    public void A_row_is_rolled_from_one_end()
    {
        // Worst of the two laps on a path rolled in turn: 80 + 100.5 s.
        var shell = Shell.RunWith(Row, "order", "-", "--json");
        Assert.Equal(Outcome.Done, shell.Outcome);
        Assert.Equal(180.5, (double)shell.Json["worstLapAgeS"]!);
        Assert.Equal(180.5, (double)shell.Json["boundS"]!);
        Assert.True((bool)shell.Json["proven"]!);
        Assert.Equal(3, shell.Json["sections"]!.AsArray().Count);
    }

    // Bandwidth of an m × n grid is min(m, n) (Chvátalová 1975); in unit time the worst lap age is bandwidth + 1.
    [Theory]
    [InlineData(2, 6, 3)]
    [InlineData(3, 5, 4)]
    [InlineData(4, 4, 5)]
    public void A_grid_in_unit_time_is_as_old_as_its_bandwidth_and_one(int rows, int columns, double expected)
    {
        var sections = string.Join(',', Cells(rows, columns).Select(c => $$"""{"id":"{{c.Row}}-{{c.Column}}","seconds":1}"""));
        var laps = string.Join(',', Cells(rows, columns).SelectMany(c => new[] { (c, To: (Row: c.Row + 1, c.Column)), (c, To: (c.Row, Column: c.Column + 1)) })
            .Where(l => l.To.Row < rows && l.To.Column < columns)
            .Select(l => $"[\"{l.c.Row}-{l.c.Column}\",\"{l.To.Row}-{l.To.Column}\"]"));
        var shell = Shell.RunWith($$"""{"sections":[{{sections}}],"laps":[{{laps}}]}""", "order", "-", "--json");
        Assert.Equal(expected, (double)shell.Json["worstLapAgeS"]!);
        Assert.True((bool)shell.Json["proven"]!);
    }

    [Fact]
    public void Before_is_kept()
    {
        var shell = Shell.RunWith("sections: [{ id: a, seconds: 10 }, { id: b, seconds: 10 }]\nlaps: [[a, b]]\nbefore: [[b, a]]\n", "order", "-", "--json");
        Assert.Equal("b", (string)shell.Json["sections"]![0]!["id"]!);
    }

    [Fact]
    public void A_limit_that_cannot_be_kept_is_said_and_ends_with_1()
    {
        var shell = Shell.RunWith("""{ "sections": [ { "id": "a", "seconds": 10 }, { "id": "b", "seconds": 10 } ], "laps": [ { "a": "a", "b": "b", "limitS": 5 } ] }""", "order", "-");
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.Contains("✗", shell.Out);
    }

    [Fact]
    public void The_table_speaks_both_languages()
    {
        Shell.RunWith(Row, "order", "-").Matches("order.en");
        Shell.RunWith(Row, "order", "-", "--lang", "es").Matches("order.es");
    }

    [Theory]
    [InlineData("", "line 1: ")]
    [InlineData("[]", "A section graph is an object")]
    [InlineData("{", "line 1")]
    [InlineData("{}", "sections: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": 0 } ] }""", "sections[0].seconds: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": -5 } ] }""", "sections[0].seconds: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": 1e300 } ] }""", "sections[0].seconds: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": "long" } ] }""", "sections[0].seconds: ")]
    [InlineData("""{ "sections": [ { "id": "a" } ] }""", "sections[0].seconds: ")]
    [InlineData("""{ "sections": [ { "seconds": 5 } ] }""", "sections[0].id: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": 5 }, { "id": "a", "seconds": 5 } ] }""", "sections[1].id: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": 5 } ], "laps": [ ["a", "b"] ] }""", "laps[0][1]: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": 5 } ], "laps": [ ["a", "a"] ] }""", "laps[0]: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": 5 } ], "laps": [ ["a"] ] }""", "laps[0]: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": 5 } ], "crew": 0 }""", "crew: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": 5 }, { "id": "b", "seconds": 5 } ], "before": [ ["a", "b"], ["b", "a"] ] }""", "before: ")]
    [InlineData("""{ "sections": [ { "id": "a", "seconds": 5, "colour": "red" } ] }""", "sections[0].colour: ")]
    public void Bad_input_ends_with_2_and_one_line_at_its_place(string graph, string place)
    {
        var shell = Shell.RunWith(graph, "order", "-");
        Assert.Equal(Outcome.BadInput, shell.Outcome);
        Assert.Equal("", shell.Out);
        Assert.StartsWith(place, Assert.Single(shell.Faults));
    }

    [Fact]
    public void Deep_nesting_is_refused()
    {
        var shell = Shell.RunWith(new string('[', 1000) + new string(']', 1000), "order", "-");
        Assert.Equal(Outcome.BadInput, shell.Outcome);
        Assert.Single(shell.Faults);
    }

    private static IEnumerable<(int Row, int Column)> Cells(int rows, int columns) =>
        Enumerable.Range(0, rows).SelectMany(r => Enumerable.Range(0, columns).Select(c => (r, c)));
}
