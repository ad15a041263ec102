namespace Lapwise.Core.Work.Order;

/// <summary>
/// Decides for one person: is there an order in which every lap age is at most T? Exact, resumable, deterministic.
/// </summary>
/// <remarks>
/// Depth-first over what to roll next, earliest deadline first. A branch dies when what is pending cannot end in time; per
/// set of done sections the deadline vectors already refuted are kept, and a vector no looser than one of them is refuted
/// at once. Where a known order is followed, what it rolls next is tried first: most of it can stay, and it is left only
/// around what is too old, which is where depth-first search looks first.
/// </remarks>
internal sealed class SoloDecision : IDecision
{
    private const int MostVectorsPerSet = 200;

    private readonly SoloModel _model;
    private readonly SoloWalk _walk;
    private readonly RefutedStates _refuted;
    private readonly int[] _next;             // per depth: the choice that is tried next
    private readonly bool _remembers;
    private bool _entered;

    /// <param name="mirror">Of these two the first comes first; negative: either.</param>
    public SoloDecision(SoloModel model, long limit, int mostVectors, (int First, int Then) mirror)
    {
        _model = model;
        _walk = new SoloWalk(model, limit, mirror);
        _refuted = new RefutedStates(mostVectors, MostVectorsPerSet);
        _next = new int[model.Count + 1];
        _remembers = model.Count <= SectionSet.MostSections;
    }

    /// <summary>One that goes along a known order of all sections as far as it can.</summary>
    public static SoloDecision Following(SoloOrder known, SoloModel model, long limit, int mostVectors)
    {
        var places = new int[model.Count];
        for (var i = 0; i < known.Sections.Count; i++) places[known.Sections[i]] = i;
        return new SoloDecision(model, limit, mostVectors, (-1, -1)) { Places = places };
    }

    public bool Follows => Places is not null;

    /// <summary>Of each section in the order that is followed; null: none is.</summary>
    private int[]? Places { get; init; }

    /// <summary>Sections in the order found, with their starts; valid after <see cref="Verdict.Found"/>.</summary>
    public SoloOrder Found { get; private set; } = SoloOrder.None;

    public long Steps { get; private set; }

    /// <summary>Goes on for at most so many steps (sections placed).</summary>
    public Verdict Run(long steps)
    {
        if (!_entered)
        {
            _entered = true;
            if (!_walk.EveryPairFits() || !Enter()) return Verdict.Refuted;
        }

        while (true)
        {
            if (_walk.IsWhole)
            {
                Found = _walk.Collect();
                return Verdict.Found;
            }

            ref var next = ref _next[_walk.Depth];
            if (next == _walk.Choices.Length)
            {
                if (IsMemorable) _refuted.Add(_walk.State, _walk.Open, _walk.Deadlines);
                if (_walk.Depth == 0) return Verdict.Refuted;
                _walk.TakeBack();
                continue;
            }

            if (steps-- <= 0) return Verdict.OutOfSteps;
            Steps++;
            if (_walk.Place(_walk.Choices[next++]) && !Enter()) _walk.TakeBack();
        }
    }

    /// <summary>Looks at the state just come to; false: refuted.</summary>
    private bool Enter()
    {
        if (!_walk.Look() || (IsMemorable && _refuted.Covers(_walk.State, _walk.Open, _walk.Deadlines))) return false;
        if (Places is not null) _walk.PutFirst(Places);
        _next[_walk.Depth] = 0;
        return true;
    }

    private bool IsMemorable => _remembers && _walk.Depth > 0 && _walk.Depth < _model.FreeCount - 1;
}
