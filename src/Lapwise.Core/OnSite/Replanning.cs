using Lapwise.Core.Explain;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.OnSite;

/// <summary>The rest of a run as it is best done from now.</summary>
/// <param name="Turns">What is ahead, in order.</param>
/// <param name="IsChanged">Another order than the one in force: worth a mark, and worth saying.</param>
/// <param name="Changes">What changed, the next step first.</param>
public sealed record Replan(IReadOnlyList<IssuedTurn> Turns, Forecast Forecast, bool IsChanged, IReadOnlyList<Phrase> Changes)
{
    /// <summary>Least harm, where a lap cannot be had any more; null: every lap can.</summary>
    public Salvage? Salvage { get; init; }
}

/// <summary>
/// Plans what is ahead anew, from what was done and at the pace seen. An order that still keeps its margin is left alone: the one
/// in the roller's head is worth more than a second or two.
/// </summary>
public static class Replanning
{
    /// <summary>Steps of the search that a phone does between two strokes.</summary>
    public const long UsualSteps = 600;

    /// <param name="nowMs">In the run's time.</param>
    /// <param name="mostSteps">Counted steps of the search.</param>
    public static Replan Replan(Run run, long nowMs, long mostSteps = UsualSteps) =>
        Slices.AtOnce(ReplanAsync(run, nowMs, mostSteps, Effort.AtOnce.Pause));

    /// <summary>The same in slices, with a pause between them.</summary>
    /// <exception cref="OperationCanceledException">The pause stopped it.</exception>
    public static async ValueTask<Replan> ReplanAsync(Run run, long nowMs, long mostSteps, Pause pause)
    {
        ArgumentNullException.ThrowIfNull(pause);
        var pace = PaceSeen.Of(run);
        var kept = new Way(Forecasting.Ahead(run, run.Turns), Forecasting.Of(run, pace, nowMs, run.Turns));
        // Before anything is mixed the issued plan stands: it was searched for longer than a phone can now.
        if (kept.Turns.Count == 0 || !run.HasBegun || (kept.Forecast.KeepsBatches && kept.Forecast.LeastMarginMs >= run.Plan.TargetMarginMs)) return await ToldAsync(run, kept, kept, pace, pause);

        var best = kept;
        // The same sections in the same order, with batches mixed elsewhere, change the least.
        foreach (var way in WithBatches(run, pace, nowMs, [.. kept.Turns.Select(t => t with { Batch = "" })]))
        {
            best = way.IsBetterThan(best, run.Plan) ? way : best;
            await pause();
        }

        foreach (var rollers in RollersTried(run))
        {
            if (best.Keeps(run.Plan.TargetMarginMs)) break;
            var order = await SearchAsync(run, pace, nowMs, rollers, [], mostSteps, pause);
            foreach (var way in WithBatches(run, pace, nowMs, order))
            {
                best = way.IsBetterThan(best, run.Plan) ? way : best;
                await pause();
            }
        }

        return await ToldAsync(run, kept, best, pace, pause);
    }

    /// <summary>Those who roll in the order in force; all hands only where that loses a lap.</summary>
    private static IEnumerable<IReadOnlyList<int>> RollersTried(Run run)
    {
        var rollers = run.Turns.Select(t => t.Person).Concat(run.Sections.Values.Select(s => s.Person)).Where(p => p >= 0 && p < run.Plan.Crew.Count).Distinct().Order().ToList();
        if (rollers.Count == 0) rollers.Add(0);
        yield return rollers;
        if (rollers.Count < run.Plan.Crew.Count) yield return [.. Enumerable.Range(0, run.Plan.Crew.Count)];
    }

    /// <summary>
    /// Batches follow the order: from the cup as long as it lasts; where that loses a lap, also with a fresh one mixed first, or
    /// where a top begins, since a mixing in the middle of a top ages every lap across it.
    /// </summary>
    internal static IEnumerable<Way> WithBatches(Run run, PaceSeen pace, long nowMs, IReadOnlyList<IssuedTurn> order)
    {
        var asLongAsItLasts = From(order);
        yield return asLongAsItLasts;
        if (!asLongAsItLasts.Forecast.Lost.Any() && asLongAsItLasts.Forecast.KeepsBatches) yield break;
        // What was to be mixed ahead still is.
        if (order.All(t => t.Mixes is null) && MixedAhead(run) is { Count: > 0 } ahead) yield return From([order[0] with { Mixes = ahead }, .. order.Skip(1)]);
        var begins = Enumerable.Range(0, order.Count).Where(i => i == 0 || run.SectionOf(order[i].Section).Top != run.SectionOf(order[i - 1].Section).Top).ToList();
        foreach (var first in begins)
        {
            yield return Fresh(i => i == first);
            if (begins.Count > 1) yield return Fresh(i => i >= first && begins.Contains(i));
        }

        Way Fresh(Func<int, bool> here) => From([.. order.Select((t, i) => here(i) ? t with { Batch = Forecasting.FreshBatch } : t)]);

        Way From(IReadOnlyList<IssuedTurn> turns)
        {
            var forecast = Forecasting.Of(run, pace, nowMs, turns);
            var batch = forecast.Sections.ToDictionary(s => s.Section.Id, s => s.Batch, StringComparer.Ordinal);
            return new Way([.. turns.Select(t => t with { Batch = batch[t.Section] })], forecast);
        }
    }

    /// <summary>What the order in force mixes ahead and is not mixed yet.</summary>
    private static List<string> MixedAhead(Run run) =>
        [.. Forecasting.Ahead(run, run.Turns).SelectMany(t => t.Mixes ?? []).Where(id => run.Batches.All(b => b.Batch != id))];

    /// <summary>The order search over what is ahead, with what is wet already begun; laps given up are left out of it.</summary>
    internal static async ValueTask<IReadOnlyList<IssuedTurn>> SearchAsync(Run run, PaceSeen pace, long nowMs, IReadOnlyList<int> rollers, IReadOnlyCollection<IssuedLap> givenUp, long mostSteps, Pause pause)
    {
        var ahead = Forecasting.Ahead(run, run.Turns).Select(t => t.Section).ToHashSet(StringComparer.Ordinal);
        var laps = run.Plan.Laps.Where(l => l.Kind is not LapKind.Break && !givenUp.Contains(l) && (ahead.Contains(l.A) || ahead.Contains(l.B))).ToList();
        // Of what is done only the neighbours of what is ahead still matter.
        var touching = laps.SelectMany(l => new[] { l.A, l.B }).ToHashSet(StringComparer.Ordinal);
        var taking = run.Plan.Sections.Where(s => ahead.Contains(s.Id) || (run.IsBegun(s.Id) && (touching.Contains(s.Id) || !run.IsDry(s.Id)))).ToList();
        var place = taking.Select((s, i) => (s.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        var begun = Forecasting.Of(run, pace, nowMs, run.Turns).Sections.Where(s => s.Progress is not Progress.Ahead).ToDictionary(s => s.Section.Id, StringComparer.Ordinal);

        var problem = new OrderProblem(
            [.. taking.Select(s => begun.TryGetValue(s.Id, out var b)
                ? new OrderSection(s.Id, [WholeSeconds(run.FilmMs(b.EndMs) - b.FilmSinceMs)], StartedAtMs: -WholeSeconds(nowMs - b.FilmSinceMs))
                : new OrderSection(s.Id, [.. rollers.Select(p => WholeSeconds(pace.TimeOf(s, p)))]))],
            [.. laps.Where(l => place.ContainsKey(l.A) && place.ContainsKey(l.B)).Select(l => new OrderLap(place[l.A], place[l.B]))],
            [.. taking.SelectMany(s => s.After.Where(a => place.ContainsKey(a) && ahead.Contains(s.Id)).Select(a => (place[a], place[s.Id])))],
            rollers.Count)
        {
            Apart = rollers.Count == 1 ? [] : [.. from a in taking from b in taking where place[a.Id] < place[b.Id] && Forecasting.Elbows(a, b) select (place[a.Id], place[b.Id])],
        };
        var found = await OrderSearch.SolveAsync(problem, mostSteps, Math.Max(1, run.OpenTimeMs - run.Plan.TargetMarginMs), pause);
        return TurnsOf(found, taking, rollers, ahead);
    }

    private static List<IssuedTurn> TurnsOf(FoundOrder found, List<IssuedSection> taking, IReadOnlyList<int> rollers, HashSet<string> ahead)
    {
        var turns = new List<IssuedTurn>();
        var free = new Dictionary<int, long>();
        foreach (var p in found.Sections.OrderBy(p => p.StartMs).ThenBy(p => p.Section))
        {
            var id = taking[p.Section].Id;
            if (ahead.Contains(id))
            {
                var wait = p.StartMs - Math.Max(0, free.GetValueOrDefault(p.Person));
                turns.Add(new IssuedTurn { Section = id, Person = rollers[Math.Min(p.Person, rollers.Count - 1)], WaitMs = rollers.Count > 1 && wait >= 1000 ? wait : null });
            }

            free[p.Person] = p.EndMs;
        }

        return turns;
    }

    private static long WholeSeconds(long ms) => (ms + 999) / 1000 * 1000;

    private static async ValueTask<Replan> ToldAsync(Run run, Way kept, Way best, PaceSeen pace, Pause pause)
    {
        var salvage = best.Forecast.Lost.Any() ? await Salvaging.SalvageAsync(run, pace, kept, best, pause) : null;
        var isChanged = !ReferenceEquals(kept, best) && !kept.Turns.SequenceEqual(best.Turns);
        return new Replan(best.Turns, best.Forecast, isChanged, isChanged ? [.. Changes(run, kept, best)] : []) { Salvage = salvage };
    }

    private static IEnumerable<Phrase> Changes(Run run, Way kept, Way best)
    {
        if (kept.Turns[0] != best.Turns[0] && (kept.Turns[0].Section != best.Turns[0].Section || kept.Turns[0].Person != best.Turns[0].Person))
        {
            var (was, now) = (kept.Turns[0], best.Turns[0]);
            yield return v => v.Say($"Next is now section {now.Section}, {MarkWords.Name(run, now.Person)}; it was {was.Section}.", $"Ahora sigue la sección {now.Section}, {MarkWords.Name(run, now.Person)}; antes era la {was.Section}.");
        }

        var order = string.Join(" → ", best.Turns.Select(t => t.Section));
        if (!kept.Turns.Select(t => t.Section).SequenceEqual(best.Turns.Select(t => t.Section), StringComparer.Ordinal))
            yield return v => v.Say($"New order: {order}.", $"Nuevo orden: {order}.");
        foreach (var turn in best.Turns.Where(t => kept.Turns.Any(k => k.Section == t.Section && k.Person != t.Person)).Take(3))
            yield return v => v.Say($"{MarkWords.Name(run, turn.Person)} takes section {turn.Section}.", $"{MarkWords.Name(run, turn.Person)} toma la sección {turn.Section}.");
        var (before, after) = (kept.Forecast.LeastMarginMs, best.Forecast.LeastMarginMs);
        if (before >= 0 && after >= 0 && before != after && Math.Max(before, after) != long.MaxValue)
            yield return v => v.Say($"Least margin {Voice.Span(before / 1000)} before, {Voice.Span(after / 1000)} now.", $"Margen mínimo: antes {Voice.Span(before / 1000)}, ahora {Voice.Span(after / 1000)}.");
        var (lost, loses) = (kept.Forecast.Lost.Count(), best.Forecast.Lost.Count());
        if (lost > 0)
            yield return v => loses == 0
                ? v.Say("As it was, a lap would have come too late; now every lap comes in time.", "Como estaba, un solape habría llegado tarde; ahora todos llegan a tiempo.")
                : v.Say($"Laps that come too late: {lost} before, {loses} now.", $"Solapes que llegan tarde: antes {lost}, ahora {loses}.");
    }
}

/// <summary>One order of what is ahead, on the clock.</summary>
internal sealed record Way(IReadOnlyList<IssuedTurn> Turns, Forecast Forecast)
{
    public bool Keeps(long marginMs) => Forecast.KeepsBatches && Forecast.LeastMarginMs >= marginMs;

    /// <summary>Less of lost lines to see; then batches within their life; then the larger margin.</summary>
    public bool IsBetterThan(Way other, IssuedPlan plan) => Key(plan).CompareTo(other.Key(plan)) < 0;

    private (double, bool, long) Key(IssuedPlan plan) => (Math.Round(Forecast.Lost.Sum(l => LineHarm.SeenM(l.Lap, plan)), 6), !Forecast.KeepsBatches, -Forecast.LeastMarginMs);
}
