using Lapwise.Core.Work;

namespace Lapwise.Core.OnSite;

/// <summary>A lap whose two sections are both done.</summary>
/// <param name="AgeMs">With what the age of the batches had used of the open time.</param>
/// <param name="IsAssumed">One of the times it rests on was filled in by the program.</param>
public sealed record JoinedLap(IssuedLap Lap, long AgeMs, long MarginMs, bool IsAssumed)
{
    public bool IsLost => MarginMs < 0;
}

/// <summary>The laps of a run that are behind us, by the rule the plan counted with.</summary>
public static class JoinedLaps
{
    /// <summary>In the order of the plan; planned joints have no age and are left out.</summary>
    public static IReadOnlyList<JoinedLap> Of(Run run)
    {
        var joined = new List<JoinedLap>();
        foreach (var lap in run.Plan.Laps.Where(l => l.Kind is not LapKind.Break))
        {
            if (run.Sections.GetValueOrDefault(lap.A) is not { DryAtMs: { } endA } a || run.Sections.GetValueOrDefault(lap.B) is not { DryAtMs: { } endB } b) continue;
            var age = run.FilmMs(Math.Max(endA, endB)) - Math.Min(run.FilmSinceMs(a), run.FilmSinceMs(b));
            joined.Add(new JoinedLap(lap, age, run.OpenTimeMs - age, a.IsAssumed || b.IsAssumed));
        }

        return joined;
    }
}
