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

    /// <summary>When the film of a section begins to count: earlier than its first wet material by what the age of its batch had used.</summary>
    public long FilmSinceMs(SectionDone section) =>
        Batches.LastOrDefault(b => b.AtMs <= section.WetAtMs) is { } batch ? section.WetAtMs - BatchAgeing.UsedMs(Plan.BatchAgeShare, section.WetAtMs - batch.AtMs - Plan.MixMs) : section.WetAtMs;

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
public sealed record SectionDone(string Section, int Person, long WetAtMs, bool WetAssumed, long? DryAtMs, bool DryAssumed)
{
    public bool IsAssumed => WetAssumed || (DryAtMs is not null && DryAssumed);
}

/// <param name="AtMs">A and B came together.</param>
public sealed record BatchDone(string Batch, int Person, long AtMs, bool Assumed);

/// <summary>A time in which all hands stood still; not yet over where <paramref name="ToMs"/> is null.</summary>
public sealed record Halt(long FromMs, long? ToMs);
