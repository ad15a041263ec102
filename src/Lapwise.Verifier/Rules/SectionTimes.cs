using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Verifier.Rules;

/// <summary>
/// Each section starts, is wet and is dry in that order, and takes what its area and edges take at the person's pace:
/// a pour is levelled at the pace of a dry pass, an upright is only brushed; the walk may be nothing, and each part may be rounded up to a whole second.
/// </summary>
internal static class SectionTimes
{
    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.SectionTimes);
        foreach (var s in c.Plan.Sections)
        {
            var isFinished = c.Coat.Product.Method == ApplicationMethod.Rolled ||
                (c.Coat.Product.Method == ApplicationMethod.Poured && c.Faces.TryGetValue(s.Face, out var face) && face.Kind == FaceKind.Flat);
            var inOrder = s.StartS >= -Tolerance.S && s.StartS < s.WetEndS && s.WetEndS <= s.EndS && (s.WetEndS < s.EndS || !isFinished);
            f.Holds(inOrder, "TimesOutOfOrder", c.At(s), v => v.Say("Start, wet and dry do not follow one another.", "Inicio, húmedo y seco no van uno tras otro."));
            if (!c.Crew.TryGetValue(s.Person, out var person)) continue;

            var pace = person.Pace;
            var wetS = pace.ReloadS + (s.AreaM2 / pace.WetOutM2PerS) + (s.EdgeM / pace.EdgeMPerS);
            var dryS = isFinished ? s.AreaM2 / pace.DryPassM2PerS : 0;
            Within(c, f, s, "WetTimeWrong", s.WetEndS - s.StartS, wetS, wetS + pace.WalkS);
            Within(c, f, s, "DryTimeWrong", s.EndS - s.WetEndS, dryS, dryS);
        }
    }

    private static void Within(CoatCase c, Findings f, PlannedSection s, string code, double planned, double least, double most) =>
        f.Holds(planned >= least - Tolerance.S && planned <= most + Tolerance.RoundedUpS, code, c.At(s),
            v => v.Say($"The plan gives {v.Number(planned, 1)} s; at {s.Person}'s pace it takes {v.Number(least, 1)} to {v.Number(most, 1)} s.",
                $"El plan da {v.Number(planned, 1)} s; al ritmo de {s.Person} lleva de {v.Number(least, 1)} a {v.Number(most, 1)} s."));
}
