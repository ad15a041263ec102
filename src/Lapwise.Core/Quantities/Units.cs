using Lapwise.Core.Explain;
using static Lapwise.Core.Quantities.Factors;

namespace Lapwise.Core.Quantities;

/// <summary>One unit with every way it is written, in English and Spanish.</summary>
/// <param name="Names">Compared without regard to case and accents; a space stands for any run of spaces, or none.</param>
internal sealed record Unit(double Factor, params string[] Names)
{
    /// <summary>What it reads where the base unit reads zero: 32 for °F.</summary>
    public double Zero { get; init; }

    /// <summary>A smaller unit may only follow one of the same system, as inches follow feet; null: both systems.</summary>
    public UnitSystem? System { get; init; }

    /// <summary>What a bare number means right after this unit, as the inches of <c>8' 4</c>.</summary>
    public Unit? Below { get; init; }

    public double ToBase(double written) => (written - Zero) * Factor;
}

/// <summary>A kind of quantity: its units and how it is asked for.</summary>
internal sealed record Kind(Phrase Name, Phrase Examples, IReadOnlyList<Unit> Units)
{
    /// <summary>What a number without a unit means; null where it must be said.</summary>
    public Unit? BareUs { get; init; }
    public Unit? BareMetric { get; init; }

    /// <summary>What stands under the stroke, as the time of <c>6 ft²/min</c>.</summary>
    public Kind? Under { get; init; }

    /// <summary>Parts may follow each other, as in <c>8 ft 4 in</c>.</summary>
    public bool InParts { get; init; }

    /// <summary>Without working units only a number that means the same in both needs no unit.</summary>
    public Unit? Bare(UnitSystem? units) => units switch
    {
        UnitSystem.Us => BareUs,
        UnitSystem.Metric => BareMetric,
        _ => BareUs == BareMetric ? BareUs : null,
    };
}

/// <summary>Every kind of quantity a person writes. Base units: m, µm, m², mL, g, °C, 1, s, degree.</summary>
internal static class Kinds
{
    private static readonly Unit Inch = Us(MetresPerInch, "in", "in.", "inch", "inches", "\"", "''", "pulg", "pulg.", "pulgada", "pulgadas");
    private static readonly Unit Foot = Us(MetresPerFoot, "ft", "ft.", "foot", "feet", "'", "pie", "pies") with { Below = Inch };
    private static readonly Unit Millimetre = Metric(1e-3, "mm", "millimeter", "millimeters", "millimetre", "millimetres", "milímetro", "milímetros");
    private static readonly Unit Mil = Us(MicrometresPerMil, "mil", "mils", "milésima", "milésimas");
    private static readonly Unit Micrometre = Metric(1, "µm", "um", "micron", "microns", "micra", "micras", "micrómetro", "micrómetros");
    private static readonly Unit SquareFoot = Us(SquareMetresPerSquareFoot, "ft²", "ft2", "ft^2", "sq ft", "sq. ft.", "sqft", "square foot", "square feet", "pie²", "pies²", "pie cuadrado", "pies cuadrados");
    private static readonly Unit SquareMetre = Metric(1, "m²", "m2", "m^2", "sq m", "square meter", "square meters", "square metre", "square metres", "metro cuadrado", "metros cuadrados");
    private static readonly Unit FluidOunce = Us(MlPerUsFluidOunce, "fl oz", "fl. oz.", "fl. oz", "floz", "US fl oz", "fluid ounce", "fluid ounces", "onza líquida", "onzas líquidas", "oz líq", "oz líq.");
    private static readonly Unit Millilitre = Metric(1, "mL", "milliliter", "milliliters", "millilitre", "millilitres", "mililitro", "mililitros", "cm³", "cm3", "cc");
    private static readonly Unit Ounce = Us(GramsPerOunce, "oz", "oz.", "ounce", "ounces", "onza", "onzas");
    private static readonly Unit Gram = Metric(1, "g", "gram", "grams", "gramo", "gramos");
    private static readonly Unit Fahrenheit = new(1 / FahrenheitPerKelvin, "°F", "℉", "F", "deg F", "degrees F", "grados F") { Zero = FahrenheitAtFreezing };
    private static readonly Unit Celsius = new(1, "°C", "℃", "C", "deg C", "degrees C", "grados C");
    private static readonly Unit Percent = new(0.01, "%", "percent", "per cent", "por ciento");
    private static readonly Unit Second = new(1, "s", "sec", "sec.", "second", "seconds", "seg", "seg.", "segundo", "segundos");
    private static readonly Unit Minute = new(60, "min", "min.", "minute", "minutes", "minuto", "minutos") { Below = Second };
    private static readonly Unit Hour = new(3600, "h", "hr", "hr.", "hrs", "hour", "hours", "hora", "horas") { Below = Minute };
    private static readonly Unit Degree = new(1, "°", "deg", "degree", "degrees", "grado", "grados");

    public static readonly Kind Length = new(
        v => v.Say("a length", "una longitud"),
        v => v.Say("96 1/2 in, 8' 4-1/4\", 2450 mm or 2.45 m", "96 1/2 in, 8' 4-1/4\", 2450 mm o 2,45 m"),
        [
            Inch, Foot, Millimetre,
            Metric(1e-2, "cm", "centimeter", "centimeters", "centimetre", "centimetres", "centímetro", "centímetros"),
            Metric(1, "m", "meter", "meters", "metre", "metres", "metro", "metros"),
        ])
    { BareUs = Inch, BareMetric = Millimetre, InParts = true };

    public static readonly Kind Film = new(
        v => v.Say("a film thickness", "un espesor de película"),
        v => v.Say("6 mil, 150 µm or 0.15 mm", "6 mil, 150 µm o 0,15 mm"),
        [Mil, Micrometre, Millimetre with { Factor = 1000 }])
    { BareUs = Mil, BareMetric = Micrometre };

    public static readonly Kind Area = new(
        v => v.Say("an area", "un área"),
        v => v.Say("8 ft² or 0.75 m²", "8 ft² o 0,75 m²"),
        [
            SquareFoot, SquareMetre,
            Us(SquareMetresPerSquareInch, "in²", "in2", "in^2", "sq in", "square inch", "square inches", "pulg²", "pulgada cuadrada", "pulgadas cuadradas"),
            Metric(1e-4, "cm²", "cm2", "cm^2"),
        ])
    { BareUs = SquareFoot, BareMetric = SquareMetre };

    public static readonly Kind Volume = new(
        v => v.Say("a volume", "un volumen"),
        v => v.Say("24 fl oz, 1 quart, 1 gal, 700 mL or 1.5 L", "24 fl oz, 1 cuarto, 1 gal, 700 mL o 1,5 L"),
        [
            FluidOunce, Millilitre,
            Us(MlPerUsCup, "cup", "cups", "taza", "tazas"),
            Us(MlPerUsPint, "pt", "pint", "pints", "pinta", "pintas"),
            Us(MlPerUsQuart, "qt", "quart", "quarts", "cuarto", "cuartos"),
            Us(MlPerUsGallon, "gal", "gal.", "gallon", "gallons", "US gal", "galón", "galones"),
            Metric(1000, "L", "liter", "liters", "litre", "litres", "litro", "litros"),
            Us(CubicMetresPerCubicFoot * 1e6, "ft³", "ft3", "ft^3", "cu ft", "cu. ft.", "cubic foot", "cubic feet", "pie³", "pies³", "pie cúbico", "pies cúbicos"),
            Metric(1e6, "m³", "m3", "m^3", "cubic meter", "cubic meters", "cubic metre", "cubic metres", "metro cúbico", "metros cúbicos"),
        ])
    { BareUs = FluidOunce, BareMetric = Millilitre, InParts = true };

    public static readonly Kind Mass = new(
        v => v.Say("a mass", "una masa"),
        v => v.Say("500 g, 1.2 kg, 8 oz or 2 lb", "500 g, 1,2 kg, 8 oz o 2 lb"),
        [
            Ounce, Gram,
            Us(GramsPerPound, "lb", "lb.", "lbs", "pound", "pounds", "libra", "libras") with { Below = Ounce },
            Metric(1000, "kg", "kilogram", "kilograms", "kilo", "kilos", "kilogramo", "kilogramos"),
        ])
    { BareUs = Ounce, BareMetric = Gram, InParts = true };

    public static readonly Kind Density = new(
        v => v.Say("a density", "una densidad"),
        v => v.Say("1.05 g/mL, 1.05 kg/L or 8.8 lb/gal", "1,05 g/mL, 1,05 kg/L u 8,8 lb/gal"),
        Mass.Units)
    { Under = Volume };

    public static readonly Kind HeatPerMass = new(
        v => v.Say("a heat per mass", "un calor por masa"),
        v => v.Say("350 J/g or 350 kJ/kg", "350 J/g o 350 kJ/kg"),
        [new Unit(1, "J", "joule", "joules", "julio", "julios"), new Unit(1000, "kJ")])
    { Under = Mass };

    public static readonly Kind Temperature = new(
        v => v.Say("a temperature", "una temperatura"),
        v => v.Say("72 °F or 22 °C", "72 °F o 22 °C"),
        [Fahrenheit, Celsius])
    { BareUs = Fahrenheit, BareMetric = Celsius };

    private static readonly Unit FahrenheitStep = Fahrenheit with { Zero = 0 };
    private static readonly Unit CelsiusStep = new(1, [.. Celsius.Names, "K"]);

    public static readonly Kind TemperatureDifference = new(
        v => v.Say("a temperature difference", "una diferencia de temperatura"),
        v => v.Say("5 °F or 3 °C", "5 °F o 3 °C"),
        [FahrenheitStep, CelsiusStep])
    { BareUs = FahrenheitStep, BareMetric = CelsiusStep };

    public static readonly Kind Share = new(
        v => v.Say("a share", "una proporción"),
        v => v.Say("20 %", "20 %"),
        [Percent]);

    public static readonly Kind Humidity = new(
        v => v.Say("a relative humidity", "una humedad relativa"),
        v => v.Say("55 %", "55 %"),
        [Percent with { Names = [.. Percent.Names, "% RH", "% HR"] }])
    { BareUs = Percent, BareMetric = Percent };

    public static readonly Kind Time = new(
        v => v.Say("a time", "un tiempo"),
        v => v.Say("45 s, 12 min, 1 h 30 min or 2 d", "45 s, 12 min, 1 h 30 min o 2 d"),
        [Second, Minute, Hour, new Unit(86400, "d", "day", "days", "día", "días") { Below = Hour }])
    { InParts = true };

    public static readonly Kind AreaRate = new(
        v => v.Say("an area per time", "un área por tiempo"),
        v => v.Say("6 ft²/min or 0.5 m²/min", "6 ft²/min o 0,5 m²/min"),
        Area.Units)
    { Under = Time };

    public static readonly Kind LengthRate = new(
        v => v.Say("a length per time", "una longitud por tiempo"),
        v => v.Say("8 ft/min or 2.5 m/min", "8 ft/min o 2,5 m/min"),
        Length.Units)
    { Under = Time };

    public static readonly Kind Angle = new(
        v => v.Say("an angle", "un ángulo"),
        v => v.Say("45 or 45°", "45 o 45°"),
        [Degree])
    { BareUs = Degree, BareMetric = Degree };

    /// <summary>Kinds whose units are known apart, so that a unit of another kind can be named.</summary>
    public static readonly IReadOnlyList<Kind> Plain = [Length, Film, Area, Volume, Mass, Temperature, Share, Time, Angle];

    private static Unit Us(double factor, params string[] names) => new(factor, names) { System = UnitSystem.Us };

    private static Unit Metric(double factor, params string[] names) => new(factor, names) { System = UnitSystem.Metric };
}
