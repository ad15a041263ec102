using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>
/// The sides of an outline as walked, each as a course: its chord with the direction it was walked in. Turns come first,
/// lengths second, as in any traverse: what the turns lack of 360° is shared evenly, then what the courses leave open is
/// shared by the compass (Bowditch) rule.
/// </summary>
internal sealed class Traverse
{
    /// <summary>Two directions closer than this can't be told apart by a turn that was read to a degree.</summary>
    private const double TieRad = Math.PI / 360;

    private readonly IReadOnlyList<Course> courses;
    private readonly PointM open;

    public Traverse(OutlineSpec.Walk walk)
    {
        var sides = walk.Sides;
        TurnsRad = sides.Sum(s => s.TurnRad + SweepRad(s));
        var arcsRad2 = sides.Sum(s => s.ArcRadiusM is { } r ? Math.Pow(walk.TapeStepM / (r * Tape.TurnStepRad), 2) : 0);
        AllowedTurnsRad = Tape.Allowed(Tape.TurnStepRad, sides.Count + arcsRad2);

        courses = Courses(sides, TurnMisclosureRad / sides.Count);
        PerimeterM = sides.Sum(s => s.LengthM);
        AllowedM = Tape.Allowed(walk.TapeStepM, sides.Count);
        var end = courses.Aggregate(default(PointM), (sum, c) => new PointM(sum.X + c.Vector.X, sum.Y + c.Vector.Y));
        // A nanometre is what the arithmetic leaves; no tape does.
        open = end.DistanceTo(default) < 1e-9 ? default : end;
    }

    /// <summary>The sides one behind the other, each turn with its share of what all turns lack.</summary>
    public static IReadOnlyList<Course> Courses(IReadOnlyList<WalkedSide> sides, double shareRad)
    {
        var (courses, heading) = (new List<Course>(sides.Count), 0.0);
        foreach (var side in sides)
        {
            var sweep = SweepRad(side);
            var chord = side.ArcRadiusM is { } r ? 2 * r * Math.Sin(Math.Abs(sweep) / 2) : side.LengthM;
            courses.Add(new Course(SideLetters.At(courses.Count), side.LengthM, chord, heading + (sweep / 2), sweep));
            heading += sweep + side.TurnRad + shareRad;
        }

        return courses;
    }

    /// <summary>Sum of all turns and arcs, clockwise positive.</summary>
    public double TurnsRad { get; }
    public double AllowedTurnsRad { get; }
    public double TurnMisclosureRad => Math.Abs((2 * Math.PI) - TurnsRad) < 1e-9 ? 0 : (2 * Math.PI) - TurnsRad;
    public double PerimeterM { get; }
    public double MisclosureM => open.DistanceTo(default);
    public double AllowedM { get; }

    /// <summary>Every side whose direction lies nearest that of the misclosure; none where the tape explains it.</summary>
    public IReadOnlyList<char> Suspects => MisclosureM <= AllowedM
        ? []
        : SidesAlong(courses.Select(c => (c.Side, c.DirectionRad)), Math.Atan2(open.Y, open.X));

    /// <summary>The length of one side that would bring the end nearest to the start, the others and the turns left as they are.</summary>
    public double ClosingLengthM(char side)
    {
        var course = courses.First(c => c.Side == side);
        var along = (open.X * Math.Cos(course.DirectionRad)) + (open.Y * Math.Sin(course.DirectionRad));
        return course.LengthM * (course.ChordM - along) / course.ChordM;
    }

    /// <summary>
    /// The closed boundary: each course takes a share of the misclosure in proportion to its length (an arc: its chord,
    /// keeping the angle it sweeps). It is turned so that side A starts in the direction it was walked in.
    /// </summary>
    public IReadOnlyList<Segment> Adjusted()
    {
        var total = courses.Sum(c => c.ChordM);
        var vectors = courses.Select(c => new PointM(c.Vector.X - (open.X * c.ChordM / total), c.Vector.Y - (open.Y * c.ChordM / total))).ToArray();
        var turn = courses[0].DirectionRad - Math.Atan2(vectors[0].Y, vectors[0].X);
        var (cos, sin) = (Math.Cos(turn), Math.Sin(turn));

        var corners = new PointM[courses.Count];
        for (var i = 1; i < corners.Length; i++)
        {
            var v = vectors[i - 1];
            corners[i] = new PointM(
                Math.Round(corners[i - 1].X + (v.X * cos) - (v.Y * sin), 12),
                Math.Round(corners[i - 1].Y + (v.X * sin) + (v.Y * cos), 12));
        }

        return [.. courses.Select((c, i) => c.Laid(corners[i], corners[(i + 1) % corners.Length]))];
    }

    /// <summary>The sides whose line lies nearest an angle, either way along it, with all ties.</summary>
    public static IReadOnlyList<char> SidesAlong(IEnumerable<(char Side, double DirectionRad)> sides, double angleRad)
    {
        var off = sides.Select(s => (s.Side, OffRad: Math.Abs(Math.IEEERemainder(s.DirectionRad - angleRad, Math.PI)))).ToArray();
        var least = off.Min(s => s.OffRad);
        return [.. off.Where(s => s.OffRad <= least + TieRad).Select(s => s.Side)];
    }

    private static double SweepRad(WalkedSide side) =>
        side.ArcRadiusM is { } radius ? side.LengthM / radius * (side.Bend == Bend.Right ? 1 : -1) : 0;
}
