using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work.Moments;

/// <summary>A plan against the clock.</summary>
public static class PlanClock
{
    /// <summary>The plan at a time; a time outside it is taken as its beginning or its end.</summary>
    /// <param name="atMs">From the first step of the coat.</param>
    public static Moment At(CoatWork work, IReadOnlyList<Person> crew, long atMs)
    {
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(crew);
        var now = Math.Clamp(atMs, 0, EndMs(work));
        var sections = work.Sections.ToDictionary(s => s.Id, StringComparer.Ordinal);
        var laps = work.Laps.Select(l => Of(l, sections[l.A], sections[l.B], work.OpenTimeMs, now)).ToList();
        return new Moment(
            now,
            [.. work.Sections.Select(s => Of(s, laps.Where(l => l.Lap.A == s.Id || l.Lap.B == s.Id), work.OpenTimeMs, now))],
            laps,
            [.. work.Batches.Select(b => Of(b, work.Sections.Where(s => s.Batch == b.Id), now))],
            [.. crew.Select((_, person) => new PersonMoment(person, InHand(work, person, now)))]);
    }

    /// <summary>When the last of the coat is done.</summary>
    public static long EndMs(CoatWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return work.Sections.Select(s => s.EndMs).Concat(work.Steps.Select(s => s.EndMs)).Concat(work.Batches.Select(b => b.MixEndMs)).DefaultIfEmpty(0).Max();
    }

    /// <summary>The times at which somebody begins or ends something, from 0 to the end.</summary>
    public static IReadOnlyList<long> Turns(CoatWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return [.. work.Sections.SelectMany(s => new[] { s.StartMs, s.WetEndMs, s.EndMs })
            .Concat(work.Batches.SelectMany(b => new[] { b.MixStartMs, b.MixEndMs }))
            .Concat(work.Steps.SelectMany(s => new[] { s.StartMs, s.EndMs }))
            .Append(0).Distinct().Order()];
    }

    private static LapMoment Of(Lap lap, Section a, Section b, long openMs, long now)
    {
        var closesMs = Math.Min(a.StartMs, b.StartMs) + openMs;
        var joinedMs = Math.Max(a.EndMs, b.EndMs);
        var state = lap.Kind == LapKind.Break ? LapState.Joint
            : now < Math.Min(a.StartMs, b.StartMs) ? LapState.Untouched
            : Math.Min(now, joinedMs) > closesMs ? LapState.Lost
            : now >= joinedMs ? LapState.Joined
            : LapState.Waiting;
        return new LapMoment(lap, state, closesMs - now);
    }

    private static SectionMoment Of(Section section, IEnumerable<LapMoment> laps, long openMs, long now)
    {
        var closesMs = section.StartMs + openMs;
        var states = laps.Select(l => l.State).ToList();
        var state = now < section.StartMs ? SectionState.Untouched
            : Math.Min(now, section.EndMs) > closesMs || (now >= section.EndMs && states.Contains(LapState.Lost)) ? SectionState.Closed
            : now < section.WetEndMs ? SectionState.Wetting
            : now < section.EndMs ? SectionState.Finishing
            : states.Contains(LapState.Waiting) ? SectionState.Open
            : SectionState.Joined;
        return new SectionMoment(section, state, closesMs - now);
    }

    private static BatchMoment Of(Batch batch, IEnumerable<Section> sections, long now)
    {
        var (firstMs, lastMs) = sections.Aggregate((First: long.MaxValue, Last: batch.MixEndMs), (t, s) => (Math.Min(t.First, s.StartMs), Math.Max(t.Last, s.WetEndMs)));
        var state = now < batch.MixStartMs ? BatchState.NotMixed
            : now < batch.MixEndMs ? BatchState.BeingMixed
            : now >= lastMs ? BatchState.UsedUp
            : now > batch.UseByMs ? BatchState.Outlived
            : now < firstMs ? BatchState.Ready
            : BatchState.InUse;
        return new BatchMoment(batch, state, now - batch.MixStartMs, batch.UseByMs - now);
    }

    private static Doing InHand(CoatWork work, int person, long now)
    {
        if (work.Batches.FirstOrDefault(b => b.MixedBy == person && b.MixStartMs <= now && now < b.MixEndMs) is { } batch) return new Doing.Mixes(batch);
        if (work.Steps.FirstOrDefault(s => s.Person == person && s.StartMs <= now && now < s.EndMs) is { } step) return new Doing.Steps(step);
        if (work.Steps.Count == 0 && work.Sections.FirstOrDefault(s => s.Person == person && s.StartMs <= now && now < s.EndMs) is { } section)
            return now < section.WetEndMs ? new Doing.Rolls(section, false, section.WetEndMs) : new Doing.Rolls(section, true, section.EndMs);

        var ahead = work.Batches.Where(b => b.MixedBy == person).Select(b => b.MixStartMs)
            .Concat(work.Steps.Where(s => s.Person == person).Select(s => s.StartMs))
            .Concat(work.Steps.Count > 0 ? [] : work.Sections.Where(s => s.Person == person).Select(s => s.StartMs))
            .Where(ms => ms > now).ToList();
        return ahead.Count > 0 ? new Doing.Waits(ahead.Min()) : new Doing.Through();
    }
}
