using Lapwise.Core.Jobs;

namespace Lapwise.Core.Supply;

/// <summary>The kits that cover a need.</summary>
public sealed record KitChoice(IReadOnlyList<KitCount> Kits, decimal Cost, double TotalMl);

/// <summary>Cheapest kits that cover a need, exactly and quick enough for the page.</summary>
public static class Kits
{
    // US fluid ounces are whole in tenths of a picolitre; so are millilitres.
    private const double PicolitreTenthsPerMl = 1e10;

    /// <summary>Least cost, then least left over, then fewest kits; never short. Null where no kit is sold.</summary>
    public static KitChoice? Cheapest(IReadOnlyList<Kit> kits, double needMl)
    {
        if (kits.Count == 0) return null;
        if (needMl <= 0) return new KitChoice([], 0, 0);

        var (covering, stepMl) = Steps(kits);
        var counts = covering.Cheapest(StepsOf(needMl, stepMl));
        IReadOnlyList<KitCount> chosen = [.. kits.Select((k, i) => new KitCount(k.SizeMl, (int)Math.Min(counts[i], int.MaxValue), k.Price)).Where(k => k.Count > 0)];
        return new KitChoice(chosen, chosen.Sum(k => k.Count * k.Price), chosen.Sum(k => k.Count * k.SizeMl));
    }

    /// <summary>What it costs to buy for each need alone; 0 where no kit is sold.</summary>
    public static decimal CostOfEach(IReadOnlyList<Kit> kits, IReadOnlyList<double> needsMl)
    {
        if (kits.Count == 0 || needsMl.Count == 0) return 0;
        var (covering, stepMl) = Steps(kits);
        var needs = needsMl.Select(n => Math.Max(0, StepsOf(n, stepMl))).ToList();
        if (needs.Max() > Covering.MostPlainSteps) return needsMl.Sum(n => Cheapest(kits, n)!.Cost);
        var costs = covering.CostsTo(needs.Max());
        return needs.Sum(n => costs[(int)n]);
    }

    private static (Covering Covering, double StepMl) Steps(IReadOnlyList<Kit> kits)
    {
        var stepMl = StepMl(kits);
        var sizes = kits.Select(k => (long)Math.Clamp(Math.Floor((k.SizeMl / stepMl) + 1e-9), 1, int.MaxValue)).ToArray();
        return (new Covering(sizes, [.. kits.Select(k => k.Price)]), stepMl);
    }

    private static long StepsOf(double needMl, double stepMl) => (long)Math.Min(Math.Ceiling((needMl / stepMl) - 1e-9), 1e15);

    /// <summary>
    /// A step of the table: the largest volume that divides every size. Sizes that share none, as ounces beside litres, are
    /// counted in millilitres rounded down, so that a kit never promises more than it holds.
    /// </summary>
    private static double StepMl(IReadOnlyList<Kit> kits)
    {
        var common = kits.Select(k => (long)Math.Round(k.SizeMl * PicolitreTenthsPerMl)).Aggregate(Covering.CommonDivisor) / PicolitreTenthsPerMl;
        // A table of a million places is the most a phone is asked to hold.
        return common >= Math.Max(0.1, kits.Max(k => k.SizeMl) / 1e6) ? common : Math.Min(1, kits.Min(k => k.SizeMl));
    }
}
