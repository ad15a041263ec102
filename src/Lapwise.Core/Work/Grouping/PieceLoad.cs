namespace Lapwise.Core.Work.Grouping;

/// <summary>What a piece takes of a batch, or what a whole batch gives, in whole units so that sums are exact.</summary>
/// <param name="VolumeUl">Microlitres of A and B.</param>
/// <param name="TimeMs">Rolling time, milliseconds.</param>
public readonly record struct PieceLoad(long VolumeUl, long TimeMs)
{
    public static PieceLoad operator +(PieceLoad a, PieceLoad b) => new(a.VolumeUl + b.VolumeUl, a.TimeMs + b.TimeMs);
    public static PieceLoad operator -(PieceLoad a, PieceLoad b) => new(a.VolumeUl - b.VolumeUl, a.TimeMs - b.TimeMs);
    public bool FitsIn(PieceLoad room) => VolumeUl <= room.VolumeUl && TimeMs <= room.TimeMs;
}

/// <summary>Pieces put together into batches.</summary>
/// <param name="Batches">The pieces of each batch, by index, ascending; batches in the order of their first piece.</param>
/// <param name="Bound">No way of grouping needs fewer batches.</param>
public sealed record Packing(IReadOnlyList<IReadOnlyList<int>> Batches, int Bound)
{
    public bool Proven => Batches.Count <= Bound;
}
