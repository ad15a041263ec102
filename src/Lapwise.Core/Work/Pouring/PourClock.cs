using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;
using Placed = Lapwise.Core.Work.Order.Placed;

namespace Lapwise.Core.Work.Pouring;

/// <summary>
/// Runs pours, mixing and what follows them along the clock. The first of the crew pours and levels; the second, where there
/// is one, mixes each batch just before it is wanted. Bubble passes and scraping go to whoever is free soonest, the most
/// urgent first. Where nobody would be free in time, the next top is held back; where that does not help, its pours are held
/// back one by one, for as long as the laps between them stay open.
/// </summary>
/// <param name="openTimeMs">How long the film of a fresh batch stays open.</param>
/// <param name="targetAgeMs">How old a lap may be with what is to be kept in hand.</param>
/// <param name="ageShare">Share of a batch's age that its film no longer stays open.</param>
internal sealed class PourClock(Job job, Product product, BatchRule batches, long openTimeMs, long targetAgeMs, double ageShare)
{
    /// <summary>A bubble pass may come so much later than its minute. Common practice, no source.</summary>
    public const long PassMayWaitMs = 180_000;

    /// <summary>Begun so soon after its minute, a bubble pass has time in hand for slow hands before it. Common practice, no source.</summary>
    private const long PassWaitsAtEaseMs = 60_000;

    /// <summary>A pour is held back by whole steps of this, about what a bubble pass takes.</summary>
    private const long HoldStepMs = 30_000;

    private const int Pourer = 0;
    private readonly int _mixer = job.Crew.Count > 1 ? 1 : Pourer;
    private readonly BusyTimes _busy = new(job.Crew.Count);
    private readonly List<Placed> _placed = [];
    private readonly List<PlacedMix> _mixes = [];
    private readonly List<PlacedStep> _steps = [];
    private readonly List<FollowUp> _pending = [];
    private double _leftMl;
    private long _pouredMs;
    private Lateness _laps;

    /// <summary>A step with the sections it is done to, by index over all tops.</summary>
    public sealed record PlacedStep(StepKind Kind, string Top, IReadOnlyList<int> Sections, int Person, long StartMs, long EndMs, long FromMs, long? ToMs);

    /// <summary>All that laying a pour changes.</summary>
    private readonly record struct State(int Busy, int Placed, int Mixes, int Steps, int Pending, double LeftMl, long PouredMs, Lateness Laps, bool KeepsBatches);

    public IReadOnlyList<PlacedStep> Steps => _steps;

    /// <summary>Every batch is poured out before its use-by and large enough for what is poured from it.</summary>
    public bool KeepsBatches { get; private set; } = true;

    /// <summary>When the last batch is mixed and has stood as long as the product asks.</summary>
    private long ReadyMs => _mixes[^1].StartMs + batches.UntilReadyMs;

    public FoundOrder Run(IReadOnlyList<TopOrder> tops)
    {
        var first = 0;
        foreach (var top in tops)
        {
            Pour(top, first);
            first += top.Cut.Sections.Count;
        }

        Settle(long.MaxValue, _pending);
        return new FoundOrder(0, 0, KeepsBatches, _placed, _mixes);
    }

    private void Pour(TopOrder top, int first)
    {
        // A top that is begun is poured out without a pause, if only it is begun late enough.
        var (before, none) = (Now, HowLate());
        Lateness? whole = IsLateByItself(LayWhole) ? null : Held(LayWhole);
        if (whole != none)
        {
            Return(before);
            foreach (var u in top.Sequence)
            {
                Held(at => Lay(top, first, u, at));
                if (whole is null) SettlePast();
            }

            AddScraping(top.Cut, first);
            if (whole is { } w && !HowLate().IsLessThan(w))
            {
                Return(before);
                Held(LayWhole);
            }
        }

        SettlePast();

        void LayWhole(long at) => LayTop(top, first, at);
    }

    private void LayTop(TopOrder top, int first, long notBeforeMs)
    {
        foreach (var u in top.Sequence) Lay(top, first, u, notBeforeMs);
        AddScraping(top.Cut, first);
    }

    /// <summary>By then all that is due now is done with: holding back longer changes nothing.</summary>
    private long MostHeldMs => Math.Max(_pouredMs, Hopeful.Where(p => p.Kind is StepKind.BubblePass).Select(p => p.ToMs).DefaultIfEmpty(0).Max())
        + Hopeful.Select(p => p.TakesMs.Max()).DefaultIfEmpty(0).Max();

    /// <summary>However long it is held back, something comes late for it.</summary>
    private bool IsLateByItself(Action<long> lay) => HowLateAt(lay, MostHeldMs).LateMs > HowLate().LateMs;

    /// <summary>Lays something where it makes nothing late; where that cannot be, where it makes the least late.</summary>
    /// <param name="lay">Lays it, not before a time.</param>
    /// <returns>How late it all is then.</returns>
    private Lateness Held(Action<long> lay)
    {
        var (none, mostMs) = (HowLate(), MostHeldMs);
        var (bestMs, least) = (_pouredMs, HowLateAt(lay, _pouredMs));
        for (var at = _pouredMs + HoldStepMs; least != none && at <= mostMs; at += HoldStepMs)
            if (HowLateAt(lay, at) is var late && late.IsLessThan(least)) (bestMs, least) = (at, late);
        lay(bestMs);
        return least;
    }

    /// <summary>How late it all would be with something laid not before a time; it is taken up again.</summary>
    private Lateness HowLateAt(Action<long> lay, long atMs)
    {
        var before = Now;
        lay(atMs);
        var late = HowLate();
        Return(before);
        return late;
    }

    private void Lay(TopOrder top, int first, int u, long notBeforeMs)
    {
        var section = top.Cut.Sections[u];
        var time = TimeOf(section);
        var takenMl = batches.TakenMl(section);
        if (_mixes.Count == 0 || takenMl > _leftMl || StartMs() + time.WetMs > _mixes[^1].StartMs + batches.LifeMs) Mix(Math.Max(_pouredMs, notBeforeMs));

        var start = StartMs();
        var (spread, end) = (start + time.WetMs, start + time.TotalMs);
        KeepsBatches &= takenMl <= _leftMl && spread <= _mixes[^1].StartMs + batches.LifeMs;
        _leftMl -= takenMl;
        _pouredMs = end;
        _busy.Take(Pourer, start, end);
        _placed.Add(new Placed(first + u, Pourer, start, end, _mixes.Count - 1));
        _laps += LapsOf(top, first, u);
        AddSteps(section, first + u, start, spread, end);

        long StartMs() => _busy.FreeFrom(Pourer, Math.Max(_pouredMs, Math.Max(notBeforeMs, ReadyMs)), time.TotalMs);
    }

    private void Mix(long wantedMs)
    {
        var notBefore = Math.Max(wantedMs - batches.UntilReadyMs, _mixes.Count > 0 ? _mixes[^1].EndMs : 0);
        var start = _busy.FreeFrom(_mixer, notBefore, batches.MixMs);
        _busy.Take(_mixer, start, start + batches.MixMs);
        _mixes.Add(new PlacedMix(_mixes.Count, _mixer, start, start + batches.MixMs));
        _leftMl = batches.UsableMl;
    }

    /// <summary>By how much the laps of the section just laid with those before it outlive the film, or its part that is kept in hand.</summary>
    private Lateness LapsOf(TopOrder top, int first, int u)
    {
        var laid = _placed[^1];
        var neighbours = top.Problem.Laps.Where(l => l.A == u || l.B == u).Select(l => first + (l.A == u ? l.B : l.A)).ToHashSet();
        var ages = LastLaid(top.Cut).Where(p => neighbours.Contains(p.Section)).Select(p => laid.EndMs - Math.Min(CountedMs(p), CountedMs(laid)));
        return ages.Aggregate(default(Lateness), (sum, age) => sum + new Lateness(Math.Max(0, age - openTimeMs), Math.Max(0, age - targetAgeMs)));
    }

    private long CountedMs(Placed p) => p.StartMs - BatchAgeing.UsedMs(ageShare, p.StartMs - _mixes[p.Batch].EndMs);

    private void AddSteps(SectionShape section, int index, long start, long spread, long end)
    {
        if (section.Face.Kind is not FaceKind.Flat)
        {
            _steps.Add(Step(StepKind.Brush, start, end, null));
            return;
        }

        _steps.Add(Step(StepKind.Pour, start, spread, _mixes[^1].StartMs + batches.LifeMs));
        _steps.Add(Step(StepKind.Level, spread, end, product.Pour.LevelWithinS is { } within ? spread + Ms(within) : null));
        var takesMs = job.Crew.Select(p => WholeSecondsMs(p.Pace.WalkS + (section.FaceM2 / p.Pace.DryPassM2PerS))).ToList();
        foreach (var due in product.Pour.BubblePassesS.Select(after => spread + Ms(after)))
            _pending.Add(new FollowUp(StepKind.BubblePass, section.Face.Top, [index], due, due + PassMayWaitMs, Math.Max(due, end), takesMs));

        PlacedStep Step(StepKind kind, long from, long to, long? byMs) => new(kind, section.Face.Top, [index], Pourer, from, to, from, byMs);
    }

    /// <summary>Once for each top with open edges, in the window that fits its first pour and its last.</summary>
    private void AddScraping(CutTop cut, int first)
    {
        if (product.Pour.ScrapeDrips is not { } window) return;
        var lengthM = cut.Top.Faces.SelectMany(f => f.Strips).Where(s => s.Kind is StripKind.Nosing).Sum(s => s.LengthM);
        if (lengthM <= 0) return;
        var flats = cut.Sections.Where(s => s.Face.Kind is FaceKind.Flat).Select(s => first + s.Index).ToHashSet();
        var spread = LastLaid(cut).Where(p => flats.Contains(p.Section)).Select(p => p.StartMs + TimeOf(cut.Sections[p.Section - first]).WetMs).ToList();
        var (from, to) = (spread.Max() + Ms(window.FromS), spread.Min() + Ms(window.ToS));
        _pending.Add(new FollowUp(StepKind.ScrapeDrips, cut.Top.Top.Name, [.. flats.Order()], from, to, from,
            [.. job.Crew.Select(p => WholeSecondsMs(p.Pace.WalkS + (lengthM / p.Pace.EdgeMPerS)))]));
    }

    /// <summary>What cannot be in time waits for what can, and is placed in the end.</summary>
    private IEnumerable<FollowUp> Hopeful => _pending.Where(p => p.CanBeInTime);

    /// <summary>What is still to follow, each given to whoever is free soonest beside what is laid; the hands are free again after it.</summary>
    private List<(FollowUp Of, PlacedStep Placed)> FollowUps(IEnumerable<FollowUp> pending)
    {
        var mark = _busy.Mark;
        var placed = pending.OrderBy(p => !p.CanBeInTime).ThenBy(p => p.LatestMs).ThenBy(p => p.Sections[0]).Select(p =>
        {
            var (person, start) = _busy.Soonest(p.NotBeforeMs, p.TakesMs);
            var end = start + p.TakesMs[person];
            _busy.Take(person, start, end);
            return (p, new PlacedStep(p.Kind, p.Top, p.Sections, person, start, end, p.FromMs, p.ToMs));
        }).ToList();
        _busy.BackTo(mark);
        return placed;
    }

    /// <summary>By how much what could be in time comes too late, and laps are joined too late; and how little is left in hand.</summary>
    private Lateness HowLate() => FollowUps(Hopeful).Aggregate(_laps, (sum, f) => sum + new Lateness(
        Math.Max(0, f.Placed.StartMs - f.Of.LatestMs),
        f.Of.Kind is StepKind.BubblePass ? Math.Max(0, f.Placed.StartMs - f.Of.NotBeforeMs - PassWaitsAtEaseMs) : 0));

    /// <summary>What ends before anything else can be laid stays where it is.</summary>
    private void SettlePast() => Settle(Math.Min(_pouredMs, Math.Max(_mixes[^1].EndMs, _pouredMs - batches.UntilReadyMs)), Hopeful);

    private void Settle(long untilMs, IEnumerable<FollowUp> pending)
    {
        foreach (var (of, placed) in FollowUps(pending).Where(f => f.Placed.EndMs <= untilMs))
        {
            _pending.Remove(of);
            _busy.Take(placed.Person, placed.StartMs, placed.EndMs);
            _steps.Add(placed);
        }
    }

    private State Now => new(_busy.Mark, _placed.Count, _mixes.Count, _steps.Count, _pending.Count, _leftMl, _pouredMs, _laps, KeepsBatches);

    private void Return(State to)
    {
        _busy.BackTo(to.Busy);
        _placed.RemoveRange(to.Placed, _placed.Count - to.Placed);
        _mixes.RemoveRange(to.Mixes, _mixes.Count - to.Mixes);
        _steps.RemoveRange(to.Steps, _steps.Count - to.Steps);
        _pending.RemoveRange(to.Pending, _pending.Count - to.Pending);
        (_leftMl, _pouredMs, _laps, KeepsBatches) = (to.LeftMl, to.PouredMs, to.Laps, to.KeepsBatches);
    }

    /// <summary>What was laid last, no more than a top has.</summary>
    private IEnumerable<Placed> LastLaid(CutTop cut) => _placed.Skip(_placed.Count - cut.Sections.Count);

    private SectionTime TimeOf(SectionShape section) => SectionTime.Of(section, job.Crew[Pourer].Pace, ApplicationMethod.Poured);

    private static long Ms(double seconds) => (long)Math.Round(seconds * 1000);

    private static long WholeSecondsMs(double seconds) => (long)Math.Ceiling(seconds - 1e-9) * 1000;
}
