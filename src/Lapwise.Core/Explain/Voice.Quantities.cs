using static Lapwise.Core.Quantities.Factors;

namespace Lapwise.Core.Explain;

/// <summary>
/// How quantities are shown. Input is SI (or mL and g); output carries its unit, and the readers read it back.
/// Small amounts get one decimal more, so that a quarter ounce never reads as 0.3. What is not known reads —.
/// </summary>
public sealed partial record Voice
{
    private const string NotKnown = "—";

    private bool IsUs => Units == UnitSystem.Us;

    /// <summary>A length as a tape reads it: feet, inches and sixteenths, or millimetres.</summary>
    public string Length(double metres) => IsUs ? FeetAndInches(metres) : Amount(metres * 1000, 10, 0, "mm");

    /// <summary>A run of edge or lap: feet or metres with decimals.</summary>
    public string Run(double metres) => IsUs ? Number(metres / MetresPerFoot, 1) + In("ft") : Number(metres, 2) + In("m");

    public string Area(double squareMetres) => IsUs
        ? Amount(squareMetres / SquareMetresPerSquareFoot, 10, 1, "ft²")
        : Amount(squareMetres, 0.1, 2, "m²");

    public string Volume(double ml) => VolumeAs(ml, ml);

    /// <summary>How volumes are shown that are compared, as in a column: all in the unit that the least of them takes, so that none reads as nothing.</summary>
    public Func<double, string> Volumes(params IEnumerable<double> comparedMl)
    {
        var leastMl = comparedMl.Where(ml => ml > 0).DefaultIfEmpty(0).Min();
        return ml => VolumeAs(leastMl, ml);
    }

    /// <param name="likeMl">In the unit that this much takes.</param>
    private string VolumeAs(double likeMl, double ml)
    {
        if (!IsUs) return likeMl >= 1000 ? Amount(ml / 1000, 0, 2, "L") : Amount(ml, 10, 0, "mL");
        return likeMl >= MlPerUsGallon ? Amount(ml / MlPerUsGallon, 0, 2, "gal") : Amount(ml / MlPerUsFluidOunce, 32, 1, "fl oz");
    }

    public string Mass(double grams) => IsUs ? Amount(grams / GramsPerOunce, 32, 1, "oz") : Amount(grams, 10, 0, "g");

    /// <summary>An amount as the cup is marked: fine enough for quarters of an ounce.</summary>
    public string OnCup(double ml) => IsUs ? Number(ml / MlPerUsFluidOunce, 2) + In("fl oz") : Number(ml, 1) + In("mL");

    /// <summary>A small amount as a marked syringe shows it: millilitres in either system.</summary>
    public string OnSyringe(double ml) => Number(ml, 1) + In("mL");

    /// <summary>An amount as the scale shows it. Mixing scales read grams; ounces stand beside them for those who work in them.</summary>
    public string OnScale(double grams) => IsUs ? $"{Number(grams, 1)}{In("g")} ({Number(grams / GramsPerOunce, 2)}{In("oz")})" : Number(grams, 1) + In("g");

    public string Film(double micrometres) => IsUs ? Number(micrometres / MicrometresPerMil, 1) + In("mil") : Number(micrometres, 0) + In("µm");

    /// <summary>One decimal: a limit missed by half a degree must not read like the limit.</summary>
    public string Temperature(double celsius) => IsUs ? Number(Fahrenheit(celsius), 1) + In("°F") : Number(celsius, 1) + In("°C");

    /// <summary>A temperature to reach, rounded up to a whole degree, so that what is advised suffices.</summary>
    public string TemperatureAtLeast(double celsius) => IsUs ? Number(Up(Fahrenheit(celsius)), 0) + In("°F") : Number(Up(celsius), 0) + In("°C");

    /// <summary>A temperature not to pass, rounded down to a whole degree.</summary>
    public string TemperatureAtMost(double celsius) => IsUs ? Number(-Up(-Fahrenheit(celsius)), 0) + In("°F") : Number(-Up(-celsius), 0) + In("°C");

    public string TemperatureDifference(double kelvin) => IsUs ? Number(kelvin * FahrenheitPerKelvin, 1) + In("°F") : Number(kelvin, 1) + In("°C");

    public string Percent(double fraction, int decimals = 0) => Number(fraction * 100, decimals) + In("%");

    /// <summary>A share not to pass, rounded down to a whole per cent.</summary>
    public string PercentAtMost(double fraction) => Number(-Up(-fraction * 100), 0) + In("%");

    public string Density(double gPerMl) => IsUs ? Number(gPerMl * MlPerUsGallon / GramsPerPound, 2) + In("lb/gal") : Number(gPerMl, 2) + In("g/mL");

    /// <summary>A volume for each foot or metre of an edge.</summary>
    public string VolumePerRun(double mlPerM) => IsUs ? Volume(mlPerM * MetresPerFoot) + "/ft" : Volume(mlPerM) + "/m";

    public string HeatPerMass(double jPerG) => Number(jPerG, 0) + In("J/g");

    /// <summary>VOC: lb/gal or g/L.</summary>
    public string Voc(double gPerL) => IsUs ? Number(gPerL / 1000 * MlPerUsGallon / GramsPerPound, 2) + In("lb/gal") : Number(gPerL, 0) + In("g/L");

    /// <summary>VOC as rules print it: in the US in both units, elsewhere in one.</summary>
    public string VocOfRules(double gPerL) => IsUs ? $"{Number(gPerL, 0)}{In("g/L")} ({Voc(gPerL)})" : Voc(gPerL);

    /// <summary>The volume of a room: ft³ or m³.</summary>
    public string RoomVolume(double m3) => IsUs ? Number(m3 / CubicMetresPerCubicFoot, 0) + In("ft³") : Number(m3, 1) + In("m³");

    /// <summary>Air moved in a time: ft³/min or m³/h.</summary>
    public string AirFlow(double m3PerS) => IsUs ? Number(m3PerS / CubicMetresPerCubicFoot * 60, 0) + In("ft³/min") : Number(m3PerS * 3600, 0) + In("m³/h");

    /// <summary>How far one volume goes: ft²/gal or m²/L.</summary>
    public string SpreadingRate(double m2PerL) => IsUs ? Number(m2PerL * MlPerUsGallon / 1000 / SquareMetresPerSquareFoot, 0) + In("ft²/gal") : Number(m2PerL, 2) + In("m²/L");

    /// <summary>Area done in a time.</summary>
    public string AreaRate(double m2PerS) => Area(m2PerS * 60) + "/min";

    /// <summary>Length done in a time.</summary>
    public string LengthRate(double mPerS) => Run(mPerS * 60) + "/min";

    /// <summary>A span of time: <c>45 s</c>, <c>12 min 30 s</c>, <c>2 h 05 min</c>, <c>7 d</c>.</summary>
    public static string Span(double seconds)
    {
        if (!double.IsFinite(seconds)) return NotKnown;
        var whole = (long)Math.Round(Math.Abs(seconds));
        var sign = seconds < 0 && whole > 0 ? "−" : "";
        return sign + whole switch
        {
            < 60 => $"{whole} s",
            < 3600 => whole % 60 == 0 ? $"{whole / 60} min" : $"{whole / 60} min {whole % 60:00} s",
            < 48 * 3600 => whole % 3600 < 60 ? $"{whole / 3600} h" : $"{whole / 3600} h {whole % 3600 / 60:00} min",
            _ => whole % 86400 < 3600 ? $"{whole / 86400} d" : $"{whole / 86400} d {whole % 86400 / 3600} h",
        };
    }

    /// <summary>A clock from the start of the work: <c>0:00</c>, <c>12:30</c>, <c>1:02:30</c>.</summary>
    public static string Clock(double seconds)
    {
        if (!double.IsFinite(seconds)) return NotKnown;
        var whole = (long)Math.Round(seconds);
        return whole < 3600 ? $"{whole / 60}:{whole % 60:00}" : $"{whole / 3600}:{whole % 3600 / 60:00}:{whole % 60:00}";
    }

    /// <summary>One decimal more below <paramref name="small"/>.</summary>
    private string Amount(double value, double small, int decimals, string unit) =>
        Number(value, Math.Abs(value) < small ? decimals + 1 : decimals) + In(unit);

    /// <summary>A unit with the gap before it.</summary>
    private string In(string unit) => Together(" " + unit);

    private static double Fahrenheit(double celsius) => (celsius * FahrenheitPerKelvin) + FahrenheitAtFreezing;

    /// <summary>The next whole number up; what is a whole number but for float dust stays.</summary>
    private static double Up(double value) => Math.Ceiling(value - 1e-9);

    private string FeetAndInches(double metres)
    {
        if (!double.IsFinite(metres)) return NotKnown;
        var sixteenths = (long)Math.Round(Math.Abs(metres) / MetresPerInch * 16);
        if (sixteenths == 0) return Number(metres / MetresPerInch, 3) + "\"";
        var (feet, rest) = Math.DivRem(sixteenths, 12 * 16);
        var (inches, parts) = Math.DivRem(rest, 16);
        var shift = parts == 0 ? 0 : System.Numerics.BitOperations.TrailingZeroCount(parts);
        var fraction = parts == 0 ? "" : $"{parts >> shift}/{16 >> shift}";
        var inchText = (inches, fraction) switch
        {
            (0, "") => "0\"",
            (0, _) => fraction + "\"",
            (_, "") => $"{inches}\"",
            _ => $"{inches} {fraction}\"",
        };
        return (metres < 0 ? "−" : "") + Kept(feet == 0 ? inchText : $"{feet}' {inchText}");
    }
}
