namespace Lapwise.Verifier.Rules;

/// <summary>
/// Lap age is the later end less the earlier start; section age the end less the start; margin the open time less the
/// worst of them. A planned joint has no limit.
/// </summary>
internal static class Ages
{
    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Ages);
        var plan = c.Plan;
        var byId = plan.Sections.DistinctBy(s => s.Id).ToDictionary(s => s.Id, StringComparer.Ordinal);
        var worstLapS = 0.0;
        foreach (var lap in plan.Laps)
        {
            if (!byId.TryGetValue(lap.A, out var a) || !byId.TryGetValue(lap.B, out var b)) continue;
            var ageS = Math.Max(a.EndS, b.EndS) - Math.Min(a.StartS, b.StartS);
            Same("LapAgeWrong", c.At(lap), lap.AgeS, ageS);
            Same("LapMarginWrong", c.At(lap), lap.MarginS, plan.OpenTimeS - ageS);
            var later = a.StartS != b.StartS ? (a.StartS > b.StartS ? a : b) : a.EndS > b.EndS ? a : b;
            f.Holds(lap.JoinedBy == later.Id || (lap.JoinedBy == a.Id && a.StartS == b.StartS && a.EndS == b.EndS), "JoinedByWrong", c.At(lap),
                v => v.Say($"The plan says {lap.JoinedBy} joins it; {later.Id} is begun later.", $"El plan dice que la une {lap.JoinedBy}; {later.Id} empieza más tarde."));
            if (lap.Kind != "break") worstLapS = Math.Max(worstLapS, ageS);
        }

        var worstSectionS = plan.Sections.Select(s => s.EndS - s.StartS).DefaultIfEmpty(0).Max();
        Same("WorstLapAgeWrong", c.Place, plan.WorstLapAgeS, worstLapS);
        Same("WorstSectionAgeWrong", c.Place, plan.WorstSectionAgeS, worstSectionS);
        Same("MarginWrong", c.Place, plan.LapMarginS, plan.OpenTimeS - Math.Max(worstLapS, worstSectionS));

        void Same(string code, string place, double planned, double own) => f.Holds(Math.Abs(planned - own) <= Tolerance.S, code, place,
            v => v.Say($"The plan says {v.Number(planned, 3)} s; it is {v.Number(own, 3)} s.", $"El plan dice {v.Number(planned, 3)} s; son {v.Number(own, 3)} s."));
    }
}
