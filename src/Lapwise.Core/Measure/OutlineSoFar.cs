using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>
/// What can be told of a top while sizes are still missing, or do not close: its sides as they were taped, in one unbroken
/// line, clockwise on the page. Nothing is computed from it; a person sees it grow.
/// </summary>
/// <param name="Sides">The longest run of sides that can be told; those that follow from others come with the whole outline.</param>
/// <param name="IsWalked">The sides are walked round, so that what lies from the last back to the first is still open.</param>
public sealed record OutlineSoFar(string Name, IReadOnlyList<Segment> Sides, bool IsWalked)
{
    private const double Right = 0, Down = Math.PI / 2, Left = Math.PI, Up = -Math.PI / 2;

    /// <summary>Null: there is no side that can be told.</summary>
    public static OutlineSoFar? Of(TopDocument top, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(top);
        var outline = OutlineReading.Shape(new Fields(units), "", top.Outline);
        IReadOnlyList<Segment> sides = [.. Laid(LongestRun(Courses(outline)))];
        return sides.Count == 0 ? null : new OutlineSoFar(top.Name, sides, outline is OutlineSpec.Walk);
    }

    /// <summary>Every side with a size of its own, in walking order; what could not be read is no number in it.</summary>
    private static IReadOnlyList<Course> Courses(OutlineSpec? outline) => outline switch
    {
        OutlineSpec.Walk walk => Traverse.Courses(walk.Sides, shareRad: 0),
        OutlineSpec.Rectangle r => [Side('A', r.LengthM, Right), Side('B', r.DepthM, Down)],
        OutlineSpec.RoundedRectangle r => [Side('A', r.LengthM, Right), Side('B', r.DepthM, Down)],
        OutlineSpec.L l => [Side('F', l.DepthM, Up), Side('A', l.LengthM, Right), Side('B', l.RightLegLengthM, Down), Side('C', l.RightLegDepthM, Left)],
        OutlineSpec.U u =>
        [
            Side('G', u.LeftLegDepthM, Left), Side('H', u.LeftLegLengthM, Up), Side('A', u.LengthM, Right),
            Side('B', u.RightLegLengthM, Down), Side('C', u.RightLegDepthM, Left),
        ],
        _ => [],
    };

    private static Course Side(char letter, double lengthM, double directionRad) => new(letter, lengthM, lengthM, directionRad, 0);

    private static List<Course> LongestRun(IReadOnlyList<Course> courses)
    {
        var (longest, run) = (new List<Course>(), new List<Course>());
        foreach (var course in courses)
        {
            if (course.IsTold) run.Add(course);
            else run = [];
            if (run.Count > longest.Count) longest = run;
        }

        return longest;
    }

    private static IEnumerable<Segment> Laid(IReadOnlyList<Course> courses)
    {
        var at = default(PointM);
        foreach (var course in courses)
        {
            var to = new PointM(at.X + course.Vector.X, at.Y + course.Vector.Y);
            yield return course.Laid(at, to);
            at = to;
        }
    }
}
