using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Verifier.Rules;

/// <summary>
/// A poured coat has, for each part of a flat, its pour, its levelling and every bubble pass of the product, for each upright
/// its brushing, and for each top with open edges its scraping: at the product's own times, and each long enough. What comes
/// too late is a reason the plan gives, not something it hides. Other coats have no steps.
/// </summary>
internal static class Steps
{
    /// <summary>How late a bubble pass may begin. Common practice, no source.</summary>
    private const double PassMayWaitS = 180;

    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Steps);
        var isPoured = c.Coat.Product.Method == ApplicationMethod.Poured;
        f.Holds(isPoured || c.Plan.Steps.Count == 0, "StepsOfCoatNotPoured", c.Place, v => v.Say("This coat is not poured and has steps of a pour.", "Esta capa no se vierte y tiene pasos de un vertido."));
        if (!isPoured) return;

        var left = c.Plan.Steps.ToList();
        foreach (var s in c.Sections) Of(c, f, s, left);
        foreach (var top in c.Measured.Tops) Scraping(c, f, top, left);
        foreach (var step in left) f.Holds(false, "StepForNothing", c.At(step), v => v.Say("The product asks for no such step.", "El producto no pide ese paso."));
        foreach (var step in c.Plan.Steps)
        {
            var late = step.ToS is { } to && (step.Kind == "bubblePass" ? step.StartS : step.EndS) > to + Tolerance.S;
            f.Holds(!late || !c.Plan.Holds, "StepTooLate", c.At(step), v => v.Say("It comes after its window and the plan says it holds.", "Llega después de su plazo y el plan dice que aguanta."));
            f.Holds(step.StartS >= step.FromS - Tolerance.S && step.StartS < step.EndS, "StepTooEarly", c.At(step), v => v.Say("It comes before its time, or takes none.", "Llega antes de su hora, o no dura nada."));
        }
    }

    private static void Of(CoatCase c, Findings f, SectionCase section, List<PlannedStep> left)
    {
        var s = section.Plan;
        if (section.Face.Kind != FaceKind.Flat)
        {
            Take(c, f, left, "brush", s, s.StartS, s.EndS, s.StartS, null);
            return;
        }

        var pour = c.Coat.Product.Pour;
        var useByS = c.Plan.Batches.FirstOrDefault(b => b.Id == s.Batch)?.UseByS;
        Take(c, f, left, "pour", s, s.StartS, s.WetEndS, s.StartS, useByS);
        Take(c, f, left, "level", s, s.WetEndS, s.EndS, s.WetEndS, s.WetEndS + pour.LevelWithinS);
        foreach (var afterS in pour.BubblePassesS)
        {
            var dueS = s.WetEndS + afterS;
            if (Take(c, f, left, "bubblePass", s, null, null, dueS, dueS + PassMayWaitS) is not { } pass || !c.Crew.TryGetValue(pass.Person, out var person)) continue;
            f.Holds(pass.StartS >= s.EndS - Tolerance.S, "StepTooEarly", c.At(pass), v => v.Say("The pour is not levelled yet.", "El vertido aún no está nivelado."));
            LongEnough(c, f, pass, s.AreaM2 / person.Pace.DryPassM2PerS, person.Pace.WalkS);
        }
    }

    private static void Scraping(CoatCase c, Findings f, MeasuredTop top, List<PlannedStep> left)
    {
        var edgeM = top.Faces.SelectMany(x => x.Strips).Where(x => x.Kind == StripKind.Nosing).Sum(x => x.LengthM);
        if (c.Coat.Product.Pour.ScrapeDrips is not { } window || edgeM <= 0) return;
        var pours = c.Sections.Where(s => s.Face.Top == top.Top.Name && s.Face.Kind == FaceKind.Flat).Select(s => s.Plan).ToList();
        var scrape = left.Find(x => x.Kind == "scrapeDrips" && x.Top == top.Top.Name);
        if (!f.Holds(scrape is not null, "StepMissing", $"{c.Place} {top.Top.Name}", v => v.Say("Its drips are never scraped off.", "Sus gotas nunca se raspan.")) || pours.Count == 0) return;
        left.Remove(scrape!);
        f.Holds(scrape!.Sections.Order(StringComparer.Ordinal).SequenceEqual(pours.Select(p => p.Id).Order(StringComparer.Ordinal)), "StepOfOtherSections", c.At(scrape),
            v => v.Say("It does not name the pours of its top.", "No nombra los vertidos de su cubierta."));
        Window(c, f, scrape, pours.Max(p => p.WetEndS) + window.FromS, pours.Min(p => p.WetEndS) + window.ToS);
        if (c.Crew.TryGetValue(scrape.Person, out var person)) LongEnough(c, f, scrape, edgeM / person.Pace.EdgeMPerS, person.Pace.WalkS);
    }

    /// <summary>Takes the step of a section that is due at a time off the list; null, with a finding, where it is missing.</summary>
    private static PlannedStep? Take(CoatCase c, Findings f, List<PlannedStep> left, string kind, PlannedSection s, double? startS, double? endS, double fromS, double? toS)
    {
        var step = left.Where(x => x.Kind == kind && x.Sections.Count == 1 && x.Sections[0] == s.Id).MinBy(x => Math.Abs(x.FromS - fromS));
        if (!f.Holds(step is not null, "StepMissing", c.At(s), v => v.Say($"It has no {kind} that is due at {Core.Explain.Voice.Clock(fromS)}.", $"Le falta {kind}, que toca a las {Core.Explain.Voice.Clock(fromS)}."))) return null;
        left.Remove(step!);
        Window(c, f, step!, fromS, toS);
        var same = (startS is not { } start || Math.Abs(step!.StartS - start) <= Tolerance.S) && (endS is not { } end || Math.Abs(step!.EndS - end) <= Tolerance.S);
        var isOwn = startS is null || step!.Person == s.Person;
        f.Holds(same && isOwn && step!.Top == s.Top, "StepDiffersFromSection", c.At(step!), v => v.Say("It is not at the time of its section, or another person's.", "No está a la hora de su sección, o es de otra persona."));
        return step;
    }

    private static void Window(CoatCase c, Findings f, PlannedStep step, double fromS, double? toS) =>
        f.Holds(Math.Abs(step.FromS - fromS) <= Tolerance.S && (toS is { } to ? step.ToS is { } planned && Math.Abs(planned - to) <= Tolerance.S : step.ToS is null),
            "StepWindowWrong", c.At(step), v => v.Say("Its window is not the one of the product.", "Su plazo no es el del producto."));

    private static void LongEnough(CoatCase c, Findings f, PlannedStep step, double workS, double walkS) =>
        f.Holds(step.EndS - step.StartS >= workS - Tolerance.S && step.EndS - step.StartS <= workS + walkS + Tolerance.RoundedUpS, "StepTimeWrong", c.At(step),
            v => v.Say($"The plan gives {v.Number(step.EndS - step.StartS, 1)} s; it takes {v.Number(workS, 1)} to {v.Number(workS + walkS, 1)} s.", $"El plan da {v.Number(step.EndS - step.StartS, 1)} s; lleva de {v.Number(workS, 1)} a {v.Number(workS + walkS, 1)} s."));
}
