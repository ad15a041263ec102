using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Drawings;

/// <summary>One lettered side as it lies on the sheet.</summary>
/// <param name="Line">The whole side, arcs as fine chords.</param>
/// <param name="Straight">Its longest straight part; null where it is all arc.</param>
/// <param name="LengthM">As taped.</param>
internal sealed record SideOnSheet(char Letter, Edge Edge, IReadOnlyList<Spot> Line, (Spot From, Spot To)? Straight, double LengthM)
{
    /// <summary>Where its letter belongs, and the way out from there.</summary>
    public (Spot At, Spot Outward) Middle
    {
        get
        {
            if (Straight is { } straight) return ((straight.From + straight.To) * 0.5, (straight.To - straight.From).Outward.Unit);
            var (at, along) = Shapes.AtShare(Line, 0.5);
            return (at, along.Outward);
        }
    }
}

/// <summary>
/// A top laid on a sheet at one scale: the flat in plan, its splashes and panels unfolded beside their sides.
/// </summary>
internal sealed class Layout
{
    private const double ChordErrorM = 0.0005;
    private const double LeastStep = 1;
    private readonly double scale;
    private readonly bool isTurned;
    private readonly Dictionary<string, Func<PointM, Spot>> placed;

    /// <param name="scale">Sheet units in a metre.</param>
    /// <param name="gap">Room between a side and the panel unfolded beside it, in sheet units.</param>
    /// <param name="isTurned">A quarter to the right, for a long top on a tall sheet.</param>
    public Layout(MeasuredTop top, double scale, double gap, bool isTurned = false)
    {
        (this.scale, this.isTurned) = (scale, isTurned);
        Outline = [.. OnSheet(top.Outline.Segments)];
        Holes = [.. top.Holes.Select(h => (h, (IReadOnlyList<Spot>)[.. OnSheet(h.Segments)]))];
        Sides = [.. SidesOf(top)];
        placed = top.Faces.Where(f => f.Kind == FaceKind.Flat).ToDictionary(f => f.Id, _ => (Func<PointM, Spot>)OnSheet, StringComparer.Ordinal);
        Panels = [.. top.Faces.Where(f => f.Kind != FaceKind.Flat).Select(f => Unfold(f, gap))];
    }

    public IReadOnlyList<Spot> Outline { get; }
    public IReadOnlyList<(Hole Hole, IReadOnlyList<Spot> Ring)> Holes { get; }
    public IReadOnlyList<SideOnSheet> Sides { get; }
    public IReadOnlyList<(Face Face, IReadOnlyList<Spot> Ring)> Panels { get; }
    public IEnumerable<Spot> Everything => Outline.Concat(Panels.SelectMany(p => p.Ring));
    public IEnumerable<IReadOnlyList<Spot>> Solids => Panels.Select(p => p.Ring).Prepend(Outline);

    public double PerMetre => scale;

    public Spot OnSheet(PointM point) => isTurned ? new(-point.Y * scale, point.X * scale) : new(point.X * scale, point.Y * scale);

    /// <summary>From a face's own plane to the sheet.</summary>
    public Spot OnSheet(Face face, PointM point) => placed[face.Id](point);

    /// <summary>A line or ring of a face; points closer than the eye can part are left out.</summary>
    public IReadOnlyList<Spot> OnSheet(Face face, IReadOnlyList<PointM> points)
    {
        var place = placed[face.Id];
        var spots = new List<Spot>(points.Count);
        for (var i = 0; i < points.Count; i++)
        {
            var spot = place(points[i]);
            if (spots.Count == 0 || i == points.Count - 1 || (spot - spots[^1]).Length > LeastStep) spots.Add(spot);
        }
        return spots;
    }

    /// <summary>How far out the drawing reaches beside a side: nothing, or the panel unfolded there.</summary>
    public double Reach(SideOnSheet side)
    {
        var (at, outward) = side.Middle;
        var rings = Panels.Where(p => p.Face.Side == side.Letter).SelectMany(p => p.Ring);
        return rings.Select(s => (s - at).Dot(outward)).Append(0).Max();
    }

    private IEnumerable<Spot> OnSheet(IEnumerable<Segment> segments) => segments.SelectMany(s => s.Flatten(ChordErrorM)).Select(OnSheet);

    private IEnumerable<SideOnSheet> SidesOf(MeasuredTop top)
    {
        foreach (var side in top.Outline.Segments.GroupBy(s => s.Side))
        {
            var line = new List<Spot> { OnSheet(side.First().From) };
            line.AddRange(OnSheet(side));
            var straight = side.Where(s => s.Flatten(ChordErrorM).Count == 1).MaxBy(s => s.LengthM);
            yield return new(
                side.Key,
                top.Top.Edges.TryGetValue(side.Key, out var edge) ? edge : new Edge.Wall(),
                line,
                straight is null ? null : (OnSheet(straight.From), OnSheet(straight.To)),
                top.TapedM(side.Key));
        }
    }

    private (Face, IReadOnlyList<Spot>) Unfold(Face face, double gap)
    {
        var side = Sides.First(s => s.Letter == face.Side);
        var (start, end) = (side.Line[0], side.Line[^1]);
        var along = side.Straight is { } straight ? (straight.To - straight.From).Unit : (end - start).Unit;
        var outward = along.Outward;
        // On a curved side the panel is unrolled: it stands clear of the arc, centred on it.
        var bulge = side.Line.Max(s => (s - start).Dot(outward));
        var lengthOnSheet = face.Ring.Max(p => p.X) * scale;
        var corner = ((start + end) * 0.5) - (along * (lengthOnSheet / 2)) + (outward * (bulge + gap));

        for (var further = 0; ; further++)
        {
            var from = corner + (outward * (further * gap));
            Spot Place(PointM p) => from + (along * (p.X * scale)) + (outward * (p.Y * scale));
            IReadOnlyList<Spot> ring = [.. face.Ring.Select(Place)];
            // Two panels in an inner corner must not lie on each other; 40 steps clear any sane one.
            if (further < 40 && placed.Count > 0 && (Shapes.Overlap(ring, Outline) || PanelsSoFar.Any(p => Shapes.Overlap(ring, p)))) continue;
            placed[face.Id] = Place;
            PanelsSoFar.Add(ring);
            return (face, ring);
        }
    }

    private List<IReadOnlyList<Spot>> PanelsSoFar { get; } = [];
}
