using CsCheck;

namespace Lapwise.Cli.Tests;

/// <summary>Every way a job file can be wrong: exit 2, one line a fault with its path and line, nothing on the answer's stream.</summary>
public sealed class BadInputTests
{
    private static readonly string Sample = File.ReadAllText(Shell.Sample("jumbo-island.job.yaml"));

    [Theory]
    [InlineData("length: 12' 0\"", "length: -12 ft", "tops[0].outline.length, line 31: ")]
    [InlineData("length: 12' 0\"", "length: 0 in", "tops[0].outline.length, line 31: ")]
    [InlineData("length: 12' 0\"", "length: 400 miles", "tops[0].outline.length, line 31: ")]
    [InlineData("length: 12' 0\"", "length: 90000 ft", "tops[0].outline.length, line 31: ")]
    [InlineData("length: 12' 0\"", "length: about so long", "tops[0].outline.length, line 31: ")]
    [InlineData("humidity: 45 %", "humidity: 101 %", "room.humidity, line 11: ")]
    [InlineData("air: 73 °F", "air: [73]", "room.air, line 10: ")]
    [InlineData("surface: 73 °F", "surface: 73 quarts", "room.surface, line 13: ")]
    [InlineData("thinner: 1 %", "thinner: 120 %", "system[1].thinner, line 47: ")]
    [InlineData("thinner: 1 %", "thinner: 2.5 %", "system[1].thinner, line 47: ")]
    [InlineData("product: clear-fast-two-part", "product: clear-fast", "system[1].product, line 45: ")]
    [InlineData("lapwise: 1", "lapwise: 99", "lapwise, line 4: ")]
    [InlineData("lapwise: 1", "lapwise: one", "lapwise, line 4: ")]
    [InlineData("shape: rectangle", "shape: star", "tops[0].outline.shape, line 30: ")]
    [InlineData("thickness: 1 1/2 in", "thicknes: 1 1/2 in", "tops[0].thicknes, line 28: ")]
    [InlineData("      A: { kind: open", "      Q: { kind: open", "tops[0].edges.Q, line 36: ")]
    [InlineData("crew:\n", "crew: !!set\n", "line 16: ")]
    [InlineData("crew:\n", "\tcrew:\n", "line ")]
    public void A_slip_is_said_at_its_place(string good, string bad, string place)
    {
        Assert.Contains(good, Sample);
        var shell = Check(Sample.Replace(good, bad));
        Assert.Contains(shell.Faults, fault => fault.StartsWith(place, StringComparison.Ordinal));
    }

    [Fact]
    public void An_outline_that_crosses_itself_is_said()
    {
        var crossed = Sample[..Sample.IndexOf("    outline:", StringComparison.Ordinal)] + """
                outline:
                  shape: walk
                  sides:
                    - { length: 60 in, turn: right 143.13 }
                    - { length: 50 in, turn: left 126.87 }
                    - { length: 40 in, turn: left 126.87 }
                    - { length: 50 in, turn: right 143.13 }
                edges: { A: { kind: open } }
            system:
              - product: clear-fast-two-part
            """.Replace("\r", "");
        Check(crossed);
    }

    [Fact]
    public void A_cutout_outside_its_top_is_said()
    {
        var shell = Check(Sample.Replace("    edges:\n", "    cutouts:\n      - { name: Sink, shape: circle, diameter: 20 in, along: 20 ft, in: 20 in }\n    edges:\n"));
        Assert.Contains(shell.Faults, f => f.StartsWith("tops[0].cutouts[0]", StringComparison.Ordinal));
    }

    [Fact]
    public void A_mix_ratio_of_zero_is_said_in_its_product_file()
    {
        var folder = Directory.CreateTempSubdirectory("lapwise-products").FullName;
        try
        {
            foreach (var file in Directory.EnumerateFiles(Shell.Sample("products")))
                File.WriteAllText(Path.Combine(folder, Path.GetFileName(file)), File.ReadAllText(file).Replace("a: 2, b: 1", "a: 2, b: 0"));
            var shell = Shell.Run("check", Shell.Sample("jumbo-island.job.yaml"), "--products", folder);
            Assert.Equal(Outcome.BadInput, shell.Outcome);
            Assert.Contains(shell.Faults, f => f.Contains("mix.b", StringComparison.Ordinal));

            File.WriteAllText(Path.Combine(folder, "broken.product.yaml"), "lapwise: 1\nid: [");
            Assert.Contains(Shell.Run("check", Shell.Sample("jumbo-island.job.yaml"), "--products", folder).Faults, f => f.StartsWith("broken.product.yaml", StringComparison.Ordinal));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void A_folder_of_products_that_is_not_there_is_said() =>
        Assert.StartsWith("--products: ", Assert.Single(Shell.Run("check", Shell.Sample("jumbo-island.job.yaml"), "--products", "no-such-folder").Faults));

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("5")]
    [InlineData("{\"lapwise\": 1")]
    public void What_is_no_job_is_said(string text) => Check(text);

    [Fact]
    public void A_job_nested_a_thousand_deep_is_said()
    {
        Check("name: " + new string('[', 1000) + new string(']', 1000));
        Check("{\"name\": " + new string('[', 1000) + new string(']', 1000) + "}");
    }

    [Fact]
    public void Faults_are_said_in_spanish_too() =>
        Assert.All(Check(Sample.Replace("humidity: 45 %", "humidity: 101 %"), "--lang", "es").Faults, f => Assert.Contains("línea", f));

    /// <summary>A line lost, doubled or with its value changed: always an answer or a fault, never a crash.</summary>
    [Fact]
    public void No_slip_of_the_keyboard_crashes()
    {
        var lines = File.ReadAllText(Shell.Sample("l-kitchen.job.yaml")).Split('\n');
        var value = Gen.OneOf<string>("", "0", "-1", "1e9", "1e-9", "NaN", "~", "[]", "{}", "true", "1/0 in", "0 mm", "3 mm", "0.1 mm", "60 m", "100 %", "open", "circle", "walk", "ellipse", "\"\"", "~9 in", "1 m", "10 cm", "500 °F", "-40 °C", "A");
        (from at in Gen.Int[0, lines.Length - 1] from what in Gen.Int[0, 5] from text in value select (at, what, text)).Array[1, 2].Sample(slips =>
        {
            var changed = lines.ToList();
            foreach (var (at, what, text) in slips)
            {
                if (what == 0) changed[at] = "";
                else if (what == 1) changed[at] += "\n" + changed[at];
                else if (changed[at].IndexOf(": ", StringComparison.Ordinal) is > 0 and var colon) changed[at] = changed[at][..(colon + 2)] + text;
            }

            var shell = Shell.RunWith(string.Join('\n', changed), "plan", "-", "--json", "--products", Shell.Sample("products"));
            Assert.Equal(shell.Outcome == Outcome.BadInput, shell.Out.Length == 0);
            Assert.Equal(shell.Outcome == Outcome.BadInput, shell.Faults.Any(f => !f.StartsWith("Planning", StringComparison.Ordinal)));
        }, iter: 150, threads: 1);
    }

    private static Shell Check(string job, params string[] options)
    {
        var shell = Shell.RunWith(job, ["check", "-", "--products", Shell.Sample("products"), .. options]);
        Assert.Equal(Outcome.BadInput, shell.Outcome);
        Assert.Equal("", shell.Out);
        Assert.NotEmpty(shell.Faults);
        return shell;
    }
}
