namespace Lapwise.Core.Jobs;

/// <summary>Settled days, as they are followed by others.</summary>
public static class Settling
{
    /// <summary>Other days after these: a visit that is as it was keeps its number of change, and so its event in a calendar.</summary>
    /// <param name="kept">Those of before that stay beside them.</param>
    /// <param name="above">What the number of the settling must lie above, too.</param>
    public static SettledDaysDocument Next(SettledDaysDocument before, IEnumerable<VisitDocument> kept, IReadOnlyList<VisitDocument> visits, long above)
    {
        var number = (int)Math.Min(int.MaxValue - 1, Math.Max(before.Times, above)) + 1;
        var had = before.Visits.DistinctBy(v => v.Id, StringComparer.Ordinal).ToDictionary(v => v.Id, StringComparer.Ordinal);
        VisitDocument Numbered(VisitDocument visit) => had.TryGetValue(visit.Id, out var was) && was with { Changed = 0 } == visit with { Changed = 0 } ? was : visit with { Changed = number };
        return new SettledDaysDocument
        {
            Times = number,
            Visits = [.. kept.Concat(visits.Select(Numbered)).OrderBy(v => v.From, StringComparer.Ordinal).ThenBy(v => v.Id, StringComparer.Ordinal)],
        };
    }

    /// <summary>These days with those of another shop taken in: a job has the other's visits where it has any, and its own elsewhere.</summary>
    public static SettledDaysDocument Taken(SettledDaysDocument? own, SettledDaysDocument other)
    {
        if (own is null) return other;
        var theirs = other.Visits.Select(v => v.Job).ToHashSet(StringComparer.Ordinal);
        var next = Next(own, own.Visits.Where(v => !theirs.Contains(v.Job)), other.Visits, other.Times);
        return next.Visits.SequenceEqual(own.Visits) ? own : next;
    }

    /// <summary>The settled day on which a coat goes on; null: none is settled. Where it is not known which coat goes on when, the first day on which one does.</summary>
    /// <param name="visits">Of one job, in order of time.</param>
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    public static DateOnly? CoatedOn(IEnumerable<VisitDocument> visits, int coat)
    {
        var coats = visits.Where(v => v.IsCoat).ToList();
        return (coats.LastOrDefault(v => v.Coat <= coat + 1) ?? coats.FirstOrDefault()) is { } visit ? DateOnly.FromDateTime(visit.Begins) : null;
    }
}
