using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>A part of the flat and where it is worked from; null where nobody can stand anywhere.</summary>
internal sealed record FlatPart(Piece Piece, Stand? Stand);

/// <summary>Cuts a flat: at its planned joints, at its inner corners into arms, and each arm into strips across.</summary>
/// <param name="lines">Every line cut so far; a cut's number is its place here.</param>
internal sealed class FlatCutting(FaceEdges flat, Standing standing, Aims aims, List<CutLine> lines)
{
    /// <summary>An arm narrower than this is no arm: the notch round a pipe or a column makes no corner.</summary>
    private const double NarrowestArmM = 0.12;
    /// <summary>How far a strip's line is moved to fall on the end of a cutout or of another seam.</summary>
    private const double ToMarkM = 0.06;
    /// <summary>The usual way's part, 4 ft × 2 ft: common practice, no source.</summary>
    public const double UsualLengthM = 1.2192;
    private const double UsualDepthM = 0.6096;

    private readonly Axis length = Marching.LongAxis(flat.Whole.Outer);

    /// <summary>Lines of the finisher that meet nothing.</summary>
    public int Missed { get; private set; }

    /// <param name="given">The finisher's own lines: a point of each, and its direction.</param>
    public IReadOnlyList<FlatPart> Cut(IReadOnlyList<(PointM From, Axis Direction)> joints, IReadOnlyList<(PointM Through, Axis Direction)> given, CutChoice choice)
    {
        IReadOnlyList<Piece> pieces = [flat.Whole];
        foreach (var (from, direction) in joints) pieces = Split(pieces, CutLine.Through(from, direction, LapKind.Break), from);
        return choice switch
        {
            CutChoice.Strips strips => [.. Arms(pieces, strips.Corners).SelectMany(arm => Strips(arm, strips))],
            CutChoice.WholeFaces => [.. pieces.Select(p => new FlatPart(p, standing.BestOrRound(p, length)))],
            CutChoice.Pours pours => [.. pieces.SelectMany(p => Pours(p, pours.MostFilmM2))],
            CutChoice.Given => [.. Given(pieces, given)],
            _ => [.. Arms(pieces, CornerCut.WithTheLength).SelectMany(Grid)],
        };
    }

    private IReadOnlyList<Piece> Split(IReadOnlyList<Piece> pieces, CutLine line, PointM? from = null)
    {
        lines.Add(line);
        return [.. pieces.SelectMany(p => p.Split(line, lines.Count - 1, from))];
    }

    private IReadOnlyList<Piece> Split(IReadOnlyList<Piece> pieces, Axis axis, IEnumerable<double> places) =>
        places.Aggregate(pieces, (parts, place) => Split(parts, new CutLine(axis, place, LapKind.Flat)));

    private FlatPart Part(Piece piece, Axis march) => new(piece, standing.Best(piece, march));

    private IEnumerable<FlatPart> Pours(Piece piece, double mostFilmM2)
    {
        var march = Marching.LongAxis(piece.Outer);
        return Split([piece], march, Marching.Places(flat, piece, march, [], mostFilmM2)).Select(p => new FlatPart(p, standing.BestOrRound(p, march)));
    }

    private IEnumerable<FlatPart> Given(IReadOnlyList<Piece> pieces, IReadOnlyList<(PointM Through, Axis Direction)> given)
    {
        const double sameM = 0.0003;
        foreach (var (through, direction) in given)
        {
            // Before and behind a cutout it is one line to the finisher, given twice.
            var number = lines.FindIndex(l => l.Kind is LapKind.Flat && Math.Abs(l.Distance(through)) < sameM && Math.Abs(l.Normal.Cross(direction)) > 1 - 1e-9);
            var again = number >= 0;
            if (!again)
            {
                number = lines.Count;
                lines.Add(CutLine.Through(through, direction, LapKind.Flat));
            }

            IReadOnlyList<Piece> parts = [.. pieces.SelectMany(p => p.SplitAt(lines[number], number, through))];
            if (parts.Count == pieces.Count && !again) Missed++;
            pieces = parts;
        }

        return pieces.Select(p => Part(p, MarchOf(p)));
    }

    /// <summary>Square to the longest line a part is cut by: one works on across it.</summary>
    private Axis MarchOf(Piece piece)
    {
        var longest = piece.Rings
            .SelectMany(r => r.Points.Select((from, i) => (From: from, To: r.Next(i), Tag: r.Tags[i])))
            .Where(e => e.Tag < 0)
            .DefaultIfEmpty()
            .MaxBy(e => e.From.DistanceTo(e.To));
        return longest.Tag < 0 ? Axis.From(longest.From, longest.To).Quarter : length;
    }

    // Arms

    private IReadOnlyList<Piece> Arms(IReadOnlyList<Piece> pieces, CornerCut choice)
    {
        foreach (var corner in InnerCorner.Of(flat.Whole.Outer))
            foreach (var (from, direction) in corner.Cuts(choice, length, flat.Whole.Outer))
                pieces = [.. pieces.SelectMany(p => CutArm(p, from, direction))];
        return pieces;
    }

    private IReadOnlyList<Piece> CutArm(Piece piece, PointM from, Axis direction)
    {
        var parts = Split([piece], CutLine.Through(from, direction, LapKind.Flat), from);
        return parts.All(p => Marching.Width(p.Outer, Marching.LongAxis(p.Outer).Quarter) >= NarrowestArmM) ? parts : [piece];
    }

    // Strips

    /// <summary>
    /// The simplest way of cutting an arm so that all of it is reached: full-depth strips, or two rows where it is worked
    /// from both sides; where no way reaches everything, the one that leaves least.
    /// </summary>
    private IReadOnlyList<FlatPart> Strips(Piece arm, CutChoice.Strips choice)
    {
        (IReadOnlyList<FlatPart> Parts, double LeftM2)? best = null;
        foreach (var (march, rows, given) in Ways(arm))
        {
            IReadOnlyList<FlatPart> parts = [.. Split([arm], march.Quarter, rows).SelectMany(row => Strips(row, march, given, choice)).Select(p => Part(p, march))];
            var leftM2 = parts.Where(p => p.Stand is { } s && !standing.Within(s.ReachM)).Sum(p => p.Piece.AreaM2);
            if (best is null || leftM2 < best.Value.LeftM2 - 1e-6) best = (parts, leftM2);
            if (leftM2 == 0) break;
        }

        return best!.Value.Parts;
    }

    /// <summary>Along the arm, then across it; in rows only where it is deeper than one can reach. The simplest first.</summary>
    /// <returns>Direction of working on, the lines between rows, and lines across in any case.</returns>
    private IEnumerable<(Axis March, double[] Rows, double[] Given)> Ways(Piece arm)
    {
        var along = Marching.LongAxis(arm.Outer);
        foreach (var march in new[] { along, along.Quarter })
        {
            yield return (march, [], []);
            foreach (var ends in WithinReachOfEnds(arm, march)) yield return (march, [], ends);
            var (near, far) = arm.Extent(march.Quarter);
            if (standing.Within(far - near)) continue;
            yield return (march, [(near + far) / 2], []);
            foreach (var rows in WithinReachOfEnds(arm, march.Quarter)) yield return (march, rows, []);
        }
    }

    /// <summary>Lines as far from the ends of an arm as one reaches from there: from one end, the other, both.</summary>
    private IEnumerable<double[]> WithinReachOfEnds(Piece arm, Axis axis)
    {
        var (start, end) = arm.Extent(axis);
        if (end - start < aims.ReachM + Marching.NarrowestM) yield break;
        yield return [start + aims.ReachM];
        yield return [end - aims.ReachM];
        if (end - start > (2 * aims.ReachM) + Marching.NarrowestM) yield return [start + aims.ReachM, end - aims.ReachM];
    }

    /// <param name="ends">Lines that are cut in any case.</param>
    private IReadOnlyList<Piece> Strips(Piece row, Axis march, double[] ends, CutChoice.Strips choice)
    {
        var cutouts = Cutouts(row, march).ToList();
        var given = choice.Cutouts switch
        {
            CutoutCut.ThroughTheMiddle => cutouts.Select(c => (c.Start + c.End) / 2),
            CutoutCut.AtTheEnds => cutouts.SelectMany(c => new[] { c.Start, c.End }),
            _ => [],
        };
        var places = Marching.Places(flat, row, march, given.Concat(ends), aims.LargestSectionM2 / choice.Finer);
        if (choice.Cutouts == CutoutCut.AnyPlace)
        {
            List<double> marks = [.. cutouts.SelectMany(c => new[] { c.Start, c.End }), .. SeamEnds(row).Select(march.Along)];
            places = Marching.OntoMarks(flat, row, march, places, marks, ToMarkM, aims.LargestSectionM2);
        }

        return Split([row], march, places);
    }

    /// <summary>Where the cutouts of the flat begin and end along a row.</summary>
    private IEnumerable<(double Start, double End)> Cutouts(Piece row, Axis march)
    {
        var (near, far) = row.Extent(march.Quarter);
        var (start, end) = row.Extent(march);
        foreach (var hole in flat.Whole.Outlines.Skip(1))
        {
            var along = (Start: hole.Min(march.Along), End: hole.Max(march.Along));
            var isInRow = hole.Max(march.Across) > near && hole.Min(march.Across) < far && along.End > start && along.Start < end;
            if (isInRow) yield return along;
        }
    }

    private static IEnumerable<PointM> SeamEnds(Piece row)
    {
        var ring = row.Rings[0];
        return Enumerable.Range(0, ring.Points.Length).Where(i => ring.Tags[i] < 0).SelectMany(i => new[] { ring.Points[i], ring.Next(i) });
    }

    // The usual way

    private IEnumerable<FlatPart> Grid(Piece arm)
    {
        var march = Marching.LongAxis(arm.Outer);
        var pieces = Split([arm], march.Quarter, UsualPlaces(arm, march.Quarter, UsualDepthM));
        return Split(pieces, march, UsualPlaces(arm, march, UsualLengthM)).Select(p => Part(p, march));
    }

    /// <summary>Equal parts of about a length; half a part more makes no new one.</summary>
    public static IEnumerable<double> UsualPlaces(Piece piece, Axis axis, double aboutM)
    {
        var (start, end) = piece.Extent(axis);
        var count = Math.Max(1, (int)Math.Ceiling(((end - start) / aboutM) - 0.5 - 1e-6));
        return Enumerable.Range(1, count - 1).Select(k => start + ((end - start) * k / count));
    }
}
