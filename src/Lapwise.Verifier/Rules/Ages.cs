namespace Lapwise.Verifier.Rules;

/// <summary>
/// Lap age is the later end less the earlier start; section age the end less the start. Film from a batch that has stood
/// stays open less: by a share of the time since its mixing, up to a whole second. Margin is the open time so left, less
/// the age. A planned joint has no limit.
/// </summary>
internal static class Ages
{
    /// <summary>What reacts has begun in the cup: the sheet's share of reaction, or half of open time to pot life where it gives none.</summary>
    private static double AgeShare(CoatCase c)
    {
        var atMost = Math.Min(1, c.Conditions.OpenTime.Seconds / c.Conditions.PotLife.Seconds);
        return c.Coat.Product.Drying is { } drying ? Math.Min(1 - drying.EvaporationShare, atMost) : atMost / 2;
    }

    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Ages);
        var plan = c.Plan;
        var byId = plan.Sections.DistinctBy(s => s.Id).ToDictionary(s => s.Id, StringComparer.Ordinal);
        f.Holds(Math.Abs(plan.BatchAgeShare - AgeShare(c)) <= 1e-9, "BatchAgeShareWrong", c.Place,
            v => v.Say($"The plan counts {v.Number(plan.BatchAgeShare, 4)} of a batch's age; it is {v.Number(AgeShare(c), 4)}.", $"El plan cuenta {v.Number(plan.BatchAgeShare, 4)} de la edad de la mezcla; es {v.Number(AgeShare(c), 4)}."));
        var mixed = plan.Batches.DistinctBy(b => b.Id).ToDictionary(b => b.Id, StringComparer.Ordinal);
        var worstLapS = 0.0;
        var leastS = double.PositiveInfinity;
        foreach (var s in plan.Sections)
        {
            Same("UsedWrong", c.At(s), s.UsedS, UsedS(s));
            leastS = Math.Min(leastS, plan.OpenTimeS - UsedS(s) - (s.EndS - s.StartS));
        }

        foreach (var lap in plan.Laps)
        {
            if (!byId.TryGetValue(lap.A, out var a) || !byId.TryGetValue(lap.B, out var b)) continue;
            var ageS = Math.Max(a.EndS, b.EndS) - Math.Min(a.StartS, b.StartS);
            Same("LapAgeWrong", c.At(lap), lap.AgeS, ageS);
            // Either film must still be open when both are done.
            var marginS = plan.OpenTimeS - Math.Max(UsedS(a) + Math.Max(a.EndS, b.EndS) - a.StartS, UsedS(b) + Math.Max(a.EndS, b.EndS) - b.StartS);
            Same("LapMarginWrong", c.At(lap), lap.MarginS, marginS);
            var later = a.StartS != b.StartS ? (a.StartS > b.StartS ? a : b) : a.EndS > b.EndS ? a : b;
            f.Holds(lap.JoinedBy == later.Id || (lap.JoinedBy == a.Id && a.StartS == b.StartS && a.EndS == b.EndS), "JoinedByWrong", c.At(lap),
                v => v.Say($"The plan says {lap.JoinedBy} joins it; {later.Id} is begun later.", $"El plan dice que la une {lap.JoinedBy}; {later.Id} empieza más tarde."));
            if (lap.Kind == "break") continue;
            worstLapS = Math.Max(worstLapS, ageS);
            leastS = Math.Min(leastS, marginS);
        }

        var worstSectionS = plan.Sections.Select(s => s.EndS - s.StartS).DefaultIfEmpty(0).Max();
        Same("WorstLapAgeWrong", c.Place, plan.WorstLapAgeS, worstLapS);
        Same("WorstSectionAgeWrong", c.Place, plan.WorstSectionAgeS, worstSectionS);
        Same("MarginWrong", c.Place, plan.LapMarginS, plan.Sections.Count == 0 ? plan.OpenTimeS : leastS);

        // Past its pot life nothing is rolled from a batch, so no more of its age counts; a plan that does so does not hold.
        double UsedS(PlannedSection s) => mixed.TryGetValue(s.Batch, out var batch) && Math.Min(s.StartS, batch.UseByS) - batch.MixEndS is > 0 and var ageS
            ? Math.Ceiling((plan.BatchAgeShare * ageS) - 1e-6) : 0;

        void Same(string code, string place, double planned, double own) => f.Holds(Math.Abs(planned - own) <= Tolerance.S, code, place,
            v => v.Say($"The plan says {v.Number(planned, 3)} s; it is {v.Number(own, 3)} s.", $"El plan dice {v.Number(planned, 3)} s; son {v.Number(own, 3)} s."));
    }
}
