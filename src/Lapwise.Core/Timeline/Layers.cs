using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Timeline;

/// <summary>Which coat lies on which, top by top: a coat that goes on some tops only follows the last one on each of these.</summary>
internal sealed class Layers
{
    private readonly Job job;
    private readonly MeasuredJob measured;

    public Layers(Job job, MeasuredJob measured)
    {
        (this.job, this.measured) = (job, measured);
        Outermost = [.. measured.Tops.Select(t => LastOn(t, job.System.Count)).OfType<int>().Distinct().Order()];
    }

    /// <summary>Coats that are the last on some top, in their order; the one the job ends with is the last of them.</summary>
    public IReadOnlyList<int> Outermost { get; }

    /// <summary>Tops no coat goes on.</summary>
    public IEnumerable<MeasuredTop> Bare => measured.Tops.Where(t => LastOn(t, job.System.Count) is null);

    /// <summary>The tops a coat goes on.</summary>
    public IReadOnlyList<MeasuredTop> Tops(int coat) => measured.Under(job.System[coat]).Tops;

    /// <summary>The tops on which a coat is the last.</summary>
    public IReadOnlyList<MeasuredTop> Finished(int coat) => [.. measured.Tops.Where(t => LastOn(t, job.System.Count) == coat)];

    /// <summary>The coats this one goes on, each with the tops it is found on, in their order; none for the first on its tops.</summary>
    public IEnumerable<(int Coat, IReadOnlyList<MeasuredTop> On)> Beneath(int coat) =>
        Tops(coat).Select(top => (Top: top, Coat: LastOn(top, coat))).Where(b => b.Coat is not null)
            .GroupBy(b => b.Coat!.Value, b => b.Top).OrderBy(g => g.Key).Select(g => (g.Key, (IReadOnlyList<MeasuredTop>)[.. g]));

    /// <summary>The last coat on a top of those before one; null: none goes on it.</summary>
    private int? LastOn(MeasuredTop top, int before)
    {
        for (var coat = before - 1; coat >= 0; coat--)
            if (job.System[coat].GoesOn(top.Top.Name)) return coat;
        return null;
    }
}
