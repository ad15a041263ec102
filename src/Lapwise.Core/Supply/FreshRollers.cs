using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Work;

namespace Lapwise.Core.Supply;

/// <summary>
/// A roller and tray carry their first mix through the batches that follow. Where a batch is still rolled after that first
/// mix must be used up, it is begun with fresh ones, before the old stiffen or shed bits.
/// </summary>
public static class FreshRollers
{
    /// <summary>The batches that are begun with a fresh roller and tray; never the first.</summary>
    public static IReadOnlyList<string> Before(CoatWork work)
    {
        if (work.Coat.Product.Method is not ApplicationMethod.Rolled || work.Batches.Count < 2) return [];
        List<string> fresh = [];
        var usedUpMs = work.Batches[0].UseByMs;
        foreach (var batch in work.Batches.Skip(1))
        {
            var rolledUntilMs = work.Sections.Where(s => s.Batch == batch.Id).Select(s => s.EndMs).DefaultIfEmpty(0).Max();
            if (rolledUntilMs <= usedUpMs) continue;
            fresh.Add(batch.Id);
            usedUpMs = batch.UseByMs;
        }

        return fresh;
    }

    /// <summary>What fresh rollers and trays keep back beside the first ones, mL of A and B.</summary>
    public static double KeepMl(CoatWork work, Consumption takes) =>
        Before(work).Count * takes.PerPersonMl * work.Rollers;
}
