namespace Lapwise.Verifier.Rules;

/// <summary>Everyone named is in the crew, and rolls, pours, mixes or scrapes one thing at a time.</summary>
internal static class Crew
{
    private sealed record Busy(string Person, double FromS, double ToS, string Place);

    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Crew);
        List<Busy> all =
        [
            .. c.Plan.Sections.Select(s => new Busy(s.Person, s.StartS, s.EndS, c.At(s))),
            .. c.Plan.Steps.Where(s => s.Kind is "bubblePass" or "scrapeDrips").Select(s => new Busy(s.Person, s.StartS, s.EndS, c.At(s))),
            .. c.Plan.Batches.Select(b => new Busy(b.MixedBy, b.MixStartS, b.MixEndS, c.At(b))),
        ];
        foreach (var person in all.GroupBy(b => b.Person))
        {
            var known = c.Crew.ContainsKey(person.Key);
            f.Holds(known, "PersonUnknown", person.First().Place, v => v.Say($"{person.Key} is not in the crew.", $"{person.Key} no está en el equipo."));
            var inTurn = person.OrderBy(b => b.FromS).ThenBy(b => b.ToS).ToList();
            for (var i = 1; i < inTurn.Count; i++)
            {
                var (before, after) = (inTurn[i - 1], inTurn[i]);
                f.Holds(after.FromS >= before.ToS - Tolerance.S, "TwoPlacesAtOnce", after.Place,
                    v => v.Say($"{person.Key} begins it before ending {before.Place}.", $"{person.Key} la empieza antes de terminar {before.Place}."));
            }
        }
    }
}
