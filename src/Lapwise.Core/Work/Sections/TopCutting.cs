using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>A top with its faces made ready, to be cut any number of times; each choice is cut once.</summary>
internal sealed class TopCutting
{
    private readonly MeasuredTop top;
    private readonly Aims aims;
    private readonly FaceEdges flat;
    private readonly Standing standing;
    private readonly IReadOnlyList<(FaceEdges Face, int Fold)> uprights;
    private readonly IReadOnlyList<(PointM From, Axis Direction)> joints;
    private readonly IReadOnlyList<(PointM Through, Axis Direction)> given;
    private readonly double dryPassDeg;
    private readonly Dictionary<CutChoice, CutTop> known = [];

    public TopCutting(MeasuredTop top, Aims aims)
    {
        (this.top, this.aims) = (top, aims);
        var folds = top.Folds.Select((fold, number) => (Fold: fold, Number: number)).ToList();
        flat = new FaceEdges(top.Faces.Single(f => f.Kind == FaceKind.Flat), [.. folds.Select(f => (f.Number, f.Fold.LineOnFlat, f.Fold.LengthM))]);
        uprights = [.. top.Faces.Where(f => f.Kind != FaceKind.Flat).Select(face =>
        {
            var (fold, number) = folds.Single(f => f.Fold.OtherFace == face.Id);
            return (new FaceEdges(face, [(number, fold.LineOnOther, fold.LengthM)]), number);
        })];
        standing = new Standing(flat, aims.ReachM);
        joints = [.. top.Top.Breaks.SelectMany(Joint)];
        given = [.. top.Top.SectionLines.Where(l => l.On == SectionLineOn.Flat).Select(Own).OfType<(PointM, Axis)>()];
        HasCorners = InnerCorner.Of(flat.Whole.Outer).Any();
        var length = Marching.LongAxis(flat.Whole.Outer);
        dryPassDeg = HalfTurn(top.Top.DryPassDeg ?? Math.Atan2(length.Y, length.X) * 180 / Math.PI);
    }

    public bool HasCorners { get; }
    public bool HasCutouts => flat.Whole.Rings.Count > 1;
    public bool HasWetFolds => top.Folds.Any(f => !f.IsJoint);

    public CutTop Cut(CutChoice choice)
    {
        if (!known.TryGetValue(choice, out var cut)) known[choice] = cut = CutAnew(choice);
        return cut;
    }

    private CutTop CutAnew(CutChoice choice)
    {
        var lines = new List<CutLine>();
        var cutting = new FlatCutting(flat, standing, aims, lines);
        var parts = cutting.Cut(joints, given, choice).OrderBy(p => Place(p.Piece)).ToList();
        var placed = parts.Select(OnFlat).ToList();
        var seams = Seams.Along([.. parts.Select(p => p.Piece)], 0, lines).ToList();
        foreach (var (face, number) in uprights)
        {
            var (fold, first) = (top.Folds[number], placed.Count);
            var feet = parts.SelectMany((p, i) => Seams.OnFold(flat, p.Piece, number).Select(s => (Section: i, s.FromM, s.ToM))).ToList();
            var pieces = UprightCutting.Cut(face, fold, [.. feet.SelectMany(f => new[] { f.FromM, f.ToM })], OwnOn(fold), choice, aims, lines).OrderBy(Place).ToList();
            var stretches = pieces.Select((p, i) => Seams.OnFold(face, p, number).Select(s => (Section: first + i, s.FromM, s.ToM)).ToList()).ToList();
            placed.AddRange(pieces.Select((p, i) => OnUpright(face, p, first + i, fold, parts, stretches[i].Min(s => s.FromM), stretches[i].Max(s => s.ToM))));
            seams.AddRange(Seams.Along(pieces, first, lines));
            seams.AddRange(Seams.Across(fold, feet, stretches.SelectMany(s => s)));
        }

        var sections = Leaning.Over(placed).ToList();
        return new CutTop(top, choice, sections, [.. seams.OrderBy(s => (s.A, s.B, s.Line[0].X, s.Line[0].Y))], [.. Reasons(sections), .. TooLarge(sections, choice), .. LinesMissed(cutting.Missed)]);
    }

    private Placed OnFlat(FlatPart part, int index)
    {
        var centre = part.Piece.Centre();
        var shape = Shape(flat, part.Piece, index) with { DryPassDeg = dryPassDeg };
        return new Placed(Stood(shape, part.Stand, centre), part.Stand is { WalksRound: true } ? null : part.Stand, Leaning.Targets(part.Piece, centre));
    }

    private Placed OnUpright(FaceEdges face, Piece piece, int index, Fold fold, IEnumerable<FlatPart> parts, double fromM, double toM)
    {
        var foot = Seams.Foot(fold, fromM, toM);
        var middle = Seams.Foot(fold, (fromM + toM) / 2, toM)[0];
        var shape = Shape(face, piece, index) with { DryPassDeg = 90 };
        if (face.Face.Kind == FaceKind.Waterfall)
            return new Placed(shape with { StandAt = middle, StandSide = fold.Side, ReachM = 0 }, null, foot);

        var stand = standing.Best(foot, Axis.From(foot[0], foot[^1]));
        return new Placed(Stood(shape, stand, middle), stand, Leaning.Targets(foot, flat.Whole, parts.Select(p => p.Piece)));
    }

    private static SectionShape Stood(SectionShape shape, Stand? stand, PointM before) => stand is null
        ? shape with { StandAt = before, StandSide = null, ReachM = double.PositiveInfinity }
        : shape with { StandAt = stand.Nearest(before), StandSide = stand.Side, ReachM = stand.ReachM };

    private static SectionShape Shape(FaceEdges face, Piece piece, int index)
    {
        var strips = face.Strips(piece);
        var centre = piece.Centre();
        return new SectionShape(index, face.Face, piece.Outlines, piece.AreaM2, piece.AreaM2 * face.ArcShare, strips.AreaM2, strips.LengthM, centre, centre, null, 0, 0, []);
    }

    /// <summary>A planned joint as the point on its side and the way into the top.</summary>
    private IEnumerable<(PointM From, Axis Direction)> Joint(BreakLine joint) =>
        OnSide(joint.Side, joint.AtM) is { } on && joint.AtM < on.LengthM ? [(on.At, on.Inward)] : [];

    /// <summary>The finisher's own line as a point on it and its direction; null where the outline has no such side.</summary>
    private (PointM Through, Axis Direction)? Own(SectionLine line)
    {
        const double justInsideM = 0.002;
        if (OnSide(line.Side, line.AtM) is not { } on) return null;
        var direction = line.To is not { } to ? on.Inward : OnSide(to.Side, to.AtM) is { } end && end.At != on.At ? Axis.From(on.At, end.At) : (Axis?)null;
        return direction is { } d ? (Plane.Step(on.At, d, line.InM > 0 ? line.InM : justInsideM), d) : null;
    }

    private List<double> OwnOn(Fold fold) => [.. top.Top.SectionLines.Where(l => l.On == SectionLineOn.Upright && l.Side == fold.Side).Select(l => l.AtM)];

    public const double ChordErrorM = 0.0001;

    /// <summary>A side from its start to its end, arcs flattened; empty where the outline has no such side.</summary>
    public static IReadOnlyList<PointM> SideLine(MeasuredTop top, char letter)
    {
        var segments = top.Outline.Segments.Where(s => s.Side == letter).ToList();
        return segments.Count == 0 ? [] : [segments[0].From, .. segments.SelectMany(s => s.Flatten(ChordErrorM))];
    }

    /// <summary>A place on a side, cut off at its end, and the way square into the top from there.</summary>
    private (PointM At, Axis Inward, double LengthM)? OnSide(char letter, double atM)
    {
        var side = SideLine(top, letter);
        if (side.Count < 2) return null;
        var lengthM = Plane.Length(side);
        var onward = Plane.Part(side, atM, lengthM);
        var (at, along) = onward.Count < 2 ? (side[^1], Axis.From(side[^2], side[^1])) : (onward[0], Axis.From(onward[0], onward[1]));
        var beside = Plane.Step(at, along, onward.Count < 2 ? -0.001 : 0.001);
        var inward = along.Quarter;
        return (at, flat.Whole.Contains(Plane.Step(beside, inward, 0.001)) ? inward : inward.Opposite, lengthM);
    }

    private IEnumerable<Reason> LinesMissed(int count)
    {
        if (count == 0) yield break;
        var name = top.Top.Name;
        yield return new Reason("SectionLineMisses", Limit.Note,
            v => v.Say($"{name}: {count} of your own lines cut nothing.", $"{name}: {count} de sus propias líneas no cortan nada."),
            v => v.Say("Check the side and the distance, or take the line out.", "Revise el lado y la distancia, o quite la línea."));
    }

    /// <summary>The planner never cuts a section larger than was asked for; the finisher's own lines may.</summary>
    private IEnumerable<Reason> TooLarge(List<SectionShape> sections, CutChoice choice)
    {
        const double tapeM2 = 0.001;
        var large = sections.Where(s => s.FaceM2 > aims.LargestSectionM2 + tapeM2).ToList();
        if (choice is not CutChoice.Given || large.Count == 0) yield break;
        var (name, largestM2) = (top.Top.Name, large.Max(s => s.FaceM2));
        yield return new Reason("OwnSectionTooLarge", Limit.Note,
            v => v.Say(
                $"{name}: between your own lines lie {large.Count} sections larger than the {v.Area(aims.LargestSectionM2)} asked for; the largest has {v.Area(largestM2)}.",
                $"{name}: entre sus propias líneas quedan {large.Count} secciones mayores que los {v.Area(aims.LargestSectionM2)} pedidos; la mayor tiene {v.Area(largestM2)}."),
            v => v.Say(
                "Move the lines closer together, give them back to the planner, or allow larger sections under what to aim at.",
                "Acerque las líneas, devuélvalas al planificador, o permita secciones más grandes en lo que se busca."));
    }

    private List<Reason> Reasons(List<SectionShape> sections)
    {
        var name = top.Top.Name;
        if (flat.Face.StandLines.Count == 0)
        {
            return
            [
                new Reason("NowhereToStand", Limit.AtYourWord,
                    v => v.Say($"{name}: no side is open, so there is nowhere to stand.", $"{name}: ningún lado está libre, así que no hay dónde ponerse."),
                    v => v.Say("Mark the side you stand at as open, or move the piece away from the wall.", "Marque como libre el lado donde se pone, o separe la pieza de la pared.")),
            ];
        }

        var beyond = sections.Where(s => !standing.Within(s.ReachM)).ToList();
        if (beyond.Count == 0) return [];
        // A cut may ask more of one side than the top asks of all of them together.
        var fromAnySideM = standing.FarthestFromAnySide(flat.Whole);
        var overM = (standing.Within(fromAnySideM) ? beyond.Max(s => s.ReachM) : fromAnySideM) - aims.ReachM;
        return
        [
            new Reason("OutOfReach", Limit.AtYourWord,
                v => v.Say(
                    $"{name}: {beyond.Count} of {sections.Count} sections go {v.Length(overM)} past the reach of {v.Length(aims.ReachM)} from any side one can stand at.",
                    $"{name}: {beyond.Count} de {sections.Count} secciones pasan en {v.Length(overM)} el alcance de {v.Length(aims.ReachM)} desde cualquier lado donde uno puede ponerse."),
                v => v.Say(
                    $"Stand at another side too, work with a longer handle (a reach of {v.Length(aims.ReachM + overM)}), or move the piece so that you can walk round it.",
                    $"Póngase también en otro lado, trabaje con un mango más largo (un alcance de {v.Length(aims.ReachM + overM)}), o mueva la pieza para poder rodearla.")),
        ];
    }

    /// <summary>Sorting place, to a hundredth of a millimetre so that rounding cannot reorder.</summary>
    private static (double X, double Y) Place(Piece piece)
    {
        var centre = piece.Centre();
        return (Math.Round(centre.X, 5), Math.Round(centre.Y, 5));
    }

    private static double HalfTurn(double degrees) => ((degrees % 180) + 180) % 180;
}
