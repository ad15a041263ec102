namespace Lapwise.Core.Work.Pouring;

/// <summary>When each of a crew is busy. Times in whole milliseconds from the first step of the coat.</summary>
internal sealed class BusyTimes(int crew)
{
    private readonly List<(long FromMs, long ToMs)>[] _busy = [.. Enumerable.Range(0, crew).Select(_ => new List<(long, long)>())];
    private readonly Stack<(int Person, (long FromMs, long ToMs) Span)> _taken = new();

    /// <summary>How much was taken so far: where <see cref="BackTo"/> goes back to.</summary>
    public int Mark => _taken.Count;

    /// <summary>The first moment from which a person is free for so long.</summary>
    public long FreeFrom(int person, long notBeforeMs, long forMs)
    {
        var busy = _busy[person];
        var at = notBeforeMs;
        for (var i = FirstEndingAfter(busy, notBeforeMs); i < busy.Count && busy[i].FromMs < at + forMs; i++) at = Math.Max(at, busy[i].ToMs);
        return at;
    }

    /// <summary>
    /// Whoever is free soonest for as long as it takes each of them. Of several those who neither pour nor mix, then who mixes,
    /// then who pours.
    /// </summary>
    public (int Person, long StartMs) Soonest(long notBeforeMs, IReadOnlyList<long> forMs) =>
        Enumerable.Range(0, crew).Select(p => (Person: p, StartMs: FreeFrom(p, notBeforeMs, forMs[p]))).MinBy(f => (f.StartMs, f.Person < 2 ? crew - f.Person : f.Person - 2));

    public void Take(int person, long fromMs, long toMs)
    {
        var busy = _busy[person];
        busy.Insert(FirstEndingAfter(busy, fromMs), (fromMs, toMs));
        _taken.Push((person, (fromMs, toMs)));
    }

    /// <summary>Gives back what was taken since.</summary>
    public void BackTo(int mark)
    {
        while (_taken.Count > mark)
        {
            var (person, span) = _taken.Pop();
            _busy[person].RemoveAt(_busy[person].BinarySearch(span));
        }
    }

    private static int FirstEndingAfter(List<(long FromMs, long ToMs)> busy, long ms)
    {
        var (low, high) = (0, busy.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (busy[middle].ToMs <= ms) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
