namespace Lapwise.Core.Work.Risk;

/// <summary>
/// A plan as issued, put on the clock again with other times. Everybody keeps the planned sequence: a section starts when
/// its person is done with what comes before and its batch is mixed. Where the plan lets somebody wait, as a helper waits
/// to mix just in time, the wait keeps its distance from what the others had last begun.
/// </summary>
internal sealed class Retiming
{
    private readonly Step[] _steps;
    private readonly int[] _stepOfSection;
    private readonly int[] _stepOfBatch;
    private readonly int[] _batchOfSection;
    private readonly long[] _standsMs;
    private readonly long[] _start;
    private readonly long[] _end;

    /// <param name="After">The person's step before this one; −1: none.</param>
    /// <param name="MixedBy">The mixing of its batch; −1: it mixes itself, or there is none.</param>
    /// <param name="WaitsFor">What the others had last begun where the plan waits; −1: it does not wait, or for the clock alone.</param>
    /// <param name="WaitMs">Distance from the start of that step, or from the beginning; null: it does not wait.</param>
    private sealed record Step(bool IsMixing, int Person, long PlannedMs, int After, int MixedBy, int WaitsFor, long? WaitMs);

    public Retiming(CoatWork work)
    {
        var planned = work.Batches.Select((b, i) => (IsMixing: true, Index: i, Person: b.MixedBy, StartMs: b.MixStartMs, EndMs: b.MixEndMs))
            .Concat(work.Sections.Select((s, i) => (IsMixing: false, Index: i, s.Person, s.StartMs, s.EndMs)))
            .OrderBy(p => p.StartMs).ThenBy(p => p.EndMs).ThenBy(p => !p.IsMixing).ToList();
        var batches = work.Batches.Select((b, i) => (b.Id, i)).ToDictionary(b => b.Id, b => b.i, StringComparer.Ordinal);
        _batchOfSection = [.. work.Sections.Select(s => batches.GetValueOrDefault(s.Batch, -1))];
        _stepOfBatch = new int[work.Batches.Count];
        _stepOfSection = new int[work.Sections.Count];
        for (var i = 0; i < planned.Count; i++) (planned[i].IsMixing ? _stepOfBatch : _stepOfSection)[planned[i].Index] = i;

        _steps = new Step[planned.Count];
        _standsMs = [.. planned.Select(p => p.IsMixing ? work.Batches[p.Index].ReadyMs - p.EndMs : 0)];
        for (var i = 0; i < planned.Count; i++)
        {
            var p = planned[i];
            var after = LastBefore(i, q => q.Person == p.Person);
            var mixedBy = p.IsMixing || _batchOfSection[p.Index] < 0 ? -1 : _stepOfBatch[_batchOfSection[p.Index]];
            var ready = Math.Max(after < 0 ? 0 : planned[after].EndMs, mixedBy < 0 ? 0 : work.Batches[planned[mixedBy].Index].ReadyMs);
            var waitsFor = p.StartMs <= ready ? -1 : LastBefore(i, q => q.Person != p.Person);
            _steps[i] = new Step(p.IsMixing, p.Person, p.EndMs - p.StartMs, after, mixedBy, waitsFor,
                p.StartMs <= ready ? null : p.StartMs - (waitsFor < 0 ? 0 : planned[waitsFor].StartMs));
        }

        (_start, _end) = (new long[planned.Count], new long[planned.Count]);

        int LastBefore(int i, Predicate<(bool IsMixing, int Index, int Person, long StartMs, long EndMs)> which) =>
            i == 0 ? -1 : planned.FindLastIndex(i - 1, i, which);
    }

    public long StartOf(int section) => _start[_stepOfSection[section]];
    public long EndOf(int section) => _end[_stepOfSection[section]];

    /// <summary>How long the batch of a section has stood, mixed, when the section is begun; 0 where it has none.</summary>
    public long BatchAgeOf(int section) => _batchOfSection[section] < 0 ? 0 : StartOf(section) - _end[_stepOfBatch[_batchOfSection[section]]];

    /// <summary>From the first contact of A and B to the end of the last section rolled from the batch.</summary>
    public long LifeOf(int batch)
    {
        var (mixed, last) = (_start[_stepOfBatch[batch]], _end[_stepOfBatch[batch]]);
        for (var i = 0; i < _batchOfSection.Length; i++)
            if (_batchOfSection[i] == batch) last = Math.Max(last, EndOf(i));
        return last - mixed;
    }

    /// <param name="factor">By which a step takes longer than planned, from its number, person and whether it is a mixing.</param>
    public void Run(Func<int, int, bool, double> factor)
    {
        for (var i = 0; i < _steps.Length; i++)
        {
            var step = _steps[i];
            var start = step.After < 0 ? 0 : _end[step.After];
            if (step.MixedBy >= 0) start = Math.Max(start, _end[step.MixedBy] + _standsMs[step.MixedBy]);
            if (step.WaitMs is { } wait) start = Math.Max(start, wait + (step.WaitsFor < 0 ? 0 : _start[step.WaitsFor]));
            // Whole milliseconds, so that the last bit of a machine's exponential does not show.
            (_start[i], _end[i]) = (start, start + (long)Math.Round(step.PlannedMs * factor(i, step.Person, step.IsMixing)));
        }
    }
}
