namespace Lapwise.Verifier.Rules;

/// <summary>
/// Everyone named is in the crew, and rolls, pours, mixes or scrapes one thing at a time; and two people at work on one top
/// at the same time stand apart.
/// </summary>
internal static class Crew
{
    /// <summary>What a person needs along a side. Common practice, no source.</summary>
    private const double ElbowRoomM = 0.6;

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

        Apart(c, f);
    }

    /// <summary>Each section as it is begun, beside those of the same top that others are still at.</summary>
    private static void Apart(CoatCase c, Findings f)
    {
        foreach (var top in c.Sections.GroupBy(s => s.Face.Top))
        {
            var going = new List<SectionCase>();
            foreach (var s in top.OrderBy(s => s.Plan.StartS))
            {
                going.RemoveAll(g => g.Plan.EndS <= s.Plan.StartS + Tolerance.S);
                foreach (var other in going.Where(g => g.Plan.Person != s.Plan.Person))
                {
                    var apartM = s.StandAt.DistanceTo(other.StandAt);
                    f.Holds(apartM >= ElbowRoomM - Tolerance.TapeM, "NoElbowRoom", c.At(s.Plan),
                        v => v.Say($"{s.Plan.Person} stands {v.Length(apartM)} from {other.Plan.Person}, who is still at section {other.Plan.Id}; two people need {v.Length(ElbowRoomM)}.",
                            $"{s.Plan.Person} está a {v.Length(apartM)} de {other.Plan.Person}, que sigue en la sección {other.Plan.Id}; dos personas necesitan {v.Length(ElbowRoomM)}."));
                }

                going.Add(s);
            }
        }
    }
}
