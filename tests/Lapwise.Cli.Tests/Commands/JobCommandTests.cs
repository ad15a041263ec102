using System.Text.Json.Nodes;

namespace Lapwise.Cli.Tests.Commands;

/// <summary>Check, take-off, materials and plan on the samples.</summary>
public sealed class JobCommandTests
{
    private static readonly string Kitchen = Shell.Sample("l-kitchen.job.yaml");
    private static readonly string Island = Shell.Sample("jumbo-island.job.yaml");
    private static readonly string Vanity = Shell.Sample("vanity.job.yaml");

    [Theory]
    [InlineData("check")]
    [InlineData("takeoff")]
    [InlineData("materials")]
    [InlineData("plan")]
    public void Every_answer_speaks_both_languages_and_both_unit_systems(string command)
    {
        var english = Shell.Run(command, Kitchen);
        var spanish = Shell.Run(command, Kitchen, "--lang", "es", "--units", "metric");
        Assert.Equal((Outcome.Done, Outcome.Done), (english.Outcome, spanish.Outcome));
        english.Matches(command + ".en.us");
        spanish.Matches(command + ".es.metric");
    }

    [Fact]
    public void A_job_is_spoken_of_in_its_own_language_and_units_unless_asked_otherwise()
    {
        Assert.Contains("Cubierta", Shell.Run("takeoff", Vanity).Out);
        Assert.Contains(" m²", Shell.Run("takeoff", Vanity).Out);
        Assert.Contains("Top", Shell.Run("takeoff", Vanity, "--lang", "en").Out);
        Assert.Contains(" ft²", Shell.Run("takeoff", Vanity, "--units", "us").Out);
    }

    [Fact]
    public void Take_off_sums_its_tops_and_agrees_with_closed_form()
    {
        var answer = Shell.Run("takeoff", Vanity, "--json").Json;
        var top = answer["tops"]!.AsArray().Single()!;
        // 1.2 m × 0.55 m less a circle of 0.4 m; the full round of a 30 mm edge is π t / 2 wide.
        Assert.Equal((1.2 * 0.55) - (Math.PI * 0.04), (double)top["flatM2"]!, 1e-9);
        Assert.Equal(Math.PI * 0.4 * 0.03, (double)top["rimM2"]!, 1e-9);
        Assert.Equal(new[] { "flatM2", "edgeM2", "splashM2", "waterfallM2", "rimM2" }.Sum(n => (double)top[n]!), (double)top["coatedM2"]!, 1e-9);

        var kitchen = Shell.Run("takeoff", Kitchen, "--json").Json;
        foreach (var name in new[] { "flatM2", "edgeM2", "splashM2", "waterfallM2", "rimM2", "coatedM2", "misclosureM" })
            Assert.Equal(kitchen["tops"]!.AsArray().Sum(t => (double)t![name]!), (double)kitchen["total"]![name]!, 1e-9);
    }

    [Fact]
    public void Materials_need_is_net_and_loss_and_kits_cover_it()
    {
        var coats = Shell.Run("materials", Kitchen, "--json").Json["coats"]!.AsArray();
        Assert.Equal(2, coats.Count);
        Assert.All(coats, coat =>
        {
            Assert.Equal((double)coat!["netMl"]! + (double)coat["lossMl"]!, (double)coat["needMl"]!, 1e-6);
            var kits = coat["kits"]!.AsArray();
            Assert.True(kits.Sum(k => (double)k!["sizeMl"]! * (int)k["count"]!) >= (double)coat["needMl"]!);
            Assert.Equal(kits.Sum(k => (decimal)k!["price"]! * (int)k["count"]!), (decimal)coat["costTotal"]!);
        });
    }

    // Common practice, no source: a big island is finished in sections of about 4 ft × 2 ft, each wet then dry; wetting it
    // all before the dry pass comes too late.
    [Fact]
    public void The_great_island_holds_section_by_section_and_not_when_all_is_wetted_first()
    {
        var shell = Shell.Run("plan", Island, "--json");
        Assert.Equal(Outcome.Done, shell.Outcome);
        var clear = shell.Json["coats"]!.AsArray()[^1]!;
        Assert.True((double)clear["lapMarginS"]! >= (double)clear["targetMarginS"]!);
        var wetFirst = clear["baselines"]!.AsArray().Single(b => (string)b!["name"]! == "wet-all-first")!;
        Assert.True((double)wetFirst["worstLapAgeS"]! > (double)clear["openTimeS"]!);
    }

    [Fact]
    public void Plan_has_the_members_that_are_promised()
    {
        var coat = Shell.Run("plan", Kitchen, "--json").Json["coats"]!.AsArray()[^1]!.AsObject();
        Has(coat, "product method openTimeS openTimeOrigin potLifeS worstLapAgeS worstSectionAgeS lapMarginS proof sections laps batches baselines reasons");
        Has(coat["proof"]!, "state of boundS");
        Has(coat["sections"]![0]!, "id top face outlineM areaM2 standAt dryPassDeg person startS wetEndS endS batch");
        Has(coat["laps"]![0]!, "a b kind lengthM ageS marginS");
        Has(coat["batches"]![0]!, "id mixStartS mixEndS useByS volumeMl aMl bMl thinnerMl aG bG thinnerG ratioError");
        Has(coat["baselines"]![0]!, "name worstLapAgeS");
        Has(coat["reasons"]![0]!, "code text remedy");
        Assert.Equal("rolled", (string)coat["method"]!);
        Assert.Equal("dataSheet", (string)coat["openTimeOrigin"]!);

        static void Has(JsonNode node, string names) =>
            Assert.All(names.Split(' '), name => Assert.True(node.AsObject().ContainsKey(name), name));
    }

    [Fact]
    public void A_plan_that_does_not_work_ends_with_1_and_says_why()
    {
        var hot = File.ReadAllText(Island).Replace("surface: 73 °F", "surface: 104 °F").Replace("wetOut: 6 ft²/min", "wetOut: 2 ft²/min");
        var shell = Shell.RunWith(hot, "plan", "-", "--products", Shell.Sample("products"));
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.Contains("✗ Does not work as it stands", shell.Out);
        Assert.Contains("→", shell.Out);
        Assert.DoesNotContain("✓ Holds", shell.Out[shell.Out.IndexOf("Coat 2", StringComparison.Ordinal)..]);
    }

    [Fact]
    public void A_damp_room_fails_the_check()
    {
        var damp = File.ReadAllText(Island).Replace("humidity: 45 %", "humidity: 95 %");
        var shell = Shell.RunWith(damp, "check", "-", "--products", Shell.Sample("products"));
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.Contains("✗", shell.Out);
        Assert.False((bool)Shell.RunWith(damp, "check", "-", "--json", "--products", Shell.Sample("products")).Json["coats"]![1]!["mayCoat"]!);
    }

    [Fact]
    public void Cautions_stand_beside_the_numbers()
    {
        foreach (var command in new[] { "check", "materials", "plan" })
        {
            Assert.Contains("Isocyanate", Shell.Run(command, Island).Out);
            Assert.Contains("Isocianato", Shell.Run(command, Island, "--lang", "es").Out);
        }
    }

    [Fact]
    public void A_name_cannot_command_the_terminal()
    {
        var named = File.ReadAllText(Island).Replace("name: Great island\n", "name: \"[red]Great\\e[2J island[/]\"\n");
        var shell = Shell.RunWith(named, "takeoff", "-", "--products", Shell.Sample("products"));
        Assert.Equal(Outcome.Done, shell.Outcome);
        Assert.DoesNotContain('\u001b', shell.Out);
        Assert.Contains("[red]", shell.Out);
    }

    [Fact]
    public void The_same_job_gives_the_same_plan() =>
        Assert.Equal(Shell.Run("plan", Kitchen, "--json").Out, Shell.Run("plan", Kitchen, "--json").Out);

    [Fact]
    public void Yaml_and_json_are_one_document()
    {
        var json = Files.DocumentFile.Write(Files.DocumentFile.ReadJob(File.ReadAllText(Kitchen)).Document!, Files.DocumentForm.Json);
        Assert.Equal(Shell.Run("plan", Kitchen, "--json").Out, Shell.RunWith(json, "plan", "-", "--json", "--products", Shell.Sample("products")).Out);
    }

    [Fact]
    public void A_plan_is_drawn_as_svg_for_each_coat_and_top()
    {
        var folder = Directory.CreateTempSubdirectory("lapwise").FullName;
        Shell.Run("plan", Kitchen, "--out", Path.Combine(folder, "plan.svg"));
        Assert.Equal(["plan-1-1.svg", "plan-1-2.svg", "plan-2-1.svg", "plan-2-2.svg"], Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.All(Directory.GetFiles(folder), f => Assert.Equal("svg", System.Xml.Linq.XDocument.Load(f).Root!.Name.LocalName));
    }
}
