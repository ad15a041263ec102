using Lapwise.Core.Explain;

namespace Lapwise.Drawings;

/// <summary>A stretch of numbers with round steps on it.</summary>
internal sealed record Axis(double From, double To, IReadOnlyList<double> Ticks)
{
    private static readonly double[] RoundSteps = [1, 2, 2.5, 5, 10];
    private static readonly double[] ClockStepsS = [60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 21600, 43200, 86400, 172800, 604800];

    /// <summary>0: at <see cref="From"/>; 1: at <see cref="To"/>.</summary>
    public double Share(double value) => (value - From) / (To - From);

    /// <summary>From a little under the least to a little over the most, ends on steps.</summary>
    public static Axis Over(double least, double most, CurveLine line, Voice voice, int mostTicks)
    {
        var (unit, zero) = line.Scale(voice);
        var (low, high) = (line.FromZero ? 0 : (least - zero) / unit, (most - zero) / unit);
        if (high - low < 1e-9 * Math.Max(1, Math.Abs(high))) (low, high) = (low - 1, high + 1);
        var rough = (high - low) / (mostTicks - 1);
        var size = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var step = RoundSteps.First(s => s * size >= rough * 0.999) * size;
        var (first, last) = ((int)Math.Floor(low / step), (int)Math.Ceiling((high / step) - 1e-9));
        return new Axis(zero + (first * step * unit), zero + (last * step * unit), [.. Enumerable.Range(first, last - first + 1).Select(i => zero + (i * step * unit))]);
    }

    /// <summary>Seconds from 0, with steps as a clock has them.</summary>
    public static Axis Clock(double lastS, int mostTicks)
    {
        var step = ClockStepsS.FirstOrDefault(s => lastS / s <= mostTicks, ClockStepsS[^1] * Math.Ceiling(lastS / ClockStepsS[^1] / mostTicks));
        return new Axis(0, lastS, [.. Enumerable.Range(0, (int)(lastS / step) + 1).Select(i => i * step)]);
    }
}
