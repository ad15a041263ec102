namespace Lapwise.Core.Supply;

/// <summary>Whole steps of A and of B.</summary>
internal readonly record struct MarkedPair(long StepsA, long StepsB);

/// <summary>
/// Rounds a mix to what can be read on a cup or a scale.
/// Of all pairs of whole steps that together make at least the wanted volume (short by a cup is the failure), it takes the
/// one with the least  10 · |ratio error| + excess / wanted : a hundredth of ratio is worth a tenth of extra material, for an
/// off-ratio mix never cures right and spare material only costs. It looks no further above the wanted volume than a tenth
/// of it or four steps, whichever is more: beyond that a finer measure is the cure, not a bigger batch. Ties go to the
/// smaller total, then to less A. The search is exact: every pair in that range that could beat the best so far is tried.
/// </summary>
internal static class ReadableMarks
{
    public const double RatioWeight = 10;

    // Below a billionth of the wanted volume a difference is rounding dust, not material.
    private const double Dust = 1e-9;

    /// <param name="wantedMl">A and B together, above 0.</param>
    /// <param name="shareA">Share of A by volume, between 0 and 1.</param>
    /// <param name="stepAMl">Volume of A in one step.</param>
    /// <param name="stepBMl">Volume of B in one step.</param>
    /// <param name="mostMl">Largest batch: passed only where the wanted volume with both parts rounded up passes it.</param>
    public static MarkedPair Find(double wantedMl, double shareA, double stepAMl, double stepBMl, double mostMl)
    {
        var wantedA = wantedMl * shareA;
        var start = new MarkedPair(StepsUp(wantedA, stepAMl), StepsUp(wantedMl - wantedA, stepBMl));
        var nearMl = wantedMl + Math.Max(wantedMl / 10, 4 * Math.Max(stepAMl, stepBMl));
        var cap = Math.Max(Math.Min(mostMl, nearMl), Total(start)) + (wantedMl * Dust);
        var best = start;
        var bestCost = Cost(start);

        // A pair that beats the best errs less than bestCost / 10 and exceeds less than bestCost, which bounds its A.
        var error = bestCost / RatioWeight;
        var leastA = error >= 1 ? 1 : Math.Max(1, (long)Math.Floor(wantedA * (1 - error) / stepAMl));
        var mostA = (long)Math.Ceiling(wantedA * (1 + error) * (1 + bestCost) / stepAMl);
        for (var a = leastA; a <= mostA; a++)
        {
            for (var b = StepsUp(wantedMl - (a * stepAMl), stepBMl); ; b++)
            {
                var pair = new MarkedPair(a, b);
                if (Total(pair) > cap || Excess(pair) > bestCost + Dust) break;
                if (Beats(pair)) (best, bestCost) = (pair, Cost(pair));
            }
        }

        return best;

        double Total(MarkedPair p) => (p.StepsA * stepAMl) + (p.StepsB * stepBMl);
        double Excess(MarkedPair p) => (Total(p) - wantedMl) / wantedMl;
        double Cost(MarkedPair p) => (RatioWeight * Math.Abs(RatioError(p.StepsA * stepAMl, p.StepsB * stepBMl, shareA))) + Math.Max(0, Excess(p));
        bool Beats(MarkedPair p) => (Cost(p) - bestCost) switch
        {
            < -Dust => true,
            > Dust => false,
            _ => (Total(p), p.StepsA).CompareTo((Total(best), best.StepsA)) < 0,
        };
    }

    /// <summary>(A:B as measured) / (A:B wanted) − 1; positive: too much A.</summary>
    public static double RatioError(double aMl, double bMl, double shareA) => (aMl / bMl * (1 - shareA) / shareA) - 1;

    private static long StepsUp(double ml, double stepMl) => Math.Max(1, (long)Math.Ceiling((ml / stepMl) - Dust));
}
