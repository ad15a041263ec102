using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work.Remedies;

/// <summary>Where a planned joint could go on a top: always square into it from a straight side.</summary>
internal static class BreakPlaces
{
    /// <summary>A joint nearer to a corner than this is the corner.</summary>
    private const double NearestM = 0.05;

    /// <summary>From a side to each inner corner, the shortest line first; last, one to every inner corner.</summary>
    public static IReadOnlyList<IReadOnlyList<BreakLine>> AtCorners(MeasuredTop top)
    {
        var corners = InnerCorner.Of([.. Flat(top).Ring]).Select(c => To(top, c.Middle).OrderBy(b => b.DepthM).Select(b => b.Line).ToList()).Where(b => b.Count > 0).ToList();
        List<IReadOnlyList<BreakLine>> places = [.. corners.SelectMany(c => c).Select(b => new[] { b })];
        if (corners.Count > 1) places.Add([.. corners.Select(c => c[0])]);
        return places;
    }

    /// <summary>At a share of the longest straight side.</summary>
    public static IReadOnlyList<IReadOnlyList<BreakLine>> At(MeasuredTop top, params IEnumerable<double> shares)
    {
        var longest = StraightSides(top).OrderByDescending(s => s.LengthM).ThenBy(s => s.Side).FirstOrDefault();
        return longest is null || longest.LengthM < 4 * NearestM ? [] : [.. shares.Select(share => new[] { new BreakLine(longest.Side, longest.LengthM * share) })];
    }

    private static IEnumerable<(BreakLine Line, double DepthM)> To(MeasuredTop top, PointM corner)
    {
        var flat = Flat(top);
        foreach (var side in StraightSides(top))
        {
            var along = Axis.From(side.From, side.To);
            var atM = along.Along(corner) - along.Along(side.From);
            if (atM < NearestM || atM > side.LengthM - NearestM) continue;
            var foot = Plane.Step(side.From, along, atM);
            var depthM = foot.DistanceTo(corner);
            if (depthM < NearestM || !Plane.Contains([flat.Ring], Plane.Between(foot, corner, 0.5))) continue;
            yield return (new BreakLine(side.Side, atM), depthM);
        }
    }

    private static IEnumerable<Segment.Line> StraightSides(MeasuredTop top) =>
        top.Outline.Segments.GroupBy(s => s.Side).Where(g => g.Count() == 1).Select(g => g.First()).OfType<Segment.Line>();

    private static Face Flat(MeasuredTop top) => top.Faces.Single(f => f.Kind == FaceKind.Flat);
}
