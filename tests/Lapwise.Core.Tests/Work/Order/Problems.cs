using CsCheck;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Tests.Work.Order;

/// <summary>Order problems for tests.</summary>
internal static class Problems
{
    public static OrderProblem UnitTime(int sections, IEnumerable<(int A, int B)> laps) => new(
        [.. Enumerable.Range(0, sections).Select(i => new OrderSection($"s{i}", [1]))],
        [.. laps.Select(l => new OrderLap(l.A, l.B))],
        []);

    public static IEnumerable<(int, int)> Path(int n) => Enumerable.Range(0, n - 1).Select(i => (i, i + 1));

    public static IEnumerable<(int, int)> GridLaps(int rows, int columns) =>
        from r in Enumerable.Range(0, rows)
        from c in Enumerable.Range(0, columns)
        from to in new[] { (r + 1, c), (r, c + 1) }
        where to.Item1 < rows && to.Item2 < columns
        select ((r * columns) + c, (to.Item1 * columns) + to.Item2);

    /// <summary>Random small problems with every feature of one person: laps, limits, precedence, mixed times.</summary>
    public static readonly Gen<OrderProblem> Small = Of(1, 7);

    /// <summary>The same with so many sections.</summary>
    public static Gen<OrderProblem> Of(int fewest, int most) =>
        from count in Gen.Int[fewest, most]
        from times in Gen.Long[1, 9].Array[count]
        from laps in Gen.Select(Gen.Int[0, count - 1], Gen.Int[0, count - 1]).Array[0, 10]
        from before in Gen.Select(Gen.Int[0, count - 1], Gen.Int[0, count - 1]).Array[0, 2]
        select new OrderProblem(
            [.. times.Select((t, i) => new OrderSection($"s{i}", [t]))],
            [.. laps.Where(l => l.Item1 != l.Item2).Select(l => new OrderLap(l.Item1, l.Item2))],
            [.. before.Where(b => b.Item1 < b.Item2)]);

    public static IEnumerable<int[]> Permutations(int n)
    {
        if (n == 0) { yield return []; yield break; }
        foreach (var shorter in Permutations(n - 1))
            for (var at = 0; at < n; at++)
                yield return [.. shorter[..at], n - 1, .. shorter[at..]];
    }
}
