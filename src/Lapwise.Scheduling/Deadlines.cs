using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>Deadlines a schedule misses, by how much, and what is to blame.</summary>
internal static class Deadlines
{
    public static IReadOnlyList<Reason> Missed(ScheduleProblem problem, IReadOnlyList<PlacedVisit> placed)
    {
        List<Reason> reasons = [];
        var heads = LeastEnd.Heads(problem);
        for (var i = 0; i < placed.Count; i++)
        {
            var visit = problem.Visits[i];
            if (visit.DueBy is not { } due || placed[i].Start + visit.Length is var end && end <= due) continue;
            var aloneEnd = (heads?[i] ?? 0) + visit.Length;
            var lag = LongestBefore(problem, i);
            reasons.Add(new Reason("DeadlineMissed", Limit.AtYourWord,
                v => v.Say($"{visit.Name(v)} ends {Voice.Span((end - due) * 60.0)} after its deadline. ", $"{visit.Name(v)} acaba {Voice.Span((end - due) * 60.0)} después de su plazo. ")
                    + (aloneEnd > due
                        ? v.Say($"Even alone it would be {Voice.Span((aloneEnd - due) * 60.0)} late; the longest window on its way: {lag?.Invoke(v) ?? "–"}.", $"Ni solo llegaría: {Voice.Span((aloneEnd - due) * 60.0)} tarde; la ventana más larga de su camino: {lag?.Invoke(v) ?? "–"}.")
                        : v.Say("Alone it would be in time: other jobs hold the crews.", "Solo llegaría a tiempo: otros trabajos ocupan los equipos.")),
                v => v.Say("Begin it earlier, move another job, add a crew, or agree on a later date.", "Empiécelo antes, mueva otro trabajo, añada un equipo o acuerde otra fecha.")));
        }

        return reasons;
    }

    /// <summary>The longest lag among those that lead to a visit.</summary>
    private static Phrase? LongestBefore(ScheduleProblem problem, int visit)
    {
        HashSet<int> before = [visit];
        List<Lag> on = [];
        for (var grown = true; grown;)
        {
            grown = false;
            foreach (var lag in problem.Lags.Where(l => l.Least > 0 && before.Contains(l.To)))
            {
                if (!on.Contains(lag)) on.Add(lag);
                grown |= before.Add(lag.From);
            }
        }

        return on.OrderByDescending(l => l.Least - problem.Visits[l.From].Length).FirstOrDefault()?.Name;
    }
}
