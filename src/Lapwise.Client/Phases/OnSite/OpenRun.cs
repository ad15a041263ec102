using System.Diagnostics;
using Lapwise.Client.Jobs;
using Lapwise.Client.Keeping;
using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;

namespace Lapwise.Client.Phases.OnSite;

/// <summary>
/// One run open in the page. A tap is stamped, put on the disk, and only then shown; the lead device plans anew after it; the
/// server gets it when it answers. Nothing here waits for reception.
/// </summary>
internal sealed class OpenRun(string job, string id, MarkKeeping keeping, Server server) : IAsyncDisposable
{
    /// <summary>A clock that has moved so far against the server's is held against it again.</summary>
    private const long ClockMoved = 2_000;

    /// <summary>A clock that differs by less is nobody's worry.</summary>
    private const long ClockWorthSaying = 60_000;

    private readonly Dictionary<string, MarkDocument> _marks = new(StringComparer.Ordinal);
    private readonly HashSet<string> _unsent = new(StringComparer.Ordinal);
    private readonly Dictionary<string, MarkDocument> _unkept = new(StringComparer.Ordinal);
    private readonly SemaphoreSlim _oneAtATime = new(1, 1);
    private CancellationTokenSource _replanning = new();
    private long _number;
    private long _upto;
    private bool _isSending;
    private long? _pairedMs;
    private (Run? Run, string Lost) _weighed;

    public string Id => id;
    /// <summary>Id of the job it belongs to.</summary>
    public string Job => job;
    public Run? Run { get; private set; }
    /// <summary>The last clocks read; what is shown is shown for these.</summary>
    public long NowMs { get; private set; }
    public Present? Present { get; private set; }
    /// <summary>What is still to be had where a lap is lost.</summary>
    public Salvage? Salvage { get; private set; }
    /// <summary>What the last replan changed.</summary>
    public IReadOnlyList<Phrase> Changes { get; private set; } = [];
    /// <summary>Why the last tap was not taken.</summary>
    public Reason? Refusal { get; set; }
    public TimeSpan ReplanTook { get; private set; }
    /// <summary>How the marks lie on this device; where not all are kept, those are in this page alone until the server has them.</summary>
    public Shelved Shelved { get; private set; }
    /// <summary>Null: not tried yet.</summary>
    public bool? HasReception { get; private set; }
    public int Unsent => _unsent.Count;
    /// <summary>By how much this device's clock is ahead of the shop's computer's, where that is more than a minute and known.</summary>
    public long? ClockAheadMs => _pairedMs is { } behind && Math.Abs(behind) > ClockWorthSaying ? -behind : null;
    public bool Leads => Run?.Lead == keeping.DeviceId;

    public event Action? Changed;

    /// <summary>Takes in what this device keeps of the run.</summary>
    public void TakeIn(IEnumerable<(bool Sent, MarkDocument Mark)> kept)
    {
        foreach (var (sent, mark) in kept)
        {
            _marks[mark.Id] = mark;
            if (!sent) _unsent.Add(mark.Id);
        }
    }

    /// <summary>Reads the clocks and shows this moment.</summary>
    public async Task Look()
    {
        var now = await Moment();
        Show(now);
        // A lap can be lost without a tap, and was perhaps lost before this device came to the run.
        if (Lost is { Length: > 0 } lost && _weighed != (Run, lost) && _oneAtATime.CurrentCount > 0) await Mark([], now);
    }

    private string Lost => string.Join(' ', Present?.Forecast.Lost.Select(l => MarkWords.Of(l.Lap)) ?? []);

    /// <summary>Stamps marks that belong together, puts them on the disk, and then shows what they come to.</summary>
    public async Task Mark(IReadOnlyList<ToMark> marks)
    {
        if (marks.Count > 0) await Mark(marks, await Moment());
    }

    private async Task Mark(IReadOnlyList<ToMark> marks, DeviceMoment now)
    {
        // What was being planned is of a moment that is over: the tap comes first.
        await _replanning.CancelAsync();
        await _oneAtATime.WaitAsync();
        try
        {
            var before = Run;
            await Keep(Stamped(marks, now));
            Refold();
            Show(now);
            await Replan(now, before);
        }
        finally
        {
            _oneAtATime.Release();
        }

        Changed?.Invoke();
        _ = Sync();
    }

    /// <summary>A mark on its way to the disk is put there first.</summary>
    public async ValueTask DisposeAsync()
    {
        await _replanning.CancelAsync();
        await _oneAtATime.WaitAsync();
        _oneAtATime.Dispose();
        _replanning.Dispose();
    }

    /// <summary>Sends what the server does not have and takes in what others marked. Safe to call at any time.</summary>
    public async Task Sync()
    {
        if (_isSending) return;
        _isSending = true;
        try
        {
            // There may be room again.
            if (_unkept.Count > 0) await Shelve();
            int got;
            do
            {
                var sending = _unsent.Select(x => _marks[x]).Take(500).ToList();
                var (before, ticksBefore) = await keeping.Clocks();
                var reply = await server.Marks(job, id, sending, _upto);
                var (_, ticksAfter) = await keeping.Clocks();
                HasReception = reply is Reply<MarksAnswer>.Got;
                if (reply is not Reply<MarksAnswer>.Got(var answer, _)) break;
                await TakeIn(answer, sending);
                await Pair(answer.NowMs, before, Math.Max(0, ticksAfter - ticksBefore));
                got = answer.Marks.Count + sending.Count;
            }
            while (got > 0 && (_unsent.Count > 0 || got >= 500));
        }
        finally
        {
            _isSending = false;
        }

        Changed?.Invoke();
    }

    /// <summary>The storage of this device was emptied: every mark is put there again.</summary>
    public Task KeepAgain()
    {
        foreach (var mark in _marks.Values) _unkept[mark.Id] = mark;
        return Shelve();
    }

    public string Export() => RunFile.Write(new RunDocument { Marks = [.. _marks.Values] });

    private async Task TakeIn(MarksAnswer answer, List<MarkDocument> sent)
    {
        _upto = answer.Upto;
        var news = answer.Marks.Where(m => !_marks.ContainsKey(m.Id)).ToList();
        foreach (var mark in news) _marks[mark.Id] = mark;
        foreach (var mark in answer.Marks.Concat(sent)) _unsent.Remove(mark.Id);
        // All of them, not only the news: what this page has shown may not lie on the disk yet, and twice is once.
        foreach (var mark in answer.Marks.Concat(sent)) _unkept[mark.Id] = mark;
        await Shelve();
        if (news.Count == 0) return;
        var before = Run;
        Refold();
        var now = await Moment();
        Show(now);
        if (Leads) await Replan(now, before);
    }

    /// <summary>Once a start of the page, and again when either clock has been set.</summary>
    private async Task Pair(long serverMs, long askedMs, long tripMs)
    {
        if (Run is null) return;
        var offset = serverMs - askedMs - (tripMs / 2);
        if (_pairedMs is { } known && Math.Abs(known - offset) < ClockMoved) return;
        _pairedMs = offset;
        await Keep(Stamped([new ToMark(new What.Paired(offset, tripMs))], await Moment()));
        Refold();
    }

    /// <param name="before">The run before what was marked.</param>
    private async Task Replan(DeviceMoment now, Run? before)
    {
        if (Run is not { } run) return;
        // What was said of the last marks stands until there are others.
        if (before?.Log.Count != run.Log.Count) Changes = before is null ? [] : RoomFollowing.Told(before, run);
        var started = Stopwatch.GetTimestamp();
        await _replanning.CancelAsync();
        _replanning = new CancellationTokenSource();
        Replan replan;
        try
        {
            replan = await Replanning.ReplanAsync(run, run.Clock.At(now), Replanning.UsualSteps, new Breathing(_replanning.Token).Pause);
        }
        catch (OperationCanceledException)
        {
            return;
        }

        ReplanTook = Stopwatch.GetElapsedTime(started);
        Salvage = replan.Salvage;
        if (replan.IsChanged && Leads)
        {
            Changes = [.. Changes, .. replan.Changes];
            await Keep(Stamped([new ToMark(new What.Replanned(replan.Turns))], now));
            Refold();
            Show(now);
        }

        _weighed = (Run, Lost);
    }

    private IReadOnlyList<MarkDocument> Stamped(IReadOnlyList<ToMark> marks, DeviceMoment now)
    {
        _number = Math.Max(_number, _marks.Values.Where(m => m.Device == keeping.DeviceId).Select(m => m.Number).DefaultIfEmpty(0).Max());
        return [.. marks.Select(m => MarkReading.Write(new Mark(new Stamp(Guid.CreateVersion7().ToString("N"), now, ++_number, m.IsAssumed, m.BackMs), m.What)))];
    }

    private async Task Keep(IReadOnlyList<MarkDocument> marks)
    {
        foreach (var mark in marks) _unkept[mark.Id] = mark;
        await Shelve();
        foreach (var mark in marks)
        {
            _marks[mark.Id] = mark;
            _unsent.Add(mark.Id);
        }
    }

    /// <summary>Puts on the disk what is not there yet, with whatever a full disk turned away before.</summary>
    private async Task Shelve()
    {
        var waiting = _unkept.Values.ToList();
        Shelved = await keeping.Put(job, id, [.. waiting.Select(m => (IsSent(m.Id), m))]);
        if (Shelved != Shelved.Kept) return;
        foreach (var mark in waiting) _unkept.Remove(mark.Id);
    }

    private bool IsSent(string mark) => _marks.ContainsKey(mark) && !_unsent.Contains(mark);

    private void Refold() => Run = Folding.Fold(_marks.Values);

    private void Show(DeviceMoment now)
    {
        if (Run is null) Refold();
        if (Run is not { } run) return;
        NowMs = run.Clock.At(now);
        Present = Presenting.Present(run, NowMs);
        if (!Present.Forecast.Lost.Any()) Salvage = null;
    }

    private async Task<DeviceMoment> Moment()
    {
        var (clock, ticks) = await keeping.Clocks();
        return new DeviceMoment(keeping.DeviceId, keeping.Session, clock, ticks);
    }
}
