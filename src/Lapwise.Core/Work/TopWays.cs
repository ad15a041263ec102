using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>
/// The ways of cutting each top, cut once however often they are asked for: for every coat, for one roller or several, for
/// a nearer target and for the proof.
/// </summary>
internal sealed class TopWays(Pause pause)
{
    private readonly Dictionary<(MeasuredTop Top, Aims Aims, bool AtOnce), Known> _known = [];

    /// <summary>The ways that are tried for this product, worked out only as they are asked for.</summary>
    public async IAsyncEnumerable<CutTop> Of(MeasuredTop top, Aims aims, Product product)
    {
        var key = (top, aims, product.WholeTopAtOnce);
        if (!_known.TryGetValue(key, out var known)) _known[key] = known = new Known(Cut(top, aims, product).GetAsyncEnumerator());
        for (var i = 0; i < known.Cuts.Count || await known.More(); i++) yield return known.Cuts[i];
    }

    private async IAsyncEnumerable<CutTop> Cut(MeasuredTop top, Aims aims, Product product)
    {
        if (product.WholeTopAtOnce) yield return Sectioning.Cut(top, aims, new CutChoice.WholeFaces());
        else if (top.Top.SectionLines.Count > 0) yield return Sectioning.Cut(top, aims, new CutChoice.Given());
        else await foreach (var cut in Sectioning.WaysAsync(top, aims, pause)) yield return cut;
    }

    private sealed class Known(IAsyncEnumerator<CutTop> rest)
    {
        public List<CutTop> Cuts { get; } = [];

        public async ValueTask<bool> More()
        {
            if (!await rest.MoveNextAsync()) return false;
            Cuts.Add(rest.Current);
            return true;
        }
    }
}
