using Lapwise.Core;
using Lapwise.Core.Explain;

namespace Lapwise.Client.Jobs;

/// <summary>How a phase stands, as a sign, a class and words.</summary>
internal sealed record PhaseStanding(string Class, string Sign, string Words);

internal static class PhaseStandings
{
    public static PhaseStanding Of(Phase phase, OpenJob open, Voice voice)
    {
        var workings = open.Workings;
        var good = new PhaseStanding("is-good", "✓", voice.Say("works", "funciona"));
        var wrong = new PhaseStanding("is-wrong", "✗", voice.Say("something is wrong", "algo está mal"));
        var blank = new PhaseStanding("is-blank", "·", voice.Say("not filled in yet", "aún sin datos"));
        var isEmpty = phase == Core.Phases.Measure ? open.Document.Tops.Count == 0 : phase == Core.Phases.Materials && open.Document.System.Count == 0;
        if (isEmpty) return blank;
        var faults = workings.Faults.Where(f => Core.Phases.OfField(f.Path) == phase).ToList();
        if (faults.Count > 0) return faults.TrueForAll(f => f.IsBlankYet) ? new PhaseStanding("is-blank", "·", voice.Say("not all filled in yet", "aún faltan datos")) : wrong;

        if (phase == Core.Phases.Measure) return workings.Measured is null ? wrong : good;
        if (phase == Core.Phases.Materials) return workings.Materials?.Coats.Any(c => c.Reasons.Any(r => r.Limit != Limit.Note)) ?? true ? wrong : good;
        if (phase == Core.Phases.Conditions) return workings.Conditions is not { Coats.Count: > 0 } conditions ? blank : conditions.Coats.All(c => c.MayCoat) ? good : wrong;
        if (workings.Job is null || workings.Whole is not { Work.Coats.Count: > 0 } whole) return blank;
        if (workings.IsPlanning) return new PhaseStanding("is-blank", "…", voice.Say("being worked out", "calculando"));
        if (workings.Faults.Count > 0) return wrong;
        if (phase == Core.Phases.Work) return whole.Stands ? good : wrong;
        if (phase == Core.Phases.Timeline) return whole.Timeline.Holds ? good : wrong;
        if (phase == Core.Phases.Money) return whole.Timeline.Holds ? new PhaseStanding("is-blank", "·", voice.Say("look at the price", "mire el precio")) : wrong;
        return whole.Supply.Coats.All(c => c.Reasons.All(r => r.Limit == Limit.Note)) ? good : wrong;
    }
}
