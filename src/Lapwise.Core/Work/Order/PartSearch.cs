namespace Lapwise.Core.Work.Order;

/// <summary>The search of one part for one person: closes in on the smallest worst age from both sides.</summary>
/// <remarks>
/// Between the proven bound and the best order it asks <see cref="SoloDecision"/> about an age in the middle. An age
/// that takes longer than its patience is left for now and an easier one nearer to the best order is asked; when none
/// is left, patience grows fourfold.
/// </remarks>
internal sealed class PartSearch
{
    private const long FirstPatience = 20_000;
    private const int MostKeptStates = 400_000;

    private readonly SoloModel _model;
    private readonly bool _refutesExactly;
    private SoloDecision? _decision;
    private long _asked;
    private long _patience = FirstPatience;
    private long _spent;
    private long _low;
    private long _high;

    public PartSearch(OrderPart part)
    {
        Part = part;
        var graph = new LapGraph(part.Problem.Sections.Count, part.Problem.Laps);
        _model = new SoloModel(part.Problem, graph);
        // With starts to wait for, the order of what was begun and the waiting interplay: orders are found, not refuted.
        _refutesExactly = _model.LastRelease == 0 || _model.FreeCount == _model.Count;
        Order = SoloSweeps.Best(_model);
        _low = (AgeBound.Of(part.Problem, graph) + _model.GrainMs - 1) / _model.GrainMs;
        _high = Order.KeepsLimits ? Order.WorstLapAgeMs / _model.GrainMs : _model.WholeTime + 1;
        _low = Math.Min(_low, _high);
        Conclude();
    }

    public OrderPart Part { get; }
    public FoundOrder Order { get; private set; }
    public long Steps { get; private set; }
    public long WorstLapAgeMs => Order.WorstLapAgeMs;
    public long BoundMs => Order.BoundMs;
    public bool IsDone => _low >= _high;

    public void Step(long steps)
    {
        while (steps > 0 && !IsDone)
        {
            if (_decision is null) Ask(_low + ((_high - _low) / 2));
            var before = _decision!.Steps;
            var verdict = _decision.Run(Math.Min(steps, _patience - _spent));
            var used = _decision.Steps - before;
            steps -= Math.Max(1, used);
            _spent += used;
            Steps += used;
            Take(verdict);
            Conclude();
        }
    }

    private void Take(Verdict verdict)
    {
        switch (verdict)
        {
            case Verdict.Found:
                Order = SoloTimeline.Of(_model, _decision!.Found);
                _high = Order.WorstLapAgeMs / _model.GrainMs;
                _decision = null;
                break;
            case Verdict.Refuted when _refutesExactly:
                _low = _asked + 1;
                _decision = null;
                break;
            case Verdict.Refuted:
                AskNearer();
                break;
            case Verdict.OutOfSteps when _spent >= _patience:
                AskNearer();
                break;
        }
    }

    private void AskNearer()
    {
        var nearer = _asked + 1 + ((_high - _asked - 1) / 2);
        if (nearer < _high)
        {
            Ask(nearer);
            return;
        }

        if (!_refutesExactly && _patience > 64 * FirstPatience) _low = _high;
        _patience *= 4;
        _decision = null;
    }

    private void Ask(long age)
    {
        _asked = age;
        _spent = 0;
        _decision = new SoloDecision(_model, age, MostKeptStates);
    }

    private void Conclude() => Order = Order with { BoundMs = Math.Min(Order.WorstLapAgeMs, _low * _model.GrainMs) };
}
