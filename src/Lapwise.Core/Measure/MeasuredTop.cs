using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

// Result records of the Measure phase. Lengths in metres, areas in square metres.

/// <summary>All tops of a job with their sums.</summary>
/// <param name="Faults">Tops whose geometry does not work are left out of <paramref name="Tops"/> and said here.</param>
public sealed record MeasuredJob(IReadOnlyList<MeasuredTop> Tops, TakeOff Total, IReadOnlyList<Fault> Faults)
{
    /// <summary>What of the job one coat goes on.</summary>
    public MeasuredJob Under(Coat coat)
    {
        if (coat.OnTops.Count == 0) return this;
        IReadOnlyList<MeasuredTop> tops = [.. Tops.Where(t => coat.GoesOn(t.Top.Name))];
        return this with { Tops = tops, Total = TakeOff.Sum(Total.Name, tops) };
    }
}

/// <summary>One top, closed and taken off.</summary>
public sealed record MeasuredTop(
    Top Top,
    Outline Outline,
    IReadOnlyList<Hole> Holes,
    Closure Closure,
    IReadOnlyList<Face> Faces,
    IReadOnlyList<Fold> Folds,
    TakeOff TakeOff)
{
    /// <summary>A side as long as the tape said; see <see cref="DrawnM"/>.</summary>
    public double TapedM(char side) => Top.Outline is OutlineSpec.Walk walk ? walk.Sides[SideLetters.IndexOf(side)].LengthM : DrawnM(side);

    /// <summary>A side as it lies in the outline: walked sides are shared out a little longer or shorter, so that they close.</summary>
    public double DrawnM(char side) => Outline.Segments.Where(s => s.Side == side).Sum(s => s.LengthM);
}

/// <summary>A closed boundary, clockwise seen from above with y down the page (screen axes: x right, y towards side C).</summary>
public sealed record Outline(IReadOnlyList<Segment> Segments, double AreaM2, double PerimeterM);

/// <summary>A cutout as placed.</summary>
public sealed record Hole(Cutout Cutout, IReadOnlyList<Segment> Segments, double AreaM2, double PerimeterM);

/// <summary>How well the tape closed.</summary>
/// <param name="MisclosureM">Length of the vector that was left open; 0 for shapes that close by construction.</param>
/// <param name="SuspectSides">Every side whose direction lies nearest the misclosure; several tie on square outlines.</param>
/// <param name="AllowedM">What the tape's step explains; beyond it a side is suspect.</param>
public sealed record Closure(double MisclosureM, double AllowedM, double PerimeterM, IReadOnlyList<char> SuspectSides, IReadOnlyList<DiagonalCheck> Diagonals)
{
    public bool Closes => MisclosureM <= AllowedM;

    /// <summary>What the turns lack of a full turn to the right, radians; it is shared out over the turns.</summary>
    public double TurnMisclosureRad { get; init; }

    /// <summary>What is worth measuring again, in words; the outline is used all the same.</summary>
    public IReadOnlyList<Reason> Notes { get; init; } = [];
}

public sealed record DiagonalCheck(char From, char To, double MeasuredM, double ComputedM)
{
    public double DifferenceM => MeasuredM - ComputedM;
}

/// <summary>Sums of a top or of a job, for one coat.</summary>
public sealed record TakeOff(string Name, double FlatM2, double EdgeM2, double SplashM2, double WaterfallM2, double RimM2, double MisclosureM)
{
    public double CoatedM2 => FlatM2 + EdgeM2 + SplashM2 + WaterfallM2 + RimM2;

    /// <summary>Every column summed over the tops, the misclosures too.</summary>
    public static TakeOff Sum(string name, IReadOnlyList<MeasuredTop> tops) => new(
        name,
        tops.Sum(t => t.TakeOff.FlatM2),
        tops.Sum(t => t.TakeOff.EdgeM2),
        tops.Sum(t => t.TakeOff.SplashM2),
        tops.Sum(t => t.TakeOff.WaterfallM2),
        tops.Sum(t => t.TakeOff.RimM2),
        tops.Sum(t => t.TakeOff.MisclosureM));
}

public enum FaceKind { Flat, Splash, Waterfall }

/// <summary>
/// A surface that is rolled for itself, in its own plane: a flat in plan; a splash or panel with x along the fold
/// (from the side's start) and y away from the fold.
/// </summary>
/// <param name="Id">Unique in the job, as <c>Sink run/flat</c>, <c>Sink run/splash A</c>.</param>
/// <param name="Ring">Outer boundary, clockwise, arcs flattened to 0.1 mm; the first point is not repeated.</param>
/// <param name="HoleRings">One ring a cutout, in the same form.</param>
/// <param name="Strips">Nosings, rims, splash tops and ends, panel returns: coated width along a line of the boundary.</param>
/// <param name="StandLines">Where on the boundary a person can stand: lines of the flat's open and waterfall sides.</param>
/// <param name="CoatedM2">Exact film area of the face with its strips; what the sections of the face must sum to.</param>
public sealed record Face(
    string Id,
    string Top,
    FaceKind Kind,
    char? Side,
    IReadOnlyList<PointM> Ring,
    IReadOnlyList<IReadOnlyList<PointM>> HoleRings,
    IReadOnlyList<EdgeStrip> Strips,
    IReadOnlyList<StandLine> StandLines,
    double CoatedM2);

public enum StripKind { Nosing, Rim, SplashTop, SplashEnd, PanelReturn }

/// <summary>Film carried along a line of the face's boundary.</summary>
/// <param name="LengthM">True length: of an arc, along the arc and not along its chords.</param>
/// <param name="WidthM">Width of film square to the line, measured round the shape.</param>
public sealed record EdgeStrip(StripKind Kind, IReadOnlyList<PointM> Line, double LengthM, double WidthM)
{
    public double AreaM2 => LengthM * WidthM;
}

public sealed record StandLine(char Side, IReadOnlyList<PointM> Line);

/// <summary>
/// The line where two faces of a top meet. Both lines run from the side's start, point for point; on a curved side
/// the other face is unrolled, so its line has the arc's true length and the line on the flat that of its chords.
/// </summary>
/// <param name="LengthM">True length of the fold.</param>
/// <param name="IsJoint">A caulked or taped joint: no wet lap is needed.</param>
public sealed record Fold(string FlatFace, string OtherFace, char Side, IReadOnlyList<PointM> LineOnFlat, IReadOnlyList<PointM> LineOnOther, double LengthM, bool IsJoint);
