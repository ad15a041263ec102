using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Verifier.Rules;

/// <summary>
/// The person stands at a side one can stand at, reaches all of the section from that side (stepping along it), and
/// leans over nothing that is already wet. A panel is stood in front of.
/// </summary>
internal static class Reach
{
    /// <summary>A straight reach this deep over another section leans over it.</summary>
    private const double LeaningM = 0.05;
    private const int Samples = 40;

    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Reach);
        if (!c.Plan.Holds) return; // it says itself that it does not work
        foreach (var s in c.Sections)
        {
            var flat = c.Faces[$"{s.Face.Top}/flat"];
            var stand = flat.StandLines.FirstOrDefault(l => l.Side.ToString() == s.Plan.StandSide);
            var stands = stand is not null && Plane.Distance(stand.Line, s.StandAt) <= Tolerance.TapeM;
            if (!f.Holds(stands || s.Face.Kind == FaceKind.Waterfall, "StandsNowhere", c.At(s.Plan),
                v => v.Say("The standing place is not at a side one can stand at.", "El sitio no está en un lado donde se pueda estar de pie."))) continue;
            if (s.Face.Kind == FaceKind.Waterfall) continue;

            var targets = Targets(c, s).ToList();
            var farthestM = targets.Max(p => Plane.Distance(stand!.Line, p));
            f.Holds(farthestM <= c.Job.Aims.ReachM + Tolerance.TapeM, "OutOfReach", c.At(s.Plan),
                v => v.Say($"Its farthest point is {v.Length(farthestM)} from side {s.Plan.StandSide}; the reach is {v.Length(c.Job.Aims.ReachM)}.",
                    $"Su punto más lejano está a {v.Length(farthestM)} del lado {s.Plan.StandSide}; el alcance es {v.Length(c.Job.Aims.ReachM)}."));

            foreach (var wet in c.Sections.Where(w => w.Face == flat && w != s && w.Plan.StartS < s.Plan.StartS))
            {
                var over = targets.Any(p => LeansOver(wet.Region, Plane.Nearest(stand!.Line, p), p));
                f.Holds(!over, "LeansOverWet", c.At(s.Plan),
                    v => v.Say($"It is reached over section {wet.Plan.Id}, which is already wet.", $"Se alcanza por encima de la sección {wet.Plan.Id}, que ya está húmeda."));
            }
        }
    }

    /// <summary>Where the roller goes, in plan: the corners and middles of a flat section; the foot of an upright one.</summary>
    private static IEnumerable<PointM> Targets(CoatCase c, SectionCase s)
    {
        if (s.Face.Kind == FaceKind.Flat) return s.Region.Sides.SelectMany(side => new[] { side.From, side.At(0.5) });
        var fold = c.Measured.Tops.SelectMany(t => t.Folds).First(x => x.OtherFace == s.Face.Id);
        return new[] { s.Region.MinX, (s.Region.MinX + s.Region.MaxX) / 2, s.Region.MaxX }.Select(x => FoldLine.OnFlat(fold, x));
    }

    private static bool LeansOver(Region wet, PointM from, PointM to)
    {
        var way = new Side(from, to);
        var inside = Enumerable.Range(1, Samples - 1).Count(i => wet.HoldsWellInside(way.At((double)i / Samples)));
        return inside * way.LengthM / Samples > LeaningM;
    }
}
