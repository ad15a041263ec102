using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using static Lapwise.Core.Tests.Measure.Benches;

namespace Lapwise.Core.Tests.Measure;

public sealed class SegmentTests
{
    [Theory]
    // SciPy reference guide, scipy.special.ellipe, worked example: a = 3.5, b = 2.1.
    [InlineData(3.5, 2.1, 17.868899204378693)]
    // Maple help, EllipticE(0.3) = 1.534833465: modulus k = 0.3, so b = √(1 − 0.09), perimeter 4 E.
    [InlineData(1, 0.95393920141694566, 4 * 1.534833465)]
    // Closed forms at the ends: a circle, and an ellipse as flat as a line (4 a).
    [InlineData(2, 2, 4 * Math.PI)]
    [InlineData(2, 0, 8)]
    public void EllipsePerimeter_meets_published_values(double a, double b, double expectedM) =>
        AssertClose(expectedM, Segment.EllipsePerimeterM(a, b), 1e-9);

    [Fact]
    public void EllipsePerimeter_meets_a_quadrature_to_a_trillionth()
    {
        // The trapezoid rule converges geometrically on a smooth closed curve: an integration that shares nothing with the series.
        foreach (var b in (double[])[1, 0.9, 0.6, 0.3, 0.1])
        {
            const int Steps = 4000;
            var sum = Enumerable.Range(0, Steps).Sum(i =>
            {
                var t = 2 * Math.PI * i / Steps;
                return Math.Sqrt(Math.Pow(Math.Sin(t), 2) + (b * b * Math.Pow(Math.Cos(t), 2)));
            });
            AssertClose(sum * 2 * Math.PI / Steps, Segment.EllipsePerimeterM(1, b), 1e-12);
        }
    }

    [Fact]
    public void EllipsePerimeter_lies_where_Ramanujan_puts_it()
    {
        // Ramanujan 1914: P ≈ π(a + b)(1 + 3h / (10 + √(4 − 3h))), h = ((a − b)/(a + b))². What it lacks, as a share of
        // π(a + b), lies between 3 h⁵ / 2¹⁷ and (4/π − 14/11) h⁵ (M. Villarino, "Ramanujan's perimeter of an ellipse", 2005; from memory).
        Gen.Double[0.001, 0.9].Sample(b =>
        {
            var h = Math.Pow((1 - b) / (1 + b), 2);
            var lacking = (Segment.EllipsePerimeterM(1, b) / (Math.PI * (1 + b))) - (1 + (3 * h / (10 + Math.Sqrt(4 - (3 * h)))));
            return lacking >= (3 * Math.Pow(h, 5) / Math.Pow(2, 17)) - 1e-14
                && lacking <= (((4 / Math.PI) - (14.0 / 11)) * Math.Pow(h, 5)) + 1e-14;
        });
    }

    [Fact]
    public void EllipsePerimeter_does_not_care_which_half_axis_is_longer() =>
        Gen.Double[0.01, 2].Select(Gen.Double[0.01, 2]).Sample((a, b) => Segment.EllipsePerimeterM(a, b) == Segment.EllipsePerimeterM(b, a));

    [Fact]
    public void Flatten_keeps_every_arc_within_a_tenth_of_a_millimetre()
    {
        Gen.Select(Gen.Double[0.005, 3], Gen.Double[0.05, 6.2], Gen.Bool, Gen.Double[0, 6.28]).Sample((radius, sweep, isLeft, start) =>
        {
            var centre = new PointM(0.3, -0.2);
            var signed = isLeft ? -sweep : sweep;
            PointM On(double angle) => new(centre.X + (radius * Math.Cos(angle)), centre.Y + (radius * Math.Sin(angle)));
            var arc = new Segment.Arc(On(start), On(start + signed), 'A', centre, radius, signed);
            return WorstChordErrorM(arc, On, start, signed) <= 0.0001 + 1e-12;
        });
    }

    [Fact]
    public void Flatten_keeps_every_ellipse_within_a_tenth_of_a_millimetre()
    {
        Gen.Double[0.01, 2].Select(Gen.Double[0.01, 2]).Sample((a, b) =>
        {
            var centre = new PointM(a, b);
            PointM On(double angle) => new(centre.X + (a * Math.Cos(angle)), centre.Y + (b * Math.Sin(angle)));
            return WorstChordErrorM(new Segment.Ellipse(centre, a, b, 'A'), On, -Math.PI / 2, 2 * Math.PI) <= 0.0001 + 1e-12;
        });
    }

    [Fact]
    public void Flatten_ends_exactly_where_the_segment_ends()
    {
        foreach (var segment in Measured(new OutlineSpec.RoundedRectangle(1.2, 0.7, 0.1)).Outline.Segments)
            Assert.Equal(segment.To, segment.Flatten(0.0001)[^1]);
    }

    /// <summary>The farthest any point of the curve lies from the chord that stands for it.</summary>
    private static double WorstChordErrorM(Segment segment, Func<double, PointM> on, double startRad, double sweepRad)
    {
        var points = segment.Flatten(0.0001);
        var worst = 0.0;
        for (var i = 0; i < points.Count; i++)
        {
            var (from, to) = (i == 0 ? segment.From : points[i - 1], points[i]);
            for (var k = 1; k < 8; k++)
                worst = Math.Max(worst, DistanceToChord(on(startRad + (sweepRad * (i + (k / 8.0)) / points.Count)), from, to));
        }

        return worst;
    }

    private static double DistanceToChord(PointM p, PointM from, PointM to) =>
        Math.Abs(((to.X - from.X) * (p.Y - from.Y)) - ((to.Y - from.Y) * (p.X - from.X))) / from.DistanceTo(to);
}
