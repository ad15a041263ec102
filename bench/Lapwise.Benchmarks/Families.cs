namespace Lapwise.Benchmarks;

/// <summary>Fresh instances from a seed: the same seed gives the same instances anywhere.</summary>
public static class Families
{
    public static readonly IReadOnlyList<int> Sizes = [12, 16, 20, 24, 28, 32, 36, 40];

    public static IReadOnlyList<Instance> Of(int seed, IEnumerable<int> sizes, int each) =>
    [
        .. sizes.SelectMany(size => Enumerable.Range(1, each).SelectMany(copy =>
        {
            var random = new Random(HashOf(seed, size, copy));
            return new[] { Grid(random, copy, size), Tree(random, copy, size), Kitchen(random, copy, size) };
        })),
    ];

    /// <summary>A big island cut both ways: as near to square as the count allows, at most five across.</summary>
    public static Instance Grid(Random random, int copy, int size)
    {
        var across = Enumerable.Range(2, 4).Last(w => size % w == 0 && w * w <= size);
        return Grid(random, across, size / across, copy);
    }

    public static Instance Grid(Random random, int across, int along, int copy)
    {
        var laps = new List<(int, int)>();
        for (var x = 0; x < along; x++)
        {
            for (var y = 0; y < across; y++)
            {
                if (y + 1 < across) laps.Add(((x * across) + y, (x * across) + y + 1));
                if (x + 1 < along) laps.Add(((x * across) + y, ((x + 1) * across) + y));
            }
        }

        return new("grid", $"{across}x{along}-{copy}", Times(random, across * along), laps);
    }

    /// <summary>Narrow runs that branch: no section meets more than four others.</summary>
    public static Instance Tree(Random random, int copy, int size)
    {
        var meets = new int[size];
        var laps = new List<(int, int)>();
        for (var i = 1; i < size; i++)
        {
            var parent = random.Next(i);
            while (meets[parent] == 4) parent = random.Next(i);
            meets[parent]++;
            meets[i]++;
            laps.Add((parent, i));
        }

        return new("tree", $"{size}-{copy}", Times(random, size), laps);
    }

    /// <summary>
    /// A wall run two sections deep with a splash panel on every second section behind, round one corner, with a
    /// waterfall at its end; what is left over goes on an island. Splashes and waterfalls take a third of the time.
    /// </summary>
    public static Instance Kitchen(Random random, int copy, int size)
    {
        var laps = new List<(int, int)>();
        var upright = new HashSet<int>();
        var next = 0;
        var columns = (size - 4) / 4;
        (int Back, int Front)? before = null;
        for (var i = 0; i < columns; i++)
        {
            var (back, front) = (next++, next++);
            laps.Add((back, front));
            if (before is { } b) laps.AddRange([(b.Back, back), (b.Front, front)]);
            if (i % 2 == 0)
            {
                upright.Add(next);
                laps.Add((back, next++));
            }

            before = (back, front);
        }

        upright.Add(next);
        laps.AddRange([(before!.Value.Back, next), (before.Value.Front, next)]);
        next++;
        for (var first = next; next < size; next++)
        {
            if ((next - first) % 2 == 1) laps.Add((next - 1, next));
            if (next - first >= 2) laps.Add((next - 2, next));
        }

        var seconds = Times(random, size);
        return new("kitchen", $"{size}-{copy}", [.. seconds.Select((s, i) => upright.Contains(i) ? Math.Max(10, s / 3) : s)], laps);
    }

    /// <summary>Rolling times from half a minute to two minutes, to the second.</summary>
    private static int[] Times(Random random, int count) => [.. Enumerable.Range(0, count).Select(_ => random.Next(30, 121))];

    private static int HashOf(int seed, int size, int copy) => unchecked((((seed * 7919) + size) * 104_729) + copy);
}
