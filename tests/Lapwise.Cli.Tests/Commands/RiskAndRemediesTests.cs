using System.Text.Json.Nodes;

namespace Lapwise.Cli.Tests.Commands;

/// <summary>The plan with its risk and its remedies: the island warm from the sun, rolled slowly, keeps too little in hand.</summary>
public sealed class RiskAndRemediesTests : IDisposable
{
    private readonly string _job = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".job.yaml");

    public RiskAndRemediesTests() => File.WriteAllText(_job, File.ReadAllText(Shell.Sample("jumbo-island.job.yaml"))
        .Replace("wetOut: 6 ft²/min", "wetOut: 2 ft²/min", StringComparison.Ordinal)
        .Replace("surface: 73 °F", "surface: 82 °F", StringComparison.Ordinal));

    public void Dispose() => File.Delete(_job);

    private Shell Plan(params string[] more) => Shell.Run(["plan", _job, "--products", Shell.Sample("products"), .. more]);

    [Fact]
    public void Risk_and_remedies_are_printed_in_both_languages_and_fit_the_screen()
    {
        Plan("--risk", "--remedies").Matches("plan-risk-remedies.en.us");
        Plan("--risk", "--remedies", "--lang", "es", "--units", "metric").Matches("plan-risk-remedies.es.metric");
    }

    [Fact]
    public void Risk_and_remedies_as_json_agree_with_the_plan()
    {
        var coat = Plan("--risk", "--remedies", "--json").Json["coats"]!.AsArray()[^1]!;
        var risk = coat["risk"]!;
        Assert.Equal((int)risk["trials"]!, risk["counts"]!.AsArray().Sum(c => (int)c!));
        Assert.Equal(coat["laps"]!.AsArray().Count, risk["laps"]!.AsArray().Count);
        Assert.True((double)risk["line"]!["share"]! >= risk["laps"]!.AsArray().Max(l => (double)l!["line"]!["share"]!));
        Assert.All(coat["remedies"]!.AsArray().Where(r => (bool)r!["keepsTarget"]!), r => Assert.True((double)r!["lapMarginS"]! >= (double)coat["targetMarginS"]! * 0.5));
        Assert.NotEmpty(coat["remedies"]!.AsArray());
    }

    [Fact]
    public void A_plan_that_was_not_asked_for_them_is_as_it_was()
    {
        JsonNode coat = Plan("--json").Json["coats"]!.AsArray()[0]!;
        Assert.Null(coat["risk"]);
        Assert.Null(coat["remedies"]);
    }
}
