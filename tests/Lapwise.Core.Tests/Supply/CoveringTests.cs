using CsCheck;
using Lapwise.Core.Supply;

namespace Lapwise.Core.Tests.Supply;

/// <summary>Two ways to the cheapest cover that share no code past the cost: a table over the need, and a ring of remainders.</summary>
public sealed class CoveringTests
{
    private static readonly Gen<(long[] Sizes, decimal[] Prices)> Packs =
        Gen.Select(Gen.Long[1, 40], Gen.Int[0, 4000]).Array[1, 8]
            .Select(p => (p.Select(x => x.Item1).ToArray(), p.Select(x => x.Item2 / 100m).ToArray()));

    [Fact]
    public void The_ring_of_remainders_agrees_with_the_table() =>
        Gen.Select(Packs, Gen.Long[0, 3000]).Sample((packs, need) =>
        {
            var covering = new Covering(packs.Sizes, packs.Prices);
            // For a small need the ring may have no answer of its own; then it says so.
            if (covering.ByRemainders(need) is { } byRing) Assert.Equal(Worth(packs, covering.ByTable(need)), Worth(packs, byRing));
            else Assert.True(need < packs.Sizes.Max() * packs.Sizes.Max());
        }, iter: 2000);

    [Fact]
    public void A_need_far_past_any_table_is_covered_at_least_cost()
    {
        // 997 is best value and prime; the ring ends where the table would have a thousand million places.
        var covering = new Covering([997, 250, 64], [99.70m, 25.10m, 6.60m]);
        const long need = 1_000_000_007;
        var counts = covering.Cheapest(need);
        var total = (counts[0] * 997) + (counts[1] * 250) + (counts[2] * 64);
        var cost = (counts[0] * 99.70m) + (counts[1] * 25.10m) + (counts[2] * 6.60m);

        Assert.True(total >= need);
        // No cover is cheaper than the need at the best value, and none that stays at one pack of 997 over it.
        Assert.InRange(cost, need * 0.1m, (need + 996) * 0.1m);
        Assert.Equal(covering.ByTable(need % 997_000), Shifted(covering.Cheapest((need % 997_000) + 997_000_000), 1_000_000));
    }

    private static long[] Shifted(long[] counts, long fewer) => [counts[0] - fewer, .. counts.Skip(1)];

    private static (decimal Cost, long Total, long Packs) Worth((long[] Sizes, decimal[] Prices) packs, long[] counts) => (
        counts.Select((c, i) => c * packs.Prices[i]).Sum(),
        counts.Select((c, i) => c * packs.Sizes[i]).Sum(),
        counts.Sum());
}
