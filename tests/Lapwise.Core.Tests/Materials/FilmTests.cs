using CsCheck;
using Lapwise.Core.Materials;
using Lapwise.Core.Quantities;
using UnitsNet;
using static Lapwise.Core.Tests.CaseFile;

namespace Lapwise.Core.Tests.Materials;

public sealed class FilmTests
{
    private static readonly double FtPerM2PerL = Area.FromSquareMeters(1).SquareFeet / Volume.FromLiters(1).UsGallons;

    [Fact]
    public void SpreadingRate_agrees_with_printed_sheets() => Assert.All(Rows("general/spreading-rate.txt"), row =>
    {
        var rate = Film.SpreadingRateM2PerL(new DryFilm(Number(row[1])), Number(row[0]));
        Assert.InRange(rate / Number(row[2]), 1 - Number(row[3]), 1 + Number(row[3]));
    });

    [Fact]
    public void Wet_agrees_with_printed_sheets() => Assert.All(Rows("general/wet-film.txt"), row =>
        Assert.Equal(Number(row[3]), Film.Wet(new DryFilm(Number(row[1])), Number(row[0]), Number(row[2])).Micrometres, Number(row[4])));

    [Fact]
    public void ThinnedSolids_agrees_with_printed_sheets() => Assert.All(Rows("general/thinned-solids.txt"), row =>
        Assert.Equal(Number(row[2]), Film.ThinnedSolids(Number(row[0]), Number(row[1])), Number(row[3])));

    /// <summary>NIST Handbook 44, Appendix C: 231 in³ to the gallon, so 231 / (0.001 in · 144 in²/ft²) = 1604.1667.</summary>
    [Fact]
    public void One_gallon_of_solid_film_covers_1604_square_feet_at_one_mil()
    {
        var rate = Film.SpreadingRateM2PerL(new DryFilm(Length.FromInches(0.001).Micrometers), 1) * FtPerM2PerL;
        Assert.Equal(231 / 0.001 / 144, rate, 1e-6);
        Assert.Equal(1604, rate, 0.2);
    }

    /// <summary>Common practice, no source: 24 US fl oz of clear covers 40 to 50 ft², so 6.0 to 7.5 mil wet.</summary>
    [Theory]
    [InlineData(50, 6.0)]
    [InlineData(40, 7.5)]
    public void Twenty_four_ounces_make_the_usual_film(double squareFeet, double mil)
    {
        var wet = new WetFilm(Length.FromInches(mil / 1000).Micrometers);
        var ounces = Volume.FromMilliliters(Film.SpreadMlPerM2(wet) * Area.FromSquareFeet(squareFeet).SquareMeters).UsOunces;
        Assert.InRange(ounces / 24, 0.99, 1.01);
    }

    private static readonly Gen<(double Wet, double Solids, double Thinner)> AnyFilm =
        Gen.Select(Gen.Double[10, 3000], Gen.Double[0.05, 1], Gen.Double[0, 0.5]);

    [Fact]
    public void Wet_and_dry_undo_each_other() => AnyFilm.Sample((wet, solids, thinner) =>
        Math.Abs(Film.Wet(Film.Dry(new WetFilm(wet), solids, thinner), solids, thinner).Micrometres - wet) < 1e-9 * wet);

    [Fact]
    public void More_thinner_gives_thinner_dry_film_and_takes_less_A_and_B() =>
        Gen.Select(AnyFilm, Gen.Double[0.001, 0.2]).Sample((film, more) =>
        {
            var wet = new WetFilm(film.Wet);
            return Film.Dry(wet, film.Solids, film.Thinner + more).Micrometres < Film.Dry(wet, film.Solids, film.Thinner).Micrometres
                && Film.SpreadMlPerM2(wet, film.Thinner + more) < Film.SpreadMlPerM2(wet, film.Thinner);
        });

    /// <summary>The solids in what is bought for a film are the dry film, thinned or not.</summary>
    [Fact]
    public void Solids_are_neither_made_nor_lost_by_thinning() => AnyFilm.Sample((wet, solids, thinner) =>
    {
        var bought = Film.SpreadMlPerM2(new WetFilm(wet), thinner) * solids;
        return Math.Abs(bought - Film.Dry(new WetFilm(wet), solids, thinner).Micrometres) < 1e-9 * wet;
    });
}
