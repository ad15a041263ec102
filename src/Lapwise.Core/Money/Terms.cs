using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Core.Money;

/// <summary>The customer's side of a job: what they live with meanwhile, and what has to be settled before it goes on.</summary>
/// <param name="DaysWithoutKitchen">From the first day on site to light use and the last putting back; null: a product gives no times, and none is promised.</param>
/// <param name="Home">What the household should know, cautions among it.</param>
/// <param name="Open">What is not settled yet, hardest first; each says what waits for it.</param>
public sealed record Terms(double? DaysWithoutKitchen, IReadOnlyList<Phrase> Home, IReadOnlyList<Reason> Open)
{
    public static Terms Of(Job job, JobTimeline timeline, Agreement agreement)
    {
        var hazards = job.System.SelectMany(c => c.Product.Hazards).ToHashSet();
        var days = DaysWithout(timeline);
        return new Terms(days, [.. HomeWords(days, agreement.Household, hazards)], [.. OpenReasons(job, timeline, agreement)]);
    }

    /// <summary>From the first day on site to the day of light use or of the last putting back, whichever is later; both count.</summary>
    private static double? DaysWithout(JobTimeline timeline)
    {
        if (timeline.Steps.Count == 0 || timeline.UseDates.FirstOrDefault(u => u.Use == UseOf.LightUse) is not { } use) return null;
        var last = timeline.Steps.Where(s => s.Kind == SiteStep.PutBack).Select(s => s.End).Append(use.From).Max();
        return DateOnly.FromDateTime(last).DayNumber - DateOnly.FromDateTime(timeline.Steps.Min(s => s.Start)).DayNumber + 1;
    }

    private static IEnumerable<Phrase> HomeWords(double? days, Household household, HashSet<Hazard> hazards)
    {
        yield return days is { } d
            ? v => v.Say($"Plan on about {v.Number(d, 0)} days without these tops, from the first day on site until they may be lightly used and all is put back. Cold or damp air makes it longer.",
                $"Cuente con unos {v.Number(d, 0)} días sin estas cubiertas, desde el primer día en obra hasta que todo esté en su sitio y puedan usarse con cuidado. El aire frío o húmedo lo alarga.")
            : v => v.Say("How many days the tops cannot be used is not known yet: a data sheet gives no times.", "Aún no se sabe cuántos días no se podrán usar las cubiertas: una ficha técnica no da tiempos.");
        if (!household.OtherKitchen)
            yield return v => v.Say("If these tops are where you cook or wash up, set up another place before the first day.", "Si cocina o friega en estas cubiertas, prepare otro sitio antes del primer día.");

        if (hazards.Overlaps([Hazard.SolventVapour, Hazard.FlammableVapour, Hazard.Isocyanate, Hazard.EpoxyAmine]))
        {
            yield return v => v.Say("There is a smell during coating and for some days after, and the vapour can harm. Nobody but the crew is in the room until the finisher says so; the safety data sheets say when.",
                "Huele al aplicar y unos días después, y el vapor puede dañar. Nadie más que el equipo está en la sala hasta que lo diga quien aplica; las hojas de datos de seguridad dicen cuándo.");
        }

        if (hazards.Contains(Hazard.FlammableVapour))
        {
            yield return v => v.Say("No flame, pilot light, cigarette or switching of electric heaters near the work until the vapour is gone.",
                "Ni llama, ni piloto, ni cigarrillo, ni calefactores eléctricos cerca de la obra hasta que el vapor se haya ido.");
        }

        if (household.Children)
        {
            yield return v => v.Say("Children are more sensitive: let them sleep and play elsewhere while coats are put on and until the room is aired as the safety data sheets ask.",
                "Los niños son más sensibles: que duerman y jueguen en otra parte mientras se aplica y hasta que la sala se ventile como piden las hojas de datos de seguridad.");
        }

        if (household.Pets)
        {
            yield return v => v.Say("Take animals out of the home, birds and fish first: they are harmed by less than people notice. Hair in a wet film also stays there.",
                "Saque a los animales de la casa, primero aves y peces: les daña menos de lo que una persona nota. Además, un pelo en la película húmeda ahí se queda.");
        }
    }

    private static IEnumerable<Reason> OpenReasons(Job job, JobTimeline timeline, Agreement agreement)
    {
        if (timeline.OutOfDate is { } outOfDate) yield return outOfDate;

        var colours = job.System.Select(c => c.Color).Where(c => c is { Length: > 0 }).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        if (colours.Count > 0 && agreement.SampleBoard.SignedOn is null)
        {
            yield return new Reason("SampleBoardNotSigned", Limit.AtYourWord,
                v => v.Say($"The sample board in {string.Join(", ", colours)} is not signed: no colour is bought.", $"La muestra en {string.Join(", ", colours)} no está firmada: no se compra color."),
                v => v.Say("Show the board in the customer's own light, and have it signed.", "Enseñe la muestra con la luz del cliente, y haga que la firme."));
        }

        foreach (var (colour, coat) in job.System.Select((c, i) => (c.Color, i + 1)).Where(c => agreement.SampleBoard.SignedOn is not null && !agreement.SampleBoard.Covers(c.Color)))
        {
            yield return new Reason("BoardShowsOther", Limit.AtYourWord,
                v => v.Say($"The signed sample board shows {agreement.SampleBoard.Shows}, but coat {coat} is {colour}: that colour is not bought.", $"La muestra firmada enseña {agreement.SampleBoard.Shows}, pero la capa {coat} es {colour}: ese color no se compra."),
                v => v.Say($"Have a board in {colour} signed and enter what it shows, or give the coat the colour that was signed.", $"Haga firmar una muestra en {colour} y anote lo que enseña, o dé a la capa el color firmado."));
        }

        if (agreement.DepositInOn is null)
        {
            yield return new Reason("DepositNotIn", Limit.AtYourWord,
                v => v.Say("The deposit is not in: the date is not fixed.", "El anticipo no ha entrado: la fecha no está fijada."),
                v => v.Say("Enter the day it came in; the date is fixed from then on.", "Anote el día en que entró; desde entonces la fecha queda fijada."));
        }

        if (Labour.OfTrades(timeline) is { Count: > 0 } trades)
        {
            yield return new Reason("TradeNotInPrice", Limit.Note,
                v => v.Say($"A licensed trade does: {string.Join("; ", trades.Select(s => s.Name(v)).Distinct())}. Its bill is not in this price.", $"Lo hace un oficio con licencia: {string.Join("; ", trades.Select(s => s.Name(v)).Distinct())}. Su factura no está en este precio."),
                v => v.Say("Tell the customer who orders it and who pays.", "Diga al cliente quién lo encarga y quién lo paga."));
        }

        foreach (var change in agreement.Changes.Where(c => c.SignedOn is null))
        {
            yield return new Reason("ChangeNotSigned", Limit.AtYourWord,
                v => v.Say($"The change \"{change.What}\" is not signed: it is neither done nor in the price.", $"El cambio «{change.What}» no está firmado: ni se hace ni está en el precio."),
                v => v.Say("Have it signed with its price.", "Haga que lo firmen con su precio."));
        }
    }
}
