using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;
using UnitsNet;
using UnitSystem = Lapwise.Core.Explain.UnitSystem;

namespace Lapwise.Core.Tests.Quantities;

public sealed class ReadingTests
{
    private const double Inch = 0.0254;

    [Theory]
    [InlineData("96 1/2 in", 96.5 * Inch)]
    [InlineData("96-1/2\"", 96.5 * Inch)]
    [InlineData("96½\"", 96.5 * Inch)]
    [InlineData("96 ½ inches", 96.5 * Inch)]
    [InlineData("96 1⁄2 in", 96.5 * Inch)]
    [InlineData("¾ in", 0.75 * Inch)]
    [InlineData("3/16 in", 3 * Inch / 16)]
    [InlineData("8' 4-1/4\"", 100.25 * Inch)]
    [InlineData("8'4 1/4\"", 100.25 * Inch)]
    [InlineData("8'-4 1/4\"", 100.25 * Inch)]
    [InlineData("8′ 4¼″", 100.25 * Inch)]
    [InlineData("8’ 4¼”", 100.25 * Inch)]
    [InlineData("8 ft 4 1/4 in", 100.25 * Inch)]
    [InlineData("8ft4in", 100 * Inch)]
    [InlineData("8' 4", 100 * Inch)]
    [InlineData("8'", 96 * Inch)]
    [InlineData("8 feet", 96 * Inch)]
    [InlineData("2450 mm", 2.45)]
    [InlineData("2.45 m", 2.45)]
    [InlineData("2,45 m", 2.45)]
    [InlineData("2,450 5 m", null)]
    [InlineData("245 cm", 2.45)]
    [InlineData("245cm", 2.45)]
    [InlineData("2 m 45 cm", 2.45)]
    [InlineData("96.5", 96.5 * Inch)]
    [InlineData("96,5", 96.5 * Inch)]
    [InlineData("  96 1/2  ", 96.5 * Inch)]
    [InlineData("8 pies 4 pulgadas", 100 * Inch)]
    [InlineData("2450 milímetros", 2.45)]
    [InlineData("2450 MILIMETROS", 2.45)]
    [InlineData("1,234.5 mm", 1.2345)]
    [InlineData("1.234,5 mm", 1.2345)]
    [InlineData("0,234 m", 0.234)]
    [InlineData("1234,567 mm", 1.234567)]
    [InlineData("-5 in", -5 * Inch)]
    [InlineData("−8' 4\"", -100 * Inch)]
    public void Length_is_read_as_people_write_it(string text, double? metres)
    {
        if (metres is { } wanted) Assert.Equal(wanted, Value(Reading.Length(text, UnitSystem.Us)), 12);
        else Why(Reading.Length(text, UnitSystem.Us));
    }

    [Fact]
    public void A_bare_number_is_in_the_working_unit()
    {
        Assert.Equal(96 * Inch, Value(Reading.Length("96", UnitSystem.Us)), 12);
        Assert.Equal(0.096, Value(Reading.Length("96", UnitSystem.Metric)), 12);
        Assert.Equal(6 * 25.4, Value(Reading.Film("6", UnitSystem.Us)), 12);
        Assert.Equal(150, Value(Reading.Film("150", UnitSystem.Metric)), 12);
        Assert.Equal(25, Value(Reading.Temperature("77", UnitSystem.Us)), 12);
        Assert.Equal(25, Value(Reading.Temperature("25", UnitSystem.Metric)), 12);
        Assert.Equal(5, Value(Reading.TemperatureDifference("9", UnitSystem.Us)), 12);
        Assert.Equal(0.55, Value(Reading.Humidity("55")), 12);
    }

    [Fact]
    public void Without_working_units_the_unit_must_be_said()
    {
        Assert.Equal("UnitMissing", Why(Reading.Length("96", null)).Code);
        Assert.Equal("UnitMissing", Why(Reading.Temperature("77", null)).Code);
        Assert.Equal("UnitMissing", Why(Reading.Share("0.2")).Code);
        Assert.Equal("UnitMissing", Why(Reading.Time("45")).Code);
        Assert.Equal("UnitMissing", Why(Reading.Density("1.05")).Code);
        Assert.Equal("UnitMissing", Why(Reading.AreaRate("6 ft²")).Code);
        Assert.Equal(0.55, Value(Reading.Humidity("55")), 12);
    }

    // UnitsNet 5 is a general-purpose library of units. Its US fluid ounce is 1e-12 off 231 in³ / 128, hence the tolerance.
    [Fact]
    public void Every_unit_agrees_with_UnitsNet()
    {
        Agree(Reading.Length("7 in", null), Length.FromInches(7).Meters);
        Agree(Reading.Length("7 ft", null), Length.FromFeet(7).Meters);
        Agree(Reading.Film("7 mil", null), Length.FromMils(7).Micrometers);
        Agree(Reading.Film("0.15 mm", null), 150);
        Agree(Reading.Film("150 µm", null), 150);
        Agree(Reading.Film("150 um", null), 150);
        Agree(Reading.Area("7 ft²", null), Area.FromSquareFeet(7).SquareMeters);
        Agree(Reading.Area("7 ft2", null), Area.FromSquareFeet(7).SquareMeters);
        Agree(Reading.Area("7 sq ft", null), Area.FromSquareFeet(7).SquareMeters);
        Agree(Reading.Area("7 pies cuadrados", null), Area.FromSquareFeet(7).SquareMeters);
        Agree(Reading.Area("7 in²", null), Area.FromSquareInches(7).SquareMeters);
        Agree(Reading.Area("0,75 m²", null), 0.75);
        Agree(Reading.Volume("7 US fl oz", null), Volume.FromUsOunces(7).Milliliters);
        Agree(Reading.Volume("7 fl. oz.", null), Volume.FromUsOunces(7).Milliliters);
        Agree(Reading.Volume("7 onzas líquidas", null), Volume.FromUsOunces(7).Milliliters);
        Agree(Reading.Volume("7 cups", null), Volume.FromUsCustomaryCups(7).Milliliters);
        Agree(Reading.Volume("7 pints", null), Volume.FromUsPints(7).Milliliters);
        Agree(Reading.Volume("7 quarts", null), Volume.FromUsQuarts(7).Milliliters);
        Agree(Reading.Volume("7 gal", null), Volume.FromUsGallons(7).Milliliters);
        Agree(Reading.Volume("1 gal 2 qt", null), Volume.FromUsQuarts(6).Milliliters);
        Agree(Reading.Volume("1 1/2 qt", null), Volume.FromUsQuarts(1.5).Milliliters);
        Agree(Reading.Volume("1.5 L", null), 1500);
        Agree(Reading.Volume("750 ml", null), 750);
        Agree(Reading.Mass("7 oz", null), Mass.FromOunces(7).Grams);
        Agree(Reading.Mass("7 lb", null), Mass.FromPounds(7).Grams);
        Agree(Reading.Mass("7 lb 3 oz", null), Mass.FromOunces(115).Grams);
        Agree(Reading.Mass("1,2 kg", null), 1200);
        Agree(Reading.Density("8.8 lb/gal"), 8.8 * 0.45359237 / 3.785411784); // exact; UnitsNet's factor is 3e-9 off
        Agree(Reading.Density("1.05 kg/L"), 1.05);
        Agree(Reading.Density("1.05 g/cm3"), 1.05);
        Agree(Reading.Density("1,05 g/mL"), 1.05);
        Agree(Reading.Temperature("71.5 °F", null), Temperature.FromDegreesFahrenheit(71.5).DegreesCelsius);
        Agree(Reading.Temperature("-4 F", null), Temperature.FromDegreesFahrenheit(-4).DegreesCelsius);
        Agree(Reading.Temperature("21,5ºC", null), 21.5);
        Agree(Reading.TemperatureDifference("5 °F", null), TemperatureDelta.FromDegreesFahrenheit(5).Kelvins);
        Agree(Reading.AreaRate("6 ft²/min"), Area.FromSquareFeet(6).SquareMeters / 60);
        Agree(Reading.AreaRate("0.5 m² per min"), 0.5 / 60);
        Agree(Reading.AreaRate("6 pies² por minuto"), Area.FromSquareFeet(6).SquareMeters / 60);
        Agree(Reading.LengthRate("8 ft/min"), Speed.FromFeetPerMinute(8).MetersPerSecond);

        static void Agree(Read<double> read, double wanted) => Assert.Equal(wanted, Value(read), Math.Abs(wanted) * 2e-12);
    }

    // NIST Handbook 44, Appendix C: 1 gallon = 231 cubic inches = 4 quarts = 8 pints = 16 cups = 128 fluid ounces.
    [Theory]
    [InlineData("1 gal")]
    [InlineData("4 qt")]
    [InlineData("8 pt")]
    [InlineData("16 cups")]
    [InlineData("128 fl oz")]
    public void A_US_gallon_is_231_cubic_inches(string gallon)
    {
        var cubicInchMl = 2.54 * 2.54 * 2.54;
        Assert.Equal(231 * cubicInchMl, Value(Reading.Volume(gallon, null)), 9);
    }

    // The spreading-rate identity of the trade, 1604 ft²·mil per US gallon, cut off from 231 / 0.001 / 144 = 1604.17.
    [Fact]
    public void One_gallon_at_one_mil_covers_1604_square_feet()
    {
        var m3 = Value(Reading.Volume("1 gal", null)) * 1e-6;
        var metres = Value(Reading.Film("1 mil", null)) * 1e-6;
        Assert.Equal(231 / 0.001 / 144, m3 / metres / Value(Reading.Area("1 ft²", null)), 9);
    }

    [Theory]
    [InlineData("45 s", 45)]
    [InlineData("3 min", 180)]
    [InlineData("1 h 30 min", 5400)]
    [InlineData("1 h 30", 5400)]
    [InlineData("1h30min", 5400)]
    [InlineData("1:30 h", 5400)]
    [InlineData("1:30 min", 90)]
    [InlineData("1:02:30", 3750)]
    [InlineData("4 hours", 14400)]
    [InlineData("4,5 horas", 16200)]
    [InlineData("2 d", 172800)]
    [InlineData("2 días 3 h", 183600)]
    public void Time_is_read_as_people_write_it(string text, double seconds) => Assert.Equal(seconds, Value(Reading.Time(text)), 9);

    [Theory]
    [InlineData("right 90", 90)]
    [InlineData("90", 90)]
    [InlineData("90°", 90)]
    [InlineData("left 45", -45)]
    [InlineData("45 left", -45)]
    [InlineData("Left 22.5°", -22.5)]
    [InlineData("derecha 90", 90)]
    [InlineData("izquierda 45", -45)]
    [InlineData("izquierda 22,5 grados", -22.5)]
    [InlineData("r 0", 0)]
    public void Turn_is_read_with_its_way(string text, double degrees) => Assert.Equal(degrees * Math.PI / 180, Value(Reading.Turn(text)), 12);

    [Theory]
    [InlineData("55 %", 0.55)]
    [InlineData("55%", 0.55)]
    [InlineData("1.5 percent", 0.015)]
    [InlineData("1,5 por ciento", 0.015)]
    public void Share_is_read_from_a_percentage(string text, double share) => Assert.Equal(share, Value(Reading.Share(text)), 12);

    [Theory]
    [InlineData("", "QuantityMissing", 0)]
    [InlineData("   ", "QuantityMissing", 0)]
    [InlineData("wide", "NumberMissing", 0)]
    [InlineData("NaN", "NumberMissing", 0)]
    [InlineData("Infinity", "NumberMissing", 0)]
    [InlineData("in 96", "NumberMissing", 0)]
    [InlineData("- in", "NumberMissing", 2)]
    [InlineData("1,234", "NumberAmbiguous", 0)]
    [InlineData("1,234 mm", "NumberAmbiguous", 0)]
    [InlineData("1,23,4 mm", "NumberAmbiguous", 0)]
    [InlineData("96 1/0 in", "FractionNotUnderstood", 3)]
    [InlineData("96 5/4 in", "FractionNotUnderstood", 3)]
    [InlineData("1.5/2 in", "FractionNotUnderstood", 0)]
    [InlineData("96 inn", "UnitUnknown", 3)]
    [InlineData("96 1/2 furlongs", "UnitUnknown", 7)]
    [InlineData("1e3 mm", "UnitUnknown", 1)]
    [InlineData("5 kg", "UnitOfAnotherKind", 2)]
    [InlineData("8 ft2", "UnitOfAnotherKind", 2)]
    [InlineData("8 m²", "UnitOfAnotherKind", 2)]
    [InlineData("72 °F", "UnitOfAnotherKind", 3)]
    [InlineData("8 ft 14 in", "PartsDoNotFit", 5)]
    [InlineData("8 in 4 ft", "PartsDoNotFit", 5)]
    [InlineData("8 ft 20 mm", "PartsDoNotFit", 5)]
    [InlineData("8 in 4", "UnitMissing", 6)]
    [InlineData("96 in wide", "TextLeftOver", 6)]
    [InlineData("96 in,", "TextLeftOver", 5)]
    [InlineData("96--1/2", "UnitUnknown", 2)]
    public void A_length_that_cannot_be_read_is_refused_at_the_character(string text, string code, int position)
    {
        var why = Why(Reading.Length(text, UnitSystem.Us));
        Assert.Equal((code, position), (why.Code, why.Position));
        SaysBoth(why);
    }

    [Theory]
    [InlineData("1:30")]
    [InlineData("1:75 h")]
    [InlineData("1:2:3")]
    [InlineData("a:30 h")]
    [InlineData("1:30 d")]
    public void A_clock_that_can_mean_two_things_is_refused(string text)
    {
        var why = Why(Reading.Time(text));
        Assert.Equal("ClockUnclear", why.Code);
        SaysBoth(why);
    }

    [Theory]
    [InlineData("around")]
    [InlineData("right")]
    [InlineData("right 90 left")]
    [InlineData("-90")]
    [InlineData("right -90")]
    public void A_turn_that_is_none_is_refused(string text)
    {
        var why = Why(Reading.Turn(text));
        Assert.Equal("TurnUnclear", why.Code);
        SaysBoth(why);
    }

    [Fact]
    public void An_ounce_is_a_mass_and_no_volume() => Assert.Equal("UnitOfAnotherKind", Why(Reading.Volume("24 oz", UnitSystem.Us)).Code);

    [Fact]
    public void A_number_too_long_for_a_measurement_is_refused() => Assert.Equal("NumberTooLong", Why(Reading.Length(new string('9', 400), UnitSystem.Us)).Code);

    [Fact]
    public void A_huge_or_poisoned_text_reaches_no_screen_whole()
    {
        var text = "\u001b[31m" + new string('x', 1_000_000);
        var said = Why(Reading.Length(text, UnitSystem.Us)).Text(Voice.Default);
        Assert.True(said.Length < 200);
        Assert.DoesNotContain('\u001b', said);
    }

    /// <summary>Whatever is typed, the readers answer.</summary>
    [Fact]
    public void No_text_makes_a_reader_throw()
    {
        string[] usual = ["8", "4", "1/2", "½", "'", "\"", " ", "-", "−", ",", ".", "/", ":", "ft", "in", "mm", "%", "°F", "²", "2", "e", "per", "min", "\0", "٣"];
        Gen.Frequency((9, Gen.Int[0, usual.Length - 1].Select(i => usual[i])), (1, Gen.String[1, 3])).Array[0, 8].Sample(parts =>
        {
            Entry entry = string.Concat(parts);
            foreach (var units in new UnitSystem?[] { UnitSystem.Us, UnitSystem.Metric, null })
            {
                Read<double>[] reads =
                [
                    Reading.Length(entry, units), Reading.Film(entry, units), Reading.Area(entry, units), Reading.Volume(entry, units), Reading.Mass(entry, units),
                    Reading.Temperature(entry, units), Reading.TemperatureDifference(entry, units), Reading.Density(entry), Reading.Share(entry),
                    Reading.Humidity(entry), Reading.Time(entry), Reading.AreaRate(entry), Reading.LengthRate(entry), Reading.Turn(entry), Reading.Angle(entry),
                ];
                foreach (var read in reads)
                {
                    if (read.Failed(out var why, out var value)) SaysBoth(why);
                    else Assert.True(double.IsFinite(value), entry.Text);
                }
            }
        });
    }

    private static double Value(Read<double> read) => read.Failed(out var why, out var value) ? throw new Xunit.Sdk.XunitException(why.Text(Voice.Default)) : value;

    private static Misread Why(Read<double> read) => Assert.IsType<Read<double>.Refused>(read).Why;

    private static void SaysBoth(Misread why) => Said.InEveryVoice([why.Text, why.Cure]);
}
