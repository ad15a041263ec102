namespace Lapwise.Core.Work.Order;

/// <summary>
/// The bare order problem: sections with rolling times, laps between them, and the crew. Times in whole milliseconds.
/// Lap age = max(end, end) − min(start, start); the worst is minimised.
/// </summary>
/// <param name="Before">Pairs (first, then): the second may start only when the first has ended.</param>
/// <param name="Mixing">How material is mixed along the way; null: mixing takes no time of the plan.</param>
public sealed record OrderProblem(
    IReadOnlyList<OrderSection> Sections,
    IReadOnlyList<OrderLap> Laps,
    IReadOnlyList<(int First, int Then)> Before,
    int Crew = 1,
    MixingRule? Mixing = null)
{
    /// <summary>Pairs that may not be rolled at the same time: two people would stand in one place.</summary>
    public IReadOnlyList<(int A, int B)> Apart { get; init; } = [];
}

/// <param name="DurationMs">Rolling time of each person, or one time for all.</param>
/// <param name="NotBeforeMs">Earliest start.</param>
/// <param name="StartedAtMs">Already begun at this time: it is done first and never moved.</param>
/// <param name="VolumeMl">What the section takes from a batch.</param>
public sealed record OrderSection(
    string Id,
    IReadOnlyList<long> DurationMs,
    long NotBeforeMs = 0,
    long? StartedAtMs = null,
    double VolumeMl = 0)
{
    public long DurationOf(int person) => DurationMs[Math.Min(person, DurationMs.Count - 1)];
    public long ShortestMs => DurationMs.Min();
}

/// <summary>A lap between two sections, by index.</summary>
/// <param name="LimitMs">A limit of its own that its age must keep; null: none.</param>
public sealed record OrderLap(int A, int B, long? LimitMs = null);

/// <summary>A batch is mixed by one of the crew, takes time, holds so much and lives so long.</summary>
/// <param name="MixMs">Time to mix one batch; where people differ, of the quickest.</param>
/// <param name="LifeMs">From the first contact of A and B, which is the start of mixing.</param>
/// <param name="UsableMl">What a full batch gives to sections.</param>
/// <param name="MostBatches">No more batches than this.</param>
/// <param name="FirstUsableMl">What the first batch gives, since it also charges roller and tray; null: as every other.</param>
/// <param name="AgeShare">
/// Share of a batch's age, from when it is mixed through, that counts with the age of every lap rolled from it, up to a whole
/// second. One person's search counts it; several people's starts are open while laps are judged, so theirs leaves it out.
/// </param>
public sealed record MixingRule(long MixMs, long LifeMs, double UsableMl, int MostBatches, double? FirstUsableMl = null, double AgeShare = 0)
{
    /// <summary>Time to mix one batch of each person, where they differ; empty: <see cref="MixMs"/> for all.</summary>
    public IReadOnlyList<long> EachMixMs { get; init; } = [];

    /// <summary>How long a batch stands at the end of its mixing time before its first use: it ages meanwhile.</summary>
    public long StandMs { get; init; }

    /// <summary>
    /// So many batches one person alone mixes one after the other before the first section, the next while the one before stands.
    /// Each lives and ages from its own mixing. A crew's search chooses for itself.
    /// </summary>
    public int Ahead { get; init; } = 1;

    /// <summary>When the first section may begin: all that is mixed ahead is mixed, and the first has stood.</summary>
    internal long BeginMs => Math.Max(MixMs, Ahead * (MixMs - StandMs));

    /// <summary>When the mixing of a batch begins that is wanted now.</summary>
    internal long MixedFromMs(int batch, long nowMs) => batch < Ahead ? batch * (MixMs - StandMs) : nowMs;

    public long MixMsOf(int person) => EachMixMs.Count == 0 ? MixMs : EachMixMs[Math.Min(person, EachMixMs.Count - 1)];
}

/// <summary>One section placed in time.</summary>
/// <param name="Batch">Index of the batch it is rolled from; 0 where mixing is not part of the problem.</param>
public sealed record Placed(int Section, int Person, long StartMs, long EndMs, int Batch = 0);

/// <summary>A mixing of one batch placed in time.</summary>
public sealed record PlacedMix(int Batch, int Person, long StartMs, long EndMs);

/// <summary>An order with its worst lap age, as its problem counts it, and what is proven of it.</summary>
/// <param name="BoundMs">No order has a smaller worst lap age than this.</param>
/// <param name="KeepsLimits">Every lap's own limit and the mixing rule are kept; false: no order that keeps them is known.</param>
public sealed record FoundOrder(
    long WorstLapAgeMs,
    long BoundMs,
    bool KeepsLimits,
    IReadOnlyList<Placed> Sections,
    IReadOnlyList<PlacedMix> Mixes)
{
    public bool Proven => KeepsLimits && WorstLapAgeMs <= BoundMs;
}
