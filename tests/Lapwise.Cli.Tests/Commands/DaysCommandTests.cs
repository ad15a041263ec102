namespace Lapwise.Cli.Tests.Commands;

public sealed class DaysCommandTests
{
    private static string[] Words(params string[] more) =>
        ["days", Shell.Sample("l-kitchen.job.yaml"), Shell.Sample("vanity.job.yaml"), Shell.Sample("bar-top.job.yaml"), .. more];

    [Fact]
    public void A_shops_own_file_places_its_jobs() => Shell.Run(Words("--shop", Shell.Sample("shop.days.yaml"), "--lang", "en", "--units", "us")).Matches("days-shop");

    [Fact]
    public void A_field_of_the_shops_file_that_cannot_be_used_is_told_with_its_line()
    {
        var text = File.ReadAllText(Shell.Sample("shop.days.yaml")).Replace("betweenSites: 40 min", "betweenSites: 40 ft");
        var told = Shell.RunWith(text, Words("--shop", "-", "--lang", "en"));

        Assert.Equal(Outcome.BadInput, told.Outcome);
        Assert.Contains("betweenSites", Assert.Single(told.Faults), StringComparison.Ordinal);
        Assert.Contains("12", told.Faults[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_skill_that_no_crew_has_is_told_before_anything_is_placed()
    {
        var text = File.ReadAllText(Shell.Sample("shop.days.yaml")).Replace("skills: [pour]", "skills: []");
        var told = Shell.RunWith(text, Words("--shop", "-", "--lang", "en"));

        Assert.Equal(Outcome.BadInput, told.Outcome);
        Assert.Contains("No crew can do", Assert.Single(told.Faults), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en", "too much", "at least")]
    [InlineData("es", "sobran", "al menos")]
    public void Jobs_that_do_not_fit_into_the_days_are_told_with_by_how_much_and_a_cure(string language, string by, string cure)
    {
        var told = Shell.RunWith("lapwise: 1\ncrews: [{ name: Wren }]\ndaysAhead: 14", ["days", .. Enumerable.Repeat(Shell.Sample("vanity.job.yaml"), 9), "--shop", "-", "--lang", language]);

        Assert.Equal(Outcome.DoesNotWork, told.Outcome);
        Assert.Contains(by, told.Out + told.Error, StringComparison.Ordinal);
        Assert.Contains(cure, told.Out + told.Error, StringComparison.Ordinal);
    }
}
