using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work.Remedies;

/// <summary>Remedies in how the work is done and by whom.</summary>
internal static class WorkRemedies
{
    /// <summary>Against the largest section as asked for. The plan itself already tries a third of it.</summary>
    private static readonly double[] Narrower = [0.6, 0.35, 0.2];

    private const int MostPeople = 4;

    public static async ValueTask<Remedy?> NarrowerSectionsAsync(Trying trying)
    {
        if (trying.Product.Method is ApplicationMethod.Poured) return null;
        var aims = trying.Job.Aims;
        var best = await trying.FirstGoodAsync(
            Narrower.Select(share => aims.LargestSectionM2 * share),
            m2 => trying.PlanAsync(trying.Job with { Aims = aims with { LargestSectionM2 = m2 } }),
            goesOnPastWorse: false);
        return best is not { } b ? null : trying.Made(RemedyKind.NarrowerSections, b.Tried, v => v.Say(
            $"Allow sections of at most {v.Area(b.Choice)} instead of {v.Area(aims.LargestSectionM2)}.",
            $"Admita secciones de {v.Area(b.Choice)} como mucho en vez de {v.Area(aims.LargestSectionM2)}."));
    }

    /// <summary>Fewer mixings inside the work: a larger container, never past the data sheet's own limit.</summary>
    public static async ValueTask<Remedy?> LargerBatchAsync(Trying trying)
    {
        var (tools, coat) = (trying.Job.Tools, trying.Coat);
        if (trying.Now.Work.Batches.Count < 2 && !trying.Now.OutlivesPot && !trying.Now.IsOverBatch) return null;
        if (trying.Product.LargestBatchMl is not { } limitMl)
        {
            return Trying.Untold(RemedyKind.LargerBatch,
                v => v.Say("Mix larger batches.", "Haga mezclas más grandes."),
                v => v.Say("No number can be had: the data sheet as entered gives no largest batch, and a large mixed mass can overheat.",
                    "No hay cifra posible: la ficha técnica anotada no da una mezcla máxima, y una masa grande ya mezclada puede sobrecalentarse."));
        }

        var containerMl = limitMl * (1 + coat.ThinnerFraction);
        if (containerMl <= tools.LargestBatchMl) return null;
        var best = await trying.FirstGoodAsync([containerMl], ml => trying.PlanAsync(trying.Job with { Tools = tools with { LargestBatchMl = ml } }));
        return best is not { } b ? null : trying.Made(RemedyKind.LargerBatch, b.Tried, v => v.Say(
            $"Mix in a container of {v.Volume(b.Choice)}, the most the data sheet lets mix at one time, instead of {v.Volume(tools.LargestBatchMl)}.",
            $"Mezcle en un recipiente de {v.Volume(b.Choice)}, lo máximo que la ficha técnica admite de una vez, en lugar de {v.Volume(tools.LargestBatchMl)}."));
    }

    /// <summary>One person more, then two, then three, of the pace of the last of the crew, until the target is kept.</summary>
    public static async IAsyncEnumerable<Remedy> MorePeopleAsync(Trying trying)
    {
        var crew = trying.Job.Crew;
        for (var people = crew.Count + 1; people <= MostPeople; people++)
        {
            if (await CrewedAsync(trying, people) is not { } tried || !tried.IsBetterThan(trying.Now)) continue;
            if (trying.Product.Method is ApplicationMethod.Poured) yield return Poured(trying, tried, people);
            else if (tried.Work.Rollers > 1) yield return Rolled(trying, tried, people);
            else if (people == crew.Count + 1) yield return Helped(trying, tried);
            if (tried.KeepsTarget) break;
        }
    }

    private static Remedy Helped(Trying trying, Attempt tried) => trying.Made(RemedyKind.HelperMixes, tried, v => v.Say(
        $"Have a helper mix each batch just before it is wanted; {tried.Job.Crew[tried.Work.Sections[0].Person].Name} rolls without stopping.",
        $"Que un ayudante prepare cada mezcla justo antes de usarla; {tried.Job.Crew[tried.Work.Sections[0].Person].Name} aplica sin parar."));

    /// <summary>Who pours goes on pouring; all that follows finds a hand.</summary>
    private static Remedy Poured(Trying trying, Attempt tried, int people) => trying.Made(RemedyKind.HelperMixes, tried, v => v.Say(
        $"Be {people}: {trying.Job.Crew[0].Name} pours and levels, and the others mix, do the bubble passes and scrape.",
        $"Sean {people}: {trying.Job.Crew[0].Name} vierte y nivela, y los demás mezclan, dan las pasadas contra burbujas y raspan."));

    private static Remedy Rolled(Trying trying, Attempt tried, int people) => trying.Made(RemedyKind.AnotherPersonRolls, tried, v => tried.Work.Rollers == people
        ? v.Say(
            $"Roll with {people} people at the pace of {trying.Job.Crew[^1].Name}.",
            $"Aplique con {people} personas al ritmo de {trying.Job.Crew[^1].Name}.")
        : v.Say(
            $"Be {people}, those who join at the pace of {trying.Job.Crew[^1].Name}: {tried.Work.Rollers} roll, and another mixes.",
            $"Sean {people}, quienes se suman al ritmo de {trying.Job.Crew[^1].Name}: {tried.Work.Rollers} aplican y otra persona mezcla."));

    private static ValueTask<Attempt?> CrewedAsync(Trying trying, int people)
    {
        var crew = trying.Job.Crew;
        var voice = new Voice(trying.Job.Language, trying.Job.Units);
        var more = Enumerable.Range(crew.Count + 1, people - crew.Count)
            .Select(n => crew[^1] with { Name = voice.Say($"Person {n}", $"Persona {n}") });
        return trying.PlanAsync(trying.Job with { Crew = [.. crew, .. more] });
    }
}
