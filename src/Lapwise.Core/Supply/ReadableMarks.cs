namespace Lapwise.Core.Supply;

/// <summary>Whole steps of A and of B.</summary>
internal readonly record struct MarkedPair(long A, long B);

/// <summary>
/// The marks of a cup or the steps of a scale, and the rounding of a mix to them.
/// Of pairs of whole steps it takes the one with the least  10 · |ratio error| + excess / wanted : a hundredth of ratio is
/// worth a tenth of extra material, for an off-ratio mix never cures right and spare material only costs. Ties go to the
/// smaller total, then to less A. No pair makes less than is wanted: short by a cup is the failure.
/// </summary>
/// <param name="ShareA">Share of A in A and B by volume, between 0 and 1.</param>
/// <param name="StepAMl">Volume of A in one step.</param>
/// <param name="StepBMl">Volume of B in one step.</param>
internal sealed record ReadableMarks(double ShareA, double StepAMl, double StepBMl)
{
    private const double RatioWeight = 10;

    // Below a billionth of the wanted volume a difference is rounding dust, not material.
    private const double Dust = 1e-9;

    public double AMl(MarkedPair pair) => pair.A * StepAMl;
    public double BMl(MarkedPair pair) => pair.B * StepBMl;
    public double TotalMl(MarkedPair pair) => AMl(pair) + BMl(pair);

    /// <summary>(A:B as measured) / (A:B wanted) − 1; positive: too much A.</summary>
    public double RatioError(MarkedPair pair) => (AMl(pair) / BMl(pair) * (1 - ShareA) / ShareA) - 1;

    /// <summary>
    /// The best pair at or above a wanted volume, no further above it than a tenth of it or four steps, whichever is more:
    /// beyond that a finer measure is the cure, not a bigger batch. Exact: every pair in that range that could beat the best
    /// so far is tried.
    /// </summary>
    /// <param name="wantedMl">A and B together, above 0.</param>
    /// <param name="mostMl">Largest batch: passed only where the wanted volume with both parts rounded up passes it.</param>
    public MarkedPair Best(double wantedMl, double mostMl)
    {
        var wantedA = wantedMl * ShareA;
        var best = new MarkedPair(StepsUp(wantedA, StepAMl), StepsUp(wantedMl - wantedA, StepBMl));
        var nearMl = wantedMl + Math.Max(wantedMl / 10, 4 * Math.Max(StepAMl, StepBMl));
        var cap = Math.Max(Math.Min(mostMl, nearMl), TotalMl(best)) + (wantedMl * Dust);

        // A pair that beats the best errs less than its cost / 10 and exceeds less than its cost, which bounds its A.
        var (error, excess) = (Cost(best, wantedMl) / RatioWeight, Cost(best, wantedMl));
        var leastA = error >= 1 ? 1 : Math.Max(1, (long)Math.Floor(wantedA * (1 - error) / StepAMl));
        var mostA = (long)Math.Ceiling(wantedA * (1 + error) * (1 + excess) / StepAMl);
        for (var a = leastA; a <= mostA; a++)
        {
            for (var b = StepsUp(wantedMl - (a * StepAMl), StepBMl); ; b++)
            {
                var pair = new MarkedPair(a, b);
                if (TotalMl(pair) > cap || Excess(pair, wantedMl) > Cost(best, wantedMl) + Dust) break;
                if (Beats(pair, best, wantedMl)) best = pair;
            }
        }

        return best;
    }

    /// <summary>
    /// The best of the four pairs next to the exact amounts of <paramref name="aimMl"/> that make at least
    /// <paramref name="leastMl"/>, which is not above it: the same batch again, read on another measure.
    /// </summary>
    public MarkedPair Next(double aimMl, double leastMl)
    {
        var up = new MarkedPair(StepsUp(aimMl * ShareA, StepAMl), StepsUp(aimMl * (1 - ShareA), StepBMl));
        var best = up;
        foreach (var pair in new[] { up with { A = up.A - 1 }, up with { B = up.B - 1 }, new MarkedPair(up.A - 1, up.B - 1) })
            if (pair is { A: > 0, B: > 0 } && Excess(pair, leastMl) >= -Dust && Beats(pair, best, leastMl)) best = pair;
        return best;
    }

    private double Excess(MarkedPair pair, double wantedMl) => (TotalMl(pair) - wantedMl) / wantedMl;

    private double Cost(MarkedPair pair, double wantedMl) => (RatioWeight * Math.Abs(RatioError(pair))) + Math.Max(0, Excess(pair, wantedMl));

    private bool Beats(MarkedPair pair, MarkedPair best, double wantedMl) => (Cost(pair, wantedMl) - Cost(best, wantedMl)) switch
    {
        < -Dust => true,
        > Dust => false,
        _ => (TotalMl(pair), pair.A).CompareTo((TotalMl(best), best.A)) < 0,
    };

    private static long StepsUp(double ml, double stepMl) => Math.Max(1, (long)Math.Ceiling((ml / stepMl) - Dust));
}
