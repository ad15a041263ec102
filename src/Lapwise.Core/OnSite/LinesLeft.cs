using Lapwise.Core.Explain;
using Lapwise.Core.Work;

namespace Lapwise.Core.OnSite;

/// <summary>The lines that a run leaves to be seen, and their mend.</summary>
public static class LinesLeft
{
    /// <summary>Laps joined too late, and laps at which the work stopped; the most seen first.</summary>
    public static IReadOnlyList<SalvageLine> Of(Run run)
    {
        var late = JoinedLaps.Of(run).Where(l => l.IsLost).Select(l => new SalvageLine(l.Lap, IsStop: false, LineHarm.SeenM(l.Lap, run.Plan)));
        var stops = run.Plan.Laps.Where(l => l.Kind is not LapKind.Break && run.Left.Contains(l.A) != run.Left.Contains(l.B) && run.IsBegun(run.Left.Contains(l.A) ? l.B : l.A))
            .Select(l => new SalvageLine(l, IsStop: true, LineHarm.SeenM(l, run.Plan)));
        return [.. late.Concat(stops).OrderByDescending(l => l.SeenM).ThenBy(l => l.Lap.A, StringComparer.Ordinal).ThenBy(l => l.Lap.B, StringComparer.Ordinal)];
    }

    /// <summary>What is done about them, in order; empty: there are none.</summary>
    public static IReadOnlyList<Phrase> Mend(Run run, IReadOnlyList<SalvageLine> lines) => Salvaging.Mend(run.Plan, lines, lines.Any(l => l.IsStop));
}
