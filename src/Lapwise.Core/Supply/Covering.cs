namespace Lapwise.Core.Supply;

/// <summary>
/// The cheapest whole numbers of packs that reach a need, exactly, whatever its size. Least cost, then least over, then
/// fewest packs. Sizes and need in the same whole steps.
/// </summary>
public sealed class Covering
{
    // A table over the whole need is the plainest way, and quick up to here.
    internal const int MostPlainSteps = 200_000;

    private readonly long[] _sizes;
    private readonly decimal[] _prices;

    /// <param name="sizes">Each at least 1; at least one.</param>
    /// <param name="prices">One for each size, at least 0.</param>
    public Covering(long[] sizes, decimal[] prices) => (_sizes, _prices) = (sizes, prices);

    /// <summary>How many of each size.</summary>
    public long[] Cheapest(long need) => need <= MostPlainSteps ? ByTable(need) : ByRemainders(need) ?? ByTable(need);

    /// <summary>Least cost of every need from 0 up to this one.</summary>
    public IReadOnlyList<decimal> CostsTo(long need) => [.. Table(need).Best.Select(b => b.Money)];

    public long[] ByTable(long need)
    {
        var (_, last) = Table(need);
        var counts = new long[_sizes.Length];
        for (var v = need; v > 0; v -= _sizes[last[v]]) counts[last[v]]++;
        return counts;
    }

    /// <summary>With F(0) = 0, F(v) = min over sizes k of price k + F(max(0, v − size k)); the last pack of each too.</summary>
    private (Cost[] Best, int[] Last) Table(long need)
    {
        var best = new Cost[need + 1];
        var last = new int[need + 1];
        for (long v = 1; v <= need; v++)
        {
            best[v] = best[Math.Max(0, v - _sizes[0])] + new Cost(_prices[0], _sizes[0], 1);
            for (var k = 1; k < _sizes.Length; k++)
            {
                var with = best[Math.Max(0, v - _sizes[k])] + new Cost(_prices[k], _sizes[k], 1);
                if (with.Beats(best[v])) (best[v], last[v]) = (with, k);
            }
        }

        return (best, last);
    }

    /// <summary>
    /// For a large need. Let b be the pack of best value. What the others and the steps left over cost beyond b's price for the
    /// same steps depends only on what remains of their sum when it is divided by b's size, so the cheapest way to each
    /// remainder is a shortest path round a ring of that many places (Gomory's group relaxation; the rounds are those of
    /// Böcker and Lipták's money changing; both from memory). b fills the rest. Null where that would need less than no b.
    /// </summary>
    public long[]? ByRemainders(long need)
    {
        var b = BestValue();
        var ring = _sizes[b];
        var best = new Cost?[ring];
        var last = new int[ring];
        best[0] = default(Cost);

        // A step left over asks b for one more; it goes round the ring backwards.
        var over = _sizes.Length;
        for (var k = 0; k <= over; k++)
        {
            if (k == b) continue;
            var move = k == over ? ring - 1 : _sizes[k] % ring;
            var cost = k == over ? new Cost(_prices[b], 1, 1) : new Cost((_prices[k] * ring) - (_prices[b] * _sizes[k]), 0, ring - _sizes[k]);
            GoRound(best, last, k, move, cost);
        }

        var counts = new long[_sizes.Length];
        var (place, filled) = (need % ring, 0L);
        while (place != 0)
        {
            var k = last[place];
            if (k == over) filled--;
            else (counts[k], filled) = (counts[k] + 1, filled + _sizes[k]);
            place = (place - (k == over ? ring - 1 : _sizes[k] % ring) + ring) % ring;
        }

        counts[b] = (need - filled) / ring;
        return counts[b] < 0 ? null : counts;
    }

    /// <summary>Twice round each cycle that a move runs through is enough: no cheapest way uses it as often as the cycle is long.</summary>
    private static void GoRound(Cost?[] best, int[] last, int k, long move, Cost cost)
    {
        if (move == 0) return;
        var cycles = CommonDivisor(move, best.Length);
        for (var start = 0L; start < cycles; start++)
        {
            var at = start;
            for (var i = 0L; i < 2 * (best.Length / cycles); i++)
            {
                var next = (at + move) % best.Length;
                if (best[at] is { } here && (best[next] is not { } there || (here + cost).Beats(there))) (best[next], last[next]) = (here + cost, k);
                at = next;
            }
        }
    }

    /// <summary>Of equal value the largest, so that the fewest packs are bought.</summary>
    private int BestValue()
    {
        var b = 0;
        for (var k = 1; k < _sizes.Length; k++)
        {
            var (one, other) = (_prices[k] * _sizes[b], _prices[b] * _sizes[k]);
            if (one < other || (one == other && _sizes[k] > _sizes[b])) b = k;
        }

        return b;
    }

    internal static long CommonDivisor(long a, long b) => b == 0 ? a : CommonDivisor(b, a % b);

    /// <summary>Compared by money first, then by what is left over, then by the number of packs.</summary>
    private readonly record struct Cost(decimal Money, long Steps, long Packs)
    {
        public static Cost operator +(Cost a, Cost b) => new(a.Money + b.Money, a.Steps + b.Steps, a.Packs + b.Packs);

        public bool Beats(Cost other) => Money != other.Money ? Money < other.Money : Steps != other.Steps ? Steps < other.Steps : Packs < other.Packs;
    }
}
