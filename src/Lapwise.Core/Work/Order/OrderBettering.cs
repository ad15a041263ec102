namespace Lapwise.Core.Work.Order;

/// <summary>
/// Betters one person's order step by step: asks for a worst age between the bound and the best known, first among all orders,
/// then among those near the best, from its beginning and from its end by turns. It refutes nothing.
/// </summary>
/// <remarks>
/// An order read backwards has the same ages, but a beam that builds it from the other end closes in on other orders.
/// Where neither way finds any, it asks for less; where even little is not found, it looks at twice as many.
/// </remarks>
internal sealed class OrderBettering
{
    /// <summary>Fewer are decided sooner.</summary>
    private const int FewestSections = 48;

    private const int FirstWidth = 4;
    private const int Widest = 1_024;
    // It is to be less by three quarters of what is above the bound, divided by one of these.
    private const int MostAnywhere = 1;
    private const int LeastAnywhere = 4;
    private const int MostNearby = 2;
    private const int LeastNearby = 16;
    private const int SpreadShare = 10;

    private readonly SoloModel _model;
    private NearBeam? _beam;
    private int _width = FirstWidth;
    private int _divided = MostAnywhere;
    private bool _isNearby;
    private bool _isBackwards;
    private bool _failedOtherWay;

    private OrderBettering(SoloModel model) => _model = model;

    /// <summary>Null where more than laps ties the sections together, or there are too few or too many.</summary>
    public static OrderBettering? Of(SoloModel model) =>
        model.IsReversible && model.Count is >= FewestSections and <= SectionSet.MostSections ? new(model) : null;

    /// <summary>It looks no further.</summary>
    public bool IsDone => _width > Widest;

    /// <summary>Sections placed so far.</summary>
    public long Steps { get; private set; }

    /// <summary>Goes on for about so many steps, or until it has found; null: nothing better yet.</summary>
    /// <param name="best">The best order known; it keeps its limits.</param>
    public FoundOrder? Step(long steps, FoundOrder best)
    {
        for (var until = Steps + steps; Steps < until && !IsDone;)
        {
            _beam ??= Ask(best);
            var before = _beam.Steps;
            _beam.Step();
            Steps += _beam.Steps - before;
            if (_beam.Found is { } sections) return Take(sections);
            if (_beam.IsOver) AskForLess();
        }

        return null;
    }

    private NearBeam Ask(FoundOrder best)
    {
        var worst = best.WorstLapAgeMs / _model.GrainMs;
        var bound = (best.BoundMs + _model.GrainMs - 1) / _model.GrainMs;
        var limit = worst - Math.Max(1, (worst - bound) * 3 / 4 / _divided);
        var places = new int[_model.Count];
        for (var i = 0; i < places.Length; i++) places[best.Sections[_isBackwards ? ^(i + 1) : i].Section] = i;
        return new NearBeam(_model, limit, _width, places, _isNearby ? _model.Count / SpreadShare : _model.Count);
    }

    private FoundOrder Take(int[] sections)
    {
        _beam = null;
        _failedOtherWay = false;
        return SoloTimeline.Of(_model, new SoloOrder(sections, []));
    }

    private void AskForLess()
    {
        _beam = null;
        if (_isNearby)
        {
            _isBackwards = !_isBackwards;
            _failedOtherWay = !_failedOtherWay;
            if (_failedOtherWay) return;
        }

        _divided *= 2;
        if (_divided <= (_isNearby ? LeastNearby : LeastAnywhere)) return;
        _isNearby = true;
        _divided = MostNearby;
        _width *= 2;
    }
}
