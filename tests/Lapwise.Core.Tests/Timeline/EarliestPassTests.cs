using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Core.Tests.Timeline;

/// <summary>
/// Against difference constraints (Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, "difference constraints
/// and shortest paths"; from memory): the earliest starts are the longest paths, and there are none where a cycle is
/// positive. The longest paths are found here by Floyd and Warshall, which shares no step with the pass.
/// </summary>
public sealed class EarliestPassTests
{
    private static readonly WorkCalendar Always = new(TimelineAsks.Usual with { WorkFromMin = 0, WorkToMin = 24 * 60, WorkDays = Enum.GetValues<DayOfWeek>() });

    private sealed record Between(int From, int To, int Least, int? Most);

    private static readonly Gen<(int[] Lengths, Between[] Links)> Nets =
        from n in Gen.Int[2, 6]
        from lengths in Gen.Int[0, 200].Array[n]
        from links in (from a in Gen.Int[0, n - 2] from b in Gen.Int[1, n - 1] from least in Gen.Int[0, 300] from most in Gen.Int[0, 600].Nullable() where a < b select new Between(a, b, least, most)).Array[1, 8]
        select (lengths, links);

    [Fact]
    public void Starts_are_the_longest_paths_and_a_contradiction_is_found_exactly_where_a_cycle_is_positive() => Nets.Sample(net =>
    {
        var (lengths, between) = net;
        var outcome = EarliestPass.Run(Always, [.. lengths.Select(l => new StepLength(l, Splits: true))],
            [.. between.Select(b => new Link(b.From, b.To, LinkKind.Wait, end => end + b.Least) { NotAfter = b.Most is { } most ? end => end + most : null })]);

        if (LongestPaths(lengths, between) is not { } starts)
        {
            var cycle = Assert.IsType<EarliestPass.Outcome.NoneThereIs>(outcome).Cycle;
            Assert.Contains(cycle, l => l.NotAfter is not null);
            return;
        }

        Assert.Equal(starts, Assert.IsType<EarliestPass.Outcome.Found>(outcome).Steps.Select(s => s.Start));
    }, iter: 300);

    /// <summary>Null where a cycle is positive.</summary>
    private static long[]? LongestPaths(int[] lengths, Between[] links)
    {
        var n = lengths.Length;
        var far = new long?[n, n];
        for (var i = 0; i < n; i++) far[i, i] = 0;
        void Longer(int a, int b, long d) => far[a, b] = Math.Max(far[a, b] ?? long.MinValue, d);
        foreach (var link in links)
        {
            Longer(link.From, link.To, lengths[link.From] + link.Least);
            if (link.Most is { } most) Longer(link.To, link.From, -(lengths[link.From] + most));
        }

        for (var k = 0; k < n; k++)
            for (var i = 0; i < n; i++)
                for (var j = 0; j < n; j++)
                    if (far[i, k] + far[k, j] is { } way) Longer(i, j, way);
        return Enumerable.Range(0, n).Any(i => far[i, i] > 0) ? null : [.. Enumerable.Range(0, n).Select(j => Enumerable.Range(0, n).Max(i => far[i, j] ?? 0))];
    }
}
