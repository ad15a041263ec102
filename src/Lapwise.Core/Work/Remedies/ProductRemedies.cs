using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Remedies;

/// <summary>Remedies in the material.</summary>
internal static class ProductRemedies
{
    /// <summary>A data sheet says how much thinner is permitted, and not what it does to the open time.</summary>
    public static Remedy? Thinner(Trying trying)
    {
        if (trying.Now.Work.LapMarginMs >= trying.Now.Work.TargetMarginMs) return null;
        if (trying.Product.Thinner is not { } thinner || trying.Coat.ThinnerFraction >= thinner.LimitFraction) return null;
        return Trying.Untold(RemedyKind.Thinner,
            v => v.Say($"Add {thinner.Name} up to the permitted {v.Percent(thinner.LimitFraction, 1)}, never more.", $"Añada {thinner.Name} hasta el {v.Percent(thinner.LimitFraction, 1)} permitido, nunca más."),
            v => v.Say("No number can be had: the data sheet as entered does not say what it does to the open time. Lap a test board with it; the dry film becomes thinner.",
                "No hay cifra posible: la ficha técnica anotada no dice qué efecto tiene en el tiempo abierto. Haga una placa de prueba con él; la película seca queda más fina."));
    }

    /// <summary>Products put on the same way and of the same chemistry that stay open longer in this room, the longest first.</summary>
    public static async IAsyncEnumerable<Remedy> SlowerAsync(Trying trying, IReadOnlyList<Product> library)
    {
        var now = trying.Product;
        var slower =
            from product in library
            where product.Id != now.Id && product.Method == now.Method && SameChemistry(product, now)
            let coat = Instead(trying.Coat, product)
            let open = Judging.Judge(trying.Job with { System = [coat] }).Coats[0].OpenTime.Seconds
            where open > trying.Now.Work.OpenTime.Seconds
            orderby open descending, product.Id
            select coat;
        foreach (var coat in slower)
            if (await trying.PlanAsync(coat) is { } tried && tried.IsBetterThan(trying.Now)) yield return Made(trying, coat, tried);
    }

    private static Remedy Made(Trying trying, Coat coat, Attempt tried) =>
        trying.Made(RemedyKind.SlowerProduct, tried, v => v.Say(
            $"Take {coat.Product.Name}: {Voice.Span(tried.Work.OpenTime.Seconds)} open in this room instead of {Voice.Span(trying.Now.Work.OpenTime.Seconds)}, at {v.Film(coat.WetFilm.Micrometres)} wet. Ask its maker whether it goes with the other coats.",
            $"Use {coat.Product.Name}: {Voice.Span(tried.Work.OpenTime.Seconds)} abierto en esta sala en vez de {Voice.Span(trying.Now.Work.OpenTime.Seconds)}, a {v.Film(coat.WetFilm.Micrometres)} en húmedo. Pregunte al fabricante si va con las otras capas."));

    /// <summary>The test board was for the other product; film and thinner keep to the new one's limits.</summary>
    private static Coat Instead(Coat coat, Product product) => coat with
    {
        Product = product,
        TestBoard = null,
        TestBoardFirstBadS = null,
        WetFilm = new WetFilm(Math.Clamp(coat.WetFilm.Micrometres, product.LeastWetFilm.Micrometres, product.MostWetFilm.Micrometres)),
        ThinnerFraction = Math.Min(coat.ThinnerFraction, product.Thinner?.LimitFraction ?? 0),
    };

    /// <summary>A base of another chemistry does not stand in for a clear; what a product is for is not entered.</summary>
    private static bool SameChemistry(Product a, Product b) =>
        new[] { Hazard.Isocyanate, Hazard.EpoxyAmine }.All(h => a.Hazards.Contains(h) == b.Hazards.Contains(h));
}
