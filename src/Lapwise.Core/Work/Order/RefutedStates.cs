using System.Runtime.InteropServices;

namespace Lapwise.Core.Work.Order;

/// <summary>What a search state is known by, besides its pending deadlines.</summary>
/// <param name="Done">Set of done sections.</param>
/// <param name="Left">Left in the batch, mL.</param>
/// <param name="Life">Left of the batch's life.</param>
/// <param name="Standing">The fresher what stands mixed ahead is, the larger; 0 where nothing stands.</param>
internal readonly record struct SearchState(SectionSet Done, int Batch, long Now, double Left, long Life, long Standing);

/// <summary>
/// Per set of done sections, the states already refuted: pending deadlines relative to now, and what is left of the
/// batch. A state is covered when a kept one was at least as loose everywhere.
/// </summary>
internal sealed class RefutedStates(int mostVectors, int mostPerSet)
{
    private readonly Dictionary<(SectionSet Done, int Batch), List<Kept>> _bySet = [];
    private int _count;

    public bool Covers(in SearchState state, OpenSections open, long[] deadlines)
    {
        if (!_bySet.TryGetValue((state.Done, state.Batch), out var all)) return false;
        foreach (ref readonly var kept in CollectionsMarshal.AsSpan(all))
        {
            if (state.Left > kept.Left + 1e-9 || state.Life > kept.Life || state.Standing > kept.Standing) continue;
            if (NoLooser(state, open, deadlines, kept.Deadlines)) return true;
        }

        return false;
    }

    public void Add(in SearchState state, OpenSections open, long[] deadlines)
    {
        if (_count >= mostVectors) return;
        ref var all = ref CollectionsMarshal.GetValueRefOrAddDefault(_bySet, (state.Done, state.Batch), out _);
        all ??= new List<Kept>(1);
        if (all.Count >= mostPerSet) return;
        all.Add(new Kept(Relative(state, open, deadlines), state.Left, state.Life, state.Standing));
        _count++;
    }

    private static long[] Relative(in SearchState state, OpenSections open, long[] deadlines)
    {
        var relative = new long[open.Count];
        var i = 0;
        foreach (var u in open) relative[i++] = deadlines[u] - state.Now;
        return relative;
    }

    private static bool NoLooser(in SearchState state, OpenSections open, long[] deadlines, long[] refuted)
    {
        // Which sections carry a deadline follows from the set, so the vectors run in step.
        var i = 0;
        foreach (var u in open)
            if (deadlines[u] - state.Now > refuted[i++]) return false;
        return true;
    }

    private readonly record struct Kept(long[] Deadlines, double Left, long Life, long Standing);
}
