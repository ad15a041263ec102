using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work.Remedies;

/// <summary>Planned joints on the tops whose laps are too old. A joint is a line that was chosen; it has no age.</summary>
internal static class BreakRemedies
{
    /// <summary>At an inner corner where a top has one, near an end where it has not; nothing where none has one.</summary>
    public static ValueTask<Remedy?> AtCornerAsync(Trying trying) => AtFault(trying.Now).All(t => BreakPlaces.AtCorners(t).Count == 0)
        ? new ValueTask<Remedy?>(default(Remedy))
        : BreakAsync(trying, RemedyKind.BreakAtCorner, top => BreakPlaces.AtCorners(top) is { Count: > 0 } corners ? corners : NearEnds(top));

    public static ValueTask<Remedy?> NearEndAsync(Trying trying) => BreakAsync(trying, RemedyKind.BreakNearEnd, NearEnds);

    public static ValueTask<Remedy?> InMiddleAsync(Trying trying) => BreakAsync(trying, RemedyKind.BreakInMiddle, top => BreakPlaces.At(top, 0.5));

    private static async ValueTask<Remedy?> BreakAsync(Trying trying, RemedyKind kind, Func<MeasuredTop, IReadOnlyList<IReadOnlyList<BreakLine>>> places)
    {
        if (!trying.Product.BreakAllowed) return null;
        var choices = AtFault(trying.Now).Select(t => (Top: t.Top.Name, Places: places(t))).Where(c => c.Places.Count > 0)
            .ToDictionary(c => c.Top, c => c.Places, StringComparer.Ordinal);
        if (choices.Count == 0) return null;

        // One place a top at a time; a top with fewer places keeps its last.
        var best = await trying.FirstGoodAsync(
            Enumerable.Range(0, choices.Values.Max(c => c.Count)).Select(n => choices.ToDictionary(c => c.Key, c => c.Value[Math.Min(n, c.Value.Count - 1)], StringComparer.Ordinal)),
            breaks => trying.PlanAsync(With(trying.Now.Measured, breaks)));
        return best is not { } b ? null : trying.Made(kind, b.Tried, v => v.Say("Plan a joint: ", "Prevea una junta: ")
            + string.Join("; ", b.Choice.SelectMany(c => c.Value.Select(line => Placed(c.Key, line, v))))
            + v.Say(". It will be seen: agree it with the customer.", ". Se verá: acuérdela con el cliente."));
    }

    private static IReadOnlyList<IReadOnlyList<BreakLine>> NearEnds(MeasuredTop top) => BreakPlaces.At(top, 0.25, 0.75);

    /// <summary>Tops with a lap or section older than the target allows.</summary>
    private static IEnumerable<MeasuredTop> AtFault(Attempt now)
    {
        var (work, target) = (now.Work, now.Work.OpenTimeMs - now.Work.TargetMarginMs);
        var topOf = work.Sections.ToDictionary(s => s.Id, s => s.Face.Top, StringComparer.Ordinal);
        var names = work.Laps.Where(l => l.Kind != LapKind.Break && l.AgeMs + l.UsedMs > target).Select(l => topOf[l.A])
            .Concat(work.Sections.Where(s => s.EndMs - s.StartMs + s.UsedMs > target).Select(s => s.Face.Top))
            .ToHashSet(StringComparer.Ordinal);
        return now.Measured.Tops.Where(t => names.Contains(t.Top.Name));
    }

    private static MeasuredJob With(MeasuredJob measured, Dictionary<string, IReadOnlyList<BreakLine>> breaks) => measured with
    {
        Tops = [.. measured.Tops.Select(t => breaks.TryGetValue(t.Top.Name, out var lines) ? t with { Top = t.Top with { Breaks = [.. t.Top.Breaks, .. lines] } } : t)],
    };

    private static string Placed(string top, BreakLine line, Voice v) => v.Say(
        $"{top}, side {line.Side} at {v.Length(line.AtM)}",
        $"{top}, lado {line.Side} a {v.Length(line.AtM)}");
}
