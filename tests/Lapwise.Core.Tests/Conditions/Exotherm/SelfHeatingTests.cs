using CsCheck;
using Lapwise.Core.Conditions.Exotherm;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;

namespace Lapwise.Core.Tests.Conditions.Exotherm;

public sealed class SelfHeatingTests
{
    private static readonly Reactivity Mix = new(2e-4, 6800, 400);

    private static readonly Gen<(double Mass, double Start, double Air, double Loss)> AnyBatch =
        Gen.Select(Gen.Double[20, 5000], Gen.Double[10, 35], Gen.Double[10, 35], Gen.Double[0, 40]);

    private static double Life(double massG, double start, double air, double loss = Reactivity.LossWPerM2K, Vessel? vessel = null) =>
        new SelfHeating(Mix, massG, (vessel ?? new Vessel.Bucket()).AreaM2(massG / 1.1), loss).LifeS(start, air);

    /// <summary>Perfect cooling: t = −ln(1 − α) / k.</summary>
    [Theory]
    [InlineData(10)]
    [InlineData(25)]
    [InlineData(40)]
    public void With_perfect_cooling_it_is_the_isothermal_closed_form(double celsius)
    {
        // At the largest rate it stays within 0.04 K of the room, worth 0.3 % of the life.
        var life = new SelfHeating(Mix, 100, 0.1, 2000).LifeS(celsius, celsius);
        Assert.Equal(1, life / Mix.IsothermalS(celsius, Reactivity.EndConversion), celsius > 30 ? 0.01 : 0.004);
    }

    /// <summary>No heat of reaction: the same closed form, to the integrator's own tolerance.</summary>
    [Fact]
    public void A_reaction_without_heat_is_isothermal() =>
        Assert.Equal(1, new SelfHeating(Mix with { HeatJPerG = 0 }, 100, 0.01).LifeS(25, 25) / Mix.IsothermalS(25, Reactivity.EndConversion), 1e-6);

    /// <summary>No loss: T = T₀ + α H/c throughout, and t = ∫ dα / (k(T₀ + α H/c) (1 − α)), here by Simpson's rule.</summary>
    [Theory]
    [InlineData(15)]
    [InlineData(25)]
    public void With_no_loss_it_is_the_adiabatic_closed_form(double start)
    {
        var run = new SelfHeating(Mix, 100, 0).Run(start, start);
        double Slowness(double a) => 1 / (Mix.RatePerS(start + (a * Mix.AdiabaticRiseK)) * (1 - a));
        const int n = 20_000;
        var h = Reactivity.EndConversion / n;
        var sum = Slowness(0) + Slowness(Reactivity.EndConversion);
        for (var i = 1; i < n; i++) sum += Slowness(i * h) * (i % 2 == 1 ? 4 : 2);

        Assert.Equal(1, run.Seconds / (sum * h / 3), 1e-6);
        Assert.All(run.Curve, p => Assert.Equal(start + (p.Conversion * Mix.AdiabaticRiseK), p.Celsius, 1e-4));
    }

    /// <summary>No reaction to speak of: Newton's law of cooling.</summary>
    [Fact]
    public void Without_reaction_it_cools_by_newtons_law()
    {
        var cold = new SelfHeating(Mix with { RateAt25PerS = 1e-5, HeatJPerG = 0 }, 500, 0.03);
        var run = cold.Run(60, 20, endConversion: 0.2);
        var perS = Reactivity.LossWPerM2K * 0.03 / (500 * Reactivity.HeatCapacityJPerGK);
        Assert.All(run.Curve, p => Assert.Equal(20 + (40 * Math.Exp(-perS * p.Seconds)), p.Celsius, 1e-4));
    }

    /// <summary>The classical Runge–Kutta of MathNet.Numerics, which knows nothing of this one, comes to the end conversion at the life found.</summary>
    [Fact]
    public void A_general_solver_finds_the_same_life() => AnyBatch.Sample((mass, start, air, loss) =>
    {
        var heating = new SelfHeating(Mix, mass, new Vessel.Bucket().AreaM2(mass / 1.1), loss);
        var cooling = loss * heating.AreaM2 / (mass * Reactivity.HeatCapacityJPerGK);
        Vector<double> Slope(double t, Vector<double> y)
        {
            var reacted = Mix.RatePerS(y[1]) * (1 - y[0]);
            return Vector<double>.Build.DenseOfArray([reacted, (Mix.AdiabaticRiseK * reacted) - (cooling * (y[1] - air))]);
        }

        var end = RungeKutta.FourthOrder(Vector<double>.Build.DenseOfArray([0, start]), 0, heating.LifeS(start, air), 20_001, Slope)[^1];
        Assert.Equal(Reactivity.EndConversion, end[0], 1e-5);
    }, iter: 20);

    [Fact]
    public void Every_life_lies_between_the_adiabatic_and_the_isothermal() => AnyBatch.Sample((mass, start, _, loss) =>
    {
        var life = Life(mass, start, start, loss);
        var adiabatic = Life(mass, start, start, 0);
        Assert.InRange(life, adiabatic * (1 - 1e-6), Mix.IsothermalS(start, Reactivity.EndConversion) * (1 + 1e-6));
    });

    [Fact]
    public void Hotter_is_shorter() => Gen.Select(AnyBatch, Gen.Double[0.1, 10]).Sample((b, hotter) =>
    {
        Assert.True(Life(b.Mass, b.Start + hotter, b.Air, b.Loss) < Life(b.Mass, b.Start, b.Air, b.Loss));
        Assert.True(Life(b.Mass, b.Start, b.Air + hotter, b.Loss) <= Life(b.Mass, b.Start, b.Air, b.Loss) * (1 + 1e-7));
    });

    /// <summary>Material and room at one temperature, as a data sheet measures it.</summary>
    [Fact]
    public void More_mass_is_shorter() => Gen.Select(AnyBatch, Gen.Double[1.01, 5]).Sample((b, more) =>
        Assert.True(Life(b.Mass * more, b.Start, b.Start, b.Loss) <= Life(b.Mass, b.Start, b.Start, b.Loss) * (1 + 1e-7)));

    [Fact]
    public void A_tray_gives_more_time_than_a_bucket() => Gen.Select(Gen.Double[300, 3000], Gen.Double[15, 35]).Sample((mass, at) =>
        Assert.True(Life(mass, at, at, vessel: BatchHeat.RollerTray) > Life(mass, at, at)));

    [Fact]
    public void No_bucket_has_less_surface_than_the_one_as_wide_as_deep() => Gen.Select(Gen.Double[50, 10_000], Gen.Double[0.02, 0.6]).Sample((ml, d) =>
        Assert.True(new Vessel.Bucket(d).AreaM2(ml) >= new Vessel.Bucket().AreaM2(ml) * (1 - 1e-12)));

    [Fact]
    public void A_batch_that_overheats_ends_at_its_temperature()
    {
        var run = new SelfHeating(Mix, 2000, new Vessel.Bucket().AreaM2(1800)).Run(25, 25, hotCelsius: 45);
        Assert.Equal(LifeEnd.TooHot, run.End);
        Assert.Contains(run.Curve, p => p.Seconds == run.Seconds && Math.Abs(p.Celsius - 45) < 1e-6);
        Assert.True(run.PeakCelsius > 100);
    }

    [Fact]
    public void The_curve_runs_forward_from_the_first_contact() => AnyBatch.Sample((mass, start, air, loss) =>
    {
        var run = new SelfHeating(Mix, mass, new Vessel.Bucket().AreaM2(mass / 1.1), loss).Run(start, air);
        Assert.Equal(new MixPoint(0, 0, start), run.Curve[0]);
        Assert.True(run.Curve.Zip(run.Curve.Skip(1)).All(p => p.First.Seconds < p.Second.Seconds && p.First.Conversion < p.Second.Conversion));
        Assert.True(run.Curve.Count < 400);
    });
}
