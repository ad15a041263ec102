using Lapwise.Core.Explain;

namespace Lapwise.Core.Timeline;

/// <summary>What stands between two steps.</summary>
/// <param name="From">Place of the step that is waited for.</param>
/// <param name="To">Place of the step that waits.</param>
/// <param name="NotBefore">From the end of the first, the earliest start of the second. Never falls as the end rises.</param>
public sealed record Link(int From, int To, LinkKind Kind, Func<long, long> NotBefore)
{
    /// <summary>The latest start of the second; null: no limit. Never falls as the end rises.</summary>
    public Func<long, long>? NotAfter { get; init; }
    /// <summary>What is waited for; null: only that one comes after the other.</summary>
    public Phrase? Name { get; init; }
    /// <summary>Where the wait after an end comes from.</summary>
    public Func<long, Basis>? Basis { get; init; }
}

public enum LinkKind { Sequence, Wait, Recoat, Unmask, Without }

/// <summary>A step before it has a place.</summary>
public sealed record StepLength(long LengthMin, bool Splits);

/// <summary>
/// One job on its calendar, every step as early as the others let it: the least fixed point of pushes. A start that comes
/// too early is pushed forward; a start that comes after a latest pushes the step it waited for forward. All pushes are
/// monotone, so the result is the earliest schedule there is; where pushes run round a cycle without end there is none.
/// </summary>
public static class EarliestPass
{
    /// <summary>A push further than this beyond the unlimited schedule is round a cycle: weeks repeat, days off are few.</summary>
    private const long BeyondMin = 60 * WorkCalendar.DayMin;

    public abstract record Outcome
    {
        private Outcome() { }

        /// <param name="PushedBy">For each step the link that last pushed it; null: the first day.</param>
        public sealed record Found(IReadOnlyList<Placed> Steps, IReadOnlyList<Link?> PushedBy) : Outcome;

        /// <param name="Cycle">The links that contradict one another, in order.</param>
        public sealed record NoneThereIs(IReadOnlyList<Link> Cycle) : Outcome;
    }

    public static Outcome Run(WorkCalendar calendar, IReadOnlyList<StepLength> steps, IReadOnlyList<Link> links)
    {
        var placed = steps.Select(s => calendar.Place(0, s.LengthMin, s.Splits)).ToArray();
        var pushedBy = new Link?[steps.Count];
        while (Forward(calendar, steps, links, placed, pushedBy)) { }
        var horizon = placed.Max(p => p.End) + BeyondMin;

        while (true)
        {
            var moved = Forward(calendar, steps, links, placed, pushedBy);
            foreach (var link in links)
            {
                if (link.NotAfter is not { } latest || placed[link.To].Start <= latest(placed[link.From].End)) continue;
                placed[link.From] = calendar.PlaceEnding(FirstEnd(latest, placed[link.From].End, placed[link.To].Start), steps[link.From].LengthMin, steps[link.From].Splits);
                pushedBy[link.From] = link;
                moved = true;
                if (placed[link.From].Start > horizon) return new Outcome.NoneThereIs(CycleThrough(link, pushedBy));
            }

            if (!moved) return new Outcome.Found(placed, pushedBy);
        }
    }

    private static bool Forward(WorkCalendar calendar, IReadOnlyList<StepLength> steps, IReadOnlyList<Link> links, Placed[] placed, Link?[] pushedBy)
    {
        var moved = false;
        foreach (var link in links)
        {
            var earliest = link.NotBefore(placed[link.From].End);
            if (placed[link.To].Start >= earliest) continue;
            placed[link.To] = calendar.Place(earliest, steps[link.To].LengthMin, steps[link.To].Splits);
            pushedBy[link.To] = link;
            moved = true;
        }

        return moved;
    }

    /// <summary>The first end from which a start is not too late.</summary>
    private static long FirstEnd(Func<long, long> latest, long tooEarly, long start)
    {
        var (before, after) = (tooEarly, start);
        while (after - before > 1)
        {
            var middle = before + ((after - before) / 2);
            if (latest(middle) >= start) after = middle;
            else before = middle;
        }

        return after;
    }

    /// <summary>Walks back who pushed whom until a step comes round again.</summary>
    private static IReadOnlyList<Link> CycleThrough(Link last, Link?[] pushedBy)
    {
        List<Link> walked = [];
        List<int> seen = [];
        var step = last.From;
        while (!seen.Contains(step) && pushedBy[step] is { } link)
        {
            seen.Add(step);
            walked.Add(link);
            // Who pushed it stands at the other end: a latest pushes backwards, an earliest forwards.
            step = link.To == step ? link.From : link.To;
        }

        return [.. walked.Skip(Math.Max(0, seen.IndexOf(step))).Reverse()];
    }
}
