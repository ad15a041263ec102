using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work.Pouring;

/// <summary>
/// Which pour follows which, by a plain rule. Tops in the order of the job. On each: splashes first, brushed top down, so
/// that their drips drown in the pour; then the flat, part by part from one end, and with it its open edges, which the
/// run-off wets and a brush evens; then the panels, brushed top down with what runs over. Common practice, no source.
/// </summary>
internal static class PourSequence
{
    /// <summary>The fewest straight parts of a top of which one batch each can cover.</summary>
    public static CutTop Cut(MeasuredTop top, Aims aims, Product product, BatchRule batches)
    {
        if (product.WholeTopAtOnce || batches.UsableMl <= 0) return Sectioning.Cut(top, aims, new CutChoice.WholeFaces());
        var mostM2 = batches.CoversM2(batches.UsableMl);
        // Run-off makes a part with much edge take more than its film: a few finer cuts always settle it.
        for (var finer = 0; ; finer++)
        {
            var cut = Sectioning.Cut(top, aims, new CutChoice.Pours(mostM2));
            var mostMl = cut.Sections.Max(batches.TakenMl);
            if (mostMl <= batches.UsableMl || finer == MostTries) return cut;
            mostM2 *= 0.98 * batches.UsableMl / mostMl;
        }
    }

    private const int MostTries = 8;

    public static TopOrder Order(CutTop cut, Pace pace)
    {
        var sequence = cut.Sections.OrderBy(s => s.Face.Kind switch { FaceKind.Splash => 0, FaceKind.Flat => 1, _ => 2 }).ThenBy(s => s.Index).Select(s => s.Index).ToList();
        return TopOrder.Of(cut, TopOrder.ProblemOf(cut, [pace], ApplicationMethod.Poured), sequence);
    }
}
