using Lapwise.Core.Conditions.Drying;

namespace Lapwise.Core.Work.Order;

/// <summary>
/// Where a new batch begins, in a sequence that stays as it is. A lap joined out of two batches may show a step in colour or
/// gloss, so of the places that keep every batch and every age in bounds, those with the fewest such laps are taken. One
/// person's clock follows from the places, so theirs are listed only where the ages are kept; several people's are tried.
/// </summary>
public sealed class BatchBreaks
{
    // Counted, so that every machine stops at the same place.
    private const int MostPlacesListed = 4_000;
    private const int MostSteps = 20_000;
    private const int MostTried = 100;

    private readonly OrderProblem _problem;
    private readonly IReadOnlyList<int> _sequence;
    private readonly int[] _person;
    private readonly int[] _mixer;
    private readonly int[] _mixedBefore;      // of each batch: the place of the first section begun after its mixing
    private readonly List<int>[] _joinedTo;   // by place in the sequence: the earlier places it shares a lap with
    private readonly int[] _openedBefore;     // laps whose earlier section lies before a place
    private readonly List<int>[]? _agedBy;    // as _joinedTo, by any lap; null: the clock does not follow from the places
    private readonly Lazy<SoloModel> _solo;
    private readonly Lazy<CrewModel> _crew;
    private readonly Worth _given;

    /// <param name="problem">With its mixing rule; no more batches are mixed than that allows.</param>
    /// <param name="found">A sequence with its batches, however they are placed on the clock.</param>
    /// <param name="showing">Laps in which two batches would show.</param>
    /// <exception cref="ArgumentException">The problem has no mixing.</exception>
    public BatchBreaks(OrderProblem problem, FoundOrder found, IReadOnlyList<OrderLap> showing)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(showing);
        if (problem.Mixing is null) throw new ArgumentException("a problem without mixing has no batches", nameof(problem));
        _problem = problem;
        var placed = found.Sections.OrderBy(p => p.StartMs).ThenBy(p => p.Person).ToList();
        _sequence = [.. placed.Select(p => p.Section)];
        _person = new int[problem.Sections.Count];
        var place = new int[problem.Sections.Count];
        for (var i = 0; i < placed.Count; i++) (_person[placed[i].Section], place[placed[i].Section]) = (placed[i].Person, i);
        // A helper who does not roll is none of the crew; mixing then takes nobody's time.
        _mixer = [.. found.Mixes.OrderBy(m => m.Batch).Select(m => Math.Min(m.Person, problem.Crew - 1))];
        _mixedBefore = [.. found.Mixes.OrderBy(m => m.Batch).Select(m => m.Person < problem.Crew ? placed.Count(p => p.StartMs < m.EndMs) : placed.Count)];
        _joinedTo = [.. _sequence.Select(_ => new List<int>())];
        _openedBefore = new int[placed.Count + 1];
        foreach (var lap in showing)
        {
            var (early, late) = (Math.Min(place[lap.A], place[lap.B]), Math.Max(place[lap.A], place[lap.B]));
            _joinedTo[late].Add(early);
            _openedBefore[early + 1]++;
        }

        for (var i = 0; i < placed.Count; i++) _openedBefore[i + 1] += _openedBefore[i];
        if (problem.Crew == 1 && problem.Sections.All(s => s is { StartedAtMs: null, NotBeforeMs: 0 }))
        {
            _agedBy = [.. _sequence.Select(_ => new List<int>())];
            foreach (var lap in problem.Laps) _agedBy[Math.Max(place[lap.A], place[lap.B])].Add(Math.Min(place[lap.A], place[lap.B]));
        }

        _solo = new(() => new SoloModel(problem, new LapGraph(problem.Sections.Count, problem.Laps)));
        _crew = new(() => new CrewModel(problem, new LapGraph(problem.Sections.Count, problem.Laps), 1));
        Joined = showing.Count(lap => placed[place[lap.A]].Batch != placed[place[lap.B]].Batch);
        _given = new Worth(Joined, (long)Math.Round(placed.GroupBy(p => p.Batch).Min(rolled => MixedMl(rolled.Key, rolled.Sum(p => problem.Sections[p.Section].VolumeMl)))));
    }

    /// <summary>Laps of the order as it was given that are joined out of two batches and show it.</summary>
    public int Joined { get; }

    /// <summary>
    /// The same sequence with the fewest such laps, of those the one whose smallest batch is largest, since little is measured
    /// badly, and of those the youngest; its batches anew on the clock. Null where the order as given is as good.
    /// </summary>
    /// <param name="worstMs">The worst age of an order as its caller counts it; null: it breaks a limit.</param>
    /// <param name="mostMs">No order with a worse age is taken.</param>
    public FoundOrder? Fewest(Func<FoundOrder, long?> worstMs, long mostMs) =>
        Slices.AtOnce(FewestAsync(worstMs, mostMs, Effort.AtOnce.Pause));

    /// <summary>The same in slices short enough for a page, with a pause after each.</summary>
    public async ValueTask<FoundOrder?> FewestAsync(Func<FoundOrder, long?> worstMs, long mostMs, Pause pause)
    {
        ArgumentNullException.ThrowIfNull(worstMs);
        ArgumentNullException.ThrowIfNull(pause);
        (Worth Worth, long WorstMs, FoundOrder Order)? best = null;
        foreach (var places in Listed(mostMs).OrderBy(p => p.Worth.Rank).ThenBy(p => p.WorstMs).Take(MostTried))
        {
            if (best is { } known && places.Worth.Rank.CompareTo(known.Worth.Rank) > 0) break;
            await pause();
            var order = OnTheClock(places.Begins, mostMs);
            if (!order.KeepsLimits || worstMs(order) is not { } worst || worst > mostMs) continue;
            if (best is null || worst < best.Value.WorstMs) best = (places.Worth, worst, order);
        }

        return best?.Order;
    }

    /// <summary>
    /// Places in the sequence where each batch could begin by its volume, its life and, of one person, the ages, that are worth
    /// more than those given.
    /// </summary>
    private List<Places> Listed(long mostMs)
    {
        var rule = _problem.Mixing!;
        var listed = new List<Places>();
        var begins = new Stack<int>();
        var countedMs = new long[_sequence.Count];
        var leftMl = new double[_sequence.Count + 1];
        for (var i = _sequence.Count - 1; i >= 0; i--) leftMl[i] = leftMl[i + 1] + VolumeMl(i);
        var steps = 0;
        begins.Push(0);
        Extend(0, 0, 0, 0, double.MaxValue);
        return listed;

        // The batch last begun grows by a section at a time; `within` counts the laps that lie in one batch.
        void Extend(int from, int within, long nowMs, long worstMs, double smallestMl)
        {
            var batch = begins.Count - 1;
            var usableMl = batch == 0 ? rule.FirstUsableMl ?? rule.UsableMl : rule.UsableMl;
            var mixedMs = rule.MixedFromMs(batch, nowMs);
            nowMs = batch == 0 ? rule.BeginMs : Math.Max(nowMs, mixedMs + rule.MixMs);
            var stoodMs = nowMs - mixedMs;
            double takenMl = 0;
            long rolledMs = 0;
            for (var to = from + 1; to <= _sequence.Count && steps++ < MostSteps && listed.Count < MostPlacesListed; to++)
            {
                var durationMs = _problem.Sections[_sequence[to - 1]].DurationOf(_person[_sequence[to - 1]]);
                takenMl += VolumeMl(to - 1);
                rolledMs += durationMs;
                if (takenMl > usableMl + 1e-9 || stoodMs + (rolledMs / _problem.Crew) > rule.LifeMs) return;
                countedMs[to - 1] = nowMs - BatchAgeing.UsedMs(rule.AgeShare, nowMs - mixedMs - rule.MixMs + rule.StandMs);
                nowMs += durationMs;
                worstMs = Math.Max(worstMs, AgeMs(to - 1, nowMs));
                if (worstMs > mostMs) return;
                within += _joinedTo[to - 1].Count(early => early >= from);
                var joined = _openedBefore[to] - within;
                if (joined > Joined) continue;
                var smallestNowMl = Math.Min(smallestMl, MixedMl(batch, takenMl));
                if (to == _sequence.Count)
                {
                    var worth = new Worth(joined, (long)Math.Round(smallestNowMl));
                    if (worth.Rank.CompareTo(_given.Rank) < 0) listed.Add(new(worth, worstMs, [.. begins.Reverse()]));
                    return;
                }

                if (batch + 1 == rule.MostBatches || leftMl[to] > ((rule.MostBatches - batch - 1) * rule.UsableMl) + 1e-9) continue;
                begins.Push(to);
                Extend(to, within, nowMs, worstMs, smallestNowMl);
                begins.Pop();
            }
        }

        long AgeMs(int place, long endMs) =>
            _agedBy?[place] is { Count: > 0 } earlier ? endMs - Math.Min(countedMs[place], earlier.Min(early => countedMs[early])) : 0;
    }

    /// <summary>What is mixed for so much on the sections, what stays in the cup left out: the first batch also charges roller and tray.</summary>
    private double MixedMl(int batch, double takenMl) =>
        batch == 0 && _problem.Mixing is { FirstUsableMl: { } first, UsableMl: var usable } ? takenMl + usable - first : takenMl;

    private double VolumeMl(int place) => _problem.Sections[_sequence[place]].VolumeMl;

    private int MixedBefore(int batch) => _mixedBefore[Math.Min(batch, _mixedBefore.Length - 1)];

    private int MixerOf(int batch) => _mixer[Math.Min(batch, _mixer.Length - 1)];

    private FoundOrder OnTheClock(int[] begins, long ageMs)
    {
        var batches = new int[_sequence.Count];
        for (var batch = 0; batch < begins.Length; batch++) Array.Fill(batches, batch, begins[batch], _sequence.Count - begins[batch]);
        if (_problem.Crew == 1) return SoloTimeline.Of(_solo.Value, new SoloOrder(_sequence, batches));

        // Each batch is mixed by whoever mixed it before, where they mixed it or as soon before its first section as their hands are free.
        var tasks = new List<CrewTask>();
        var mixed = 0;
        for (var i = 0; i < _sequence.Count; i++)
        {
            for (; mixed < begins.Length && Math.Min(begins[mixed], MixedBefore(mixed)) <= i; mixed++) tasks.Add(new CrewTask(_problem.Sections.Count + mixed, MixerOf(mixed), mixed - 1));
            tasks.Add(new CrewTask(_sequence[i], _person[_sequence[i]], batches[i]));
        }

        return CrewTimeline.Of(_crew.Value, tasks, ageMs);
    }

    /// <summary>Where each batch begins, by place in the sequence.</summary>
    /// <param name="WorstMs">The worst lap age; 0 where the clock does not follow from the places.</param>
    private sealed record Places(Worth Worth, long WorstMs, int[] Begins);

    /// <summary>How good it is to change batches there; the smaller the better.</summary>
    /// <param name="Joined">Laps joined out of two batches that show it.</param>
    /// <param name="SmallestMl">The smallest batch, to a whole mL: less is not worth an older lap.</param>
    private readonly record struct Worth(int Joined, long SmallestMl)
    {
        public (int, long) Rank => (Joined, -SmallestMl);
    }
}
