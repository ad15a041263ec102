using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>
/// What is taken for a slip of the pen rather than a job: wide enough for every real one. No limit of the trade stands here.
/// </summary>
internal static class Ranges
{
    public const int MostPeople = 12;
    public const int MostTops = 200;
    public const int MostOnOneTop = 50;
    public const int MostSectionLines = 200;
    public const int MostBubblePasses = 20;
    public const int MostCoats = 20;
    public const int MostProducts = 100;
    public const int MostKits = 30;

    public static readonly Bounds Side = Length(0.001, 30);
    public static readonly Bounds Diagonal = Length(0.001, 45);
    public static readonly Bounds ArcRadius = Length(0.001, 100);
    public static readonly Bounds Thickness = Length(0.001, 0.3);
    public static readonly Bounds Strip = Length(0, 0.6) with { AboveZero = false };
    public static readonly Bounds Upstand = Length(0.001, 3);
    public static readonly Bounds Placed = Length(0, 30) with { AboveZero = false };
    public static readonly Bounds TapeStep = Length(0.0001, 0.05);
    public static readonly Bounds Reach = Length(0.1, 3);
    public static readonly Bounds DryPassDegrees = new(0, 180, (v, x) => v.Number(x, 0) + "°");
    public static readonly Bounds TurnRadians = new(-Math.PI * 179.99 / 180, Math.PI * 179.99 / 180, (v, _) => v.Say("less than half a turn", "menos de media vuelta"));

    public static readonly Bounds RoomTemperature = new(-20, 60, (v, x) => v.Temperature(x));
    public static readonly Bounds SheetTemperature = new(-20, 90, (v, x) => v.Temperature(x));
    public static readonly Bounds DewMargin = new(0, 15, (v, x) => v.TemperatureDifference(x));
    public static readonly Bounds Humidity = Share(0.01, 1) with { AboveZero = true };

    public static readonly Bounds AreaPace = new(0.001 / 60, 10.0 / 60, (v, x) => v.AreaRate(x)) { AboveZero = true };
    public static readonly Bounds LengthPace = new(0.01 / 60, 60.0 / 60, (v, x) => v.LengthRate(x)) { AboveZero = true };
    public static readonly Bounds Pause = Time(0, 3600) with { AboveZero = false };
    public static readonly Bounds DaySpread = Share(0, 1);
    public static readonly Bounds Work = Time(1, 86400);
    public static readonly Bounds Wait = Time(1, 90 * 86400.0);

    public static readonly Bounds Film = new(1, 20_000, (v, x) => v.Film(x)) { AboveZero = true };
    public static readonly Bounds Held = Volume(0, 5000) with { AboveZero = false };
    public static readonly Bounds BatchVolume = Volume(10, 200_000);
    public static readonly Bounds KitVolume = Volume(1, 1_000_000);
    public static readonly Bounds LeftInPack = Volume(0, 1_000_000) with { AboveZero = false };
    public static readonly Bounds CupStep = Volume(0.01, 1000);
    public static readonly Bounds ScaleStep = new(0.01, 100, (v, x) => v.Mass(x)) { AboveZero = true };
    public static readonly Bounds Density = new(0.3, 5, (v, x) => v.Density(x)) { AboveZero = true };

    public const int MostMeasuredUses = 100;
    public static readonly Bounds UsedArea = new(0.01, 1000, (v, x) => v.Area(x)) { AboveZero = true };
    public static readonly Bounds RoomVolume = new(1e6, 1e10, (v, x) => v.RoomVolume(x / 1e6)) { AboveZero = true };
    public static readonly Bounds AirChanges = new(0, 200, (v, x) => v.Number(x, 1));
    public static readonly Bounds Roughness = new(0, 2000, (v, x) => v.Film(x));
    public static readonly Bounds WipeVolume = Volume(1, 5000);
    public static readonly Bounds VocConcentration = new(0, 1.2, (v, x) => v.Voc(x * 1000));

    public const int MostMassLives = 8;
    public static readonly Bounds MixMass = new(1, 200_000, (v, x) => v.Mass(x)) { AboveZero = true };
    public static readonly Bounds MixTemperature = new(-5, 60, (v, x) => v.Temperature(x));
    public static readonly Bounds HottestMix = new(30, 150, (v, x) => v.Temperature(x));
    public static readonly Bounds HeatOfMix = new(1, 1000, (v, x) => v.HeatPerMass(x)) { AboveZero = true };
    public static readonly Bounds Whole = Share(0, 1);

    public static readonly Bounds VolumeSolids = Share(0.01, 1) with { AboveZero = true };
    public static readonly Bounds Thinner = Share(0, 1);
    public static readonly Bounds Loss = Share(0, 0.9);
    public static readonly Bounds Burden = Share(0, 2);
    public static readonly Bounds Overhead = Share(0, 5);
    public static readonly Bounds StageShare = Share(0, 1) with { AboveZero = true };
    public static readonly Bounds MarginShare = Share(0, 0.9);
    public static readonly Bounds LargestSection = new(0.01, 100, (v, x) => v.Area(x)) { AboveZero = true };

    public const int MostDaysOff = 400;
    public const int MostFixtures = 40;
    public static readonly Bounds DaySwing = new(0, 40, (v, x) => v.TemperatureDifference(x));
    public static readonly Bounds StepTime = Time(60, 10 * 86400.0);

    private static Bounds Length(double least, double most) => new(least, most, (v, x) => v.Length(x)) { AboveZero = true };
    private static Bounds Volume(double least, double most) => new(least, most, (v, x) => v.Volume(x)) { AboveZero = true };
    private static Bounds Share(double least, double most) => new(least, most, (v, x) => v.Percent(x));
    private static Bounds Time(double least, double most) => new(least, most, (_, x) => Voice.Span(x)) { AboveZero = true };
}
