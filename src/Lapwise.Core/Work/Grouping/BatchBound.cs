namespace Lapwise.Core.Work.Grouping;

/// <summary>
/// The fewest batches that pieces can need. L2 of Martello &amp; Toth (Knapsack Problems, 1990, ch. 8; from memory): pieces
/// above half a batch each open one, and what the smaller ones cannot find beside them opens more.
/// </summary>
public static class BatchBound
{
    public static int Of(IReadOnlyList<PieceLoad> pieces, PieceLoad batch) => Math.Max(
        L2([.. pieces.Select(p => p.VolumeUl)], batch.VolumeUl),
        L2([.. pieces.Select(p => p.TimeMs)], batch.TimeMs));

    /// <param name="sizes">None above <paramref name="capacity"/>.</param>
    public static int L2(IReadOnlyList<long> sizes, long capacity) =>
        sizes.Where(s => s * 2 <= capacity).Append(0).Distinct().Max(least => Counting(sizes, capacity, least));

    /// <summary>The bound that leaves out pieces smaller than <paramref name="least"/>.</summary>
    private static int Counting(IReadOnlyList<long> sizes, long capacity, long least)
    {
        long alone = 0, large = 0, largeSum = 0, smallSum = 0;
        foreach (var size in sizes)
        {
            if (size > capacity - least) alone++;
            else if (size * 2 > capacity) (large, largeSum) = (large + 1, largeSum + size);
            else if (size >= least) smallSum += size;
        }

        var over = smallSum - ((large * capacity) - largeSum);
        return (int)(alone + large + (over > 0 ? (over + capacity - 1) / capacity : 0));
    }
}
