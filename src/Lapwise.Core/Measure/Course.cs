using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>One side of an outline for itself: its chord with the direction it is walked in.</summary>
/// <param name="ChordM">Straight distance from its start to its end.</param>
/// <param name="DirectionRad">Of the chord; 0 along side A's start, clockwise on the page.</param>
/// <param name="SweepRad">0 for a straight side; clockwise positive.</param>
internal sealed record Course(char Side, double LengthM, double ChordM, double DirectionRad, double SweepRad)
{
    public PointM Vector => new(ChordM * Math.Cos(DirectionRad), ChordM * Math.Sin(DirectionRad));

    /// <summary>Whether it could be read; a turn that could not hides the direction of all sides behind it.</summary>
    public bool IsTold => double.IsFinite(LengthM + DirectionRad) && Math.Abs(SweepRad) < 2 * Math.PI;

    /// <summary>From one point to another, an arc with the angle it sweeps.</summary>
    public Segment Laid(PointM from, PointM to)
    {
        if (SweepRad == 0) return new Segment.Line(from, to, Side);
        var radius = from.DistanceTo(to) / (2 * Math.Sin(Math.Abs(SweepRad) / 2));
        var heading = Math.Atan2(to.Y - from.Y, to.X - from.X) - (SweepRad / 2);
        var toCentre = heading + (Math.Sign(SweepRad) * Math.PI / 2);
        var centre = new PointM(from.X + (radius * Math.Cos(toCentre)), from.Y + (radius * Math.Sin(toCentre)));
        return new Segment.Arc(from, to, Side, centre, radius, SweepRad);
    }
}
