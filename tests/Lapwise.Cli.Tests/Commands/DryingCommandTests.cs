using System.Text.Json;

namespace Lapwise.Cli.Tests.Commands;

public sealed class DryingCommandTests
{
    /// <summary>The island's clear, told to give off water: 62 % solids of a 6.5 mil film.</summary>
    private static string Waterborne()
    {
        var folder = Directory.CreateTempSubdirectory("lapwise-drying").FullName;
        Directory.CreateDirectory(Path.Combine(folder, "products"));
        foreach (var product in Directory.GetFiles(Path.Combine(Path.GetDirectoryName(Shell.Sample("jumbo-island.job.yaml"))!, "products")))
            File.WriteAllText(Path.Combine(folder, "products", Path.GetFileName(product)), File.ReadAllText(product).Replace("method: rolled", "method: rolled\ndrying: { carrier: water, evaporation: 60 % }\ndryToTouch: { time: 45 min, at: 73 °F }", StringComparison.Ordinal));
        var job = Path.Combine(folder, "island.job.yaml");
        File.Copy(Shell.Sample("jumbo-island.job.yaml"), job);
        return job;
    }

    [Fact]
    public void The_two_stages_and_the_waits_are_shown()
    {
        var job = Waterborne();
        var shell = Shell.Run("drying", job, "--lang", "en", "--units", "us");
        Assert.Equal(Outcome.Done, shell.Outcome);
        shell.Matches("drying.en.us");
        Shell.Run("drying", job, "--lang", "es", "--units", "metric").Matches("drying.es.metric");
    }

    [Fact]
    public void As_json_the_waits_carry_the_stage_of_the_standard()
    {
        using var json = JsonDocument.Parse(Shell.Run("drying", Waterborne(), "--json").Out);
        var clear = json.RootElement.GetProperty("coats")[1];
        Assert.Equal(["dry-to-touch", "dry-to-recoat"], clear.GetProperty("waits").EnumerateArray().Take(2).Select(w => w.GetProperty("stage").GetString()));
        var water = clear.GetProperty("water");
        Assert.InRange(water.GetProperty("shareHeldByHumidity").GetDouble(), 0.01, 0.99);
        Assert.Equal(0.05, water.GetProperty("leftAfter").EnumerateArray().Last()[1].GetDouble(), 1e-9);
    }

    [Fact]
    public void Readings_that_end_before_a_wait_leave_it_open()
    {
        using var json = JsonDocument.Parse(Shell.RunWith("08:00 72 °F 45 %\n09:00 72 °F 45 %\n10:00 73 °F 45 %\n", "drying", Waterborne(), "-", "--json").Out);
        var waits = json.RootElement.GetProperty("coats")[1].GetProperty("waits");
        Assert.True(waits[0].GetProperty("seconds").GetDouble() > 0);
        Assert.Equal(JsonValueKind.Null, waits[1].GetProperty("seconds").ValueKind);
    }
}
