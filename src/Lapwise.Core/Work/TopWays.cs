using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>
/// The ways of cutting each top, each cut once however often it is asked for: for every coat, for one roller or several, for
/// a nearer target and for the proof. Who plans the same measured tops again, at another pace or in another room, hands it
/// on from plan to plan.
/// </summary>
public sealed class TopWays
{
    private readonly Dictionary<(MeasuredTop Top, double LargestM2, double ReachM), TopCutting> _cuttings = [];

    /// <summary>The ways that are tried for this product, worked out only as they are asked for.</summary>
    internal IAsyncEnumerable<CutTop> Of(MeasuredTop top, Aims aims, Product product, Pause pause)
    {
        if (product.WholeTopAtOnce) return Only(top, aims, new CutChoice.WholeFaces());
        if (top.Top.SectionLines.Count > 0) return Only(top, aims, new CutChoice.Given());
        return Sectioning.WaysAsync(Cutting(top, aims), pause);
    }

    /// <inheritdoc cref="Sectioning.UsualWay"/>
    internal CutTop UsualWay(MeasuredTop top, Aims aims) => Cutting(top, aims).Cut(new CutChoice.UsualGrid());

    private async IAsyncEnumerable<CutTop> Only(MeasuredTop top, Aims aims, CutChoice choice)
    {
        yield return Cutting(top, aims).Cut(choice);
        await ValueTask.CompletedTask;
    }

    private TopCutting Cutting(MeasuredTop top, Aims aims)
    {
        var key = (top, aims.LargestSectionM2, aims.ReachM);
        if (!_cuttings.TryGetValue(key, out var cutting)) _cuttings[key] = cutting = new TopCutting(top, aims);
        return cutting;
    }
}
