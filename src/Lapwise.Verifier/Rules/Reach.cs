using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Verifier.Rules;

/// <summary>
/// The person stands at a side one can stand at, reaches all of the section from that side (stepping along it), and
/// leans over nothing that is already wet. A panel is stood in front of; one walks round a pour and a top done as a whole.
/// </summary>
internal static class Reach
{
    /// <summary>A straight reach this deep over another section leans over it.</summary>
    private const double LeaningM = 0.05;
    private const int Samples = 40;
    /// <summary>How finely a person steps along a side.</summary>
    private const double StepM = 0.05;

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
            IReadOnlyList<StandLine> from = c.WalksRound && s.Face.Kind == FaceKind.Flat ? flat.StandLines : [stand!];
            var farthestM = targets.Max(p => from.Min(l => Plane.Distance(l.Line, p)));
            f.Holds(farthestM <= c.Job.Aims.ReachM + Tolerance.TapeM, "OutOfReach", c.At(s.Plan),
                v => v.Say($"Its farthest point is {v.Length(farthestM)} from side {s.Plan.StandSide}; the reach is {v.Length(c.Job.Aims.ReachM)}.",
                    $"Su punto más lejano está a {v.Length(farthestM)} del lado {s.Plan.StandSide}; el alcance es {v.Length(c.Job.Aims.ReachM)}."));

            var wet = c.Sections.Where(w => w.Face == flat && w != s && w.Plan.StartS < s.Plan.StartS).ToList();
            var over = targets.Select(p => LeansOverFromAll(wet, from, p, c.Job.Aims.ReachM)).FirstOrDefault(w => w is not null);
            f.Holds(over is null, "LeansOverWet", c.At(s.Plan),
                v => v.Say($"It is reached over section {over!.Plan.Id}, which is already wet.", $"Se alcanza por encima de la sección {over!.Plan.Id}, que ya está húmeda."));
        }
    }

    /// <summary>Where the roller goes, in plan: the corners and middles of a flat section; the foot of an upright one.</summary>
    private static IEnumerable<PointM> Targets(CoatCase c, SectionCase s)
    {
        if (s.Face.Kind == FaceKind.Flat) return s.Region.Sides.SelectMany(side => new[] { side.From, side.At(0.5) });
        var fold = c.Measured.Tops.SelectMany(t => t.Folds).First(x => x.OtherFace == s.Face.Id);
        return new[] { s.Region.MinX, (s.Region.MinX + s.Region.MaxX) / 2, s.Region.MaxX }.Select(x => FoldLine.OnFlat(fold, x));
    }

    /// <summary>Null where one of the sides reaches the point over nothing wet.</summary>
    private static SectionCase? LeansOverFromAll(IReadOnlyList<SectionCase> wet, IReadOnlyList<StandLine> from, PointM to, double reachM)
    {
        var over = (from.Count == 1 ? from : from.Where(l => Plane.Distance(l.Line, to) <= reachM + Tolerance.TapeM)).Select(l => LeansOver(wet, l.Line, to, reachM)).ToList();
        return over.Contains(null) ? null : over.FirstOrDefault();
    }

    /// <summary>The wet section that one leans over to a point, wherever along the side one stands; null where a free place is found.</summary>
    private static SectionCase? LeansOver(IReadOnlyList<SectionCase> wet, IReadOnlyList<PointM> standLine, PointM to, double reachM)
    {
        var nearest = Plane.Nearest(standLine, to);
        var first = Between(nearest);
        if (first is null) return null;
        var places = Plane.SidesOf(standLine).SelectMany(side => Enumerable.Range(0, 1 + (int)(side.LengthM / StepM)).Select(i => side.At(Math.Min(1, i * StepM / side.LengthM))));
        return places.Any(p => p.DistanceTo(to) <= reachM + Tolerance.TapeM && Between(p) is null) ? null : first;

        SectionCase? Between(PointM from) => wet.FirstOrDefault(w => LeansOver(w.Region, new Side(from, to)));
    }

    private static bool LeansOver(Region wet, Side way) =>
        Enumerable.Range(1, Samples - 1).Count(i => wet.HoldsWellInside(way.At((double)i / Samples))) * way.LengthM / Samples > LeaningM;
}
