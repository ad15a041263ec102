using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>One piece of a boundary: a line, a circular arc or a whole ellipse. Lengths in metres, areas in square metres.</summary>
public abstract record Segment
{
    private Segment(PointM from, PointM to, char side)
    {
        From = from;
        To = to;
        Side = side;
    }

    public PointM From { get; init; }
    public PointM To { get; init; }

    /// <summary>The letter of the side it belongs to.</summary>
    public char Side { get; init; }

    public abstract double LengthM { get; }

    /// <summary>Its part of the boundary integral ½∮(x dy − y dx): positive in sum for a boundary walked clockwise on the page.</summary>
    public abstract double SignedAreaM2 { get; }

    /// <summary>Points after <see cref="From"/> up to and with <see cref="To"/>, chord error at most <paramref name="chordErrorM"/>.</summary>
    public abstract IReadOnlyList<PointM> Flatten(double chordErrorM);

    public sealed record Line(PointM From, PointM To, char Side) : Segment(From, To, Side)
    {
        public override double LengthM => From.DistanceTo(To);
        public override double SignedAreaM2 => ((From.X * To.Y) - (From.Y * To.X)) / 2;
        public override IReadOnlyList<PointM> Flatten(double chordErrorM) => [To];
    }

    /// <summary>Part of a circle, or the whole of it.</summary>
    /// <param name="SweepRad">Angle walked through, clockwise positive; at most a full turn either way.</param>
    public sealed record Arc(PointM From, PointM To, char Side, PointM Centre, double RadiusM, double SweepRad) : Segment(From, To, Side)
    {
        public override double LengthM => RadiusM * Math.Abs(SweepRad);

        // With x = cx + r cos t, y = cy + r sin t: ½∫(r² + cx r cos t + cy r sin t) dt.
        public override double SignedAreaM2 =>
            ((RadiusM * RadiusM * SweepRad) + (Centre.X * (To.Y - From.Y)) - (Centre.Y * (To.X - From.X))) / 2;

        public override IReadOnlyList<PointM> Flatten(double chordErrorM)
        {
            var pieces = Chords(RadiusM, SweepRad, chordErrorM);
            var start = Math.Atan2(From.Y - Centre.Y, From.X - Centre.X);
            return Around(pieces, To, k => OnEllipse(Centre, RadiusM, RadiusM, start + (SweepRad * k / pieces)));
        }
    }

    /// <summary>A whole ellipse, clockwise from its topmost point on the page; its axes lie along x and y.</summary>
    public sealed record Ellipse(PointM Centre, double HalfLengthM, double HalfDepthM, char Side)
        : Segment(Centre with { Y = Centre.Y - HalfDepthM }, Centre with { Y = Centre.Y - HalfDepthM }, Side)
    {
        public override double LengthM => EllipsePerimeterM(HalfLengthM, HalfDepthM);
        public override double SignedAreaM2 => Math.PI * HalfLengthM * HalfDepthM;

        // The ellipse is a circle stretched by its half axes, which stretch the circle's sagitta by no more than the longer one.
        public override IReadOnlyList<PointM> Flatten(double chordErrorM)
        {
            var pieces = Chords(Math.Max(HalfLengthM, HalfDepthM), 2 * Math.PI, chordErrorM);
            return Around(pieces, To, k => OnEllipse(Centre, HalfLengthM, HalfDepthM, (2 * Math.PI * k / pieces) - (Math.PI / 2)));
        }
    }

    /// <summary>
    /// Perimeter of an ellipse from its half axes by the arithmetic-geometric mean (Gauss; Abramowitz and Stegun 17.6, from memory):
    /// 2π (a² − Σ 2ⁿ⁻¹ cₙ²) / agm(a, b), with c₀² = a² − b² and cₙ₊₁ = (aₙ − bₙ)/2. Each step doubles the digits.
    /// </summary>
    /// <remarks>Either half axis may be the longer; relative error below 1e-12 down to an axis ratio of 1 : 1000.</remarks>
    public static double EllipsePerimeterM(double halfLengthM, double halfDepthM)
    {
        var a = Math.Max(halfLengthM, halfDepthM);
        var b = Math.Min(halfLengthM, halfDepthM);
        if (b <= 0) return 4 * a;
        var sum = (a * a) - (((a * a) - (b * b)) / 2);
        for (var weight = 1.0; a - b > 1e-15 * a; weight *= 2)
        {
            var c = (a - b) / 2;
            sum -= weight * c * c;
            (a, b) = ((a + b) / 2, Math.Sqrt(a * b));
        }
        return 2 * Math.PI * sum / a;
    }

    // A chord over the angle d lies at most r (1 − cos(d/2)) from its arc. Whole quarter turns are cut evenly, so a
    // circle's flattened ring still touches its own bounding box.
    private static int Chords(double radiusM, double sweepRad, double chordErrorM)
    {
        var widest = chordErrorM >= radiusM ? Math.PI / 2 : Math.Min(Math.PI / 2, 2 * Math.Acos(1 - (chordErrorM / radiusM)));
        var quarters = Math.Abs(sweepRad) / (Math.PI / 2);
        var whole = Math.Max(1, (int)Math.Ceiling(quarters - 1e-9));
        return whole * Math.Max(1, (int)Math.Ceiling(Math.Abs(sweepRad) / whole / widest));
    }

    private static PointM OnEllipse(PointM centre, double halfLengthM, double halfDepthM, double angleRad) =>
        new(centre.X + (halfLengthM * Math.Cos(angleRad)), centre.Y + (halfDepthM * Math.Sin(angleRad)));

    private static PointM[] Around(int pieces, PointM end, Func<int, PointM> at)
    {
        var points = new PointM[pieces];
        for (var k = 1; k < pieces; k++) points[k - 1] = at(k);
        points[^1] = end;
        return points;
    }
}
