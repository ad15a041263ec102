namespace Lapwise.Core.Work.Order;

/// <summary>The search of one part for one person. All ages are sums of its times, so its grain loses nothing.</summary>
internal sealed class SoloSearch : AgeSearch
{
    private const int MostKeptStates = 400_000;

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
        if (!isWindow) Beside(WindowBound.Of(part.Problem, graph, p => new SoloSearch(p, isWindow: true)));
    }

    protected override long GrainMs => _model.GrainMs;
    protected override bool IsWholeGrains => true;
    protected override IDecision Decide(long age) => new SoloTurns(_model, age, MostKeptStates, _isWindow ? null : new SoloBeam(_model, age));
    protected override FoundOrder OrderOf(IDecision found, long age) => SoloTimeline.Of(_model, ((SoloTurns)found).Found);
    protected override bool Proves(IDecision refuted) => _refutesExactly;
}
