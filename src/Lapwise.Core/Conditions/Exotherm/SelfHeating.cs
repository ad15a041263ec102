namespace Lapwise.Core.Conditions.Exotherm;

/// <summary>One point of the curve of a batch from the first contact of A and B.</summary>
public readonly record struct MixPoint(double Seconds, double Conversion, double Celsius);

/// <summary>What ended the life.</summary>
public enum LifeEnd { Gelled, TooHot, NotReached }

/// <summary>One batch through its life.</summary>
/// <param name="Seconds">Life from the first contact of A and B.</param>
/// <param name="PeakCelsius">Hottest it gets if nobody pours it out.</param>
/// <param name="Curve">From the first contact on, past the end of the life to the peak.</param>
public sealed record BatchLife(double Seconds, LifeEnd End, double PeakCelsius, double PeakSeconds, IReadOnlyList<MixPoint> Curve);

/// <summary>
/// Reaction heat against loss through the vessel, the mix at one temperature throughout:
/// dα/dt = k(T)(1 − α), c · dT/dt = H · dα/dt − U·A/m · (T − T_air).
/// With a loss without end it is the isothermal life, with none the adiabatic one. Steps adapt (Dormand–Prince 5(4)).
/// </summary>
/// <param name="MassG">Above 0.</param>
/// <param name="AreaM2">Surface that loses heat, 0 or more.</param>
public sealed record SelfHeating(Reactivity Mix, double MassG, double AreaM2, double LossWPerM2K = Reactivity.LossWPerM2K)
{
    private const double Tolerance = 1e-8;
    private const int MostSteps = 20_000;

    /// <summary>Loss for each gram and kelvin, 1/s once divided by the heat capacity.</summary>
    private double CoolingPerS => LossWPerM2K * AreaM2 / (MassG * Reactivity.HeatCapacityJPerGK);

    /// <param name="hotCelsius">The life ends here too, whichever comes first; null: only by conversion.</param>
    public BatchLife Run(double startCelsius, double airCelsius, double endConversion = Reactivity.EndConversion, double? hotCelsius = null)
    {
        var at = new MixPoint(0, 0, startCelsius);
        List<MixPoint> curve = [at];
        var (peak, life, end) = (at, double.PositiveInfinity, LifeEnd.NotReached);
        var hot = hotCelsius ?? double.PositiveInfinity;
        if (startCelsius >= hot) (life, end) = (0, LifeEnd.TooHot);

        var step = FirstStepS(startCelsius, airCelsius);
        for (var steps = 0; steps < MostSteps; steps++)
        {
            var (next, taken, wanted) = Accepted(at, step, airCelsius);
            if (end is LifeEnd.NotReached && (next.Conversion >= endConversion || next.Celsius >= hot))
            {
                var crossing = Crossing(at, taken, airCelsius, p => p.Conversion >= endConversion || p.Celsius >= hot);
                (life, end) = (crossing.Seconds, crossing.Celsius >= hot ? LifeEnd.TooHot : LifeEnd.Gelled);
                curve.Add(crossing);
            }

            at = next;
            curve.Add(at);
            if (at.Celsius > peak.Celsius) peak = at;
            if (end is not LifeEnd.NotReached && (at.Conversion > 0.999 || at.Celsius < peak.Celsius - 0.5 || at.Conversion > 0.9 && at.Celsius < peak.Celsius)) break;
            step = wanted;
        }

        return new BatchLife(life, end, peak.Celsius, peak.Seconds, curve);
    }

    /// <summary>Life by conversion alone, seconds, without the curve.</summary>
    public double LifeS(double startCelsius, double airCelsius, double endConversion = Reactivity.EndConversion)
    {
        var at = new MixPoint(0, 0, startCelsius);
        var step = FirstStepS(startCelsius, airCelsius);
        for (var steps = 0; steps < MostSteps; steps++)
        {
            var (next, taken, wanted) = Accepted(at, step, airCelsius);
            if (next.Conversion >= endConversion) return Crossing(at, taken, airCelsius, p => p.Conversion >= endConversion).Seconds;
            (at, step) = (next, wanted);
        }

        return double.PositiveInfinity;
    }

    private double FirstStepS(double startCelsius, double airCelsius) => 0.01 / (Mix.RatePerS(Math.Max(startCelsius, airCelsius)) + CoolingPerS);

    private (double Conversion, double Celsius) Slope(double conversion, double celsius, double airCelsius)
    {
        var reacted = Mix.RatePerS(celsius) * (1 - conversion);
        return (reacted, (Mix.AdiabaticRiseK * reacted) - (CoolingPerS * (celsius - airCelsius)));
    }

    /// <summary>The first step short enough to keep the tolerance, and the length to try next.</summary>
    private (MixPoint Next, double Taken, double Wanted) Accepted(MixPoint at, double step, double airCelsius)
    {
        while (true)
        {
            var (next, error) = Step(at, step, airCelsius);
            var factor = error > 0 ? 0.9 * Math.Pow(Tolerance / error, 0.2) : 5;
            if (error <= Tolerance) return (next, step, step * Math.Clamp(factor, 0.2, 5));
            step *= Math.Clamp(factor, 0.1, 0.9);
        }
    }

    /// <summary>The moment within one step, by halving it; each try is a step of its own, so it is as exact as the curve.</summary>
    private MixPoint Crossing(MixPoint at, double step, double airCelsius, Func<MixPoint, bool> past)
    {
        var (before, after) = (0.0, step);
        for (var i = 0; i < 50 && after - before > 1e-10 * (at.Seconds + step); i++)
        {
            var middle = (before + after) / 2;
            if (past(Step(at, middle, airCelsius).Next)) after = middle;
            else before = middle;
        }

        return Step(at, after, airCelsius).Next;
    }

    private (MixPoint Next, double Error) Step(MixPoint at, double h, double airCelsius)
    {
        var (a, t) = (at.Conversion, at.Celsius);
        var (a1, t1) = Slope(a, t, airCelsius);
        var (a2, t2) = Slope(a + (h * a1 / 5), t + (h * t1 / 5), airCelsius);
        var (a3, t3) = Slope(a + (h * ((3 * a1) + (9 * a2)) / 40), t + (h * ((3 * t1) + (9 * t2)) / 40), airCelsius);
        var (a4, t4) = Slope(a + (h * ((44.0 / 45 * a1) - (56.0 / 15 * a2) + (32.0 / 9 * a3))), t + (h * ((44.0 / 45 * t1) - (56.0 / 15 * t2) + (32.0 / 9 * t3))), airCelsius);
        var (a5, t5) = Slope(
            a + (h * ((19372.0 / 6561 * a1) - (25360.0 / 2187 * a2) + (64448.0 / 6561 * a3) - (212.0 / 729 * a4))),
            t + (h * ((19372.0 / 6561 * t1) - (25360.0 / 2187 * t2) + (64448.0 / 6561 * t3) - (212.0 / 729 * t4))), airCelsius);
        var (a6, t6) = Slope(
            a + (h * ((9017.0 / 3168 * a1) - (355.0 / 33 * a2) + (46732.0 / 5247 * a3) + (49.0 / 176 * a4) - (5103.0 / 18656 * a5))),
            t + (h * ((9017.0 / 3168 * t1) - (355.0 / 33 * t2) + (46732.0 / 5247 * t3) + (49.0 / 176 * t4) - (5103.0 / 18656 * t5))), airCelsius);
        var nextA = a + (h * ((35.0 / 384 * a1) + (500.0 / 1113 * a3) + (125.0 / 192 * a4) - (2187.0 / 6784 * a5) + (11.0 / 84 * a6)));
        var nextT = t + (h * ((35.0 / 384 * t1) + (500.0 / 1113 * t3) + (125.0 / 192 * t4) - (2187.0 / 6784 * t5) + (11.0 / 84 * t6)));
        var (a7, t7) = Slope(nextA, nextT, airCelsius);
        var errorA = h * Math.Abs((71.0 / 57600 * a1) - (71.0 / 16695 * a3) + (71.0 / 1920 * a4) - (17253.0 / 339200 * a5) + (22.0 / 525 * a6) - (a7 / 40));
        var errorT = h * Math.Abs((71.0 / 57600 * t1) - (71.0 / 16695 * t3) + (71.0 / 1920 * t4) - (17253.0 / 339200 * t5) + (22.0 / 525 * t6) - (t7 / 40));
        return (new MixPoint(at.Seconds + h, nextA, nextT), Math.Max(errorA, errorT / 100));
    }
}
