namespace Lapwise.Core.Work.Order;

/// <summary>The search of one part for one person. All ages are sums of its times, so its grain loses nothing.</summary>
internal sealed class SoloSearch : AgeSearch
{
    private const int MostKeptStates = 400_000;
    private const int FewestToFollow = 48;

    private readonly SoloModel _model;
    private readonly bool _refutesExactly;
    private readonly bool _isWindow;

    /// <param name="isWindow">It is searched for a bound: neither windows of its own nor a beam help there.</param>
    public SoloSearch(OrderPart part, bool isWindow = false) : base(part)
    {
        _isWindow = isWindow;
        var graph = new LapGraph(part.Problem.Sections.Count, part.Problem.Laps);
        _model = new SoloModel(part.Problem, graph);
        // With starts to wait for, the order of what was begun and the waiting interplay: orders are found, not refuted.
        _refutesExactly = _model.LastRelease == 0 || _model.FreeCount == _model.Count;
        var best = SoloSweeps.Best(_model);
        var low = (AgeBound.Of(part.Problem, graph) + _model.GrainMs - 1) / _model.GrainMs;
        Between(low, best.KeepsLimits ? best.WorstLapAgeMs / _model.GrainMs : _model.WholeTime + 1, best);
        if (!isWindow) Beside(WindowBound.Of(part.Problem, graph, p => new SoloSearch(p, isWindow: true)), OrderBettering.Of(_model));
    }

    protected override long GrainMs => _model.GrainMs;
    protected override bool IsWholeGrains => true;
    protected override IDecision Decide(long age) => new SoloTurns(_model, age, MostKeptStates, Known, _isWindow ? null : new SoloBeam(_model, age));

    /// <summary>The best order so far, where it is worth following: few sections are answered sooner without, and mixing takes time of its own.</summary>
    private SoloOrder? Known => _isWindow || _model.Mixing is not null || _model.Count < FewestToFollow
        ? null
        : new SoloOrder([.. Order.Sections.Where(p => _model.StartedAt[p.Section] is null).Select(p => p.Section)], []);

    protected override FoundOrder OrderOf(IDecision found, long age) => SoloTimeline.Of(_model, ((SoloTurns)found).Found);
    protected override bool Proves(IDecision refuted) => _refutesExactly;
}
