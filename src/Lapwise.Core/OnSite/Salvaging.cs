using Lapwise.Core.Explain;
using Lapwise.Core.Measure;
using Lapwise.Core.Work;

namespace Lapwise.Core.OnSite;

/// <summary>What to do once a lap is lost: least harm, where to stop, which lines will show, and the mend.</summary>
/// <param name="Turns">What is still rolled, in order.</param>
/// <param name="Left">What is left for after the mend; empty: everything is rolled today.</param>
/// <param name="Lines">The lines that will show, the most seen first.</param>
/// <param name="SeenM">Metres of line, weighted by how much they are seen.</param>
/// <param name="Mend">What is done about the lines, in order.</param>
public sealed record Salvage(IReadOnlyList<IssuedTurn> Turns, IReadOnlyList<string> Left, IReadOnlyList<SalvageLine> Lines, double SeenM, IReadOnlyList<Phrase> Mend);

/// <param name="IsStop">The work stops here; false: the lap is joined too late.</param>
public sealed record SalvageLine(IssuedLap Lap, bool IsStop, double SeenM);

/// <summary>
/// Looks for the way on with the least line to see: laps that cannot be had are given up one by one, the least seen first, and
/// each order found is weighed against stopping after every one of its sections, over all tops or within the top that lost a lap.
/// </summary>
internal static class Salvaging
{
    private const int MostRounds = 6;
    private const long StepsARound = 300;

    public static async ValueTask<Salvage> SalvageAsync(Run run, PaceSeen pace, Way kept, Way best, Pause pause)
    {
        var ways = new List<Way> { kept };
        if (!ReferenceEquals(kept, best)) ways.Add(best);
        var rollers = best.Turns.Select(t => t.Person).Distinct().Order().ToList();
        var givenUp = best.Forecast.Lost.Where(l => !CanBeHad(run, pace, l, best.Forecast.NowMs)).Select(l => l.Lap).ToHashSet();
        for (var round = 0; round < MostRounds && best.Turns.Count > 1; round++)
        {
            var found = new List<Way>();
            foreach (var tried in Replanning.WithBatches(run, pace, best.Forecast.NowMs, await Replanning.SearchAsync(run, pace, best.Forecast.NowMs, rollers, givenUp, StepsARound, pause)))
            {
                found.Add(tried);
                await pause();
            }

            ways.AddRange(found);
            var way = found.Aggregate((a, b) => b.IsBetterThan(a, run.Plan) ? b : a);
            if (way.Forecast.Lost.Where(l => !givenUp.Contains(l.Lap)).MinBy(l => LineHarm.SeenM(l.Lap, run.Plan)) is not { } next) break;
            givenUp.Add(next.Lap);
        }

        var stops = new List<(Way Way, IReadOnlySet<string> Left, IReadOnlyList<SalvageLine> Lines, int Rank)>();
        foreach (var (way, i) in ways.Select((w, i) => (w, i)))
        {
            stops.AddRange(Stops(run, way).Select(s => (s.Way, s.Left, s.Lines, i)));
            await pause();
        }

        var stop = stops
            .OrderBy(s => Math.Round(s.Lines.Sum(l => l.SeenM), 6)).ThenBy(s => s.Left.Count).ThenBy(s => s.Lines.Count).ThenBy(s => s.Rank)
            .First();
        IReadOnlyList<SalvageLine> lines = [.. stop.Lines.OrderByDescending(l => l.SeenM).ThenBy(l => l.Lap.A, StringComparer.Ordinal)];
        return new Salvage(
            [.. stop.Way.Turns.Where(t => !stop.Left.Contains(t.Section))],
            [.. stop.Way.Turns.Select(t => t.Section).Where(stop.Left.Contains)],
            lines, lines.Sum(l => l.SeenM), Mend(run.Plan, lines, stop.Left.Count > 0));
    }

    /// <summary>Whether the section that joins could still end in time if it were begun now.</summary>
    private static bool CanBeHad(Run run, PaceSeen pace, ForecastLap lap, long nowMs)
    {
        if (lap.Standing is LapStage.Ahead) return true;
        if (lap.Standing is LapStage.Joined) return false;
        var late = new[] { lap.Lap.A, lap.Lap.B }.Select(run.SectionOf).Where(s => !run.IsDry(s.Id)).Max(s => run.IsBegun(s.Id) ? 0 : Enumerable.Range(0, run.Plan.Crew.Count).Min(p => pace.TimeOf(s, p)));
        return lap.SinceMs + run.OpenTimeMs >= nowMs + late;
    }

    /// <summary>Going on to the end, and stopping after each section: of everything, or only of the tops with a lost lap.</summary>
    private static IEnumerable<(Way Way, IReadOnlySet<string> Left, IReadOnlyList<SalvageLine> Lines)> Stops(Run run, Way way)
    {
        var hurt = way.Forecast.Lost.SelectMany(l => new[] { l.Lap.A, l.Lap.B }).Select(id => run.SectionOf(id).Top).ToHashSet(StringComparer.Ordinal);
        var ofHurt = way.Turns.Where(t => hurt.Contains(run.SectionOf(t.Section).Top)).ToList();
        for (var done = way.Turns.Count; done >= 0; done--) yield return StoppedAfter(way.Turns, done);
        for (var done = ofHurt.Count - 1; ofHurt.Count < way.Turns.Count && done >= 0; done--) yield return StoppedAfter(ofHurt, done);

        (Way, IReadOnlySet<string>, IReadOnlyList<SalvageLine>) StoppedAfter(IReadOnlyList<IssuedTurn> turns, int done)
        {
            var left = turns.Skip(done).Select(t => t.Section).ToHashSet(StringComparer.Ordinal);
            return (way, left, LinesOf(run.Plan, way.Forecast, left));
        }
    }

    private static IReadOnlyList<SalvageLine> LinesOf(IssuedPlan plan, Forecast forecast, HashSet<string> left)
    {
        var lines = new List<SalvageLine>();
        foreach (var lap in forecast.Laps)
        {
            var (a, b) = (left.Contains(lap.Lap.A), left.Contains(lap.Lap.B));
            if (a && b) continue;
            var stops = a || b || lap.Standing is LapStage.Stopped;
            // A section left beside one that was left before makes no line.
            if ((a || b) && lap.Standing is LapStage.Stopped) continue;
            if (stops || lap.MarginMs < 0) lines.Add(new SalvageLine(lap.Lap, stops, LineHarm.SeenM(lap.Lap, plan)));
        }

        return lines;
    }

    internal static IReadOnlyList<Phrase> Mend(IssuedPlan plan, IReadOnlyList<SalvageLine> lines, bool leaves)
    {
        if (lines.Count == 0) return [];
        var faces = lines.SelectMany(l => new[] { l.Lap.A, l.Lap.B }).Select(id => plan.Sections.First(s => s.Id == id)).DistinctBy(s => (s.Top, s.Face, s.Side)).ToList();
        var mend = new List<Phrase>
        {
            v => v.Say("Do not touch a line while it sets: each stroke makes it wider.", "No toque una línea mientras fragua: cada pasada la ensancha."),
            plan.Recoat is { } r
                ? v => v.Say($"Let it cure: not before {Voice.Span(r.EarliestMs / 1000)} at {v.Temperature(r.AtCelsius)} by the data sheet, longer when cooler, and until it sands to dry dust and does not clog the paper.",
                    $"Deje curar: no antes de {Voice.Span(r.EarliestMs / 1000)} a {v.Temperature(r.AtCelsius)} según la ficha, más si hace fresco, y hasta que al lijar dé polvo seco y no embote la lija.")
                : v => v.Say("Let it cure as the data sheet says before sanding (this product's entry gives no recoat time), until it sands to dry dust and does not clog the paper.",
                    "Deje curar lo que diga la ficha antes de lijar (este producto no tiene anotado el tiempo de repintado), hasta que al lijar dé polvo seco y no embote la lija."),
            v => v.Say("Sand the line flush, then the whole face dull. Dust of half-cured coating can sensitise: extraction, and the respirator the safety data sheet names.",
                "Lije la línea a ras y después toda la cara mate. El polvo de una capa a medio curar puede sensibilizar: aspiración, y el respirador que indica la hoja de datos de seguridad."),
            v => v.Say($"Coat again in one go, from edge to edge: {string.Join("; ", faces.Select(f => MarkWords.Place(f, v)))}.", $"Vuelva a aplicar de una vez, de canto a canto: {string.Join("; ", faces.Select(f => MarkWords.Place(f, v)))}."),
        };
        if (leaves) mend.Insert(1, v => v.Say("Where you stop, end in a straight edge along the lap: tape it, draw the tape while the film is soft.", "Donde pare, termine con un borde recto a lo largo del solape: con cinta, y quítela con la película aún blanda."));
        return mend;
    }
}
