using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Supply.Buying;

/// <summary>What is worth knowing before the order goes out.</summary>
internal static class BuyingReasons
{
    public static IReadOnlyList<Reason> Of(Product product, Shade shade, IReadOnlyList<ComingNeed> ordered, IReadOnlyList<Pack> packs, Currency own)
    {
        var reasons = new List<Reason>();
        var last = ordered[^1].On ?? DateOnly.MaxValue;
        if (product.Kits.Count == 0)
        {
            reasons.Add(new Reason("NoKitsListed", Limit.Note,
                v => v.Say($"No kit sizes are entered for {product.Name}: nothing to buy can be named, and the cost leaves it out.", $"No se anotaron tamaños de juego para {product.Name}: no se puede decir qué comprar, y el coste no lo cuenta."),
                v => v.Say("Enter the kit sizes and prices it is sold in.", "Anote los tamaños y precios en que se vende.")));
        }

        IReadOnlyList<Currency> currencies = [.. product.Kits.Select(k => k.Currency ?? own).Distinct().OrderBy(c => c != own)];
        if (currencies.Count > 1)
        {
            reasons.Add(new Reason("KitsOfSeveralCurrencies", Limit.Note,
                v => v.Say($"The kits of {product.Name} are priced in several currencies ({v.List([.. currencies.Select(c => c.Code)])}): only those in {currencies[0].Code} are compared and bought.",
                    $"Los juegos de {product.Name} tienen precio en varias monedas ({v.List([.. currencies.Select(c => c.Code)])}): solo se comparan y compran los que están en {currencies[0].Code}."),
                v => v.Say("Price every kit in the shop's own currency.", "Ponga el precio de cada juego en la moneda del taller.")));
        }

        reasons.AddRange(packs.Where(p => p.UsableMl > 0 && p.IsExpired(last)).Select(p => new Reason("ExpiresBeforeUse", Limit.Note,
            v => v.Say($"Pack {p.Id} ({v.Volume(p.UsableMl)}) may be used until {v.Date(p.Expires!.Value)}: it is given to no job after that day, nor to one without a day.", $"El envase {p.Id} ({v.Volume(p.UsableMl)}) puede usarse hasta el {v.Date(p.Expires!.Value)}: no se da a ningún trabajo posterior, ni a uno sin fecha."),
            v => v.Say("Use it on an earlier job, or write it off.", "Úselo en un trabajo anterior, o delo de baja."))));

        if (shade.Color.Length > 0 && packs.Any(p => p.UsableMl > 0 && !p.IsExpired(ordered[0].On ?? DateOnly.MaxValue)))
        {
            reasons.Add(new Reason("BoxTheColour", Limit.Note,
                v => v.Say("Colour from the shelf and from new kits may step from one to the other.", "El color del estante y el de los juegos nuevos puede dar un salto."),
                v => v.Say("Pour the A of every pack for one top together and stir before the first batch, or keep each lot to tops of its own.", "Junte y remueva el A de todos los envases de una misma cubierta antes de la primera mezcla, o deje cada lote para cubiertas distintas.")));
        }

        return reasons;
    }

    public static Reason AwaitsBoard(Product product, ComingNeed need, SampleBoard board)
    {
        string Held(Voice v) => v.Say($"{need.Job}: {v.Volume(need.NeedMl)} of {product.Name} in {need.Shade.Color} is held back, and is not in the cost: ", $"{need.Job}: {v.Volume(need.NeedMl)} de {product.Name} en {need.Shade.Color} esperan, y no están en el coste: ");
        return board.SignedOn is null
            ? new Reason("BoardNotSigned", Limit.Note,
                v => Held(v) + v.Say("the sample board is not signed.", "la muestra no está firmada."),
                v => v.Say("Show the board in the customer's own light, have it signed, and note the day in the job's money.", "Enseñe la muestra con la luz del cliente, haga que la firme, y anote el día en el dinero del trabajo."))
            : new Reason("BoardShowsOther", Limit.Note,
                v => Held(v) + v.Say($"the signed sample board shows {board.Shows}.", $"la muestra firmada enseña {board.Shows}."),
                v => v.Say("Have a board in this colour signed and note in the job's money what it shows, or give the coat the colour that was signed.", "Haga firmar una muestra en este color y anote en el dinero del trabajo lo que enseña, o dé a la capa el color firmado."));
    }
}
