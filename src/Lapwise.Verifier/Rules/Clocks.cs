namespace Lapwise.Verifier.Rules;

/// <summary>The coat is the job's, and its open time and pot life are those of the room.</summary>
internal static class Clocks
{
    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Clocks);
        var (plan, conditions) = (c.Plan, c.Conditions);
        f.Holds(plan.Product == c.Coat.Product.Id, "ProductDiffers", c.Place,
            v => v.Say($"The plan is for {plan.Product}, the job for {c.Coat.Product.Id}.", $"El plan es para {plan.Product}, el trabajo para {c.Coat.Product.Id}."));
        f.Holds(string.Equals(plan.Method, c.Coat.Product.Method.ToString(), StringComparison.OrdinalIgnoreCase), "MethodDiffers", c.Place,
            v => v.Say($"The plan says {plan.Method}; the product is otherwise applied.", $"El plan dice {plan.Method}; el producto se aplica de otro modo."));
        f.Holds(string.Equals(plan.OpenTimeOrigin, conditions.OpenTime.Origin.ToString(), StringComparison.OrdinalIgnoreCase), "OriginDiffers", c.Place,
            v => v.Say($"The open time does not come from {plan.OpenTimeOrigin}.", $"El tiempo abierto no viene de {plan.OpenTimeOrigin}."));
        Same("OpenTimeWrong", plan.OpenTimeS, conditions.OpenTime.Seconds, 0.001);
        Same("PotLifeWrong", plan.PotLifeS, conditions.PotLife.Seconds, 1);

        // Rounding may take time away, never add some.
        void Same(string code, double planned, double own, double roundedDownS) =>
            f.Holds(planned <= own + Tolerance.S && planned > own - roundedDownS - Tolerance.S, code, c.Place,
                v => v.Say($"The plan says {v.Number(planned, 3)} s; in this room it is {v.Number(own, 3)} s.", $"El plan dice {v.Number(planned, 3)} s; en esta sala son {v.Number(own, 3)} s."));
    }
}
