using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>What scheduling came to.</summary>
public abstract record Answer
{
    private Answer() { }

    public sealed record Found(Schedule Schedule) : Answer;

    /// <summary>Proven: there is no schedule, with what stands against it.</summary>
    public sealed record Impossible(IReadOnlyList<Reason> Reasons) : Answer;

    /// <summary>Not begun: the question cannot be used, or is larger than is answered.</summary>
    public sealed record Refused(IReadOnlyList<Reason> Reasons) : Answer;

    /// <summary>Neither found nor refuted within the effort, with how far it came.</summary>
    public sealed record Undecided(IReadOnlyList<Reason> Reasons) : Answer;
}

/// <summary>Every visit with its place.</summary>
/// <param name="LastEnd">When the last visit ends.</param>
/// <param name="Bound">No schedule ends earlier.</param>
/// <param name="Reasons">Deadlines that are missed, and how far the answer is repeatable.</param>
public sealed record Schedule(IReadOnlyList<PlacedVisit> Visits, long LastEnd, long Bound, IReadOnlyList<Reason> Reasons)
{
    public bool IsProven => LastEnd <= Bound;

    /// <summary>How far the end may be from the best, as a share of the end.</summary>
    public double Gap => LastEnd == 0 ? 0 : Math.Max(0, (double)(LastEnd - Bound) / LastEnd);

    /// <summary>What could be had if settled visits gave way to an earlier last end; null: nothing earlier was found, or not asked.</summary>
    public Sooner? Sooner { get; init; }

    /// <summary>False where a stop by hand or the safety limit in real time cut the search: then the same input may give another answer.</summary>
    public bool IsRepeatable { get; init; } = true;
}

/// <summary>An earlier last end, at the price of more visits moved.</summary>
/// <param name="Moved">How many settled visits would stand elsewhere.</param>
public sealed record Sooner(long LastEnd, int Moved);

/// <summary>How long to search.</summary>
/// <param name="Deterministic">The solver's own count of work, about seconds; it stops at the same place on every machine.</param>
/// <param name="Workers">1 is repeatable; more are faster and are not.</param>
public sealed record Effort(double Deterministic, int Workers = 1)
{
    /// <summary>A net in real time, well beyond the count of work; where it is hit the answer says so.</summary>
    public double SafetyS => 10 * Math.Max(Deterministic, FewestCounted);

    // A small count takes far longer on a busy machine: stating the question is hardly counted.
    private const double FewestCounted = 6;

    /// <summary>A good answer while a person looks on.</summary>
    public static readonly Effort AtOnce = new(0);
    public static readonly Effort Patient = new(25);
}
