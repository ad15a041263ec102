using Lapwise.Core.Answers;

namespace Lapwise.Core.Tests;

public sealed class OrderQuestionTests
{
    [Fact]
    public void Every_unknown_section_is_told_at_once_with_whatever_else_is_wrong()
    {
        var (problem, faults) = OrderQuestion.Read("""
            { "crew": 99, "sections": [{ "id": "a", "seconds": 60 }], "laps": [["a", "x"], ["y", "a"]], "before": [["z", "a"]] }
            """);
        Assert.Null(problem);
        var told = faults.Select(f => f.Path).ToList();
        Assert.All(new[] { "laps[0][1]", "laps[1][0]", "before[0][0]", "crew" }, path => Assert.Single(told, path));
    }
}
