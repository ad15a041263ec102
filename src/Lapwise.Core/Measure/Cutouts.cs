using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>Places the cutouts of a top and sees that each stands free inside it.</summary>
internal static class Cutouts
{
    /// <summary>The holes that could be placed; every one that could not is a fault.</summary>
    public static IReadOnlyList<Hole> Place(Top top, Outline outline, List<Fault> faults)
    {
        var holes = new List<Hole>();
        for (var i = 0; i < top.Cutouts.Count; i++)
        {
            var cutout = top.Cutouts[i];
            var path = $"{top.Path}.cutouts[{i}]";
            var segments = Boundary(cutout);
            if (PlaceFault(cutout, segments, outline, holes, path) is { } fault) faults.Add(fault);
            else holes.Add(new Hole(cutout, segments, segments.Sum(s => s.SignedAreaM2), segments.Sum(s => s.LengthM)));
        }

        return holes;
    }

    private static Fault? PlaceFault(Cutout cutout, IReadOnlyList<Segment> segments, Outline outline, IEnumerable<Hole> holes, string path)
    {
        if (Meeting.Between(outline.Segments, segments) is { } place) return MeasureFaults.CutoutMeetsSide(path, cutout, place.SideA, place.At);
        if (!Meeting.IsInside(segments, outline.Segments)) return MeasureFaults.CutoutOutside(path, cutout);
        var other = holes.FirstOrDefault(h => Meeting.Between(h.Segments, segments) is not null
            || Meeting.IsInside(segments, h.Segments) || Meeting.IsInside(h.Segments, segments));
        return other is null ? null : MeasureFaults.CutoutsOverlap(path, cutout, other.Cutout);
    }

    private static IReadOnlyList<Segment> Boundary(Cutout cutout)
    {
        var centre = new PointM(cutout.AlongM, cutout.InM);
        var corner = new PointM(cutout.AlongM - (cutout.LengthM / 2), cutout.InM - (cutout.DepthM / 2));
        return cutout.Shape switch
        {
            CutoutShape.Rectangle => Shapes.Rectangle(corner, cutout.LengthM, cutout.DepthM),
            CutoutShape.RoundedRectangle => Shapes.RoundedRectangle(corner, cutout.LengthM, cutout.DepthM, cutout.RadiusM),
            CutoutShape.Circle => Shapes.Circle(centre, cutout.LengthM / 2),
            CutoutShape.Ellipse => Shapes.Ellipse(centre, cutout.LengthM / 2, cutout.DepthM / 2),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
