using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Work.Grouping;

/// <summary>Tops in a sequence in which each is rolled whole from one batch.</summary>
/// <param name="Tops">As entered within a batch; the batches in the order of their first top.</param>
/// <param name="Batches">As few as can hold whole tops.</param>
internal sealed record TopGrouping(IReadOnlyList<TopOrder> Tops, int Batches)
{
    // Counted, so that every machine stops at the same place.
    private const long MostSteps = 20_000;

    /// <summary>Null where there is nothing to group: a single top, or one that is more than a batch holds or outlives.</summary>
    public static TopGrouping? Of(IReadOnlyList<TopOrder> tops, BatchRule rule, MixingRule mixing)
    {
        if (tops.Count < 2) return null;
        var batch = new PieceLoad((long)(mixing.UsableMl * 1000), mixing.LifeMs - mixing.MixMs);
        // Roller and tray are charged from the first batch: a piece of their own, and the batch that holds it comes first.
        var charge = new PieceLoad((long)Math.Ceiling((mixing.UsableMl - (mixing.FirstUsableMl ?? mixing.UsableMl)) * 1000), 0);
        List<PieceLoad> pieces = [charge, .. tops.Select(top => Load(top, rule))];
        if (pieces.Any(p => !p.FitsIn(batch))) return null;

        var packing = BatchPacking.Pack(pieces, batch, MostSteps);
        return new TopGrouping([.. packing.Batches.SelectMany(b => b).Where(i => i > 0).Select(i => tops[i - 1])], packing.Batches.Count);
    }

    private static PieceLoad Load(TopOrder top, BatchRule rule) => new(
        (long)Math.Ceiling(top.Cut.Sections.Sum(rule.TakenMl) * 1000),
        top.Problem.Sections.Sum(s => s.DurationMs[0]));
}
