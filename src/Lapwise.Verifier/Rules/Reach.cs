using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Verifier.Rules;

/// <summary>
/// The person stands at a side one can stand at, reaches all of the section from that side (stepping along it), leans over
/// nothing that is already wet, and stands against no wet panel. A panel is stood in front of; one walks round a pour and a
/// top done as a whole. Of a plan that says itself what lies out of reach, the rest is held all the same.
/// </summary>
internal static class Reach
{
    /// <summary>A straight reach this deep over another section leans over it.</summary>
    private const double LeaningM = 0.05;
    /// <summary>This near the end of a panel one can stand beside it.</summary>
    private const double PanelEndM = 0.01;
    private const int Samples = 40;
    /// <summary>Half of a narrow roller: its middle stays this far inside the section, so that it passes a neighbour's corner.</summary>
    private const double HalfRollerM = 0.05;
    /// <summary>How finely a person steps along a side, and the roller along a fold.</summary>
    private const double StepM = 0.05;

    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Reach);
        foreach (var s in c.Sections)
        {
            var flat = c.Faces[$"{s.Face.Top}/flat"];
            var stand = flat.StandLines.FirstOrDefault(l => l.Side.ToString() == s.Plan.StandSide);
            var stands = stand is not null && Plane.Distance(stand.Line, s.StandAt) <= Tolerance.TapeM;
            if (!f.Holds(stands || s.Face.Kind == FaceKind.Waterfall || IsSaid(c, s, "NowhereToStand"), "StandsNowhere", c.At(s.Plan),
                v => v.Say("The standing place is not at a side one can stand at.", "El sitio no está en un lado donde se pueda estar de pie."))) continue;
            if (!stands || s.Face.Kind == FaceKind.Waterfall) continue;

            var targets = Targets(c, s).ToList();
            var walksRound = c.WalksRound && s.Face.Kind == FaceKind.Flat;
            IReadOnlyList<StandLine> from = walksRound ? flat.StandLines : [stand!];
            var farthestM = targets.Max(p => from.Min(l => Plane.Distance(l.Line, p)));
            f.Holds(farthestM <= c.Job.Aims.ReachM + Tolerance.TapeM || IsSaid(c, s, "OutOfReach"), "OutOfReach", c.At(s.Plan),
                v => v.Say($"Its farthest point is {v.Length(farthestM)} from side {s.Plan.StandSide}; the reach is {v.Length(c.Job.Aims.ReachM)}.",
                    $"Su punto más lejano está a {v.Length(farthestM)} del lado {s.Plan.StandSide}; el alcance es {v.Length(c.Job.Aims.ReachM)}."));

            var wet = c.Sections.Where(w => w.Face == flat && w != s && w.Plan.StartS < s.Plan.StartS).ToList();
            var panels = walksRound ? [] : c.Sections.Where(w => w.Face.Top == s.Face.Top && w.Face.Kind == FaceKind.Waterfall && w.Plan.StartS < s.Plan.EndS - Tolerance.S)
                .Select(w => (Section: w, Front: Front(c, w))).ToList();
            var over = targets.Select(p => s.Face.Kind == FaceKind.Flat ? RollerAt(s.Region, p) : p).Select(p => LeansOverFromAll(wet, panels, from, p, c.Job.Aims.ReachM)).FirstOrDefault(w => w is not null);
            f.Holds(over is null || over.Face.Kind == FaceKind.Waterfall, "LeansOverWet", c.At(s.Plan),
                v => v.Say($"It is reached over section {over!.Plan.Id}, which is already wet.", $"Se alcanza por encima de la sección {over!.Plan.Id}, que ya está húmeda."));
            var against = StandsAgainst(panels, s.StandAt) ?? (over?.Face.Kind == FaceKind.Waterfall ? over : null);
            f.Holds(against is null, "StandsAgainstWet", c.At(s.Plan),
                v => v.Say($"It is rolled standing against panel {against!.Plan.Id}, which is wet before it is done.", $"Se rueda de pie contra el panel {against!.Plan.Id}, que está húmedo antes de terminarla."));
        }
    }

    /// <summary>The plan names the section's top itself as one where this does not work.</summary>
    private static bool IsSaid(CoatCase c, SectionCase s, string code) =>
        c.Plan.Reasons.Any(r => r.Code == code && r.Text.StartsWith($"{s.Face.Top}: ", StringComparison.Ordinal));

    /// <summary>
    /// Where the roller goes, in plan: the corners and middles of a flat section; of an upright one its foot, step by step, and
    /// the middle of each stretch that it has in common with a section of the flat.
    /// </summary>
    private static IEnumerable<PointM> Targets(CoatCase c, SectionCase s)
    {
        if (s.Face.Kind == FaceKind.Flat) return s.Region.Sides.SelectMany(side => new[] { side.From, side.At(0.5) });
        var fold = FoldOf(c, s);
        var common = c.Sections.Where(w => w.Face.Id == fold.FlatFace).SelectMany(w => FoldLine.OnSectionOfFlat(fold, w.Region))
            .Select(x => (From: Math.Max(Math.Min(x.From, x.To), s.Region.MinX), To: Math.Min(Math.Max(x.From, x.To), s.Region.MaxX)))
            .Where(x => x.To > x.From)
            .Select(x => (x.From + x.To) / 2);
        return Steps(s.Region.MinX, s.Region.MaxX).Concat(common).Select(x => FoldLine.OnFlat(fold, x));
    }

    /// <summary>The middle of the roller as it works a point of the boundary: drawn in towards the middle of the section.</summary>
    private static PointM RollerAt(Region section, PointM p)
    {
        var inward = new Side(p, new PointM((section.MinX + section.MaxX) / 2, (section.MinY + section.MaxY) / 2));
        return inward.LengthM > HalfRollerM ? inward.At(HalfRollerM / inward.LengthM) : inward.To;
    }

    private static Fold FoldOf(CoatCase c, SectionCase upright) => c.Measured.Tops.SelectMany(t => t.Folds).First(x => x.OtherFace == upright.Face.Id);

    private static IEnumerable<double> Steps(double from, double to)
    {
        var count = (int)Math.Ceiling((to - from) / StepM);
        return Enumerable.Range(0, count + 1).Select(i => from + ((to - from) * i / count));
    }

    /// <summary>The line on the flat's side in front of a panel, less its ends; empty for a panel too narrow to stand at.</summary>
    private static List<PointM> Front(CoatCase c, SectionCase panel)
    {
        var (from, to) = (panel.Region.MinX + PanelEndM, panel.Region.MaxX - PanelEndM);
        return from < to ? [.. Steps(from, to).Select(x => FoldLine.OnFlat(FoldOf(c, panel), x))] : [];
    }

    private static SectionCase? StandsAgainst(IReadOnlyList<(SectionCase Section, List<PointM> Front)> panels, PointM at) =>
        panels.FirstOrDefault(p => p.Front.Count > 0 && Plane.Distance(p.Front, at) <= Tolerance.TapeM).Section;

    /// <summary>Null where one of the sides reaches the point over nothing wet.</summary>
    private static SectionCase? LeansOverFromAll(
        IReadOnlyList<SectionCase> wet, IReadOnlyList<(SectionCase Section, List<PointM> Front)> panels, IReadOnlyList<StandLine> from, PointM to, double reachM)
    {
        var over = (from.Count == 1 ? from : from.Where(l => Plane.Distance(l.Line, to) <= reachM + Tolerance.TapeM)).Select(l => LeansOver(wet, panels, l.Line, to, reachM)).ToList();
        return over.Contains(null) ? null : over.FirstOrDefault();
    }

    /// <summary>
    /// The wet section that one leans over to a point, wherever along the side one stands; null where a free place is found,
    /// within reach or, past it, no more than a step farther than the nearest.
    /// </summary>
    private static SectionCase? LeansOver(
        IReadOnlyList<SectionCase> wet, IReadOnlyList<(SectionCase Section, List<PointM> Front)> panels, IReadOnlyList<PointM> standLine, PointM to, double reachM)
    {
        var nearest = Plane.Nearest(standLine, to);
        var first = Between(nearest);
        if (first is null) return null;
        var places = Plane.SidesOf(standLine).SelectMany(side => Enumerable.Range(0, 1 + (int)(side.LengthM / StepM)).Select(i => side.At(Math.Min(1, i * StepM / side.LengthM))));
        var nearestM = nearest.DistanceTo(to);
        var farthestM = nearestM <= reachM + Tolerance.TapeM ? reachM + Tolerance.TapeM : nearestM + StepM;
        return places.Any(p => p.DistanceTo(to) <= farthestM && Between(p) is null) ? null : first;

        SectionCase? Between(PointM from) => wet.FirstOrDefault(w => LeansOver(w.Region, new Side(from, to))) ?? StandsAgainst(panels, from);
    }

    private static bool LeansOver(Region wet, Side way) =>
        Enumerable.Range(1, Samples - 1).Count(i => wet.HoldsWellInside(way.At((double)i / Samples))) * way.LengthM / Samples > LeaningM;
}
