using System.Diagnostics;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Exotherm;
using Lapwise.Core.Jobs;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;

namespace Lapwise.Benchmarks;

/// <summary>The models of the room and the mix: a batch through its own heat, the fit to a data sheet, a day hour by hour.</summary>
public static class Science
{
    public static void Run(Options options)
    {
        var mix = new Reactivity(2e-4, 6800, 400);
        var heating = new SelfHeating(mix, 1500, new Vessel.Bucket().AreaM2(1360));
        MassLife[] lives = [new(100, 2400, 25), new(100, 1440, 32), new(1000, 1440, 25)];
        var product = ProductReading.Read(Samples.Library[0], "").Product ?? throw new InvalidOperationException("the sample's product no longer reads");
        var start = new DateTime(2026, 11, 25, 0, 0, 0, DateTimeKind.Unspecified);
        var quarterHours = new DailySwing(20, 8, 15, 10).From(start, 48);
        // One reading a minute for two days, as a logger writes.
        var minutes = new RoomRecord([.. Enumerable.Range(0, 48 * 60).Select(i => quarterHours.Readings[Math.Min(i / 15, quarterHours.Readings.Count - 1)] with { At = start.AddMinutes(i), ElapsedS = i * 60 })]);

        Report.Write(options, "science",
        [
            "# Models of the room and the mix",
            "",
            $"200 runs each after a warm-up of 50. {Report.Machine}.",
            $"The peer is the classical Runge–Kutta of MathNet.Numerics with {PeerSteps} equal steps over the life that was found; it needs that many to agree to {Agreement(heating):0.0e0}.",
            "",
            .. Report.Table(
                ["model", "median", "slowest", "aim"],
                [
                    Row("life of 1.5 kg in a bucket, curve to its peak", "1 ms", () => heating.Run(25, 25).Curve.Count),
                    Row("life alone, without the curve", "1 ms", () => heating.LifeS(25, 25)),
                    Row("the same by the peer, told when to stop", "", () => PeerConversion(heating, heating.LifeS(25, 25), PeerSteps)),
                    Row("fit to three lives of a data sheet", "", () => LifeFit.Through(lives, 1.1, null).WorstMiss),
                    Row("a day hour by hour, a reading every quarter", "5 ms", () => HourStrip.Of(product, quarterHours, start).Hours.Count),
                    Row("a day hour by hour, a reading every minute", "5 ms", () => HourStrip.Of(product, minutes, start).Hours.Count),
                ]),
        ]);
    }

    private const int PeerSteps = 4000;

    /// <summary>Conversion when the life ends, by the peer.</summary>
    private static double PeerConversion(SelfHeating heating, double lifeS, int steps)
    {
        var cooling = heating.LossWPerM2K * heating.AreaM2 / (heating.MassG * Reactivity.HeatCapacityJPerGK);
        Vector<double> Slope(double t, Vector<double> y)
        {
            var reacted = heating.Mix.RatePerS(y[1]) * (1 - y[0]);
            return Vector<double>.Build.DenseOfArray([reacted, (heating.Mix.AdiabaticRiseK * reacted) - (cooling * (y[1] - 25))]);
        }

        return RungeKutta.FourthOrder(Vector<double>.Build.DenseOfArray([0, 25]), 0, lifeS, steps + 1, Slope)[^1][0];
    }

    private static double Agreement(SelfHeating heating) => Math.Abs((PeerConversion(heating, heating.LifeS(25, 25), PeerSteps) / Reactivity.EndConversion) - 1);

    private static string[] Row(string what, string aim, Func<double> work)
    {
        var times = new List<double>();
        var kept = 0.0;
        for (var i = 0; i < 250; i++)
        {
            var watch = Stopwatch.StartNew();
            kept += work();
            if (i >= 50) times.Add(watch.Elapsed.TotalSeconds);
        }

        if (!double.IsFinite(kept)) throw new InvalidOperationException(what + " gave no number");
        return [what, Report.Time(Report.Median(times)), Report.Time(times.Max()), aim];
    }
}
