using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;
using Placed = Lapwise.Core.Work.Order.Placed;

namespace Lapwise.Core.Work.Pouring;

/// <summary>
/// Runs pours, mixing and what follows them along the clock. The first of the crew pours and levels; the second, where there
/// is one, mixes each batch just before it is wanted and does the bubble passes and the scraping. Alone, a top that is begun
/// is poured out first, and another is begun only where no bubble pass would come too late for it.
/// </summary>
internal sealed class PourClock(Job job, Product product, BatchRule batches)
{
    /// <summary>A bubble pass may come so much later than its minute. Common practice, no source.</summary>
    public const long PassMayWaitMs = 180_000;

    private const int Pourer = 0;
    private readonly int _second = job.Crew.Count > 1 ? 1 : Pourer;
    private readonly long[] _freeMs = new long[2];
    private readonly List<Placed> _placed = [];
    private readonly List<PlacedMix> _mixes = [];
    private readonly List<PlacedStep> _steps = [];
    private readonly List<PlacedStep> _pending = [];
    private readonly long _inductionMs = Ms(product.InductionS);
    private double _leftMl;

    /// <summary>A step with the sections it is done to, by index over all tops.</summary>
    public sealed record PlacedStep(StepKind Kind, string Top, IReadOnlyList<int> Sections, int Person, long StartMs, long EndMs, long FromMs, long? ToMs);

    public IReadOnlyList<PlacedStep> Steps => _steps;

    /// <summary>Every batch is poured out before its use-by and large enough for what is poured from it.</summary>
    public bool KeepsBatches { get; private set; } = true;

    /// <summary>When the last batch is mixed and has stood as long as the product asks.</summary>
    private long ReadyMs => _mixes[^1].EndMs + _inductionMs;

    private Pace PourerPace => job.Crew[Pourer].Pace;
    private Pace SecondPace => job.Crew[_second].Pace;

    public FoundOrder Run(IReadOnlyList<TopOrder> tops)
    {
        var first = 0;
        foreach (var top in tops)
        {
            WaitForPasses(top);
            foreach (var u in top.Sequence) Do(top.Cut.Sections[u], first + u);
            Scraping(top.Cut, first);
            first += top.Cut.Sections.Count;
        }

        PassesUntil(long.MaxValue);
        return new FoundOrder(0, 0, KeepsBatches, _placed, _mixes);
    }

    private void Do(SectionShape section, int index)
    {
        var time = SectionTime.Of(section, PourerPace, ApplicationMethod.Poured);
        var takenMl = batches.TakenMl(section);
        if (_mixes.Count == 0 || takenMl > _leftMl || Math.Max(_freeMs[Pourer], ReadyMs) + time.WetMs > _mixes[^1].StartMs + batches.LifeMs) Mix();

        var start = Math.Max(_freeMs[Pourer], ReadyMs);
        var (spread, end) = (start + time.WetMs, start + time.TotalMs);
        KeepsBatches &= takenMl <= _leftMl && spread <= _mixes[^1].StartMs + batches.LifeMs;
        _leftMl -= takenMl;
        _freeMs[Pourer] = end;
        _placed.Add(new Placed(index, Pourer, start, end, _mixes.Count - 1));
        if (section.Face.Kind is not FaceKind.Flat)
        {
            _steps.Add(Step(StepKind.Brush, section, index, start, end, start, null));
            return;
        }

        long? levelBy = product.Pour.LevelWithinS is { } within ? spread + Ms(within) : null;
        _steps.Add(Step(StepKind.Pour, section, index, start, spread, start, _mixes[^1].StartMs + batches.LifeMs));
        _steps.Add(Step(StepKind.Level, section, index, spread, end, spread, levelBy));
        var passMs = WholeSecondsMs(SecondPace.WalkS + (section.FaceM2 / SecondPace.DryPassM2PerS));
        foreach (var after in product.Pour.BubblePassesS)
        {
            var due = spread + Ms(after);
            _pending.Add(new PlacedStep(StepKind.BubblePass, section.Face.Top, [index], _second, Math.Max(due, end), Math.Max(due, end) + passMs, due, due + PassMayWaitMs));
        }
    }

    private void Mix()
    {
        var lastStart = Math.Max(0, _freeMs[Pourer] - batches.MixMs - _inductionMs);
        if (_second != Pourer) PassesUntil(lastStart);
        var start = _second == Pourer ? _freeMs[Pourer] : Math.Max(_freeMs[_second], lastStart);
        _mixes.Add(new PlacedMix(_mixes.Count, _second, start, start + batches.MixMs));
        _freeMs[_second] = start + batches.MixMs;
        _leftMl = batches.UsableMl;
    }

    /// <summary>Alone: passes that would come too late once this top is begun are done before it, even by waiting.</summary>
    private void WaitForPasses(TopOrder top)
    {
        if (_second != Pourer) return;
        var neededMs = top.Problem.Sections.Sum(s => s.ShortestMs) + ((batches.MixMs + _inductionMs) * (1 + (long)Math.Ceiling(top.Cut.Sections.Sum(batches.TakenMl) / Math.Max(1, batches.UsableMl))));
        while (Next() is { } pass && pass.ToMs < _freeMs[Pourer] + neededMs) Take(pass);
    }

    private void PassesUntil(long ms)
    {
        while (Next() is { } step && Math.Max(step.StartMs, _freeMs[_second]) <= ms) Take(step);
    }

    private PlacedStep? Next() => _pending.MinBy(s => (s.StartMs, s.Sections[0]));

    private void Take(PlacedStep step)
    {
        _pending.Remove(step);
        var start = Math.Max(step.StartMs, _freeMs[_second]);
        _freeMs[_second] = start + (step.EndMs - step.StartMs);
        _steps.Add(step with { StartMs = start, EndMs = _freeMs[_second] });
    }

    /// <summary>Once for each top with open edges, in the window that fits its first pour and its last.</summary>
    private void Scraping(CutTop cut, int first)
    {
        if (product.Pour.ScrapeDrips is not { } window) return;
        var lengthM = cut.Top.Faces.SelectMany(f => f.Strips).Where(s => s.Kind is StripKind.Nosing).Sum(s => s.LengthM);
        if (lengthM <= 0) return;
        var flats = cut.Sections.Where(s => s.Face.Kind is FaceKind.Flat).Select(s => first + s.Index).ToList();
        var spread = _steps.Where(s => s.Kind is StepKind.Pour && flats.Contains(s.Sections[0])).Select(s => s.EndMs).ToList();
        var (from, to) = (spread.Max() + Ms(window.FromS), spread.Min() + Ms(window.ToS));
        _pending.Add(new PlacedStep(StepKind.ScrapeDrips, cut.Top.Top.Name, flats, _second, from, from + WholeSecondsMs(SecondPace.WalkS + (lengthM / SecondPace.EdgeMPerS)), from, to));
    }

    private static PlacedStep Step(StepKind kind, SectionShape section, int index, long start, long end, long from, long? to) =>
        new(kind, section.Face.Top, [index], Pourer, start, end, from, to);

    private static long Ms(double seconds) => (long)Math.Round(seconds * 1000);

    private static long WholeSecondsMs(double seconds) => (long)Math.Ceiling(seconds - 1e-9) * 1000;
}
