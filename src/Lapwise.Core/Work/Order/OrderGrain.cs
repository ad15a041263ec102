namespace Lapwise.Core.Work.Order;

/// <summary>The largest unit of which every time of a problem is a whole number.</summary>
internal static class OrderGrain
{
    public static long Of(OrderProblem problem)
    {
        long grain = 0;
        foreach (var section in problem.Sections)
        {
            foreach (var duration in section.DurationMs) grain = Gcd(grain, duration);
            grain = Gcd(Gcd(grain, section.NotBeforeMs), Math.Abs(section.StartedAtMs ?? 0));
        }

        foreach (var lap in problem.Laps) grain = Gcd(grain, lap.LimitMs ?? 0);
        if (problem.Mixing is { } m) grain = Gcd(Gcd(m.EachMixMs.Aggregate(Gcd(grain, m.MixMs), Gcd), m.LifeMs), Gcd(m.StandMs, m.AgeShare > 0 ? 1000 : 0));
        return Math.Max(1, grain);
    }

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
