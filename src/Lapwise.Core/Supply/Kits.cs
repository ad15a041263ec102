using Lapwise.Core.Jobs;

namespace Lapwise.Core.Supply;

/// <summary>The kits that cover a need.</summary>
public sealed record KitChoice(IReadOnlyList<KitCount> Kits, decimal Cost, double TotalMl);

/// <summary>Cheapest kits that cover a need, by dynamic programming over volume, quick enough for the page.</summary>
public static class Kits
{
    // US fluid ounces are whole in tenths of a picolitre; so are millilitres.
    private const double PicolitreTenthsPerMl = 1e10;

    // Bounds the table on a phone; 200 L in steps of 1 mL.
    private const int MostSteps = 200_000;

    /// <summary>
    /// Least cost, then least left over, then fewest kits; never short. Null where no kit is sold.
    /// With F(0) = 0, F(v) = min over sizes k of cost k + F(max(0, v − size k)).
    /// </summary>
    public static KitChoice? Cheapest(IReadOnlyList<Kit> kits, double needMl)
    {
        if (kits.Count == 0) return null;
        if (needMl <= 0) return new KitChoice([], 0, 0);

        var stepMl = StepMl(kits);
        var sizes = kits.Select(k => (int)Math.Clamp(Math.Floor((k.SizeMl / stepMl) + 1e-9), 1, int.MaxValue)).ToArray();
        var steps = Math.Ceiling((needMl / stepMl) - 1e-9);

        // Beyond the table the kit of best value takes the bulk. Any (steps of it) other kits hold some that add up to whole
        // kits of it, so nothing is lost by this while its steps times those of the largest kit fit the table.
        var bestValue = Enumerable.Range(0, sizes.Length).MinBy(k => kits[k].Price / sizes[k]);
        var bulk = (int)Math.Clamp(Math.Ceiling((steps - MostSteps) / sizes[bestValue]), 0, int.MaxValue);
        var need = (int)Math.Clamp(steps - ((double)bulk * sizes[bestValue]), 0, MostSteps);

        var counts = CoverAll(kits, sizes, need);
        counts[bestValue] += bulk;

        IReadOnlyList<KitCount> chosen = [.. kits.Select((k, i) => new KitCount(k.SizeMl, counts[i], k.Price)).Where(k => k.Count > 0)];
        return new KitChoice(chosen, chosen.Sum(k => k.Count * k.Price), chosen.Sum(k => k.Count * k.SizeMl));
    }

    private static int[] CoverAll(IReadOnlyList<Kit> kits, int[] sizes, int need)
    {
        var best = new Cover[need + 1];
        var last = new int[need + 1];
        for (var volume = 1; volume <= need; volume++)
        {
            best[volume] = best[Math.Max(0, volume - sizes[0])].With(kits[0].Price, sizes[0]);
            for (var k = 1; k < sizes.Length; k++)
            {
                var cover = best[Math.Max(0, volume - sizes[k])].With(kits[k].Price, sizes[k]);
                if (cover.Beats(best[volume])) (best[volume], last[volume]) = (cover, k);
            }
        }

        var counts = new int[sizes.Length];
        for (var volume = need; volume > 0; volume -= sizes[last[volume]]) counts[last[volume]]++;
        return counts;
    }

    /// <summary>
    /// A step of the table: the largest volume that divides every size. Sizes that share none, as ounces beside litres, are
    /// counted in millilitres rounded down, so that a kit never promises more than it holds.
    /// </summary>
    private static double StepMl(IReadOnlyList<Kit> kits)
    {
        var common = kits.Select(k => (long)Math.Round(k.SizeMl * PicolitreTenthsPerMl)).Aggregate(CommonDivisor) / PicolitreTenthsPerMl;
        return common >= 0.1 ? common : Math.Min(1, kits.Min(k => k.SizeMl));
    }

    private static long CommonDivisor(long a, long b) => b == 0 ? a : CommonDivisor(b, a % b);

    private readonly record struct Cover(decimal Cost, long Steps, int Count)
    {
        public Cover With(decimal price, int steps) => new(Cost + price, Steps + steps, Count + 1);

        public bool Beats(Cover other) => (Cost, Steps, Count).CompareTo((other.Cost, other.Steps, other.Count)) < 0;
    }
}
