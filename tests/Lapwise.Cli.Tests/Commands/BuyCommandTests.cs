namespace Lapwise.Cli.Tests.Commands;

public sealed class BuyCommandTests
{
    private static readonly string[] Jobs = [Shell.Sample("l-kitchen.job.yaml"), Shell.Sample("vanity.job.yaml"), Shell.Sample("bar-top.job.yaml")];

    private static Shell Buy(params string[] words) => Shell.Run(["buy", .. Jobs, .. words]);

    [Fact]
    public void What_to_buy_for_several_jobs_is_told_with_its_cost_and_what_stands_beside_the_kits()
    {
        Buy("--lang", "en", "--units", "us").Matches("buy.en.us");
        Buy("--lang", "es", "--units", "metric").Matches("buy.es.metric");
    }

    [Fact]
    public void Costs_are_in_the_currency_of_the_rates_where_prices_name_none()
    {
        using var rates = new Written("currency: EUR");
        var bought = Buy("--rates", rates.Path, "--lang", "en");
        Assert.Equal(Outcome.Done, bought.Outcome);
        Assert.Contains("EUR", bought.Out, StringComparison.Ordinal);
        var json = Buy("--rates", rates.Path, "--json").Json;
        Assert.Equal("EUR", (string?)json["currency"]);
        Assert.NotEmpty(json["besideKits"]!.AsArray());

        using var unknown = new Written("currency: EUX");
        var refused = Buy("--rates", unknown.Path, "--lang", "en");
        Assert.Equal(Outcome.BadInput, refused.Outcome);
        Assert.Contains("EUX", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_several_files_the_one_that_cannot_be_read_is_named()
    {
        using var broken = new Written("lapwise: 1\nnmae: Kitchen");
        var refused = Shell.Run("buy", Jobs[0], broken.Path, "--lang", "en");
        Assert.Equal(Outcome.BadInput, refused.Outcome);
        Assert.Contains($"All of this is in {broken.Path}.", refused.Error, StringComparison.Ordinal);
    }

    /// <summary>A file for one test.</summary>
    private sealed class Written : IDisposable
    {
        public Written(string text) => File.WriteAllText(Path, text);

        public string Path { get; } = System.IO.Path.Combine(System.IO.Path.GetTempPath(), Guid.NewGuid().ToString("N") + ".yaml");

        public void Dispose() => File.Delete(Path);
    }
}
