namespace Lapwise.Core.Work.Order;

/// <summary>
/// The best order of sections: smallest worst lap age, with the bound that is proven. Resumable in counted steps,
/// deterministic, and never worse than the sweeps it starts from.
/// </summary>
/// <example><code>var search = new OrderSearch(problem); while (search.Step(10_000)) { } var order = search.Best;</code></example>
public sealed class OrderSearch
{
    private const long MostSteps = 20_000_000;

    private readonly OrderProblem _problem;
    private readonly AgeSearch[] _parts;

    /// <exception cref="ArgumentException">No sections, a negative time, or an index out of range.</exception>
    public OrderSearch(OrderProblem problem)
    {
        OrderCheck.Throw(problem);
        _problem = problem;
        _parts = [.. OrderParts.Of(problem).Select(AgeSearch (part) => problem.Crew == 1 ? new SoloSearch(part) : new CrewSearch(part))];
        Best = Compose();
    }

    /// <summary>The best order so far, with its bound.</summary>
    public FoundOrder Best { get; private set; }

    /// <summary>Sections placed so far over all searches.</summary>
    public long Steps => _parts.Sum(p => p.Steps);

    /// <summary>Goes on for about so many steps; false when nothing is left to find or prove.</summary>
    public bool Step(long steps)
    {
        // Only the part with the worst age, or one that could still raise the bound, is worth the time.
        var part = _parts.Where(p => !p.IsDone).OrderByDescending(p => p.WorstLapAgeMs).ThenByDescending(p => p.BoundMs).FirstOrDefault();
        if (part is null || Best.Proven) return false;
        part.Step(steps);
        Best = Compose();
        return !Best.Proven && _parts.Any(p => !p.IsDone);
    }

    /// <summary>Searches until proven or out of steps.</summary>
    /// <param name="mostSteps">Left out: about as many as half a minute allows.</param>
    public static FoundOrder Solve(OrderProblem problem, long? mostSteps = null) => Solve(problem, mostSteps ?? UsualSteps(problem), enoughMs: 0);

    /// <summary>A step of a crew's search looks at every section and lap, one of a single person at a few.</summary>
    private static long UsualSteps(OrderProblem problem) =>
        problem.Crew == 1 ? MostSteps : Math.Min(MostSteps, 1_000_000_000 / Math.Max(1, problem.Sections.Count + problem.Laps.Count));

    /// <summary>Searches until an order with so small a worst age is found, or none can be, or out of steps.</summary>
    public static FoundOrder Solve(OrderProblem problem, long mostSteps, long enoughMs)
    {
        var search = Towards(problem, enoughMs);
        while (search.Steps < mostSteps && !search.IsEnough(enoughMs) && search.Step(Math.Min(20_000, mostSteps - search.Steps))) { }
        return search.Best;
    }

    /// <summary>The same in slices short enough for a page, with a pause after each.</summary>
    internal static async ValueTask<FoundOrder> SolveAsync(OrderProblem problem, long mostSteps, long enoughMs, Pause pause)
    {
        // A step's work grows with the sections.
        var slice = Math.Clamp(5000 / Math.Max(1, problem.Sections.Count), 25, 250);
        var search = Towards(problem, enoughMs);
        await pause();
        while (search.Steps < mostSteps && !search.IsEnough(enoughMs) && search.Step(Math.Min(slice, mostSteps - search.Steps))) await pause();
        return search.Best;
    }

    private static OrderSearch Towards(OrderProblem problem, long enoughMs)
    {
        var search = new OrderSearch(problem);
        if (enoughMs > 0) Array.ForEach(search._parts, p => p.AskFirst(enoughMs));
        return search;
    }

    private bool IsEnough(long ms) => Best.KeepsLimits && Best.WorstLapAgeMs <= ms;

    private FoundOrder Compose()
    {
        if (_parts is [var only]) return only.Order;
        var sections = new List<Placed>();
        var offset = 0L;
        foreach (var part in _parts)
        {
            var order = part.Order;
            sections.AddRange(order.Sections.Select(p => p with { Section = part.Part.Sections[p.Section], StartMs = p.StartMs + offset, EndMs = p.EndMs + offset }));
            offset = sections.Max(s => s.EndMs);
        }

        return new FoundOrder(_parts.Max(p => p.WorstLapAgeMs), _parts.Max(p => p.BoundMs), _parts.All(p => p.Order.KeepsLimits), sections, []);
    }
}
