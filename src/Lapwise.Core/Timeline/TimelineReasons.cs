using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work;

namespace Lapwise.Core.Timeline;

/// <summary>What speaks against the days, or is worth knowing of them.</summary>
internal static class TimelineReasons
{
    public static readonly Reason PullsLate = new("MaskingPulledLate", Limit.Note,
        v => v.Say("The masking comes off when the film no longer gives: no working hour falls in its window.", "La cinta se quita cuando la película ya no cede: ninguna hora de trabajo cae en su ventana."),
        v => v.Say("Score along it with a sharp knife first, or end the last coat earlier in the day.", "Marque antes a lo largo con una cuchilla, o acabe la última capa más temprano."));

    /// <summary>What can be said before anything has its day.</summary>
    public static IEnumerable<Reason> Of(Job job, MeasuredJob measured, Layers layers, JobConditions conditions, JobWork work)
    {
        var covered = Enumerable.Range(0, job.System.Count).SelectMany(layers.Beneath).Select(b => b.Coat).ToHashSet();
        for (var i = 0; i < job.System.Count; i++)
        {
            var (coat, number) = (work.Coats[i], i + 1);
            if (!coat.Holds || !conditions.Coats[i].MayCoat || (coat.Sections.Count == 0 && coat.Steps.Count == 0))
            {
                yield return new Reason("CoatDoesNotWork", Limit.AtYourWord,
                    v => v.Say($"Coat {number} does not work yet; its day stands only for planning.", $"La capa {number} aún no funciona; su día solo sirve para planificar."),
                    v => v.Say("See Conditions and Order of work.", "Vea Condiciones y Orden de trabajo."));
            }

            if (covered.Contains(i) && job.System[i].Product is { Recoat: null } silent)
            {
                yield return new Reason("RecoatNotGiven", Limit.Note,
                    v => v.Say($"The data sheet of {silent.Name} as entered gives no recoat window: {Voice.Span(UsualTimes.RecoatS)} is a cautious guess, and no latest is watched.", $"La ficha de {silent.Name} anotada no da ventana de repintado: {Voice.Span(UsualTimes.RecoatS)} es una suposición prudente, y no se vigila ningún máximo."),
                    v => v.Say("Enter it from the data sheet.", "Anótela de la ficha técnica."));
            }
        }

        foreach (var last in layers.Outermost.Select(coat => job.System[coat].Product).Where(p => p.UsableFrom is null).DistinctBy(p => p.Id, StringComparer.Ordinal))
        {
            yield return new Reason("UseNotGiven", Limit.Note,
                v => v.Say($"The data sheet of {last.Name} as entered does not say when it may be used; the dates of use are a cautious guess.", $"La ficha de {last.Name} anotada no dice cuándo se puede usar; las fechas de uso son una suposición prudente."),
                v => v.Say("Enter them from the data sheet before a customer is told.", "Anótelas de la ficha antes de decírselas al cliente."));
        }

        if (layers.Bare.Select(t => t.Top.Name).ToList() is { Count: > 0 } bare)
        {
            yield return new Reason("TopWithoutCoat", Limit.Note,
                v => v.Say($"No coat goes on {v.List(bare)}.", $"Ninguna capa va en {v.List(bare)}."),
                v => v.Say("Choose it at the coats that go on it, or take the top out.", "Elíjala en las capas que le correspondan, o quite la cubierta."));
        }

        var unknown = measured.Tops.Where(t => t.Top.Substrate is null).Select(t => t.Top.Name).ToList();
        if (unknown.Count > 0)
        {
            yield return new Reason("SurfaceNotStated", Limit.Note,
                v => v.Say($"What is under the coats is not stated for {string.Join(", ", unknown)}: the slowest preparation and a bond test are reckoned.", $"No se indica qué hay debajo en {string.Join(", ", unknown)}: se cuenta la preparación más lenta y una prueba de adherencia."),
                v => v.Say("State it for each top.", "Indíquelo en cada cubierta."));
        }
    }

    public static Reason Sanded(int coat, int before, IReadOnlyList<DraftStep> steps, TimelineAsks asks)
    {
        var costS = steps.Where(s => s.IsInserted && s.Coat == before).Sum(s => s.Seconds);
        return new Reason("RecoatMissed", Limit.Note,
            v => v.Say($"The latest recoat of coat {coat + 1} cannot be met within the hours {Hours(asks, v)}: it is sanded first, {Voice.Span(costS)} more.", $"El repintado más tardío de la capa {coat + 1} no cabe en el horario {Hours(asks, v)}: antes se lija, {Voice.Span(costS)} más."),
            v => v.Say("Work longer that day, warm or cool the room, or take a product with a wider window.", "Trabaje más ese día, caliente o enfríe la sala, o elija un producto con ventana más ancha."));
    }

    /// <summary>Loud, for papers go out by these days.</summary>
    public static Reason OutOfDate(IReadOnlyList<VisitDocument> settled, Phrase against)
    {
        var (first, last) = (DateOnly.FromDateTime(settled.Min(v => v.Begins)), DateOnly.FromDateTime(settled.Max(v => v.Ends)));
        return new Reason("SettledDaysOutOfDate", Limit.AtYourWord,
            v => v.Say($"Days were settled for this job, {v.WeekDay(first)} to {v.WeekDay(last)}, before it was changed, and they no longer fit it: {against(v)}. The days here are those it could have by itself.",
                $"Para este trabajo se acordaron días, del {v.WeekDay(first)} al {v.WeekDay(last)}, antes de cambiarlo, y ya no encajan: {against(v)}. Los días de aquí son los que podría tener por sí solo."),
            v => v.Say("Find and settle the days again on the page of days, or take the change back.", "Busque y acuerde de nuevo los días en la página de días, o deshaga el cambio."));
    }

    /// <param name="overS">How long what was taken out is gone, beyond what is allowed, on the days shown.</param>
    public static Reason Contradict(IReadOnlyList<Link> cycle, TimelineAsks asks, double overS)
    {
        string Round(Voice v) => string.Join(" → ", cycle.Select(l => l.Name?.Invoke(v)).Where(n => n is not null).Distinct());
        return new Reason("WindowsContradict", Limit.AtYourWord,
            v => v.Say($"These windows cannot all be met within the hours {Hours(asks, v)}: {Round(v)}. The days shown pass the last by {Voice.Span(overS)}.", $"Estas ventanas no se pueden cumplir todas en el horario {Hours(asks, v)}: {Round(v)}. Los días de aquí pasan el último en {Voice.Span(overS)}."),
            v => v.Say("Widen one of them: longer hours, a warmer room, a faster product, or more days without.", "Ensanche una: más horas, una sala más cálida, un producto más rápido o más días sin ello."));
    }

    public static Reason LongerThanDay(DraftStep step, WorkCalendar calendar) => new("StepLongerThanDay", Limit.AtYourWord,
        v => v.Say($"{step.Name(v)} takes {Voice.Span(step.Seconds)} in one go; the day has {Voice.Span(calendar.HoursMin * 60)}.", $"{step.Name(v)} lleva {Voice.Span(step.Seconds)} seguidos; la jornada tiene {Voice.Span(calendar.HoursMin * 60)}."),
        v => v.Say("Work longer that day, or do the tops in two parts.", "Trabaje más ese día, o haga las cubiertas en dos partes."));

    /// <summary>By how much a promise is missed, and the longest wait on the way there.</summary>
    public static Reason? Late(TimelineAsks asks, IReadOnlyList<UseDate> uses, IReadOnlyList<DraftStep> steps, IReadOnlyList<Link> links, EarliestPass.Outcome.Found found, IReadOnlyList<LastFilm> films, RoomWaits waits)
    {
        if (asks.PromisedBy is not { } promised || uses.FirstOrDefault(u => u.Use == UseOf.LightUse) is not { } light) return null;
        var by = promised.ToDateTime(TimeOnly.MinValue).AddDays(1);
        if (light.From <= by) return null;

        var (film, lastS) = films.Select(f => (Film: f, S: waits.After(f.Product, WaitFor.LightUse, f.End)!.Seconds!.Value)).MaxBy(f => (f.Film.End * 60) + f.S);
        var blamed = (Name: (Phrase)(v => UseDate.Say(UseOf.LightUse, v)), Seconds: lastS);
        for (var step = film.Step; found.PushedBy[step] is { } link && link.To == step; step = link.From)
        {
            var end = found.Steps[link.From].End;
            var waitS = (link.NotBefore(end) - end) * 60.0;
            if (waitS > blamed.Seconds) blamed = (link.Name ?? links.FirstOrDefault(l => l.From == link.From && l.Name is not null)?.Name ?? steps[step].Name, waitS);
        }

        var lateS = (light.From - by).TotalSeconds;
        return new Reason("PromiseMissed", Limit.AtYourWord,
            v => v.Say($"Light use comes {Voice.Span(lateS)} after {v.WeekDay(promised)}, the date promised. The longest wait on the way: {blamed.Name(v)}, {Voice.Span(blamed.Seconds)}.", $"El uso ligero llega {Voice.Span(lateS)} después del {v.WeekDay(promised)}, la fecha prometida. La espera más larga del camino: {blamed.Name(v)}, {Voice.Span(blamed.Seconds)}."),
            v => v.Say("Begin earlier, work longer days, warm the room, or promise a later date.", "Empiece antes, trabaje más horas, caliente la sala o prometa una fecha posterior."));
    }

    private static string Hours(TimelineAsks asks, Voice v) => $"{v.HourOfDay(asks.WorkFromMin / 60.0)}–{v.HourOfDay(asks.WorkToMin / 60.0)}";
}
