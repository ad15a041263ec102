using Lapwise.Core.Explain;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>A top cut into sections by one choice.</summary>
/// <param name="Sections">Sorted by face, then by the place of their centres; <see cref="SectionShape.Index"/> is the place in this list.</param>
/// <param name="Reasons">What does not work about this cutting; the sections are still whole, so it can be shown as not working.</param>
public sealed record CutTop(
    MeasuredTop Top,
    CutChoice Choice,
    IReadOnlyList<SectionShape> Sections,
    IReadOnlyList<Seam> Seams,
    IReadOnlyList<Reason> Reasons)
{
    /// <summary>Numbers of the lines that part two arms: one end lies at an inner corner of the outline.</summary>
    internal IReadOnlySet<int> CornerCuts
    {
        get
        {
            const double sameM = 0.001;
            var corners = InnerCorner.Of([.. Top.Faces.Single(f => f.Kind == FaceKind.Flat).Ring]).SelectMany(c => new[] { c.First, c.Middle, c.Last }).ToList();
            return Seams.Where(s => s.Cut is not null && Sections[s.A].Face.Kind == FaceKind.Flat && s.Line.Any(p => corners.Any(c => c.DistanceTo(p) < sameM))).Select(s => s.Cut!.Value).ToHashSet();
        }
    }
}

/// <summary>A part of one face, before it has a place in the order.</summary>
/// <param name="Rings">Outer boundary first, then holes, in the face's own plane; the first point is not repeated.</param>
/// <param name="FaceM2">Area inside the rings; those of a face sum to the area of its ring less its holes.</param>
/// <param name="ArcM2">
/// Film between the flattened rings and the true arcs: what the face's exact area has more than its rings, shared by area.
/// </param>
/// <param name="StripM2">Film on the nosings, rims, tops, ends and returns it carries.</param>
/// <param name="StripLengthM">Length of those strips.</param>
/// <param name="CentreM">Centre of area, in the face's own plane.</param>
/// <param name="StandAt">Where the roller stands, in the flat's plan; the centre where there is no place to stand.</param>
/// <param name="StandSide">Letter of the side stood at; null where there is no place to stand.</param>
/// <param name="ReachM">
/// Farthest the roller goes from the side stood at, stepping along it, in plan; 0 for a panel, which is stood in front of;
/// infinite where there is no place to stand.
/// </param>
/// <param name="DryPassDeg">Direction of the dry pass in the face's plane, 0 to 180; 90 on vertical faces.</param>
/// <param name="LeansOver">
/// Sections between the standing place and this one, and panels one stands in front of: they must come after it. Never in a circle.
/// </param>
public sealed record SectionShape(
    int Index,
    Face Face,
    IReadOnlyList<IReadOnlyList<PointM>> Rings,
    double FaceM2,
    double ArcM2,
    double StripM2,
    double StripLengthM,
    PointM CentreM,
    PointM StandAt,
    char? StandSide,
    double ReachM,
    double DryPassDeg,
    IReadOnlyList<int> LeansOver)
{
    public double FilmM2 => FaceM2 + ArcM2 + StripM2;
}

/// <summary>A line where two sections meet. Two sections may share several, as in front of and behind a cutout.</summary>
/// <param name="Line">In the plane of section <paramref name="A"/>.</param>
/// <param name="Cut">Number of the line it is a part of, in the order of cutting; null at a fold.</param>
public sealed record Seam(int A, int B, LapKind Kind, double LengthM, IReadOnlyList<PointM> Line, int? Cut);
