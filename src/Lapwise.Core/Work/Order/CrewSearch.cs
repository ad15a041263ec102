namespace Lapwise.Core.Work.Order;

/// <summary>
/// The search of one part for several people. The best age of a crew need not be a whole number of grains (waiting
/// shares a rest between laps), so it is closed in by grains first and then by milliseconds.
/// </summary>
internal sealed class CrewSearch : AgeSearch
{
    private const int MostKeptStates = 400_000;

    private readonly LapGraph _graph;
    private CrewModel _model;

    /// <param name="windows">Whether smaller windows may raise the bound.</param>
    public CrewSearch(OrderPart part, bool windows = true) : base(part)
    {
        _graph = new LapGraph(part.Problem.Sections.Count, part.Problem.Laps);
        _model = new CrewModel(part.Problem, _graph, OrderGrain.Of(part.Problem));
        var whole = _model.WholeTime + 1;
        var first = First(whole);
        var low = (AgeBound.Of(part.Problem, _graph) + _model.GrainMs - 1) / _model.GrainMs;
        Between(low, first.KeepsLimits ? (first.WorstLapAgeMs + _model.GrainMs - 1) / _model.GrainMs : whole, first);
        if (windows) Beside(WindowBound.Of(part.Problem, _graph, p => new CrewSearch(p, windows: false)));
    }

    /// <summary>The better of a sweep and of what the search takes when any age will do; of very many sections the sweep alone.</summary>
    private FoundOrder First(long whole)
    {
        var sweep = CrewSweeps.Best(_model);
        if (sweep is not null && _model.Count > SectionSet.MostSections) return sweep;
        var any = new CrewDecision(_model, whole, 0);
        var found = any.Run(100L * _model.Tasks) is Verdict.Found ? CrewTimeline.Of(_model, any.Found, whole) : null;
        return (sweep, found) switch
        {
            (null, null) => CrewTimeline.InTurn(_model),
            ({ } s, { KeepsLimits: true } f) => s.WorstLapAgeMs <= f.WorstLapAgeMs ? s : f,
            _ => sweep ?? found!,
        };
    }

    protected override long GrainMs => _model.GrainMs;
    protected override bool IsWholeGrains => _model.GrainMs == 1;
    protected override IDecision Decide(long age) => new CrewDecision(_model, age, MostKeptStates);
    protected override FoundOrder OrderOf(IDecision found, long age) => CrewTimeline.Of(_model, ((CrewDecision)found).Found, age);
    protected override bool Proves(IDecision refuted) => !((CrewDecision)refuted).GaveUp;

    protected override bool Refine()
    {
        if (_model.GrainMs == 1 || !Order.KeepsLimits) return false;
        var low = ((Low - 1) * GrainMs) + 1;
        _model = new CrewModel(Part.Problem, _graph, 1);
        Between(low, Order.WorstLapAgeMs, Order);
        if (Low < High) Ask(High - 1);
        return true;
    }
}
