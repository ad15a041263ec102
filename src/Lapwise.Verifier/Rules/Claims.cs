namespace Lapwise.Verifier.Rules;

/// <summary>A plan that does not work says so with a reason; what it calls proven is no better than its own bound; the usual ways stand beside it.</summary>
internal static class Claims
{
    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Claims);
        var plan = c.Plan;
        var worstS = plan.OpenTimeS - plan.LapMarginS;
        var against = plan.Reasons.Any(r => r.Limit != "note");
        f.Holds(!plan.Holds || plan.LapMarginS >= 0, "ClosedLapHidden", c.Place,
            v => v.Say($"The margin is {v.Number(plan.LapMarginS, 1)} s and the plan says it holds.", $"El margen es {v.Number(plan.LapMarginS, 1)} s y el plan dice que aguanta."));
        f.Holds(plan.Holds != against, "HoldsAgainstReasons", c.Place,
            v => plan.Holds
                ? v.Say("The plan says it holds and gives a reason why not.", "El plan dice que aguanta y da un motivo en contra.")
                : v.Say("The plan says it does not hold and gives no reason.", "El plan dice que no aguanta y no da motivo."));
        f.Holds(plan.Reasons.All(r => r.Code.Length > 0 && r.Text.Length > 0 && r.Remedy.Length > 0), "ReasonEmpty", c.Place,
            v => v.Say("A reason lacks its code, text or remedy.", "A un motivo le falta el código, el texto o el remedio."));

        f.Holds(plan.Proof.BoundS <= worstS + Tolerance.S, "BoundAboveWorst", c.Place,
            v => v.Say($"The bound of {v.Number(plan.Proof.BoundS, 1)} s is above the plan's own worst age of {v.Number(worstS, 1)} s.", $"La cota de {v.Number(plan.Proof.BoundS, 1)} s supera la peor edad del plan, {v.Number(worstS, 1)} s."));
        f.Holds(plan.Proof.State == "bounded" || (plan.Proof.State == "proven" && plan.Proof.BoundS >= worstS - Tolerance.S), "ProofWrong", c.Place,
            v => v.Say($"Called {plan.Proof.State} with a bound of {v.Number(plan.Proof.BoundS, 1)} s and a worst age of {v.Number(worstS, 1)} s.", $"Figura como {plan.Proof.State} con una cota de {v.Number(plan.Proof.BoundS, 1)} s y una peor edad de {v.Number(worstS, 1)} s."));
        f.Holds(plan.Proof.Of == "order" ? plan.Proof.Ways is null : plan.Proof is { Of: "order and sections", State: "proven", Ways: > 1 }, "ProofOfWrong", c.Place,
            v => v.Say($"It is said to be proven of: {plan.Proof.Of}, of {plan.Proof.Ways ?? 0} ways.", $"Se dice demostrado de: {plan.Proof.Of}, de {plan.Proof.Ways ?? 0} formas."));

        var usual = plan.Baselines.Select(b => b.Name).ToList();
        f.Holds(plan.Method != "rolled" || c.Coat.Product.WholeTopAtOnce || (usual.Contains("usual-sweep") && usual.Contains("wet-all-first")), "BaselineMissing", c.Place,
            v => v.Say("The usual ways do not stand beside the plan.", "Las formas usuales no figuran junto al plan."));
        f.Holds(plan.Baselines.All(b => double.IsFinite(b.WorstLapAgeS) && b.WorstLapAgeS > 0), "BaselineMissing", c.Place,
            v => v.Say("A usual way has no worst age.", "Una forma usual no tiene peor edad."));
    }
}
