namespace Lapwise.Core.Work.Moments;

/// <summary>How a section stands at one moment of its coat.</summary>
public enum SectionState
{
    Untouched,
    /// <summary>Being rolled wet, or poured.</summary>
    Wetting,
    /// <summary>In its dry pass, or being levelled.</summary>
    Finishing,
    /// <summary>Done, and a lap of it still waits: its film must stay open.</summary>
    Open,
    /// <summary>Done, and every lap of it was joined in time.</summary>
    Joined,
    /// <summary>Its film no longer takes a lap, or no longer its own dry pass, although it still had to: a line shows.</summary>
    Closed,
}

/// <summary>How a lap stands at one moment.</summary>
public enum LapState
{
    /// <summary>Neither side of it is wet yet.</summary>
    Untouched,
    /// <summary>One side is wet; the other must be done before the film closes.</summary>
    Waiting,
    Joined,
    Lost,
    /// <summary>A planned joint: it waits for nobody.</summary>
    Joint,
}

public enum BatchState
{
    NotMixed,
    BeingMixed,
    /// <summary>Mixed, and none of it on the top yet.</summary>
    Ready,
    InUse,
    UsedUp,
    /// <summary>Past its pot life and still needed.</summary>
    Outlived,
}

/// <param name="OpenLeftMs">Until its own film closes, counted from its first wet material; negative: it closed so long ago.</param>
public sealed record SectionMoment(Section Section, SectionState State, long OpenLeftMs);

/// <param name="LeftMs">Until it must be joined; of meaning while it waits.</param>
public sealed record LapMoment(Lap Lap, LapState State, long LeftMs);

/// <param name="AgeMs">Since the first contact of A and B; negative: mixed so long from now.</param>
/// <param name="LeftMs">Until its use-by time.</param>
public sealed record BatchMoment(Batch Batch, BatchState State, long AgeMs, long LeftMs);

/// <summary>What one of the crew has in hand.</summary>
public abstract record Doing
{
    private Doing() { }

    /// <param name="IsFinishing">The dry pass, or the levelling of a pour.</param>
    public sealed record Rolls(Section Section, bool IsFinishing, long UntilMs) : Doing;
    public sealed record Mixes(Batch Batch) : Doing;
    /// <summary>A timed step of a poured coat.</summary>
    public sealed record Steps(TimedStep Step) : Doing;
    /// <summary>Nothing until then: on the way, or waiting.</summary>
    public sealed record Waits(long UntilMs) : Doing;
    /// <summary>Nothing more in this coat.</summary>
    public sealed record Through : Doing;
}

/// <param name="Person">Place in the crew, from 0.</param>
public sealed record PersonMoment(int Person, Doing Doing);

/// <summary>A coat's plan at one moment: what is wet, what waits, who does what, how old each batch is.</summary>
/// <param name="AtMs">From the first step of the coat.</param>
public sealed record Moment(
    long AtMs,
    IReadOnlyList<SectionMoment> Sections,
    IReadOnlyList<LapMoment> Laps,
    IReadOnlyList<BatchMoment> Batches,
    IReadOnlyList<PersonMoment> People);
