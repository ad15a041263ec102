using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>A boundary that closes, and how well the tape closed it.</summary>
internal sealed record Closed(IReadOnlyList<Segment> Segments, Closure Closure);

/// <summary>
/// Turns an outline as measured into a closed boundary, or says why it can't be one. That the sizes of a shape fit
/// together is seen to when the job is read.
/// </summary>
internal static class Closing
{
    /// <summary>A misclosure beyond this share of the perimeter is no matter of the tape: a side or a turn is wrong.</summary>
    public const double MisclosureShareLimit = 0.02;

    /// <summary>Corners entered as square may turn out this far off; walls further out are walked with their turns.</summary>
    public const double OutOfSquareLimitRad = 10 * Math.PI / 180;

    /// <summary>Less than a square of a centimetre is not a top.</summary>
    private const double LeastSquareM = 0.01;

    public static Closed? Close(Top top, List<Fault> faults)
    {
        var path = top.Path + ".outline";
        var (closed, fault) = Shaped(top.Outline, path);
        if (closed is not null && Meeting.WithItself(closed.Segments) is { } place) fault = MeasureFaults.CrossesItself(path, place);
        else if (closed is not null && !(closed.Segments.Sum(s => s.SignedAreaM2) > LeastSquareM * LeastSquareM)) fault = MeasureFaults.TooLittleArea(path, LeastSquareM);

        if (fault is null) return closed;
        faults.Add(fault);
        return null;
    }

    private readonly record struct Outcome(Closed? Closed, Fault? Fault);

    private static Outcome Shaped(OutlineSpec outline, string path)
    {
        var walked = outline is OutlineSpec.Walk walk ? new Traverse(walk) : null;
        if (walked is not null && Math.Abs(walked.TurnMisclosureRad) > walked.AllowedTurnsRad)
        {
            return new Outcome(null, Math.Abs(walked.TurnsRad + (2 * Math.PI)) <= walked.AllowedTurnsRad
                ? MeasureFaults.WalkedLeft(path)
                : MeasureFaults.TurnsDoNotAddUp(path, walked.TurnsRad));
        }

        var segments = walked?.Adjusted() ?? BySizes(outline);
        if (SquareSidesM(outline) is { } sidesM && FromDiagonal(outline, sidesM, segments, path) is { } skew) return skew;
        if (walked is not null && walked.MisclosureM > MisclosureShareLimit * walked.PerimeterM)
            return new Outcome(null, MeasureFaults.DoesNotClose(path, walked));
        return new Outcome(new Closed(segments, ClosureOf(outline, walked, segments)), null);
    }

    private static IReadOnlyList<Segment> BySizes(OutlineSpec outline) => outline switch
    {
        OutlineSpec.Rectangle r => Shapes.Rectangle(default, r.LengthM, r.DepthM),
        OutlineSpec.L l => Shapes.L(l.LengthM, l.DepthM, l.RightLegLengthM, l.RightLegDepthM),
        OutlineSpec.U u => Shapes.U(u.LengthM, u.DepthM, u.RightLegLengthM, u.RightLegDepthM, u.LeftLegLengthM, u.LeftLegDepthM),
        OutlineSpec.RoundedRectangle r => Shapes.RoundedRectangle(default, r.LengthM, r.DepthM, r.RadiusM),
        OutlineSpec.Circle c => Shapes.Circle(new PointM(c.DiameterM / 2, c.DiameterM / 2), c.DiameterM / 2),
        OutlineSpec.Ellipse e => Shapes.Ellipse(new PointM(e.LengthM / 2, e.DepthM / 2), e.LengthM / 2, e.DepthM / 2),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static Closure ClosureOf(OutlineSpec outline, Traverse? walked, IReadOnlyList<Segment> segments)
    {
        var checks = Check(outline, segments);
        var notes = new List<Reason>();
        if (walked is { TurnMisclosureRad: not 0 }) notes.Add(MeasureFaults.TurnsShared(walked.TurnMisclosureRad));
        if (walked is { Suspects.Count: > 0 }) notes.Add(MeasureFaults.MeasureAgain(walked));
        notes.AddRange(checks.Where(c => !IsExplained(c, outline)).Select(c => MeasureFaults.DiagonalDiffers(c, SidesAlong(c, segments))));

        return new Closure(
            walked?.MisclosureM ?? 0,
            walked?.AllowedM ?? Tape.Allowed(outline.TapeStepM, SideLetters.Of(outline).Count),
            segments.Sum(s => s.LengthM),
            walked?.Suspects ?? [],
            checks)
        {
            TurnMisclosureRad = walked?.TurnMisclosureRad ?? 0,
            Notes = notes,
        };
    }

    // ---- diagonals

    private static DiagonalCheck[] Check(OutlineSpec outline, IReadOnlyList<Segment> segments) =>
        [.. outline.Diagonals.Select(d => new DiagonalCheck(d.From, d.To, d.LengthM, Corner(segments, d.From).DistanceTo(Corner(segments, d.To))))];

    /// <summary>A diagonal is computed from half of the sides or fewer, and is itself one reading more.</summary>
    private static bool IsExplained(DiagonalCheck check, OutlineSpec outline) =>
        Math.Abs(check.DifferenceM) <= Tape.Allowed(outline.TapeStepM, (SideLetters.Of(outline).Count / 2) + 1) + 1e-9;

    private static PointM Corner(IReadOnlyList<Segment> segments, char side) => segments.First(s => s.Side == side).From;

    private static IReadOnlyList<char> SidesAlong(DiagonalCheck check, IReadOnlyList<Segment> segments)
    {
        var (from, to) = (Corner(segments, check.From), Corner(segments, check.To));
        return Traverse.SidesAlong(
            segments.OfType<Segment.Line>().DefaultIfEmpty(new Segment.Line(from, to, check.From)).Select(s => (s.Side, Math.Atan2(s.To.Y - s.From.Y, s.To.X - s.From.X))),
            Math.Atan2(to.Y - from.Y, to.X - from.X));
    }

    // ---- four sides that were entered as square

    private static IReadOnlyList<double>? SquareSidesM(OutlineSpec outline) => outline switch
    {
        OutlineSpec.Rectangle r => [r.LengthM, r.DepthM, r.LengthM, r.DepthM],
        OutlineSpec.Walk { Sides.Count: 4 } walk when walk.Sides.All(s => s.ArcRadiusM is null && Math.Abs(s.TurnRad - (Math.PI / 2)) < 1e-9) =>
            [.. walk.Sides.Select(s => s.LengthM)],
        _ => null,
    };

    /// <summary>
    /// The shape from its sides and the first diagonal across, where a diagonal says that the corners are not square and
    /// any second one agrees with that shape; null where the square outline stands.
    /// </summary>
    private static Outcome? FromDiagonal(OutlineSpec outline, IReadOnlyList<double> sidesM, IReadOnlyList<Segment> square, string path)
    {
        var across = outline.Diagonals.Where(OutOfSquare.IsAcross).ToArray();
        if (across.Length == 0 || Check(outline, square).All(c => IsExplained(c, outline))) return null;

        var first = across[0];
        if (OutOfSquare.Corners(sidesM, first) is not { } corners)
        {
            var (leastM, mostM) = OutOfSquare.Range(sidesM, first);
            return new Outcome(null, MeasureFaults.DiagonalDoesNotFit(PathOf(first), first, leastM, mostM));
        }

        var segments = Shapes.Polygon(default, corners);
        var checks = Check(outline, segments);
        var allowedM = Tape.Allowed(outline.TapeStepM, sidesM.Count + across.Length);
        if (checks.Any(c => Math.Abs(c.DifferenceM) > allowedM + 1e-9)) return null;

        var anglesRad = OutOfSquare.AnglesRad(corners);
        var worstRad = anglesRad.Max(a => Math.Abs(a - (Math.PI / 2)));
        if (worstRad > OutOfSquareLimitRad) return new Outcome(null, MeasureFaults.TooFarFromSquare(PathOf(first), first, worstRad));

        var closure = new Closure(0, Tape.Allowed(outline.TapeStepM, sidesM.Count), sidesM.Sum(), [], checks)
        {
            Notes = [MeasureFaults.WallsOutOfSquare(first, anglesRad)],
        };
        return new Outcome(new Closed(segments, closure), null);

        string PathOf(Diagonal diagonal) => $"{path}.diagonals[{outline.Diagonals.TakeWhile(d => d != diagonal).Count()}]";
    }
}
