using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Jobs;

public sealed class ProductReadingTests
{
    public static TheoryData<Slip<ProductDocument>> Slips => new((Slip<ProductDocument>[])
    [
        new("a newer version", "lapwise", "MadeByNewerVersion", p => p with { Lapwise = 9 }),
        new("no id", "id", "IdMissing", p => p with { Id = " " }),
        new("no name", "name", "NameMissing", p => p with { Name = "" }),
        new("a mix ratio of 0", "mix.b", "MixRatioNotPossible", p => p with { Mix = new() { A = 2, B = 0 } }),
        new("a negative mix ratio", "mix.a", "MixRatioNotPossible", p => p with { Mix = new() { A = -2, B = 1 } }),
        new("a mix ratio that is no number", "mix.a", "MixRatioNotPossible", p => p with { Mix = new() { A = double.NaN, B = 1 } }),
        new("an endless mix ratio", "mix.a", "MixRatioNotPossible", p => p with { Mix = new() { A = double.PositiveInfinity, B = 1 } }),
        new("a third part of 0", "mix.c", "MixRatioNotPossible", p => p with { Mix = new() { A = 2, B = 1, C = 0 }, DensityC = "0.9 g/mL" }),
        new("a third part without its density", "densityC", "QuantityMissing", p => p with { Mix = new() { A = 2, B = 1, C = 0.5 } }),
        new("a surface colder than its least", "limits.surfaceMost", "LeastOverMost", p => p with { Limits = p.Limits with { SurfaceLeast = "70 °F", SurfaceMost = "60 °F" } }),
        new("water that leaves nothing of the coating", "voc.a.water", "NothingButWater", p => p with { Voc = new() { A = new() { Voc = "30 g/L", Water = "80 %", Exempt = "20 %" } } }),
        new("VOC of a part left blank", "voc.b.voc", "QuantityMissing", p => p with { Voc = new() { A = new() { Voc = "30 g/L" }, B = new() } }),
        new("VOC heavier than any solvent", "voc.a.voc", "TooLarge", p => p with { Voc = new() { A = new() { Voc = "1500 g/L" } } }),
        new("a hazard statement misspelt", "label[1]", "HazardStatementUnclear", p => p with { Label = ["H317", "317"] }),
        new("a measured use of no area", "measuredUse[0].area", "NotPositive", p => p with { MeasuredUse = [new() { Area = "0 ft²", WetFilm = "6 mil", Used = "20 fl oz" }] }),
        new("a density without its unit", "densityA", "UnitMissing", p => p with { DensityA = "1.04" }),
        new("a density of lead", "densityB", "TooLarge", p => p with { DensityB = "11 g/mL" }),
        new("volume solids over 100 %", "volumeSolids", "TooLarge", p => p with { VolumeSolids = "120 %" }),
        new("thinner without a name", "thinner.name", "NameMissing", p => p with { Thinner = new() { Limit = "2 %" } }),
        new("thinner without a limit", "thinner.limit", "QuantityMissing", p => p with { Thinner = new() { Name = "water" } }),
        new("a film without its unit", "wetFilm.least", "UnitMissing", p => p with { WetFilm = new() { Least = "6", Most = "7.5 mil" } }),
        new("least film over most", "wetFilm", "LeastOverMost", p => p with { WetFilm = new() { Least = "8 mil", Most = "7.5 mil" } }),
        new("no pot life", "potLife", "OneOrTwoTimes", p => p with { PotLife = [] }),
        new("three open times", "openTime", "OneOrTwoTimes", p => p with { OpenTime = [At("9 min", 80), At("11 min", 73), At("14 min", 65)] }),
        new("two times at one temperature", "openTime", "SameTemperatureTwice", p => p with { OpenTime = [At("9 min", 73), At("11 min", 73)] }),
        new("longer when hotter", "potLife", "HotterLastsLonger", p => p with { PotLife = [At("45 min", 73), At("50 min", 90)] }),
        new("recoat that ends before it starts", "recoat", "LeastOverMost", p => p with { Recoat = new() { Earliest = "24 h", Latest = "4 h", At = "73 °F" } }),
        new("full use before light use", "usableFrom", "LeastOverMost", p => p with { UsableFrom = new() { LightUse = "7 d", FullUse = "2 d" } }),
        new("air limits the wrong way round", "limits", "LeastOverMost", p => p with { Limits = p.Limits with { AirLeast = "90 °F" } }),
        new("a humidity limit over 100 %", "limits.humidityMost", "TooLarge", p => p with { Limits = p.Limits with { HumidityMost = "110 %" } }),
        new("a negative dew margin", "limits.dewMargin", "TooSmall", p => p with { Limits = p.Limits with { DewMargin = "-3 °C" } }),
        new("what follows a pour, of a coat that is rolled", "pour", "PourOfCoatNotPoured", p => p with { Pour = new() { LevelWithin = "10 min" } }),
        new("bubble passes that go back", "pour.bubblePassesAt[1]", "LeastOverMost", p => p with { Method = ApplicationMethod.Poured, Pour = new() { BubblePassesAt = ["25 min", "10 min"] } }),
        new("more bubble passes than anyone makes", "pour.bubblePassesAt", "TooMany", p => p with { Method = ApplicationMethod.Poured, Pour = new() { BubblePassesAt = [.. Enumerable.Repeat(new Entry("10 min"), 21)] } }),
        new("drips scraped before they begin", "pour.scrapeDrips", "LeastOverMost", p => p with { Method = ApplicationMethod.Poured, Pour = new() { ScrapeDrips = new() { From = "6 h", To = "3 h" } } }),
        new("no kits", "kits", "NoKits", p => p with { Kits = [] }),
        new("a kit of nothing", "kits[0].size", "NotPositive", p => p with { Kits = [new() { Size = "0 mL", Price = 1 }] }),
        new("a kit that pays", "kits[0].price", "PriceNegative", p => p with { Kits = [new() { Size = "24 fl oz", Price = -1 }] }),
        new("a batch of an ounce by mass", "largestBatch", "UnitOfAnotherKind", p => p with { LargestBatch = "48 oz" }),
        new("a larger mass that lives longer", "potLifeOfMass", "MoreLastsLonger", p => p with { PotLifeOfMass = [Life("100 g", "30 min"), Life("500 g", "40 min")] }),
        new("a mass without its unit", "potLifeOfMass[0].mass", "UnitMissing", p => p with { PotLifeOfMass = [Life("100", "30 min")] }),
        new("more heat than any mix has", "heatOfMix", "TooLarge", p => p with { HeatOfMix = "5000 J/g" }),
        new("more evaporation than all", "drying.evaporation", "TooLarge", p => p with { Drying = new() { Evaporation = "120 %" } }),
    ]);

    [Theory]
    [MemberData(nameof(Slips))]
    public void Each_slip_gives_its_fault_at_its_place_and_no_product(Slip<ProductDocument> slip)
    {
        ArgumentNullException.ThrowIfNull(slip);
        var read = ProductReading.Read(slip.Make(Written.Clear), "");

        Assert.Null(read.Product);
        var fault = Assert.Single(read.Faults);
        Assert.Equal((slip.Path, slip.Code), (fault.Path, fault.Code));
        Said.InEveryVoice([fault.Text, fault.Cure]);
    }

    [Fact]
    public void A_ratio_by_mass_is_turned_through_the_densities()
    {
        var read = ProductReading.Read(Written.Clear with { Mix = new() { By = MixBasis.Mass, A = 100, B = 34 }, DensityA = "1.42 g/mL", DensityB = "1.01 g/mL" }, "");
        var mix = read.Product!.Mix;

        // 100 g of A at 1.42 g/mL to 34 g of B at 1.01 g/mL.
        Assert.Equal(100 / 1.42 / (34 / 1.01), mix.PartsAByVolume / mix.PartsBByVolume, 12);
        Assert.Equal(MixBasis.Mass, mix.EnteredBy);
    }

    [Fact]
    public void What_a_sheet_leaves_out_takes_the_stated_default()
    {
        var product = ProductReading.Read(Written.Clear, "").Product!;
        Assert.Equal(3, product.Limits.DewMarginC); // ISO 8502-4
        Assert.Equal(1, product.Thinner!.DensityGPerMl);
        Assert.Null(product.SagLimit);
    }

    [Fact]
    public void What_follows_a_pour_is_read_in_seconds()
    {
        var read = ProductReading.Read(Written.Clear with { Method = ApplicationMethod.Poured, BreakAllowed = false, Pour = new() { LevelWithin = "12 min", BubblePassesAt = ["10 min", "1/2 h"], ScrapeDrips = new() { From = "3 h", To = "6 h" } } }, "").Product!;
        Assert.Equal(720, read.Pour.LevelWithinS);
        Assert.Equal([600, 1800], read.Pour.BubblePassesS);
        Assert.Equal((10800, 21600), read.Pour.ScrapeDrips);
        Assert.Equal((false, false), (read.WholeTopAtOnce, read.BreakAllowed));
    }

    [Fact]
    public void The_place_of_a_product_goes_before_the_paths_of_its_faults() =>
        Assert.Equal("products[3].name", Assert.Single(ProductReading.Read(Written.Clear with { Name = "" }, "products[3]").Faults).Path);

    private static MassLifeDocument Life(string mass, string time) => new() { Mass = mass, Time = time, At = "25 °C" };

    private static TimeAtDocument At(string time, int fahrenheit) => new() { Time = time, At = $"{fahrenheit} °F" };

    /// <summary>Some solvents are as heavy as water: what it is, is not read off its density.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData("1.00 g/mL")]
    [InlineData("0.82 g/mL")]
    public void A_thinner_that_is_not_said_to_be_water_counts_as_solvent(string? density)
    {
        ThinnerKind Read(ThinnerKind? said) => ProductReading.Read(Written.Clear with { Thinner = new() { Name = "thinner", Limit = "2 %", Density = density is { } given ? new Entry(given) : (Entry?)null, Is = said } }, "").Product!.Thinner!.Kind;
        Assert.Equal((ThinnerKind.Solvent, ThinnerKind.Water), (Read(null), Read(ThinnerKind.Water)));
    }
}
