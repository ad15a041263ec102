using Lapwise.Verifier;

namespace Lapwise.Architecture.Tests;

/// <summary>The checker of plans shares nothing with what makes plans, nor with what writes them out.</summary>
public sealed class VerifierTests
{
    private static readonly string[] MakesPlans = ["Lapwise.Core.Work", "Lapwise.Core.Supply", "Lapwise.Core.Answers"];

    [Fact]
    public void The_checker_uses_nothing_that_makes_plans()
    {
        var (looked, breaches) = Check(typeof(Verifying).Assembly.Location, "Lapwise.Verifier");

        Assert.Empty(breaches);
        Assert.True(looked > 100, $"the rule looked at {looked} uses only: it no longer finds the checker");
    }

    [Theory]
    [InlineData(nameof(Offenders.Checking.AsksTheSearch))]
    [InlineData(nameof(Offenders.Checking.TakesTheSearchsRecord))]
    [InlineData(nameof(Offenders.Checking.ReadsTheAnswer))]
    public void A_checker_that_does_is_caught(string name)
    {
        var (_, breaches) = Check(typeof(VerifierTests).Assembly.Location, "Lapwise.Architecture.Tests.Offenders.Checking");

        Assert.Contains(breaches, b => b.Contains(name, StringComparison.Ordinal));
    }

    private static (int Looked, IReadOnlyList<string> Breaches) Check(string assembly, string root)
    {
        var uses = Use.In(assembly).Where(u => u.User.Namespace == root || u.User.Namespace.StartsWith(root + ".", StringComparison.Ordinal)).ToList();
        return (uses.Count,
        [
            .. uses.Where(u => MakesPlans.Any(m => u.UsedType.FullName.StartsWith(m + ".", StringComparison.Ordinal)))
                .Select(u => $"{u.User.FullName}.{u.Where} uses {u.UsedType.FullName}").Distinct(StringComparer.Ordinal),
        ]);
    }
}
