using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions;

/// <summary>How a time of the data sheet runs with temperature: always shorter, or no longer, where it is hotter.</summary>
public abstract record TemperatureLaw
{
    private TemperatureLaw() { }

    /// <summary>Seconds at a temperature.</summary>
    public abstract double SecondsAt(double celsius);

    /// <summary>The span of temperatures the sheet itself answers for.</summary>
    public abstract (double LeastC, double MostC) Given { get; }

    /// <summary>Arrhenius through two points: ln t = ln t₁ + E/R · (1/T − 1/T₁).</summary>
    public sealed record ThroughTwoPoints(TimeAt Cold, TimeAt Hot) : TemperatureLaw
    {
        /// <summary>Activation energy over the gas constant, K.</summary>
        public double EnergyOverRK => Math.Log(Cold.Seconds / Hot.Seconds) / (PerKelvin(Cold.Celsius) - PerKelvin(Hot.Celsius));

        /// <summary>Apparent activation energy, kJ/mol.</summary>
        public double EnergyKJPerMol => EnergyOverRK * GasConstant / 1000;

        public override (double LeastC, double MostC) Given => (Cold.Celsius, Hot.Celsius);

        public override double SecondsAt(double celsius) =>
            Cold.Seconds * Math.Exp(EnergyOverRK * (PerKelvin(celsius) - PerKelvin(Cold.Celsius)));
    }

    /// <summary>
    /// The stated default where the sheet gives one point: the rule itself, half for each 10 °C up and double for each
    /// 10 °C down (UFGS-09971, said there of pot life), not an activation energy; about 52 kJ/mol does the same near 28 °C.
    /// </summary>
    public sealed record HalvingEachTenDegrees(TimeAt Point) : TemperatureLaw
    {
        public override (double LeastC, double MostC) Given => (Point.Celsius, Point.Celsius);

        public override double SecondsAt(double celsius) => Point.Seconds * Math.Pow(2, (Point.Celsius - celsius) / 10);
    }

    /// <summary>
    /// The law through one or two points of a sheet, null without any. Points that give a longer time where it is hotter
    /// contradict every cure, and points at all but one temperature carry no law: then the default runs from the shorter one,
    /// which asks for the most haste.
    /// </summary>
    public static TemperatureLaw? Through(IReadOnlyList<TimeAt> points)
    {
        if (points.Count == 0) return null;
        var cold = points.MinBy(p => p.Celsius)!;
        var hot = points.MaxBy(p => p.Celsius)!;
        return Contradict(points) || hot.Celsius - cold.Celsius < LeastSpanK
            ? new HalvingEachTenDegrees(points.MinBy(p => p.Seconds)!)
            : new ThroughTwoPoints(cold, hot);
    }

    /// <summary>True where the hotter point has the longer time.</summary>
    public static bool Contradict(IReadOnlyList<TimeAt> points) =>
        points.Count > 1 && points.MaxBy(p => p.Celsius)!.Seconds > points.MinBy(p => p.Celsius)!.Seconds;

    /// <summary>Two points nearer than this are one point read twice.</summary>
    private const double LeastSpanK = 2;

    private const double GasConstant = 8.314462618;

    private static double PerKelvin(double celsius) => 1 / (celsius + 273.15);
}
