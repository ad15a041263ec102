using CsCheck;
using Lapwise.Core.Work.Grouping;

namespace Lapwise.Core.Tests.Work.Grouping;

public sealed class BatchPackingTests
{
    private static List<PieceLoad> Volumes(params IEnumerable<long> sizes) => [.. sizes.Select(s => new PieceLoad(s, 0))];

    private static readonly Gen<(List<PieceLoad> Pieces, PieceLoad Batch)> Small =
        from volume in Gen.Long[5, 30]
        from time in Gen.Long[5, 30]
        from pieces in Gen.Select(Gen.Long[0, volume], Gen.Long[0, time]).Array[1, 8]
        select (pieces.Select(p => new PieceLoad(p.Item1, p.Item2)).ToList(), new PieceLoad(volume, time));

    [Theory]
    // Martello & Toth, Knapsack Problems, 1990, ch. 8 (recalled; the numbers worked out again by hand).
    [InlineData(100, 3, 4, 4, 70, 60, 50, 33, 33, 33, 11, 7, 3)]
    [InlineData(100, 6, 6, 7, 99, 94, 79, 64, 50, 46, 43, 37, 32, 19, 18, 7, 6, 3)]
    // Pieces of 1.2, 0.4, 0.9, 0.3, 0.3, 0.8, 0.5 and 0.6 L from batches of 2 L: worked out by hand.
    [InlineData(20, 3, 3, 3, 12, 4, 9, 3, 3, 8, 5, 6)]
    public void Pack_worked_examples_have_their_bounds_and_optimum(long capacity, int l1, int l2, int optimum, params int[] sizes)
    {
        Assert.Equal(l1, (sizes.Sum() + capacity - 1) / capacity);
        Assert.Equal(l2, BatchBound.L2([.. sizes.Select(s => (long)s)], capacity));
        var packing = BatchPacking.Pack(Volumes(sizes.Select(s => (long)s)), new PieceLoad(capacity, 0));
        Assert.True(packing.Proven);
        Assert.Equal(optimum, packing.Batches.Count);
    }

    [Fact] // cases/grouping/SOURCE.md
    public void Pack_Falkenauer_u120_00_needs_48()
    {
        var numbers = File.ReadLines(Path.Combine(RepositoryFolder.Root, "cases", "grouping", "u120_00.txt"))
            .Select(l => l.Trim()).Where(l => l.Length > 0).Select(long.Parse).ToList();
        Assert.Equal(numbers[0], numbers.Count - 2);
        var packing = BatchPacking.Pack(Volumes(numbers.Skip(2)), new PieceLoad(numbers[1], 0));
        Assert.True(packing.Proven, $"{packing.Batches.Count} against a bound of {packing.Bound}");
        Assert.Equal(48, packing.Batches.Count);
    }

    [Fact]
    public void Pack_puts_every_piece_in_one_batch_that_holds_it() => Small.Sample(t =>
    {
        var packing = BatchPacking.Pack(t.Pieces, t.Batch);
        Assert.Equal(Enumerable.Range(0, t.Pieces.Count), packing.Batches.SelectMany(b => b).Order());
        Assert.All(packing.Batches, b => Assert.True(b.Aggregate(default(PieceLoad), (sum, i) => sum + t.Pieces[i]).FitsIn(t.Batch)));
    });

    [Fact]
    public void Pack_needs_no_more_batches_than_trying_everything() => Small.Sample(t =>
    {
        var packing = BatchPacking.Pack(t.Pieces, t.Batch);
        Assert.True(packing.Proven);
        Assert.Equal(ByTryingEverything(t.Pieces, t.Batch, []), packing.Batches.Count);
    });

    [Fact]
    public void Pack_out_of_steps_says_bounded_and_still_answers() => Small.Sample(t =>
    {
        var full = BatchPacking.Pack(t.Pieces, t.Batch);
        var hasty = BatchPacking.Pack(t.Pieces, t.Batch, mostSteps: 1);
        Assert.InRange(full.Batches.Count, hasty.Bound, hasty.Batches.Count);
        Assert.Equal(Enumerable.Range(0, t.Pieces.Count), hasty.Batches.SelectMany(b => b).Order());
    });

    [Fact]
    public void Pack_a_piece_larger_than_a_batch_throws() =>
        Assert.Throws<ArgumentException>(() => BatchPacking.Pack(Volumes(11), new PieceLoad(10, 0)));

    [Fact]
    public void Pack_nothing_needs_no_batch() => Assert.Empty(BatchPacking.Pack([], new PieceLoad(10, 10)).Batches);

    private static int ByTryingEverything(List<PieceLoad> pieces, PieceLoad batch, List<PieceLoad> rooms, int next = 0)
    {
        if (next == pieces.Count) return rooms.Count;
        var best = int.MaxValue;
        for (var b = 0; b <= rooms.Count; b++)
        {
            List<PieceLoad> after = b == rooms.Count ? [.. rooms, batch] : [.. rooms];
            if (!pieces[next].FitsIn(after[b])) continue;
            after[b] -= pieces[next];
            best = Math.Min(best, ByTryingEverything(pieces, batch, after, next + 1));
        }

        return best;
    }
}
