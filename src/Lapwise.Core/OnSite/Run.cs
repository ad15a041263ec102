using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;

namespace Lapwise.Core.OnSite;

/// <summary>
/// One coat on site, as its marks tell it. Times are the run's own, in milliseconds since 1970 (see <see cref="RunClock"/>).
/// </summary>
/// <param name="Log">Every mark, in one order that does not depend on how it arrived.</param>
/// <param name="Turns">What the plan, or the last replan, rolls in which order; what is done since is still in it.</param>
/// <param name="Left">Sections that are not rolled in this run.</param>
/// <param name="Lead">The device that replans.</param>
public sealed record Run(
    IssuedPlan Plan,
    RunClock Clock,
    IReadOnlyList<LoggedMark> Log,
    IReadOnlyDictionary<string, SectionDone> Sections,
    IReadOnlyList<BatchDone> Batches,
    IReadOnlyDictionary<string, long> StepsDone,
    IReadOnlyList<Halt> Halts,
    IReadOnlyList<IssuedTurn> Turns,
    IReadOnlySet<string> Left,
    IReadOnlySet<string> Checked,
    IReadOnlyDictionary<string, string> TakenUp,
    IReadOnlyList<Phrase> Notes,
    string Lead)
{
    /// <summary>All hands stop, since when; null: at work.</summary>
    public long? PausedSince => Halts is [.., { ToMs: null } open] ? open.FromMs : null;
    public bool HasBegun => Sections.Count > 0 || Batches.Count > 0;
    public bool IsDone => Plan.Sections.All(s => Left.Contains(s.Id) || Sections.GetValueOrDefault(s.Id) is { DryAtMs: not null });

    public IssuedSection SectionOf(string id) => Plan.Sections.First(s => s.Id == id);
    public bool IsBegun(string section) => Sections.ContainsKey(section);
    public bool IsDry(string section) => Sections.GetValueOrDefault(section) is { DryAtMs: not null };

    /// <summary>The room as it was read on site, in the order of time; empty: as planned.</summary>
    public IReadOnlyList<RoomRead> Room { get; init; } = [];

    /// <summary>How long the film takes a lap in the room as it was read last.</summary>
    public long OpenTimeMs => (long)(Plan.OpenTimeMs * (Room is [.., var now] ? now.Open : 1));

    /// <summary>How long a batch lives in the room as it was read last.</summary>
    public long PotLifeMs => (long)(Plan.PotLifeMs * (Room is [.., var now] ? now.Pot : 1));

    /// <summary>The batch a section was rolled from: the one its mark names; where it names none that was mixed, the last before it.</summary>
    public BatchDone? BatchOf(SectionDone section) =>
        Batches.FirstOrDefault(b => b.Batch == section.Batch) ?? Batches.LastOrDefault(b => b.AtMs <= section.WetAtMs);

    /// <summary>When the film of a section begins to count: earlier than its first wet material by what the age of its batch had used.</summary>
    public long FilmSinceMs(SectionDone section) => FilmMs(
        BatchOf(section) is { } batch ? section.WetAtMs - BatchAgeing.UsedMs(Plan.BatchAgeShare, section.WetAtMs - batch.AtMs - Plan.MixMs) : section.WetAtMs);

    /// <summary>
    /// A time in the past as it counts for film in the room of now: where the room was slower than it is now, film aged less, and
    /// counts as younger; by the equivalent age, a share of the open time stays that share. From the last reading on, itself.
    /// </summary>
    public long FilmMs(long atMs) => Equivalent(atMs, r => r.Open);

    /// <summary>When a batch that began then must be used up.</summary>
    public long UseByMs(long mixedMs) => Equivalent(mixedMs, r => r.Pot) + PotLifeMs;

    private long Equivalent(long atMs, Func<RoomRead, double> share)
    {
        if (Room.Count == 0 || atMs >= Room[^1].AtMs) return atMs;
        var now = share(Room[^1]);
        double equivalent = Room[^1].AtMs;
        for (var i = Room.Count - 1; i >= 0 && atMs < Room[i].AtMs; i--)
        {
            var (from, then) = i > 0 ? (Math.Max(atMs, Room[i - 1].AtMs), share(Room[i - 1])) : (atMs, 1.0);
            equivalent -= (Room[i].AtMs - from) * now / then;
        }

        return (long)Math.Round(equivalent);
    }

    /// <summary>How long all hands stood still between two times.</summary>
    public long HaltedMs(long fromMs, long toMs) => Halts.Sum(h => Math.Max(0, Math.Min(toMs, h.ToMs ?? toMs) - Math.Max(fromMs, h.FromMs)));
}

/// <param name="Counts">False: it was undone.</param>
/// <param name="AtMs">When it happened.</param>
/// <param name="MadeMs">When it was made.</param>
public sealed record LoggedMark(Mark Mark, MarkDocument Document, long AtMs, long MadeMs, bool Counts);

/// <summary>What is known of one section.</summary>
/// <param name="WetAtMs">First wet material.</param>
/// <param name="DryAtMs">Dry pass done; null: being rolled.</param>
/// <param name="Batch">As its mark names it; see <see cref="Run.BatchOf"/>.</param>
public sealed record SectionDone(string Section, int Person, long WetAtMs, bool WetAssumed, long? DryAtMs, bool DryAssumed, string? Batch)
{
    public bool IsAssumed => WetAssumed || (DryAtMs is not null && DryAssumed);
}

/// <param name="AtMs">A and B came together.</param>
public sealed record BatchDone(string Batch, int Person, long AtMs, bool Assumed);

/// <summary>A time in which all hands stood still; not yet over where <paramref name="ToMs"/> is null.</summary>
public sealed record Halt(long FromMs, long? ToMs);
