namespace Lapwise.Core.Conditions.Exotherm;

/// <summary>
/// How fast a mix reacts and what heat it gives. First order in what is left, dα/dt = k(T) · (1 − α), with k by Arrhenius;
/// the life ends at a conversion. Fitted by <see cref="LifeFit"/> from what a data sheet gives.
/// </summary>
/// <param name="RateAt25PerS">k at 25 °C.</param>
/// <param name="EnergyOverRK">Activation energy over the gas constant, K.</param>
/// <param name="HeatJPerG">Heat of the whole reaction for each gram of mix.</param>
public sealed record Reactivity(double RateAt25PerS, double EnergyOverRK, double HeatJPerG)
{
    /// <summary>
    /// Conversion at which the life ends: the gel point 1/√3 that network theory (Flory, Stockmayer) gives for a diepoxide
    /// with a diamine of four hydrogens in equal numbers. The fit to the sheet's own lives takes up most of its error.
    /// </summary>
    public const double EndConversion = 0.577350269189626;

    /// <summary>Heat capacity of a resin mix, J/(g·K). From memory: about 1.8 to 2.2 for unfilled epoxies.</summary>
    public const double HeatCapacityJPerGK = 2.0;

    /// <summary>Heat that leaves through each square metre for each kelvin, still air and radiation, W/(m²·K). From memory: 5 to 12.</summary>
    public const double LossWPerM2K = 10;

    private const double ReferenceK = 298.15;

    public double RatePerS(double celsius) => RateAt25PerS * Math.Exp(EnergyOverRK * ((1 / ReferenceK) - (1 / (celsius + 273.15))));

    /// <summary>Temperature the whole reaction would add with no loss at all, K.</summary>
    public double AdiabaticRiseK => HeatJPerG / HeatCapacityJPerGK;

    /// <summary>Closed form with perfect cooling: t = −ln(1 − α) / k.</summary>
    public double IsothermalS(double celsius, double conversion) => -Math.Log(1 - conversion) / RatePerS(celsius);
}
