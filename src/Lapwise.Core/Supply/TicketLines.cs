using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Work;

namespace Lapwise.Core.Supply;

/// <summary>How a line of a ticket is marked.</summary>
public enum TicketLineKind
{
    /// <summary>Done and ticked off.</summary>
    Do,
    /// <summary>Never done.</summary>
    Never,
    Caution,
}

/// <summary>One line below the amounts of a ticket.</summary>
public sealed record TicketLine(TicketLineKind Kind, Phrase Text);

/// <summary>
/// What is done with a batch beside measuring it, each line only where it applies, in the order in which it is done.
/// Common practice, no source, but for what the product's own sheet says.
/// </summary>
public static class TicketLines
{
    public static IReadOnlyList<TicketLine> Of(CoatWork work, CoatSupply supply, BatchTicket ticket)
    {
        var product = work.Coat.Product;
        var place = Enumerable.Range(0, work.Batches.Count).First(i => work.Batches[i].Id == ticket.Batch);
        List<TicketLine> lines = [];
        void Do(Phrase text) => lines.Add(new TicketLine(TicketLineKind.Do, text));

        if (work.Batches[place].IsNotToBeMixed) lines.Add(new TicketLine(TicketLineKind.Never, v => v.Say(
            "Do not mix this batch: it is more than may be mixed at one time, or would not be used up within its pot life. It only shows the order of a plan that does not work.",
            "No prepare esta mezcla: es más de lo que se puede mezclar de una vez, o no se gastaría dentro de su vida útil. Solo muestra el orden de un plan que no funciona.")));
        if (place == 0 && IsBoxed(supply)) Do(v => v.Say(
            $"Box the colour before the first batch: pour all part A of the {supply.Kits.Sum(k => k.Count)} kits together and stir, so that every batch is one colour.",
            $"Junte el color antes de la primera mezcla: vierta toda la parte A de los {supply.Kits.Sum(k => k.Count)} juegos en un solo recipiente y remueva, para que todas las mezclas tengan el mismo color."));
        if (product.BeforeMeasuring is { } before) Do(before);
        if (FreshRollers.Before(work).Contains(ticket.Batch)) Do(v => v.Say(
            "With this batch take a fresh roller and tray liner: the mix in the old ones is past its time before this batch is used up.",
            "Con esta mezcla use rodillo y funda de bandeja nuevos: la mezcla de los usados pasa de su tiempo antes de gastar esta."));
        Do(v => v.Say(
            "Mix slowly, scraping wall and bottom; pour into a second clean container, scrape the first one out and mix again. What clings to the wall unmixed never cures.",
            "Mezcle despacio, rebañando pared y fondo; vierta en un segundo recipiente limpio, rebañe el primero y mezcle otra vez. Lo que queda sin mezclar en la pared no cura nunca."));
        if (product.InductionS > 0 && work.Batches[place].ReadyMs is var ready) Do(v => v.Say(
            $"Let it stand {Voice.Span(product.InductionS)}, until {Voice.Clock(ready / 1000.0)}, and stir once more before the first drop is used.",
            $"Déjela reposar {Voice.Span(product.InductionS)}, hasta {Voice.Clock(ready / 1000.0)}, y remueva otra vez antes de usar la primera gota."));
        if (work.StandsMixed(work.Batches[place]) && work.Batches[place].Sections is [var first, ..]) Do(v => v.Say(
            $"It is mixed ahead: leave it in its own cup, marked with its letter and its use-by time, until section {first}. Never pour it onto another batch.",
            $"Se prepara por adelantado: déjela en su propio vaso, marcado con su letra y su hora límite, hasta la sección {first}. Nunca la vierta sobre otra mezcla."));
        if (product.Strain is { } strain) Do(v => v.Say($"Strain it into the tray: {strain}.", $"Cuélela al pasarla a la bandeja: {strain}."));
        if (product.HeatsItself) Do(v => product.Method is ApplicationMethod.Poured
            ? v.Say("Pour it all out at once: in the bucket it heats itself.", "Viértala toda de una vez: en el cubo se calienta sola.")
            : v.Say("Empty the cup into the tray at once: spread thin it stays cool.", "Vacíe el vaso en la bandeja enseguida: extendida en capa fina no se calienta."));

        if (place == work.Batches.Count - 1 && supply.LeftOverMl >= LeastKeptMl) Do(v => Kept(v, product, supply.LeftOverMl));
        lines.AddRange(Nevers(product, ticket));
        if (product.HeatsItself) lines.Add(new TicketLine(TicketLineKind.Caution, v => v.Say(
            "What is left over heats by itself. Do what the data sheet says with it, never in a closed bin.",
            "Lo que sobra se calienta solo. Siga la ficha técnica, nunca en un cubo cerrado.")));
        return lines;
    }

    // A cup's worth; less is scraped out and gone.
    private const double LeastKeptMl = 60;

    /// <summary>What is not mixed keeps, if its parts are kept apart and shut.</summary>
    private static string Kept(Voice v, Product product, double leftOverMl) =>
        v.Say($"After the last batch about {v.Volume(leftOverMl)} of {product.Recipe.Names(v)} stay unmixed in the kits: wipe the rims, close each part with its own lid, date it and store it as the data sheet says",
            $"Tras la última mezcla quedan sin mezclar en los juegos unos {v.Volume(leftOverMl)} de {product.Recipe.Names(v)}: limpie los bordes, cierre cada parte con su propia tapa, anote la fecha y guárdela como dice la ficha técnica")
        + (product.Hazards.Contains(Hazard.Isocyanate) ? v.Say(" (an opened isocyanate hardener draws moisture and keeps badly)", " (un endurecedor de isocianato abierto toma humedad y se conserva mal)") : "")
        + v.Say(". Next time scale by what is left of each part: the scarcest rules, and nothing is stretched with the part that is left.",
            ". La próxima vez calcule según lo que quede de cada parte: manda la más escasa, y nada se alarga con la que sobra.");

    private static IEnumerable<TicketLine> Nevers(Product product, BatchTicket ticket)
    {
        // In the measure it is drawn up in: nobody turns ounces into millilitres with a syringe in hand.
        string Most(Voice v, double ml) => ticket.CupReadsThinner ? v.Volume(ml) : v.OnSyringe(ml);
        yield return new TicketLine(TicketLineKind.Never, product.Thinner is { } thinner
            ? v => v.Say(
                $"{thinner.Name}: never more than {v.PercentAtMost(thinner.LimitFraction)} of {product.Recipe.Names(v)} together, here {Most(v, ticket.VolumeMl * thinner.LimitFraction)}.",
                $"{thinner.Name}: nunca más del {v.PercentAtMost(thinner.LimitFraction)} de {product.Recipe.Names(v)} juntos, aquí {Most(v, ticket.VolumeMl * thinner.LimitFraction)}.")
            : v => v.Say("No thinner: the data sheet as entered permits none.", "Sin diluyente: la ficha técnica anotada no admite ninguno."));
        if (product.EndsBy is EndOfPotLife.Hidden)
            yield return new TicketLine(TicketLineKind.Never, v => v.Say(
                "This mix looks usable after its time and is not. The clock rules, from the moment A touches B.",
                "Esta mezcla parece utilizable pasado su tiempo y no lo es. Manda el reloj, desde que A toca B."));
    }

    /// <summary>A colour that comes out of more than one kit.</summary>
    private static bool IsBoxed(CoatSupply supply) => supply.Coat.Color is { Length: > 0 } && supply.Kits.Sum(k => k.Count) > 1;
}
