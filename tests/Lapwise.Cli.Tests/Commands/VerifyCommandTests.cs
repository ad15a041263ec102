namespace Lapwise.Cli.Tests.Commands;

public sealed class VerifyCommandTests
{
    private static readonly string Vanity = Shell.Sample("vanity.job.yaml");

    [Fact]
    public void The_programs_own_plan_is_as_it_says()
    {
        var plan = Shell.Run("plan", Vanity, "--json").Out;
        var shell = Shell.RunWith(plan, "verify", Vanity, "-");
        Assert.Equal(Outcome.Done, shell.Outcome);
        shell.Matches("verify.es");
        Shell.RunWith(plan, "verify", Vanity, "-", "--lang", "en").Matches("verify.en");
    }

    [Fact]
    public void A_touched_plan_ends_with_1_and_names_what_was_touched()
    {
        var plan = Shell.Run("plan", Vanity, "--json").Json;
        plan["coats"]![1]!["lapMarginS"] = 999;
        var shell = Shell.RunWith(plan.ToJsonString(), "verify", Vanity, "-");
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.Contains("coats[1]: MarginWrong", shell.Out);

        var json = Shell.RunWith(plan.ToJsonString(), "verify", Vanity, "-", "--json").Json;
        Assert.False((bool)json["holds"]!);
        Assert.Equal("MarginWrong", (string)json["violations"]![0]!["code"]!);
    }

    [Fact]
    public void A_plan_of_another_job_is_not_this_ones()
    {
        var plan = Shell.Run("plan", Shell.Sample("jumbo-island.job.yaml"), "--json").Out;
        Assert.Equal(Outcome.DoesNotWork, Shell.RunWith(plan, "verify", Vanity, "-").Outcome);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("not json")]
    public void What_is_no_plan_ends_with_2(string plan) =>
        Assert.Equal(Outcome.BadInput, Shell.RunWith(plan, "verify", Vanity, "-").Outcome);
}
