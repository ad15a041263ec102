namespace Lapwise.Core.OnSite;

/// <summary>How the rest of a run goes if everybody keeps to the order: what was done as it was, what is ahead at the pace seen.</summary>
/// <param name="Sections">Every section that is not left, by its start.</param>
/// <param name="KeepsBatches">No section is rolled from a batch past its use.</param>
public sealed record Forecast(
    long NowMs,
    IReadOnlyList<ForecastSection> Sections,
    IReadOnlyList<ForecastBatch> Batches,
    IReadOnlyList<ForecastLap> Laps,
    bool KeepsBatches)
{
    /// <summary>The least margin of the laps that are not both done; the largest number where there is none.</summary>
    public long LeastMarginMs => Laps.Where(l => l.Standing is LapStage.Ahead or LapStage.Open).Select(l => l.MarginMs).DefaultIfEmpty(long.MaxValue).Min();
    /// <summary>Laps that are, or will be, joined too late.</summary>
    public IEnumerable<ForecastLap> Lost => Laps.Where(l => l.Standing is not LapStage.Stopped && l.MarginMs < 0);
    /// <summary>When the last dry pass ends.</summary>
    public long EndMs => Sections.Select(s => s.EndMs).DefaultIfEmpty(NowMs).Max();
}

public enum Progress { Ahead, Wet, Dry }

/// <param name="FilmSinceMs">When its film begins to count: before its start by what the age of the batch had used.</param>
public sealed record ForecastSection(IssuedSection Section, int Person, long StartMs, long EndMs, Progress Progress, string Batch, long FilmSinceMs);

/// <param name="ReadyMs">Mixed through.</param>
/// <param name="LastUsedMs">End of the last section rolled from it.</param>
/// <param name="TakesMl">What the sections take from it.</param>
/// <param name="For">Sections still to be begun from it.</param>
/// <param name="IsOpen">Mixed and not used up: something is, or will be, rolled from it, or nothing has been since from a later one.</param>
public sealed record ForecastBatch(
    string Id, int Person, long StartMs, long ReadyMs, long UseByMs, bool IsMixed, long LastUsedMs, double TakesMl, IReadOnlyList<string> For, bool IsOpen);

public enum LapStage
{
    /// <summary>Neither side is begun.</summary>
    Ahead,
    /// <summary>One side is wet and the lap is not joined through yet: its clock runs.</summary>
    Open,
    Joined,
    /// <summary>One side is not rolled in this run: a line where the work stops.</summary>
    Stopped,
}

/// <param name="SinceMs">When the film of either side began to count.</param>
/// <param name="MarginMs">Open time less the age.</param>
public sealed record ForecastLap(IssuedLap Lap, LapStage Standing, long SinceMs, long MarginMs);
