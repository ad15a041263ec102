using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Materials;

/// <summary>
/// What earlier coats of a product really took against the film alone. Where that is more than the estimate counts, the
/// difference is kept in reserve: bought, and not mixed until it is missing.
/// </summary>
internal static class PracticalUse
{
    /// <summary>Used over film, all earlier coats together; null: none is known.</summary>
    private static double? TimesFilm(Product product) =>
        product.MeasuredUse.Count == 0 ? null : product.MeasuredUse.Sum(u => u.UsedMl) / product.MeasuredUse.Sum(u => u.AreaM2 * u.WetFilmUm);

    /// <param name="netMl">The film of this coat.</param>
    /// <param name="countedMl">Film and losses as the estimate counts them.</param>
    public static double ReserveMl(Coat coat, double netMl, double countedMl) => TimesFilm(coat.Product) is { } times ? Math.Max(0, (times * netMl) - countedMl) : 0;

    public static IReadOnlyList<Reason> Reasons(Coat coat, double netMl, double needMl)
    {
        if (TimesFilm(coat.Product) is not { } times || netMl <= 0) return [];
        var m2PerL = 1000 * (1 + coat.ThinnerFraction) / coat.WetFilm.Micrometres;
        var (practical, estimated) = (m2PerL / times, m2PerL * netMl / needMl);
        return
        [
            new Reason("MeasuredUse", Limit.Note,
                v => v.Say($"Earlier coats ({coat.Product.MeasuredUse.Count}) really took {v.Percent(times)} of what their film alone holds: {v.SpreadingRate(practical)} in practice at this film. This job is counted at {v.SpreadingRate(estimated)}.",
                    $"Capas anteriores ({coat.Product.MeasuredUse.Count}) llevaron de verdad el {v.Percent(times)} de lo que contiene su película: {v.SpreadingRate(practical)} en la práctica con esta película. Este trabajo se cuenta a {v.SpreadingRate(estimated)}."),
                v => v.Say("Where they took more, the difference is bought as a reserve and not mixed until it is missing.", "Donde llevaron más, la diferencia se compra como reserva y no se mezcla hasta que falte.")),
        ];
    }
}
