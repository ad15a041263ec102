namespace Lapwise.Core.Quantities;

/// <summary>
/// Exact conversion factors. The inch is 0.0254 m, the pound 0.45359237 kg and the US gallon 231 cubic inches
/// (NIST Handbook 44, Appendix C); the rest is arithmetic on them.
/// </summary>
public static class Factors
{
    public const double MetresPerInch = 0.0254;
    public const double MetresPerFoot = 0.3048;
    public const double SquareMetresPerSquareFoot = 0.09290304;
    public const double SquareMetresPerSquareInch = 0.00064516;
    public const double CubicMetresPerCubicFoot = 0.028316846592;
    public const double MicrometresPerMil = 25.4;
    public const double MlPerUsGallon = 3785.411784;
    public const double MlPerUsQuart = 946.352946;
    public const double MlPerUsPint = 473.176473;
    public const double MlPerUsCup = 236.5882365;
    public const double MlPerUsFluidOunce = 29.5735295625;
    public const double GramsPerPound = 453.59237;
    public const double GramsPerOunce = 28.349523125;
    public const double FahrenheitPerKelvin = 1.8;
    public const double FahrenheitAtFreezing = 32;
}
