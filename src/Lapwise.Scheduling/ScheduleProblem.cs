using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

// Many jobs over one calendar, in whole ticks (a shop counts minutes). It knows nothing of coats: a published instance of
// project scheduling is stated in it as it stands.

/// <summary>A stretch of time, its end not included.</summary>
public readonly record struct Window(long From, long To);

/// <summary>One thing done in one go at one place.</summary>
/// <param name="Id">What it is called.</param>
/// <param name="Job">The job it belongs to.</param>
/// <param name="Length">Ticks, 0 or more.</param>
public sealed record Visit(string Id, string Job, long Length)
{
    /// <summary>How it is said to a person.</summary>
    public Phrase Name { get => field ?? (_ => Id); init; }
    /// <summary>How its job is said to a person.</summary>
    public string JobName { get => field ?? Job; init; }
    /// <summary>Gear it takes while it is done.</summary>
    public IReadOnlyList<Need> Needs { get; init; } = [];
    /// <summary>A crew must be there.</summary>
    public bool NeedsCrew { get; init; }
    /// <summary>What the crew must be able to do; null: anyone can.</summary>
    public string? Skill { get; init; }
    /// <summary>Visits of one name are done by the same crew; null: any.</summary>
    public string? Together { get; init; }
    /// <summary>Place in the table of travel; null: no travel.</summary>
    public int? Site { get; init; }
    /// <summary>When it may be done, in rising order; empty: any time.</summary>
    public IReadOnlyList<Window> Open { get; init; } = [];
    public long NotBefore { get; init; }
    /// <summary>When it must have ended.</summary>
    public long? DueBy { get; init; }
    /// <summary>It stays where it is.</summary>
    public Locked? Locked { get; init; }
}

/// <param name="Crew">Null: any crew.</param>
public sealed record Locked(long Start, int? Crew)
{
    /// <summary>When that is and what is odd about it, as said to a person; null: nothing to add.</summary>
    public Phrase? Said { get; init; }
}

public readonly record struct Need(int Gear, int Amount);

/// <summary>Something there are few of: a tent, an extractor, a machine.</summary>
public sealed record Gear(string Name, int Count);

/// <summary>Gear kept on site from the start of one visit to the end of another, drying included.</summary>
public sealed record Hold(int Gear, int Amount, int From, int To);

/// <summary>
/// The start of one visit is at least so long after the start of another. A maximum is the same the other way round, with
/// its sign turned: start(b) ≤ start(a) + m is start(a) ≥ start(b) − m.
/// </summary>
/// <param name="Name">What it is, for the day it contradicts another.</param>
public sealed record Lag(int From, int To, long Least, Phrase Name)
{
    public Lag(int from, int to, long least, string name) : this(from, to, least, _ => name) { }
}

/// <summary>From the start of one visit to the start of another a household lives with its rooms opened: the shorter the better.</summary>
public readonly record struct Stretch(int From, int To);

/// <param name="Away">When it works for nobody.</param>
public sealed record Crew(string Name, IReadOnlyList<string> Skills, IReadOnlyList<Window> Away);

/// <param name="Travel">Ticks from site to site; empty: none.</param>
/// <param name="Horizon">Nothing ends later.</param>
public sealed record ScheduleProblem(
    IReadOnlyList<Visit> Visits, IReadOnlyList<Lag> Lags, IReadOnlyList<Gear> Gear, IReadOnlyList<Hold> Holds, IReadOnlyList<Crew> Crews,
    IReadOnlyList<IReadOnlyList<long>> Travel, long Horizon)
{
    /// <summary>Where visits stood before, by id: what stood is moved only where it must, and the end is no later than that asks for.</summary>
    public IReadOnlyDictionary<string, PlacedVisit> Before { get; init; } = new Dictionary<string, PlacedVisit>(StringComparer.Ordinal);

    /// <summary>What stood gives way to an earlier last end, and is left alone only among equally early ones.</summary>
    public bool EndsFirst { get; init; }

    /// <summary>Of equally early ends the one in which these are short.</summary>
    public IReadOnlyList<Stretch> Stretches { get; init; } = [];

    /// <summary>Where a visit stood that does not give way.</summary>
    public PlacedVisit? Stood(int visit) => !EndsFirst && Before.TryGetValue(Visits[visit].Id, out var before) ? before : null;

    /// <summary>How many visits stand elsewhere than they did.</summary>
    public int Moved(IReadOnlyList<PlacedVisit> now) => Visits.Where((v, i) => Before.TryGetValue(v.Id, out var before) && before != now[i]).Count();

    public long TravelBetween(Visit a, Visit b) => Travel.Count > 0 && a.Site is { } from && b.Site is { } to && from != to ? Travel[from][to] : 0;

    /// <summary>Crews that can do a visit; a locked crew is the only one.</summary>
    public IReadOnlyList<int> CrewsFor(Visit visit) => !visit.NeedsCrew ? []
        : visit.Locked?.Crew is { } only ? [only]
        : [.. Enumerable.Range(0, Crews.Count).Where(c => visit.Skill is not { } skill || Crews[c].Skills.Contains(skill, StringComparer.Ordinal))];
}

/// <param name="Crew">Place in the crews; null: nobody is needed.</param>
public readonly record struct PlacedVisit(long Start, int? Crew);
