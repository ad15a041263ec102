namespace Lapwise.Core.Work.Order;

/// <summary>What a decision came to.</summary>
internal enum Verdict { Found, Refuted, OutOfSteps }

/// <summary>A resumable question: is there an order in which every age is at most T?</summary>
internal interface IDecision
{
    /// <summary>Sections placed so far.</summary>
    long Steps { get; }

    /// <summary>Goes on for at most so many steps.</summary>
    Verdict Run(long steps);
}

/// <summary>Closes in on the smallest worst age of one part from both sides.</summary>
/// <remarks>
/// Between the proven bound and the best order a decision is asked about an age in the middle. An age that takes longer
/// than its patience is left for now and one nearer to the best order is asked. When none is left, the age just below the
/// best order goes on sixteen times as long: refuting that one alone proves the order. Then patience grows fourfold and
/// the middle is asked again, for the bound. Ages are whole numbers of the part's grain.
/// </remarks>
internal abstract class AgeSearch(OrderPart part)
{
    private const long FirstPatience = 20_000;
    private const long PatienceOfASection = 200;
    private const int LongerAtTheTop = 16;
    private const long Turn = 2_000;
    private const long TurnOfWindows = 4_000;
    private const long FirstOfBettering = 8_000;
    private const long ShortestOfBettering = 250;
    private const long LongestOfBettering = 16_000;

    private IDecision? _decision;
    private long _asked;
    private long _patience = part.Problem.Sections.Count <= SectionSet.MostSections ? Math.Max(FirstPatience, part.Problem.Sections.Count * PatienceOfASection) : FirstPatience;
    private long _spent;
    private long _left;                       // ages below were left for now
    private bool _isLonger;
    private long _enoughMs = -1;
    private WindowBound? _windows;
    private OrderBettering? _bettering;
    private Asker _turn;
    private long _turnOfBettering = FirstOfBettering;   // where the bound rises, the time is better spent on it
    private long _leftOfTurn = FirstPatience;

    public OrderPart Part { get; } = part;
    public FoundOrder Order { get; private set; } = null!;
    public long Steps { get; private set; }
    public long WorstLapAgeMs => Order.WorstLapAgeMs;
    public long BoundMs => Order.BoundMs;
    public bool IsDone { get; private set; }

    protected long Low { get; private set; }
    protected long High { get; private set; }
    protected abstract long GrainMs { get; }

    public void Step(long steps)
    {
        while (steps > 0 && !IsDone)
        {
            var allowed = Math.Min(steps, _leftOfTurn);
            var (low, high) = (Low, High);
            var used = _turn switch
            {
                Asker.Bettering => Better(allowed),
                Asker.Windows => AskWindows(allowed),
                _ => AskWhole(allowed),
            };
            if (Low > low) _turnOfBettering = Math.Max(ShortestOfBettering, _turnOfBettering / 2);
            else if (High < high && _turn == Asker.Bettering) _turnOfBettering = Math.Min(LongestOfBettering, 2 * _turnOfBettering);
            Steps += used;
            steps -= Math.Max(1, used);
            _leftOfTurn -= used;
            if (_leftOfTurn <= 0 || !HasMore(_turn)) TakeTurns();
        }
    }

    private long AskWhole(long steps)
    {
        if (_decision is null) Ask(Middle);
        var before = _decision!.Steps;
        var verdict = _decision.Run(Math.Min(steps, Patience - _spent));
        var used = _decision.Steps - before;
        _spent += used;
        Take(verdict);
        Conclude();
        return used;
    }

    private long AskWindows(long steps)
    {
        var before = _windows!.Steps;
        _windows.Step(steps, BoundMs);
        Raise(_windows.BoundMs);
        return _windows.Steps - before;
    }

    private long Better(long steps)
    {
        var before = _bettering!.Steps;
        if (_bettering.Step(steps, Order) is { } better) Take(better);
        return _bettering.Steps - before;
    }

    /// <summary>Takes an order found otherwise; an age no smaller than its worst need not be asked about.</summary>
    private void Take(FoundOrder better)
    {
        if (better.WorstLapAgeMs >= Order.WorstLapAgeMs) return;
        Order = better;
        High = CeilingGrains(better.WorstLapAgeMs);
        if (_asked >= High) _decision = null;
        Conclude();
    }

    private enum Asker { Whole, Bettering, Windows }

    private bool HasMore(Asker asker) => asker switch
    {
        Asker.Bettering => _bettering is { IsDone: false } && Order.KeepsLimits,
        Asker.Windows => _windows is { IsDone: false },
        _ => true,
    };

    private void TakeTurns()
    {
        do _turn = _turn == Asker.Windows ? Asker.Whole : _turn + 1;
        while (!HasMore(_turn));
        _leftOfTurn = _turn switch
        {
            Asker.Bettering => _turnOfBettering,
            Asker.Windows => TurnOfWindows,
            _ => Turn,
        };
    }

    /// <summary>Takes a bound proven otherwise; an age below it need not be asked about.</summary>
    private void Raise(long boundMs)
    {
        var low = Math.Min(High, CeilingGrains(boundMs));
        if (low <= Low) return;
        Low = low;
        if (_asked < Low) _decision = null;
        Conclude();
    }

    private long Patience => _isLonger ? LongerAtTheTop * _patience : _patience;

    /// <summary>Between what is proven, or was left for now, and the best order; just below that where nothing else is left.</summary>
    private long Middle => Math.Max(Low, _left) is var from && from < High ? from + ((High - from) / 2) : High - 1;

    /// <summary>By turns with the whole, lets windows raise the bound and the order be bettered; null: they cannot.</summary>
    protected void Beside(WindowBound? windows, OrderBettering? bettering = null) => (_windows, _bettering) = (windows, bettering);

    /// <summary>Sets the ages between which the answer lies, in grains; <paramref name="low"/> is proven.</summary>
    protected void Between(long low, long high, FoundOrder best)
    {
        Order = best;
        High = high;
        Low = Math.Min(low, high);
        Conclude();
    }

    /// <summary>Is done with the first order of so small a worst age.</summary>
    public void SettleFor(long ageMs)
    {
        _enoughMs = ageMs;
        AskFirst(ageMs);
        Conclude();
    }

    /// <summary>Asks first about an age that would be enough, if it lies between bound and best.</summary>
    public void AskFirst(long ageMs)
    {
        var age = ageMs / GrainMs;
        if (!IsDone && age >= Low && age < High) Ask(age);
    }

    protected void Ask(long age)
    {
        _asked = age;
        _spent = 0;
        _isLonger = age < _left;
        _decision = Decide(age);
    }

    protected abstract IDecision Decide(long age);

    protected abstract FoundOrder OrderOf(IDecision found, long age);

    /// <summary>Whether a refutation proves that no order has so small an age.</summary>
    protected abstract bool Proves(IDecision refuted);

    /// <summary>Nothing is left between bound and order: goes on in a finer grain, or not.</summary>
    protected virtual bool Refine() => false;

    private void Take(Verdict verdict)
    {
        switch (verdict)
        {
            case Verdict.Found:
                var order = OrderOf(_decision!, _asked);
                High = Math.Min(_asked, CeilingGrains(order.WorstLapAgeMs));
                Order = order;
                _decision = null;
                break;
            case Verdict.Refuted when Proves(_decision!):
                Low = _asked + 1;
                _decision = null;
                break;
            case Verdict.Refuted:
                Leave();
                if (_decision is null) break;
                IsDone = _patience > 64 * FirstPatience;
                TakeMorePatience();
                break;
            case Verdict.OutOfSteps when _spent >= Patience:
                if (_isLonger) TakeMorePatience();
                else Leave();
                break;
        }
    }

    /// <summary>Leaves this age for now; just below the best order it goes on longer instead.</summary>
    private void Leave()
    {
        _left = Math.Max(_left, _asked + 1);
        _isLonger = _asked == High - 1;
        if (!_isLonger) _decision = null;
    }

    private void TakeMorePatience()
    {
        _patience *= 4;
        _left = 0;
        _isLonger = false;
        _decision = null;
    }

    private void Conclude()
    {
        // Ages below Low grains are refuted, so the first age in ms that may be had is one past them.
        var bound = Low == 0 ? 0 : ((Low - 1) * GrainMs) + 1;
        if (Low >= High) bound = Math.Max(bound, IsWholeGrains ? Order.WorstLapAgeMs : bound);
        Order = Order with { BoundMs = Math.Min(Order.WorstLapAgeMs, bound) };
        if (Order.KeepsLimits && Order.WorstLapAgeMs <= _enoughMs) IsDone = true;
        else if (Low >= High && (Order.Proven || !Refine())) IsDone = true;
    }

    /// <summary>The smallest worst age is a whole number of grains.</summary>
    protected abstract bool IsWholeGrains { get; }

    private long CeilingGrains(long ms) => (ms + GrainMs - 1) / GrainMs;
}
