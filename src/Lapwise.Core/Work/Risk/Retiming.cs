using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work.Risk;

/// <summary>
/// A plan as issued, put on the clock again with other times. Everybody keeps the planned sequence: a section starts when
/// its person is done with what comes before and its batch is mixed; a bubble pass or scraping also waits for its own time,
/// which counts from its pour. Where the plan lets somebody wait, as a helper waits to mix just in time, the wait keeps its
/// distance from what the others had last begun.
/// </summary>
internal sealed class Retiming
{
    private readonly Step[] _steps;
    private readonly int[] _stepOfSection;
    private readonly int[] _stepOfBatch;
    private readonly int[] _stepOfFollowUp;
    private readonly int[] _batchOfSection;
    private readonly double[] _wetShare;
    private readonly long[] _standsMs;
    private readonly FollowUp[] _followUps;
    private readonly long? _levelWithinMs;
    private readonly bool _isPoured;
    private readonly long[] _start;
    private readonly long[] _end;

    private enum Kind { Mixing, Section, FollowUp }

    private readonly record struct Planned(Kind Kind, int Index, int Person, long StartMs, long EndMs);

    /// <param name="After">The person's step before this one; −1: none.</param>
    /// <param name="MixedBy">The mixing of its batch; −1: it mixes itself, or there is none.</param>
    /// <param name="FollowUp">Which follow-up it is; −1: none.</param>
    /// <param name="WaitsFor">What the others had last begun where the plan waits; −1: it does not wait, or for the clock alone.</param>
    /// <param name="WaitMs">Distance from the start of that step, or from the beginning; null: it does not wait.</param>
    private sealed record Step(bool IsMixing, int Person, long PlannedMs, int After, int MixedBy, int FollowUp, int WaitsFor, long? WaitMs);

    /// <summary>A bubble pass or scraping.</summary>
    /// <param name="FromMs">It may begin so long after the last of its pours lies spread.</param>
    /// <param name="ToMs">It may begin, or where its end counts, end so long after the first lies spread.</param>
    private sealed record FollowUp(IReadOnlyList<int> Sections, long FromMs, long ToMs, bool EndCounts);

    public Retiming(CoatWork work)
    {
        var after = work.Steps.Where(s => s.Kind is StepKind.BubblePass or StepKind.ScrapeDrips).ToList();
        var planned = work.Batches.Select((b, i) => new Planned(Kind.Mixing, i, b.MixedBy, b.MixStartMs, b.MixEndMs))
            .Concat(work.Sections.Select((s, i) => new Planned(Kind.Section, i, s.Person, s.StartMs, s.EndMs)))
            .Concat(after.Select((s, i) => new Planned(Kind.FollowUp, i, s.Person, s.StartMs, s.EndMs)))
            .OrderBy(p => p.StartMs).ThenBy(p => p.EndMs).ThenBy(p => p.Kind).ToList();
        var batches = work.Batches.Select((b, i) => (b.Id, i)).ToDictionary(b => b.Id, b => b.i, StringComparer.Ordinal);
        var sections = work.Sections.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i, StringComparer.Ordinal);
        _isPoured = work.Coat.Product.Method is ApplicationMethod.Poured;
        _levelWithinMs = work.Coat.Product.Pour.LevelWithinS is { } within ? (long)Math.Round(within * 1000) : null;
        _batchOfSection = [.. work.Sections.Select(s => batches.GetValueOrDefault(s.Batch, -1))];
        _wetShare = [.. work.Sections.Select(s => s.EndMs > s.StartMs ? (double)(s.WetEndMs - s.StartMs) / (s.EndMs - s.StartMs) : 1)];
        _followUps = [.. after.Select(s =>
        {
            var of = s.Sections.Select(id => sections[id]).ToList();
            var spread = of.Select(i => work.Sections[i].WetEndMs).ToList();
            return new FollowUp(of, s.FromMs - spread.Max(), (s.ToMs ?? long.MaxValue) - spread.Min(), s.Kind is StepKind.ScrapeDrips);
        })];
        (_stepOfBatch, _stepOfSection, _stepOfFollowUp) = (new int[work.Batches.Count], new int[work.Sections.Count], new int[after.Count]);
        for (var i = 0; i < planned.Count; i++) PlacesOf(planned[i].Kind)[planned[i].Index] = i;

        _steps = new Step[planned.Count];
        _standsMs = [.. planned.Select(p => p.Kind is Kind.Mixing ? work.Batches[p.Index].ReadyMs - p.EndMs : 0)];
        for (var i = 0; i < planned.Count; i++)
        {
            var p = planned[i];
            var last = LastBefore(i, q => q.Person == p.Person);
            if (p.Kind is Kind.FollowUp)
            {
                _steps[i] = new Step(false, p.Person, p.EndMs - p.StartMs, last, -1, p.Index, -1, null);
                continue;
            }

            var mixedBy = p.Kind is Kind.Mixing || _batchOfSection[p.Index] < 0 ? -1 : _stepOfBatch[_batchOfSection[p.Index]];
            var ready = Math.Max(last < 0 ? 0 : planned[last].EndMs, mixedBy < 0 ? 0 : work.Batches[planned[mixedBy].Index].ReadyMs);
            var waitsFor = p.StartMs <= ready ? -1 : LastBefore(i, q => q.Person != p.Person && q.Kind is not Kind.FollowUp);
            _steps[i] = new Step(p.Kind is Kind.Mixing, p.Person, p.EndMs - p.StartMs, last, mixedBy, -1, waitsFor,
                p.StartMs <= ready ? null : p.StartMs - (waitsFor < 0 ? 0 : planned[waitsFor].StartMs));
        }

        (_start, _end) = (new long[planned.Count], new long[planned.Count]);

        int LastBefore(int i, Predicate<Planned> which) => i == 0 ? -1 : planned.FindLastIndex(i - 1, i, which);

        int[] PlacesOf(Kind kind) => kind switch { Kind.Mixing => _stepOfBatch, Kind.Section => _stepOfSection, _ => _stepOfFollowUp };
    }

    /// <summary>How many steps there are to draw a time for.</summary>
    public int Steps => _steps.Length;

    public long StartOf(int section) => _start[_stepOfSection[section]];
    public long EndOf(int section) => _end[_stepOfSection[section]];

    /// <summary>When all of its material is off the roller, or lies poured out and spread.</summary>
    private long SpreadOf(int section) => StartOf(section) + (long)Math.Round((EndOf(section) - StartOf(section)) * _wetShare[section]);

    /// <summary>How long the batch of a section has stood, mixed, when the section is begun; 0 where it has none.</summary>
    public long BatchAgeOf(int section) => _batchOfSection[section] < 0 ? 0 : StartOf(section) - _end[_stepOfBatch[_batchOfSection[section]]];

    /// <summary>From the first contact of A and B to the end of the last section rolled from the batch, or until the last pour of it lies spread.</summary>
    public long LifeOf(int batch)
    {
        var (mixed, last) = (_start[_stepOfBatch[batch]], _end[_stepOfBatch[batch]]);
        for (var i = 0; i < _batchOfSection.Length; i++)
            if (_batchOfSection[i] == batch) last = Math.Max(last, _isPoured ? SpreadOf(i) : EndOf(i));
        return last - mixed;
    }

    /// <summary>Some pour is levelled after it has stopped flowing, or some bubble pass or scraping comes after its time.</summary>
    public bool SomeStepIsLate
    {
        get
        {
            if (_isPoured && _levelWithinMs is { } within)
            {
                for (var i = 0; i < _wetShare.Length; i++)
                    if (EndOf(i) - SpreadOf(i) > within) return true;
            }

            for (var i = 0; i < _followUps.Length; i++)
            {
                var (of, at) = (_followUps[i], _stepOfFollowUp[i]);
                if ((of.EndCounts ? _end[at] : _start[at]) > of.Sections.Min(SpreadOf) + of.ToMs) return true;
            }

            return false;
        }
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
            if (step.FollowUp >= 0) start = Math.Max(start, DueMs(_followUps[step.FollowUp]));
            // Whole milliseconds, so that the last bit of a machine's exponential does not show.
            (_start[i], _end[i]) = (start, start + (long)Math.Round(step.PlannedMs * factor(i, step.Person, step.IsMixing)));
        }
    }

    /// <summary>When the product asks for it, and its pours are levelled.</summary>
    private long DueMs(FollowUp of) => Math.Max(of.Sections.Max(SpreadOf) + of.FromMs, of.Sections.Max(EndOf));
}
