using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Materials;

/// <summary>What speaks against a film, and what is worth knowing about it.</summary>
internal static class FilmReasons
{
    /// <summary>Hardest first.</summary>
    public static IReadOnlyList<Reason> Of(Coat coat, Consumption takes, MeasuredJob measured, double needMl, double thinnerMl)
    {
        List<Reason> reasons = [];
        if (ThinnerOverLimit(coat) is { } thinner) reasons.Add(thinner);
        if (!takes.BatchesPay) reasons.Add(BatchStaysInCup(takes));
        if (OutsideFilmRange(coat) is { } film) reasons.Add(film);
        if (Sags(coat, measured) is { } sags) reasons.Add(sags);
        if (coat.ThinnerFraction > 0 && thinnerMl > 0) reasons.Add(ThinnerUsed(coat, needMl, thinnerMl));
        return [.. reasons.OrderBy(r => r.Limit)];
    }

    private static Reason? ThinnerOverLimit(Coat coat)
    {
        var used = coat.ThinnerFraction;
        if (used <= 0) return null;
        if (coat.Product.Thinner is not { } permitted)
        {
            return new Reason("ThinnerNotPermitted", Limit.Never,
                v => v.Say($"{v.Percent(used, 1)} of thinner is planned; {coat.Product.Name} permits none.", $"Está previsto {v.Percent(used, 1)} de diluyente; {coat.Product.Name} no admite ninguno."),
                v => v.Say("Leave the thinner out.", "No añada diluyente."));
        }

        return used <= permitted.LimitFraction ? null : new Reason("ThinnerOverLimit", Limit.Never,
            v => v.Say($"{v.Percent(used, 1)} of {permitted.Name} is planned; the product permits {v.Percent(permitted.LimitFraction, 1)}.",
                $"Está previsto {v.Percent(used, 1)} de {permitted.Name}; el producto admite {v.Percent(permitted.LimitFraction, 1)}."),
            v => v.Say($"Use at most {v.Percent(permitted.LimitFraction, 1)} of A and B.", $"Use como máximo {v.Percent(permitted.LimitFraction, 1)} de A y B."));
    }

    private static Reason BatchStaysInCup(Consumption takes) => new("BatchStaysInCup", Limit.Never,
        v => v.Say($"The largest batch is {v.Volume(takes.LargestBatchMl)} and the cup keeps {v.Volume(takes.CupMlPerBatch)} of it: nothing reaches the top.",
            $"La mezcla más grande es de {v.Volume(takes.LargestBatchMl)} y el vaso retiene {v.Volume(takes.CupMlPerBatch)}: no llega nada a la cubierta."),
        v => v.Say("Mix in a larger container, or check what is entered for the cup.", "Mezcle en un recipiente mayor, o revise lo anotado para el vaso."));

    private static Reason? OutsideFilmRange(Coat coat)
    {
        var (film, least, most) = (coat.WetFilm.Micrometres, coat.Product.LeastWetFilm.Micrometres, coat.Product.MostWetFilm.Micrometres);
        if (film >= least && film <= most) return null;
        return new Reason(film < least ? "FilmTooThin" : "FilmTooThick", Limit.AtYourWord,
            v => v.Say($"The wet film is {v.Film(film)}; the data sheet gives {v.Film(least)} to {v.Film(most)}.",
                $"La película húmeda es de {v.Film(film)}; la ficha técnica da de {v.Film(least)} a {v.Film(most)}."),
            v => film < least
                ? v.Say($"Roll at least {v.Film(least)}.", $"Aplique al menos {v.Film(least)}.")
                : v.Say($"Roll at most {v.Film(most)}; build up with another coat.", $"Aplique como máximo {v.Film(most)}; dé otra capa para llegar al espesor."));
    }

    /// <summary>A splash or panel cannot hold the film; on nosings alone it is a note, for the brush can catch the drip.</summary>
    private static Reason? Sags(Coat coat, MeasuredJob measured)
    {
        var film = coat.WetFilm.Micrometres;
        if (coat.Product.SagLimit is not { } limit || film <= limit.Micrometres) return null;

        var faces = measured.Tops.SelectMany(t => t.Faces).ToList();
        var vertical = faces.Where(f => f.Kind is FaceKind.Splash or FaceKind.Waterfall).Select(f => f.Id).ToList();
        if (vertical.Count > 0)
        {
            return new Reason("FilmSags", Limit.AtYourWord,
                v => v.Say($"{v.Film(film)} wet is more than a vertical face holds ({v.Film(limit.Micrometres)}, sag limit of the data sheet): {string.Join(", ", vertical)}.",
                    $"{v.Film(film)} en húmedo es más de lo que aguanta una cara vertical ({v.Film(limit.Micrometres)}, límite de descuelgue de la ficha técnica): {string.Join(", ", vertical)}."),
                v => ThinnerCoats(v, coat));
        }

        if (!faces.SelectMany(f => f.Strips).Any(s => s.Kind is StripKind.Nosing)) return null;
        return new Reason("EdgeMayDrip", Limit.Note,
            v => v.Say($"{v.Film(film)} wet is over the sag limit of {v.Film(limit.Micrometres)}: it will gather under the edges.",
                $"{v.Film(film)} en húmedo supera el límite de descuelgue de {v.Film(limit.Micrometres)}: se acumulará bajo los cantos."),
            v => v.Say("Wipe the roller out along the edges and catch the drips underneath while the film is open.",
                "Descargue el rodillo a lo largo de los cantos y recoja las gotas por debajo mientras la película está abierta."));
    }

    private static string ThinnerCoats(Voice v, Coat coat)
    {
        var coats = (int)Math.Ceiling(coat.WetFilm.Micrometres / coat.Product.SagLimit!.Value.Micrometres);
        var each = coat.WetFilm.Micrometres / coats;
        return each >= coat.Product.LeastWetFilm.Micrometres
            ? v.Say($"Put it on the verticals in {coats} thinner coats of about {v.Film(each)}.", $"En las caras verticales dé {coats} capas más finas de unos {v.Film(each)}.")
            : v.Say($"{coats} coats of {v.Film(each)} would be thinner than the data sheet's least film: coat these faces lying flat, or choose a coating that holds more.",
                $"{coats} capas de {v.Film(each)} quedarían por debajo de la película mínima de la ficha técnica: recubra esas caras tumbadas, o elija un producto que aguante más.");
    }

    private static Reason ThinnerUsed(Coat coat, double needMl, double thinnerMl)
    {
        var product = coat.Product;
        var dry = Film.Dry(coat.WetFilm, product.VolumeSolids, coat.ThinnerFraction).Micrometres;
        var lost = 1 - (dry / Film.Dry(coat.WetFilm, product.VolumeSolids).Micrometres);
        return new Reason("ThinnerUsed", Limit.Note,
            v => v.Say(
                $"{v.Volume(thinnerMl)} of {product.Thinner?.Name ?? "thinner"} go into {v.Volume(needMl)} of A and B; at the same wet film {v.Film(dry)} stay dry, {v.Percent(lost, 1)} less than unthinned.",
                $"{v.Volume(thinnerMl)} de {product.Thinner?.Name ?? "diluyente"} van en {v.Volume(needMl)} de A y B; con la misma película húmeda quedan {v.Film(dry)} secos, {v.Percent(lost, 1)} menos que sin diluir."),
            v => v.Say("Use the same share in every batch, or the sheen and colour step between them.", "Use la misma proporción en cada mezcla, o el brillo y el color darán un salto entre ellas."));
    }
}
