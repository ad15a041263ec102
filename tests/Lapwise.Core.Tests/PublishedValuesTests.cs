using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Quantities;
using UnitsNet;
using static Lapwise.Core.Tests.CaseFile;

namespace Lapwise.Core.Tests;

/// <summary>Every published value in <c>cases/published.txt</c>, held to its source's own rounding, and how many there are.</summary>
public sealed class PublishedValuesTests
{
    private static readonly IReadOnlyList<Published> All = [.. Rows("published.txt").Select(Published.Of)];

    [Fact]
    public void Every_published_value_is_met_within_its_sources_rounding() => Assert.All(All, value =>
        Assert.True(Math.Abs(Worked(value) - value.Expected) <= value.Tolerance + 1e-9, $"{value} comes to {Worked(value)}"));

    /// <summary>The figures reached; a row that is taken out or loses its source makes them fall.</summary>
    [Fact]
    public void There_are_as_many_as_there_have_been()
    {
        var counted = All.Where(v => v.Counts).ToList();
        Assert.True(counted.Count >= 167, $"{counted.Count} values");
        Assert.True(counted.Select(v => v.Source).Distinct(StringComparer.Ordinal).Count() >= 47, "sources");
        Assert.All(
            new[] { ("film", 53), ("mixing", 11), ("dew point", 34), ("pot life and cure", 18), ("vapour and exposure", 40), ("VOC", 11) },
            group => Assert.True(counted.Count(v => v.Group == group.Item1) >= group.Item2, group.Item1));
    }

    [Fact]
    public void No_value_stands_twice() => Assert.Equal(All.Count, All.Select(v => (v.What, v.Written, v.Expected, v.Source, v.Where)).Distinct().Count());

    /// <summary>No more than half of the last figure printed, or one of it where the source cuts.</summary>
    [Fact]
    public void No_tolerance_is_wider_than_the_rounding_of_the_figure_printed() => Assert.All(All.Where(v => v.Counts), value =>
    {
        var decimals = value.Printed.Contains('.') ? value.Printed.Length - value.Printed.IndexOf('.') - 1 : 0;
        var wholeFigure = value.Printed.EndsWith(".0", StringComparison.Ordinal) ? 1 : decimals;
        var half = 0.5 * Math.Pow(10, -wholeFigure);
        Assert.True(value.Tolerance <= (value.Where.StartsWith("cut", StringComparison.Ordinal) ? 2 : 1) * half + 1e-12, $"{value}");
    });

    private static double Worked(Published v) => v.What switch
    {
        "rate" => Film.SpreadingRateM2PerL(new DryFilm(v["dryUm"]), v["solids"]),
        "rateUs" => Film.SpreadingRateM2PerL(new DryFilm(Length.FromMils(v["dryMil"]).Micrometers), v["solids"]) * FtPerGallon * 1604 / (231 / 0.001 / 144),
        "wet" => Film.Wet(new DryFilm(v["dryUm"]), v["solids"], v["thinner"]).Micrometres,
        "thinned" => Film.ThinnedSolids(v["solids"], v["thinner"]),
        "practical" => Film.AfterLossM2PerL(v["theory"], v["loss"]),
        "pour" => Volume.FromUsGallons(1).Milliliters / Film.PouredMl(Length.FromInches(v["depthIn"]).Micrometers, 1, 0) / Area.FromSquareFeet(1).SquareMeters,
        "total" => new Recipe([new("A", v["a"], 1), new("B", v["b"], 1)]).From([v["amountA"], double.MaxValue]).MixMl,
        "part" => new Recipe([new("A", v["a"], 1), new("B", v["b"], 1)]).Of(v["total"])[(int)v["part"]].Ml,
        "dew" => Dew.PointC(v["air"], v["humidity"]),
        "ratio" => Halving(v["coldC"]) / Halving(v["hotC"]),
        "energy" => new TemperatureLaw.ThroughTwoPoints(new TimeAt(v["faster"], v["coldC"]), new TimeAt(1, v["hotC"])).EnergyKJPerMol,
        "switch" => WaterDrying.Of(v["filmUm"], v["solids"], 23, 23, 0.5) is var d ? v["filmUm"] * v["solids"] / ((v["filmUm"] * v["solids"]) + d.LeftAt(d.ConstantRateS)) : 0,
        "rise" => new RoomVapour(1, v["changes"] / 3600, 1.0 / 3600, 1e9).ShareAt(v["minutes"] * 60),
        "clear" => Emptied(1, v["changes"] / 3600).ClearAfterS((1 - v["removed"]) * Emptied(1, v["changes"] / 3600).PeakShare)!.Value / 60,
        "half" => Emptied(v["roomM3"], v["airM3PerH"] / 3600) is var room ? room.ClearAfterS(room.PeakShare / 2)!.Value / 3600 : 0,
        "reach" => Reached(new RoomVapour(v["roomM3"], v["airM3PerS"], v["vapourM3PerS"], 1e9), v["share"]) / 3600,
        "ft3PerLbMol" => Volume.FromLiters(MolarVolume.LAt(Temperature.FromDegreesFahrenheit(70).DegreesCelsius) * Mass.FromPounds(1).Grams).CubicFeet,
        // One pint a minute of a liquid as dense as water, of 1 g/mol, down to one share in a million of the air: 403 · 10⁶ ft³.
        "factor403" => Volume.FromCubicMeters(RoomVapour.VapourM3(Solvents.Acetone with { GPerMl = 1, GPerMol = 1 }, Volume.FromUsGallons(0.125).Milliliters, Temperature.FromDegreesFahrenheit(70).DegreesCelsius)).CubicFeet,
        "lelShare" => v["ppm"] / 1e6 / Solvents.Acetone.LowerFlammable!.Value,
        "mix" or "lessWater" => Voc.AsApplied(v.VocParts()).LessWaterGPerL,
        "mass" => Voc.AsApplied(v.VocParts()).ActualGPerL * v.List("litres").Sum(),
        "mostThinner" => Voc.MostThinnerMl(v.VocParts(), v["thinner"], v["limit"])!.Value,
        "byMassLessWater" => Voc.AsApplied([v.VocByMass()]).LessWaterGPerL / 1000,
        "byMassActual" => Voc.AsApplied([v.VocByMass()]).ActualGPerL / 1000,
        // C / (1 − C / D) with D such that the rest of the litre is the solids.
        "perSolids" => Voc.PerSolidsGPerL(v["voc"], v["voc"] / (1 - v["solids"])),
        _ => throw new InvalidDataException(v.What),
    };

    private static readonly double FtPerGallon = Area.FromSquareMeters(1).SquareFeet / Volume.FromLiters(1).UsGallons;

    private static double Halving(double celsius) => new TemperatureLaw.HalvingEachTenDegrees(new TimeAt(3600, 21)).SecondsAt(celsius);

    /// <summary>A room filled in a blink and then aired.</summary>
    private static RoomVapour Emptied(double roomM3, double airM3PerS) => new(roomM3, airM3PerS, 1e6, 1e-6);

    private static double Reached(RoomVapour room, double share)
    {
        var (before, after) = (0.0, 1e6);
        while (after - before > 1) (before, after) = room.ShareAt((before + after) / 2) >= share ? (before, (before + after) / 2) : ((before + after) / 2, after);
        return after;
    }

    private sealed record Published(string Group, string What, string Written, string Printed, double Tolerance, string Standing, string Where, string Source)
    {
        public static Published Of(string[] row) => new(row[0], row[1], row[2], row[3], Number(row[4]), row[5], row[6], row[7]);

        public double Expected => Number(Printed);

        public bool Counts => Standing is "read" or "read second hand";

        public double this[string name] => List(name).Single();

        public IReadOnlyList<double> List(string name) =>
            [.. Written.Split(';', StringSplitOptions.TrimEntries).Select(p => p.Split('=')).Single(p => p[0] == name)[1].Split(',').Select(Number)];

        /// <summary>The unit of mass and of volume does not matter to these sums: pounds and gallons stay as printed.</summary>
        public IReadOnlyList<VocPart> VocParts() =>
            [.. List("litres").Zip(List("voc"), (volume, voc) => new VocPart(volume, voc, Written.Contains("water=", StringComparison.Ordinal) ? this["water"] : 0))];

        public VocPart VocByMass() => VocPart.ByMass(1, this["density"], this["solids"], this["water"], waterDensity: this["waterDensity"]);
    }
}
