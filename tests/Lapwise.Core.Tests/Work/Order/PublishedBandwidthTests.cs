using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Tests.Work.Order;

/// <summary>
/// In unit time with one person the worst lap age is bandwidth + 1, so every published exact bandwidth is a check value.
/// </summary>
public sealed class PublishedBandwidthTests
{
    private static long WorstAge(int sections, IEnumerable<(int, int)> laps)
    {
        var order = OrderSearch.Solve(Problems.UnitTime(sections, laps));
        Assert.True(order.Proven, $"bound {order.BoundMs}, found {order.WorstLapAgeMs}");
        return order.WorstLapAgeMs;
    }

    [Theory] // Harary: a path has bandwidth 1.
    [InlineData(2)]
    [InlineData(9)]
    [InlineData(40)]
    public void A_path_has_age_two(int n) => Assert.Equal(2, WorstAge(n, Problems.Path(n)));

    [Theory] // Folklore: a cycle has bandwidth 2.
    [InlineData(3)]
    [InlineData(12)]
    [InlineData(33)]
    public void A_cycle_has_age_three(int n) => Assert.Equal(3, WorstAge(n, Problems.Path(n).Append((n - 1, 0))));

    [Theory] // ⌈(n − 1) / 2⌉ for a star of n vertices.
    [InlineData(4, 2)]
    [InlineData(8, 4)]
    [InlineData(9, 4)]
    [InlineData(12, 6)]
    public void A_star_has_half_its_leaves(int n, int bandwidth) =>
        Assert.Equal(bandwidth + 1, WorstAge(n, Enumerable.Range(1, n - 1).Select(i => (0, i))));

    [Theory] // Chvátal 1970: K(m,n), m ≥ n, has ⌊(m − 1) / 2⌋ + n.
    [InlineData(5, 3, 5)]
    [InlineData(4, 4, 5)]
    [InlineData(6, 2, 4)]
    public void A_complete_bipartite_graph_follows_Chvatal(int m, int n, int bandwidth) =>
        Assert.Equal(bandwidth + 1, WorstAge(m + n, from i in Enumerable.Range(0, m) from j in Enumerable.Range(m, n) select (i, j)));

    [Theory] // Chvátalová 1975, Discrete Math. 11: 249-253: an m × n grid has min(m, n).
    [InlineData(3, 5)]
    [InlineData(4, 4)]
    [InlineData(4, 10)]
    [InlineData(5, 6)]
    [InlineData(6, 6)]
    [InlineData(2, 20)]
    public void A_grid_follows_Chvatalova(int rows, int columns) =>
        Assert.Equal(Math.Min(rows, columns) + 1, WorstAge(rows * columns, Problems.GridLaps(rows, columns)));

    [Theory] // Harper 1966: hypercube Q(d) has Σ C(m, ⌊m/2⌋), m < d.
    [InlineData(3, 4)]
    [InlineData(4, 7)]
    public void A_hypercube_follows_Harper(int d, int bandwidth) =>
        Assert.Equal(bandwidth + 1, WorstAge(1 << d, from u in Enumerable.Range(0, 1 << d) from bit in Enumerable.Range(0, d) where (u & (1 << bit)) == 0 select (u, u | (1 << bit))));

    [Theory] // Smithline 1995 (from memory): complete k-ary tree of depth d has ⌈k(k^d − 1) / (2d(k − 1))⌉.
    [InlineData(2, 2, 2)]
    [InlineData(2, 3, 3)]
    [InlineData(2, 4, 4)]
    [InlineData(3, 2, 3)]
    public void A_complete_tree_follows_Smithline(int k, int depth, int bandwidth)
    {
        var count = Enumerable.Range(0, depth + 1).Sum(d => (int)Math.Pow(k, d));
        Assert.Equal(bandwidth + 1, WorstAge(count, Enumerable.Range(1, count - 1).Select(i => ((i - 1) / k, i))));
    }

    [Theory] // Harwell-Boeing collection; bandwidths from the published tables (cases/bandwidth/SOURCE.md).
    [InlineData("pores_1", 7)]
    [InlineData("ibm32", 11)]
    [InlineData("bcspwr01", 5)]
    [InlineData("bcsstk01", 16)]
    [InlineData("bcspwr02", 7)]
    public void A_published_matrix_has_its_bandwidth(string name, int bandwidth)
    {
        var lines = File.ReadAllLines(Path.Combine(RepositoryFolder.Root, "cases", "bandwidth", name + ".mtx.rnd")).Skip(1)
            .Select(l => l.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Where(f => f.Length > 0).ToList();
        var laps = lines.Skip(1).Select(f => (int.Parse(f[0]) - 1, int.Parse(f[1]) - 1));
        Assert.Equal(bandwidth + 1, WorstAge(int.Parse(lines[0][0]), laps));
    }

    [Theory] // Start→finish convention on weighted shapes, by hand: 2 × 5 all of two minutes, bandwidth 2 → three sections → 6 min.
    [InlineData(2, 5, 2, 6)]
    public void Equal_times_scale_the_age(int rows, int columns, int each, long age)
    {
        var problem = Problems.UnitTime(rows * columns, Problems.GridLaps(rows, columns));
        problem = problem with { Sections = [.. problem.Sections.Select(s => s with { DurationMs = [each] })] };
        Assert.Equal(age, OrderSearch.Solve(problem).WorstLapAgeMs);
    }
}
