using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Quick;

/// <summary>A product of which only what a quick sum asks for is known.</summary>
internal static class QuickSheet
{
    public static readonly Product Blank = new(
        "quick", "", new MixRatio(MixBasis.Volume, 1, 1), 1, 1, 0.5, null, new WetFilm(150), new WetFilm(150), null,
        [], [], null, null, new ProductLimits(-20, 60, 1, 3), null, ApplicationMethod.Rolled, EndOfPotLife.Gels, null, [], []);

    public static Coat Coat(Product product, double wetFilmUm = 150, double thinner = 0) => new(product, null, new WetFilm(wetFilmUm), thinner, null);

    /// <summary>Everything at one temperature, the air half moist and still.</summary>
    public static Room Room(double airC, double surfaceC, double materialC, double humidity = 0.5, AirMovement movement = AirMovement.Still) =>
        new(new AirTemperature(airC), humidity, movement, new SurfaceTemperature(surfaceC), new MaterialTemperature(materialC));

    /// <summary>One point of a sheet, or two.</summary>
    public static IReadOnlyList<TimeAt> Points(QuickValues values, QuickField time, QuickField at, QuickField time2, QuickField at2)
    {
        List<TimeAt> points = [new(values.Of(time), values.Of(at))];
        if (values.Has(time2) != values.Has(at2))
        {
            values.Refuse(time2, "SecondPointHalf",
                v => v.Say("A second point needs both its time and its temperature.", "Un segundo punto necesita su tiempo y su temperatura."),
                v => v.Say("Give both, or neither.", "Dé los dos, o ninguno."));
        }
        else if (values.If(time2) is { } seconds) points.Add(new(seconds, values.Of(at2)));
        return points;
    }
}
