using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Supply.Buying;

/// <summary>What is worth knowing before the order goes out.</summary>
public static class BuyingReasons
{
    internal static IReadOnlyList<Reason> Of(Product product, Shade shade, IReadOnlyList<ComingNeed> ordered, IReadOnlyList<Pack> packs, Currency own)
    {
        var reasons = new List<Reason>();
        var last = ordered.Max(n => n.On);
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

        reasons.AddRange(packs.Where(p => p.UsableMl > 0 && last is { } day && p.IsExpired(day)).Select(p => new Reason("ExpiresBeforeUse", Limit.Note,
            v => v.Say($"Pack {p.Id} ({v.Volume(p.UsableMl)}) may be used until {v.Date(p.Expires!.Value)}: it is given to no job after that day.", $"El envase {p.Id} ({v.Volume(p.UsableMl)}) puede usarse hasta el {v.Date(p.Expires!.Value)}: no se da a ningún trabajo posterior."),
            v => v.Say("Use it on an earlier job, or write it off.", "Úselo en un trabajo anterior, o delo de baja."))));

        var dayless = ordered.Where(n => n.On is null).Select(n => n.Job).Distinct(StringComparer.Ordinal).ToList();
        if (dayless.Count > 0 && packs.Any(p => p.UsableMl > 0 && p.Expires is not null))
        {
            reasons.Add(new Reason("NoDayForPacks", Limit.Note,
                v => v.Say($"A job without a day gets no pack that expires: {v.Some(dayless)}.", $"Un trabajo sin día no recibe ningún envase que caduca: {v.Some(dayless)}."),
                v => v.Say("Set its first day on site, or settle its days.", "Fije su primer día en obra, o acuerde sus días.")));
        }

        if (shade.Color.Length > 0 && packs.Any(p => p.UsableMl > 0 && !p.IsExpired(ordered[0].On ?? DateOnly.MaxValue)))
        {
            reasons.Add(new Reason("BoxTheColour", Limit.Note,
                v => v.Say("Colour from the shelf and from new kits may step from one to the other.", "El color del estante y el de los juegos nuevos puede dar un salto."),
                v => v.Say("Pour the A of every pack for one top together and stir before the first batch, or keep each lot to tops of its own.", "Junte y remueva el A de todos los envases de una misma cubierta antes de la primera mezcla, o deje cada lote para cubiertas distintas.")));
        }

        return reasons;
    }

    /// <summary>Coats that no longer come, as far as anyone knows.</summary>
    public static Reason DayIsPast(IReadOnlyList<string> jobs) => new("DayIsPast", Limit.Note,
        v => v.Say($"Coats whose day is past are not counted: {v.Some(jobs)}.", $"No se cuentan las capas cuyo día ya pasó: {v.Some(jobs)}."),
        v => v.Say("If one is still to be done, give the job another first day, or settle its days again.", "Si alguna está por hacer, dé al trabajo otro primer día, o acuerde de nuevo sus días."));

    /// <summary>Days that may not come as they were settled.</summary>
    public static Reason DaysOutOfDate(IReadOnlyList<string> jobs) => new("SettledDaysOutOfDate", Limit.Note,
        v => v.Say($"Days were settled for these jobs before they were changed, and no longer fit them: {v.Some(jobs)}. Packs are still shared out by those days.", $"Se acordaron días para estos trabajos antes de cambiarlos, y ya no encajan: {v.Some(jobs)}. Los envases aún se reparten según esos días."),
        v => v.Say("Find and settle the days again on the page of days.", "Busque y acuerde de nuevo los días en la página de días."));

    public static Reason NotPlanned(int most) => new("OrderOfWorkNotCounted", Limit.Note,
        v => v.Say($"Of more than {most} jobs the order of work is not looked at: a roller is reckoned for everyone of a crew, and a job is coated on its first day.", $"De más de {most} trabajos no se mira el orden: se cuenta un rodillo por cada persona del equipo, y un trabajo se aplica en su primer día."),
        v => v.Say("Leave out what is done on the page of days.", "Deje fuera lo terminado en la página de días."));

    /// <param name="needs">Of one shade, that wait for the same board.</param>
    internal static Reason AwaitsBoard(Product product, IReadOnlyList<ComingNeed> needs)
    {
        var (board, color, needMl) = (needs[0].AwaitsBoard!, needs[0].Shade.Color, needs.Sum(n => n.NeedMl));
        var jobs = needs.Select(n => n.Job).Distinct(StringComparer.Ordinal).ToList();
        string Held(Voice v) => v.Say($"{v.Some(jobs)}: {v.Volume(needMl)} of {product.Name} in {color} is held back, and is not in the cost: ", $"{v.Some(jobs)}: {v.Volume(needMl)} de {product.Name} en {color} esperan, y no están en el coste: ");
        return board.SignedOn is null
            ? new Reason("BoardNotSigned", Limit.Note,
                v => Held(v) + v.Say("the sample board is not signed.", "la muestra no está firmada."),
                v => v.Say("Show the board in the customer's own light, have it signed, and note the day in the job's money.", "Enseñe la muestra con la luz del cliente, haga que la firme, y anote el día en el dinero del trabajo."))
            : new Reason("BoardShowsOther", Limit.Note,
                v => Held(v) + v.Say($"the signed sample board shows {board.Shows}.", $"la muestra firmada enseña {board.Shows}."),
                v => v.Say("Have a board in this colour signed and note in the job's money what it shows, or give the coat the colour that was signed.", "Haga firmar una muestra en este color y anote en el dinero del trabajo lo que enseña, o dé a la capa el color firmado."));
    }
}
