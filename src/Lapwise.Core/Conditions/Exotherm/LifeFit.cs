using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Exotherm;

/// <summary>A fitted mix, and how far each life it was fitted to is missed: modelled over stated, less 1.</summary>
/// <param name="EnergyFitted">False: the sheet gives one temperature, and the energy is the stated default.</param>
/// <param name="LossWPerM2K">Heat that leaves through each square metre for each kelvin.</param>
/// <param name="LossFitted">False: the sheet gives one mass, and the loss is the stated default.</param>
public sealed record FittedMix(Reactivity Mix, double LossWPerM2K, IReadOnlyList<double> Misses, bool EnergyFitted, bool LossFitted)
{
    /// <summary>Largest miss, as a share.</summary>
    public double WorstMiss => Misses.Max(Math.Abs);
}

/// <summary>
/// The reactivity that gives back the lives of a data sheet, each of a mass at a temperature in a bucket in air of that
/// temperature. One life fixes the rate; lives at two temperatures the energy too; lives of two masses the heat loss too, for
/// of all that decides what a mass does it is known least.
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

    // A cup wrapped in foam, and a thin tin on a stone floor.
    private const double LeastLoss = 1;
    private const double MostLoss = 60;

    // Two masses or temperatures nearer than this say nothing about the difference between them.
    private const double LeastMassRatio = 1.5;
    private const double LeastSpanK = 2;

    /// <param name="lives">One or more.</param>
    /// <param name="heatJPerG">Entered heat of the mix; null: the stated default.</param>
    public static FittedMix Through(IReadOnlyList<MassLife> lives, double densityGPerMl, double? heatJPerG)
    {
        ArgumentOutOfRangeException.ThrowIfZero(lives.Count, nameof(lives));
        var fitsEnergy = lives.Max(l => l.Celsius) - lives.Min(l => l.Celsius) >= LeastSpanK;
        var fitsLoss = lives.Max(l => l.MassG) >= LeastMassRatio * lives.Min(l => l.MassG);
        var start = new Reactivity(1, DefaultEnergyKJPerMol * 1000 / GasConstant, heatJPerG ?? DefaultHeatJPerG);
        var first = lives[0];
        start = start with { RateAt25PerS = start.IsothermalS(first.Celsius, Reactivity.EndConversion) / first.Seconds / 2 };

        var fitted = Best(start, lives, densityGPerMl, fitsEnergy, fitsLoss);
        return new FittedMix(fitted.Mix, fitted.LossWPerM2K, [.. Logs(fitted, lives, densityGPerMl).Select(r => Math.Exp(r) - 1)], fitsEnergy, fitsLoss);
    }

    // Where the stated defaults settle in a wrong valley: energies and losses that between them lie near every mix of the trade.
    private static readonly double[] OtherEnergiesOverRK = [5000, 6500, 8500];
    private static readonly double[] OtherLosses = [4, 10, 25];

    /// <summary>From the stated defaults; where those leave a miss, from each of a few other starts, the nearest first.</summary>
    private static Trial Best(Reactivity start, IReadOnlyList<MassLife> lives, double density, bool fitsEnergy, bool fitsLoss)
    {
        var (best, least) = Settled(new Trial(start, Reactivity.LossWPerM2K));
        if (least < WellMet || !(fitsEnergy || fitsLoss)) return best;
        var others =
            from energy in fitsEnergy ? OtherEnergiesOverRK : [start.EnergyOverRK]
            from loss in fitsLoss ? OtherLosses : [Reactivity.LossWPerM2K]
            let trial = Levelled(new Trial(start with { EnergyOverRK = energy }, loss), lives, density)
            orderby Sum(Logs(trial, lives, density))
            select trial;
        foreach (var other in others.ToList())
        {
            var (settled, sum) = Settled(other);
            if (sum < least) (best, least) = (settled, sum);
            if (least < WellMet) break;
        }

        return best;

        (Trial, double) Settled(Trial from)
        {
            var settled = Settle(from, lives, density, fitsEnergy, fitsLoss);
            return (settled, Sum(Logs(settled, lives, density)));
        }
    }

    // A hundredth of a per cent in each life.
    private const double WellMet = 1e-8;

    /// <summary>The same energy and loss at the rate that misses the lives by nothing in the mean of their logarithms.</summary>
    private static Trial Levelled(Trial trial, IReadOnlyList<MassLife> lives, double density)
    {
        for (var i = 0; i < 4; i++) trial = trial.Faster(Math.Clamp(Logs(trial, lives, density).Average(), -2, 2));
        return trial;
    }

    private sealed record Trial(Reactivity Mix, double LossWPerM2K)
    {
        public Trial Faster(double by) => this with { Mix = Mix with { RateAt25PerS = Mix.RateAt25PerS * Math.Exp(by) } };

        public Trial Steeper(double by) => this with { Mix = Mix with { EnergyOverRK = Math.Clamp(Mix.EnergyOverRK * Math.Exp(by), LeastEnergyOverRK, MostEnergyOverRK) } };

        public Trial Leakier(double by) => this with { LossWPerM2K = Math.Clamp(LossWPerM2K * Math.Exp(by), LeastLoss, MostLoss) };
    }

    private static Trial Settle(Trial start, IReadOnlyList<MassLife> lives, double density, bool fitsEnergy, bool fitsLoss)
    {
        List<Func<Trial, double, Trial>> moves = [(t, by) => t.Faster(by)];
        if (fitsEnergy) moves.Add((t, by) => t.Steeper(by));
        if (fitsLoss) moves.Add((t, by) => t.Leakier(by));
        var (mix, damping) = (start, 1e-3);
        var misses = Logs(mix, lives, density);
        for (var round = 0; round < 60 && Sum(misses) > 1e-18; round++)
        {
            var slopes = moves.Select(move => Logs(move(mix, 1e-4), lives, density).Zip(misses, (moved, was) => (moved - was) / 1e-4).ToArray()).ToArray();
            var step = LeastSquares(slopes, misses, damping);
            var tried = mix;
            for (var i = 0; i < moves.Count; i++) tried = moves[i](tried, Math.Clamp(step[i], -1.5, 1.5));
            var missed = Logs(tried, lives, density);
            if (Sum(missed) < Sum(misses)) (mix, misses, damping) = (tried, missed, damping / 5);
            else damping *= 8;
            if (damping > 1e8) break;
        }

        return mix;
    }

    /// <summary>ln(modelled / stated) of each life.</summary>
    private static double[] Logs(Trial trial, IReadOnlyList<MassLife> lives, double density) =>
    [
        .. lives.Select(l => Math.Log(
            new SelfHeating(trial.Mix, l.MassG, new Vessel.Bucket().AreaM2(l.MassG / density), trial.LossWPerM2K).LifeS(l.Celsius, l.Celsius) / l.Seconds)),
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
