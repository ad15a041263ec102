using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Exotherm;

/// <summary>A fitted mix, and how far each life it was fitted to is missed: modelled over stated, less 1.</summary>
/// <param name="EnergyFitted">False: the sheet gives one temperature, and the energy is the stated default.</param>
/// <param name="HeatFitted">False: the heat is entered, or the stated default.</param>
public sealed record FittedMix(Reactivity Mix, IReadOnlyList<double> Misses, bool EnergyFitted, bool HeatFitted)
{
    /// <summary>Largest miss, as a share.</summary>
    public double WorstMiss => Misses.Max(Math.Abs);
}

/// <summary>
/// The reactivity that gives back the lives of a data sheet, each of a mass at a temperature in a bucket in air of that
/// temperature. One life fixes the rate; lives at two temperatures the energy too; lives of two masses the heat too.
/// Least squares in the logarithm of time, by damped Gauss–Newton steps.
/// </summary>
public static class LifeFit
{
    /// <summary>In the middle of 55 to 60 kJ/mol, published for primary amine and epoxy (Thermochim. Acta 447 (2006) 167).</summary>
    public const double DefaultEnergyKJPerMol = 57;

    /// <summary>From memory: about 100 kJ for each mole of epoxide, in a mix of about 250 g for each mole.</summary>
    public const double DefaultHeatJPerG = 400;

    private const double GasConstant = 8.314462618;
    private const double LeastEnergyOverRK = 2000;
    private const double MostEnergyOverRK = 15000;

    // Two masses or temperatures nearer than this say nothing about the difference between them.
    private const double LeastMassRatio = 1.5;
    private const double LeastSpanK = 2;

    /// <param name="lives">One or more.</param>
    /// <param name="heatJPerG">Entered heat of the mix; null: fitted where two masses are given, else the default.</param>
    public static FittedMix Through(IReadOnlyList<MassLife> lives, double densityGPerMl, double? heatJPerG)
    {
        ArgumentOutOfRangeException.ThrowIfZero(lives.Count, nameof(lives));
        var fitsEnergy = lives.Max(l => l.Celsius) - lives.Min(l => l.Celsius) >= LeastSpanK;
        var fitsHeat = heatJPerG is null && lives.Max(l => l.MassG) >= LeastMassRatio * lives.Min(l => l.MassG);
        var start = new Reactivity(1, DefaultEnergyKJPerMol * 1000 / GasConstant, heatJPerG ?? DefaultHeatJPerG);
        var first = lives[0];
        start = start with { RateAt25PerS = start.IsothermalS(first.Celsius, Reactivity.EndConversion) / first.Seconds / 2 };

        var fitted = Settle(start, lives, densityGPerMl, fitsEnergy, fitsHeat);
        return new FittedMix(fitted, [.. Logs(fitted, lives, densityGPerMl).Select(r => Math.Exp(r) - 1)], fitsEnergy, fitsHeat);
    }

    private static Reactivity Settle(Reactivity start, IReadOnlyList<MassLife> lives, double density, bool fitsEnergy, bool fitsHeat)
    {
        Func<Reactivity, double, Reactivity>[] moves =
        [
            (m, by) => m with { RateAt25PerS = m.RateAt25PerS * Math.Exp(by) },
            .. fitsEnergy ? [(Func<Reactivity, double, Reactivity>)((m, by) => m with { EnergyOverRK = Math.Clamp(m.EnergyOverRK * Math.Exp(by), LeastEnergyOverRK, MostEnergyOverRK) })] : Array.Empty<Func<Reactivity, double, Reactivity>>(),
            .. fitsHeat ? [(Func<Reactivity, double, Reactivity>)((m, by) => m with { HeatJPerG = Math.Clamp(m.HeatJPerG * Math.Exp(by), 1, 1000) })] : Array.Empty<Func<Reactivity, double, Reactivity>>(),
        ];
        var (mix, damping) = (start, 1e-3);
        var misses = Logs(mix, lives, density);
        for (var round = 0; round < 60 && Sum(misses) > 1e-18; round++)
        {
            var slopes = moves.Select(move => Logs(move(mix, 1e-4), lives, density).Zip(misses, (moved, was) => (moved - was) / 1e-4).ToArray()).ToArray();
            var step = LeastSquares(slopes, misses, damping);
            var tried = mix;
            for (var i = 0; i < moves.Length; i++) tried = moves[i](tried, Math.Clamp(step[i], -1.5, 1.5));
            var missed = Logs(tried, lives, density);
            if (Sum(missed) < Sum(misses)) (mix, misses, damping) = (tried, missed, damping / 5);
            else damping *= 8;
            if (damping > 1e8) break;
        }

        return mix;
    }

    /// <summary>ln(modelled / stated) of each life.</summary>
    private static double[] Logs(Reactivity mix, IReadOnlyList<MassLife> lives, double density) =>
    [
        .. lives.Select(l => Math.Log(
            new SelfHeating(mix, l.MassG, new Vessel.Bucket().AreaM2(l.MassG / density)).LifeS(l.Celsius, l.Celsius) / l.Seconds)),
    ];

    private static double Sum(double[] misses) => misses.Sum(m => m * m);

    /// <summary>(JᵀJ + λ diag) x = −Jᵀr for at most three unknowns, by elimination.</summary>
    private static double[] LeastSquares(double[][] slopes, double[] misses, double damping)
    {
        var n = slopes.Length;
        var m = new double[n, n + 1];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++) m[i, j] = slopes[i].Zip(slopes[j], (a, b) => a * b).Sum();
            m[i, i] = (m[i, i] * (1 + damping)) + 1e-15;
            m[i, n] = -slopes[i].Zip(misses, (a, b) => a * b).Sum();
        }

        for (var i = 0; i < n; i++)
            for (var k = 0; k < n; k++)
            {
                if (k == i) continue;
                var f = m[k, i] / m[i, i];
                for (var j = i; j <= n; j++) m[k, j] -= f * m[i, j];
            }

        return [.. Enumerable.Range(0, n).Select(i => m[i, n] / m[i, i])];
    }
}
