namespace Lapwise.Core.Supply;

/// <summary>
/// The marks of a cup or the steps of a scale, and the rounding of a mix of two or more parts to them.
/// Of whole steps it takes those with the least  10 · |worst ratio error| + excess / wanted : a hundredth of ratio is
/// worth a tenth of extra material, for an off-ratio mix never cures right and spare material only costs. Ties go to the
/// smaller total, then to less of the first part. Nothing makes less than is wanted: short by a cup is the failure.
/// </summary>
/// <param name="Shares">Share of each part in the mix by volume, each above 0, together 1.</param>
/// <param name="StepsMl">Volume of each part in one step.</param>
internal sealed record ReadableMarks(IReadOnlyList<double> Shares, IReadOnlyList<double> StepsMl)
{
    private const double RatioWeight = 10;

    // Below a billionth of the wanted volume a difference is rounding dust, not material.
    private const double Dust = 1e-9;

    public double Ml(long[] marked, int part) => marked[part] * StepsMl[part];

    public double TotalMl(long[] marked) => Enumerable.Range(0, marked.Length).Sum(i => Ml(marked, i));

    /// <summary>(A : other as measured) / (A : other wanted) − 1, of the part that is furthest off; positive: too much A.</summary>
    public double RatioError(long[] marked)
    {
        var worst = 0.0;
        for (var i = 1; i < marked.Length; i++)
        {
            var error = (Ml(marked, 0) / Ml(marked, i) * Shares[i] / Shares[0]) - 1;
            if (Math.Abs(error) > Math.Abs(worst)) worst = error;
        }

        return worst;
    }

    /// <summary>
    /// The best marks at or above a wanted volume, no further above it than a tenth of it or four steps, whichever is more:
    /// beyond that a finer measure is the cure, not a bigger batch. Exact: every choice in that range that could beat the best
    /// so far is tried.
    /// </summary>
    /// <param name="wantedMl">All parts together, above 0.</param>
    /// <param name="mostMl">Largest batch: passed only where the wanted volume with each part rounded up passes it.</param>
    public long[] Best(double wantedMl, double mostMl)
    {
        long[] up = [.. Shares.Select((share, i) => StepsUp(wantedMl * share, StepsMl[i]))];
        var nearMl = wantedMl + Math.Max(wantedMl / 10, 4 * StepsMl.Max());
        var capMl = Math.Max(Math.Min(mostMl, nearMl), TotalMl(up)) + (wantedMl * Dust);
        return new Trial(this, wantedMl, capMl, up).Run();
    }

    /// <summary>
    /// The best of the marks next to the exact amounts of <paramref name="aimMl"/> that make at least
    /// <paramref name="leastMl"/>, which is not above it: the same batch again, read on another measure.
    /// </summary>
    public long[] Next(double aimMl, double leastMl)
    {
        long[] up = [.. Shares.Select((share, i) => StepsUp(aimMl * share, StepsMl[i]))];
        var best = up;
        for (var down = 1; down < 1 << up.Length; down++)
        {
            long[] marked = [.. up.Select((steps, i) => steps - ((down >> i) & 1))];
            if (marked.All(steps => steps > 0) && Excess(marked, leastMl) >= -Dust && Beats(marked, best, leastMl)) best = marked;
        }

        return best;
    }

    private double Excess(long[] marked, double wantedMl) => (TotalMl(marked) - wantedMl) / wantedMl;

    private double Cost(long[] marked, double wantedMl) => (RatioWeight * Math.Abs(RatioError(marked))) + Math.Max(0, Excess(marked, wantedMl));

    private bool Beats(long[] marked, long[] best, double wantedMl) => (Cost(marked, wantedMl) - Cost(best, wantedMl)) switch
    {
        < -Dust => true,
        > Dust => false,
        _ => (TotalMl(marked), marked[0]).CompareTo((TotalMl(best), best[0])) < 0,
    };

    private static long StepsUp(double ml, double stepMl) => Math.Max(1, (long)Math.Ceiling((ml / stepMl) - Dust));

    /// <summary>Runs through the steps part by part. What beats the best errs less than its cost / 10 and exceeds less than its cost.</summary>
    private sealed class Trial(ReadableMarks marks, double wantedMl, double capMl, long[] up)
    {
        private readonly long[] _marked = [.. up];
        private long[] _best = [.. up];
        private double _cost = marks.Cost(up, wantedMl);

        public long[] Run()
        {
            var wantedA = wantedMl * marks.Shares[0];
            var (error, excess) = (_cost / RatioWeight, _cost);
            var least = error >= 1 ? 1 : Math.Max(1, (long)Math.Floor(wantedA * (1 - error) / marks.StepsMl[0]));
            var most = (long)Math.Ceiling(wantedA * (1 + error) * (1 + excess) / marks.StepsMl[0]);
            for (_marked[0] = least; _marked[0] <= most; _marked[0]++) Try(1, marks.Ml(_marked, 0));
            return _best;
        }

        private void Try(int part, double beforeMl)
        {
            if (part == marks.Shares.Count - 1) Last(part, beforeMl);
            else Middle(part, beforeMl);
        }

        /// <summary>As many steps as keep its ratio to the first part within what may still win.</summary>
        private void Middle(int part, double beforeMl)
        {
            var (step, error) = (marks.StepsMl[part], (_cost / RatioWeight) + Dust);
            var exactMl = marks.Ml(_marked, 0) * marks.Shares[part] / marks.Shares[0];
            var least = Math.Max(1, (long)Math.Floor(exactMl / (1 + error) / step));
            var most = (long)Math.Min((capMl - beforeMl) / step, error >= 1 ? double.MaxValue : Math.Ceiling(exactMl / (1 - error) / step));
            for (_marked[part] = least; _marked[part] <= most; _marked[part]++) Try(part + 1, beforeMl + marks.Ml(_marked, part));
        }

        private void Last(int part, double beforeMl)
        {
            for (_marked[part] = StepsUp(wantedMl - beforeMl, marks.StepsMl[part]); ; _marked[part]++)
            {
                if (marks.TotalMl(_marked) > capMl || marks.Excess(_marked, wantedMl) > _cost + Dust) return;
                if (!marks.Beats(_marked, _best, wantedMl)) continue;
                _best = [.. _marked];
                _cost = marks.Cost(_best, wantedMl);
            }
        }
    }
}
