using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Risk;

/// <summary>How a coat's plan fares when the day does not go exactly as planned. Repeatable: the same seed gives the same answer.</summary>
/// <param name="Line">That a line shows anywhere: some lap or section older than the open time.</param>
/// <param name="Laps">For each lap of the plan, in its order; planned joints never show one.</param>
/// <param name="BatchOutlivesPot">That some batch is still rolled, or poured and spread, past its pot life.</param>
/// <param name="WorstMargins">The worst margin of each trial, counted.</param>
/// <param name="NeedsMl">What each trial takes, A and B, ascending.</param>
public sealed record CoatRisk(
    int Trials,
    ulong Seed,
    Spreads Spreads,
    Chance Line,
    IReadOnlyList<LapRisk> Laps,
    Chance BatchOutlivesPot,
    MarginHistogram WorstMargins,
    IReadOnlyList<double> NeedsMl)
{
    /// <summary>Of a poured coat, that some levelling, bubble pass or scraping comes after its time; null for another.</summary>
    public Chance? StepLate { get; init; }

    /// <summary>That so much material does not reach to the end.</summary>
    /// <param name="boughtMl">A and B at hand.</param>
    public Chance RunsShort(double boughtMl) => new(NeedsMl.Count(need => need > boughtMl), Trials);
}

/// <summary>A chance counted in trials.</summary>
public readonly record struct Chance(int Times, int Trials)
{
    public double Share => (double)Times / Trials;

    /// <summary>A share as it is told: that it never fails is more than any number of trials can show.</summary>
    public static string Said(double share, Voice voice) => share >= 0.9995 ? "> " + voice.Percent(0.999, 1) : voice.Percent(share, 1);

    /// <summary>The interval of Wilson (J. Amer. Statist. Assoc. 22 (1927) 209-212; from memory) that holds the true chance 95 times in 100.</summary>
    public (double Least, double Most) Within95
    {
        get
        {
            var (n, z2) = ((double)Trials, NormalLaw.At95 * NormalLaw.At95);
            var middle = (Share + (z2 / (2 * n))) / (1 + (z2 / n));
            var half = NormalLaw.At95 / (1 + (z2 / n)) * Math.Sqrt((Share * (1 - Share) / n) + (z2 / (4 * n * n)));
            return (Times == 0 ? 0 : Math.Max(0, middle - half), Times == Trials ? 1 : Math.Min(1, middle + half));
        }
    }
}

/// <summary>The chance that a lap shows as a line.</summary>
public sealed record LapRisk(Lap Lap, Chance Line);

/// <summary>Margins counted in bins of one width; zero always lies between two bins, so every bin is a line or none.</summary>
/// <param name="FromMs">Where the first bin begins; a whole number of bins from zero.</param>
/// <param name="Counts">Trials in each bin: its beginning counted, its end not. The outer bins also hold what lies beyond.</param>
/// <param name="MedianMs">Half of all trials have at least this margin.</param>
/// <param name="TwentiethMs">Nineteen trials in twenty have at least this margin.</param>
public sealed record MarginHistogram(long FromMs, long BinMs, IReadOnlyList<int> Counts, long MedianMs, long TwentiethMs)
{
    private const int MostBins = 24;
    private static readonly long[] Widths = [1_000, 2_000, 5_000, 10_000, 15_000, 30_000, 60_000, 120_000, 300_000, 600_000, 1_800_000, 3_600_000];

    /// <param name="margins">At least one.</param>
    internal static MarginHistogram Of(IReadOnlyList<long> margins)
    {
        var sorted = margins.Order().ToList();
        // One trial in a thousand at either end is not worth the paper, but it stays on its own side of zero.
        var beyond = sorted.Count / 1000;
        var least = sorted[0] < 0 ? Math.Min(sorted[beyond], -1) : sorted[beyond];
        var most = sorted[^1] >= 0 ? Math.Max(sorted[^(1 + beyond)], 0) : sorted[^(1 + beyond)];
        var width = WidthFor(least, most);
        var (first, last) = (Bin(least, width), Bin(most, width));
        var counts = new int[last - first + 1];
        foreach (var margin in sorted) counts[Math.Clamp(Bin(margin, width), first, last) - first]++;
        return new MarginHistogram(first * width, width, counts, sorted[(sorted.Count - 1) / 2], sorted[(sorted.Count - 1) / 20]);
    }

    private static long WidthFor(long least, long most)
    {
        var width = Widths.FirstOrDefault(Fits, Widths[^1]);
        while (!Fits(width)) width *= 2;
        return width;

        bool Fits(long w) => Bin(most, w) - Bin(least, w) < MostBins;
    }

    private static long Bin(long ms, long width) => ms >= 0 ? ms / width : -((width - 1 - ms) / width);
}
