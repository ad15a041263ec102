namespace Lapwise.Core.Work.Order;

/// <summary>A part of the job that shares no lap and no precedence with the rest, as a problem of its own.</summary>
/// <param name="Sections">Index in the whole problem of each section of the part.</param>
internal sealed record OrderPart(OrderProblem Problem, IReadOnlyList<int> Sections);

/// <summary>
/// Splits a problem where that loses nothing: one person works one part after the other, since coming back to a part
/// only ages its laps. Crews, mixing, releases and sections already begun tie the parts together.
/// </summary>
internal static class OrderParts
{
    public static IReadOnlyList<OrderPart> Of(OrderProblem problem)
    {
        var count = problem.Sections.Count;
        var tied = problem.Crew > 1 || problem.Mixing is not null || problem.Sections.Any(s => s.NotBeforeMs > 0 || s.StartedAtMs is not null);
        if (tied) return [new OrderPart(problem, [.. Enumerable.Range(0, count)])];

        var links = problem.Laps.Concat(problem.Before.Select(b => new OrderLap(b.First, b.Then)));
        return [.. new LapGraph(count, links).Parts().Select(part => Sub(problem, part))];
    }

    /// <summary>Some sections and what is between them, as a problem of its own.</summary>
    public static OrderPart Sub(OrderProblem problem, IReadOnlyList<int> part)
    {
        var place = new Dictionary<int, int>();
        for (var i = 0; i < part.Count; i++) place[part[i]] = i;
        return new OrderPart(
            problem with
            {
                Sections = [.. part.Select(i => problem.Sections[i])],
                Laps = [.. problem.Laps.Where(l => place.ContainsKey(l.A) && place.ContainsKey(l.B)).Select(l => l with { A = place[l.A], B = place[l.B] })],
                Before = [.. problem.Before.Where(b => place.ContainsKey(b.First) && place.ContainsKey(b.Then)).Select(b => (place[b.First], place[b.Then]))],
                Apart = [.. problem.Apart.Where(b => place.ContainsKey(b.A) && place.ContainsKey(b.B)).Select(b => (place[b.A], place[b.B]))],
            },
            part);
    }
}
