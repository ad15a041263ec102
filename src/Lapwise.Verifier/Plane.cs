using Lapwise.Core.Quantities;

namespace Lapwise.Verifier;

/// <summary>A region of a plane: outer ring first, then its holes; rings do not repeat their first point.</summary>
internal sealed class Region
{
    /// <summary>What counts as on the boundary: half of what an arc's chords may miss.</summary>
    public const double OnBoundaryM = 5e-5;

    public Region(IEnumerable<IReadOnlyList<PointM>> rings)
    {
        Rings = [.. rings];
        Sides = [.. Rings.SelectMany(ring => ring.Select((p, i) => new Side(p, ring[(i + 1) % ring.Count])))];
        (MinX, MaxX) = (Rings[0].Min(p => p.X), Rings[0].Max(p => p.X));
        (MinY, MaxY) = (Rings[0].Min(p => p.Y), Rings[0].Max(p => p.Y));
    }

    public IReadOnlyList<IReadOnlyList<PointM>> Rings { get; }
    public IReadOnlyList<Side> Sides { get; }
    public double MinX { get; }
    public double MaxX { get; }
    public double MinY { get; }
    public double MaxY { get; }

    /// <summary>Shoelace, holes taken off.</summary>
    public double AreaM2 => Plane.Shoelace(Rings[0]) - Rings.Skip(1).Sum(Plane.Shoelace);
    public double PerimeterM => Sides.Sum(s => s.LengthM);

    public bool IsNear(Region other) =>
        MinX <= other.MaxX + OnBoundaryM && other.MinX <= MaxX + OnBoundaryM && MinY <= other.MaxY + OnBoundaryM && other.MinY <= MaxY + OnBoundaryM;

    /// <summary>Even-odd over all rings.</summary>
    public bool Holds(PointM p)
    {
        var inside = false;
        foreach (var side in Sides)
            if (side.From.Y > p.Y != side.To.Y > p.Y && p.X < side.XAt(p.Y)) inside = !inside;
        return inside;
    }

    public bool HoldsWellInside(PointM p) => Holds(p) && !IsOnBoundary(p);
    public bool IsWellOutside(PointM p) => !Holds(p) && !IsOnBoundary(p);
    private bool IsOnBoundary(PointM p) => Sides.Any(s => s.DistanceTo(p) <= OnBoundaryM);

    /// <summary>Some of it lies over some of the other.</summary>
    public bool Overlaps(Region other) => IsNear(other) &&
        (other.HoldsWellInside(Inside()) || HoldsWellInside(other.Inside()) ||
         Stretches(other).Any(other.HoldsWellInside) || other.Stretches(this).Any(HoldsWellInside));

    /// <summary>Some of it lies outside the other, or over one of its holes.</summary>
    public bool Leaves(Region other) =>
        other.IsWellOutside(Inside()) || Stretches(other).Any(other.IsWellOutside) || other.Stretches(this).Any(HoldsWellInside);

    /// <summary>The middle of each stretch of the boundary between crossings with another.</summary>
    private IEnumerable<PointM> Stretches(Region other)
    {
        foreach (var side in Sides)
        {
            List<double> cuts = [0, .. other.Sides.Select(side.CrossingWith).OfType<double>(), 1];
            cuts.Sort();
            for (var i = 1; i < cuts.Count; i++)
                if ((cuts[i] - cuts[i - 1]) * side.LengthM > 2 * OnBoundaryM) yield return side.At((cuts[i] + cuts[i - 1]) / 2);
        }
    }

    /// <summary>A point inside: the middle of the widest stretch on a level between two corners.</summary>
    private PointM Inside()
    {
        var levels = Rings.SelectMany(r => r).Select(p => p.Y).Distinct().Order().ToList();
        var best = (Width: -1.0, At: Rings[0][0]);
        for (var i = 1; i < levels.Count; i++)
        {
            var y = (levels[i] + levels[i - 1]) / 2;
            var crossings = Sides.Where(s => s.From.Y > y != s.To.Y > y).Select(s => s.XAt(y)).Order().ToList();
            for (var k = 1; k < crossings.Count; k += 2)
            {
                var width = Math.Min(crossings[k] - crossings[k - 1], levels[i] - levels[i - 1]);
                if (width > best.Width) best = (width, new PointM((crossings[k] + crossings[k - 1]) / 2, y));
            }
        }

        return best.At;
    }
}

/// <summary>A straight side of a ring or line.</summary>
internal readonly record struct Side(PointM From, PointM To)
{
    public double LengthM => From.DistanceTo(To);

    public PointM At(double share) => new(From.X + ((To.X - From.X) * share), From.Y + ((To.Y - From.Y) * share));

    public double XAt(double y) => From.X + ((y - From.Y) * (To.X - From.X) / (To.Y - From.Y));

    /// <summary>Share of the side, from 0 to 1, nearest to a point.</summary>
    public double ShareNearest(PointM p)
    {
        var (dx, dy) = (To.X - From.X, To.Y - From.Y);
        var square = (dx * dx) + (dy * dy);
        return square == 0 ? 0 : Math.Clamp((((p.X - From.X) * dx) + ((p.Y - From.Y) * dy)) / square, 0, 1);
    }

    public double DistanceTo(PointM p) => At(ShareNearest(p)).DistanceTo(p);

    /// <summary>Where another side crosses this one, as a share of it; null where it does not, or runs along it.</summary>
    public double? CrossingWith(Side other)
    {
        var (dx, dy) = (To.X - From.X, To.Y - From.Y);
        var (ex, ey) = (other.To.X - other.From.X, other.To.Y - other.From.Y);
        var cross = (dx * ey) - (dy * ex);
        if (Math.Abs(cross) < 1e-12) return null;
        var (wx, wy) = (other.From.X - From.X, other.From.Y - From.Y);
        var share = ((wx * ey) - (wy * ex)) / cross;
        var shareOther = ((wx * dy) - (wy * dx)) / cross;
        return share is >= 0 and <= 1 && shareOther is >= -1e-9 and <= 1 + 1e-9 ? share : null;
    }

    /// <summary>The stretch that another side has in common with this one, or null.</summary>
    public Side? CommonWith(Side other)
    {
        var (from, to) = (ShareNearest(other.From), ShareNearest(other.To));
        if (from > to) (from, to) = (to, from);
        var common = new Side(At(from), At(to));
        return common.LengthM > 2 * Region.OnBoundaryM && other.DistanceTo(common.From) <= Region.OnBoundaryM && other.DistanceTo(common.To) <= Region.OnBoundaryM
            ? common
            : null;
    }
}

internal static class Plane
{
    public static double Shoelace(IReadOnlyList<PointM> ring)
    {
        var twice = 0.0;
        for (var i = 0; i < ring.Count; i++)
        {
            var (p, q) = (ring[i], ring[(i + 1) % ring.Count]);
            twice += (p.X * q.Y) - (q.X * p.Y);
        }

        return Math.Abs(twice) / 2;
    }

    public static IEnumerable<Side> SidesOf(IReadOnlyList<PointM> line) => line.Skip(1).Select((to, i) => new Side(line[i], to));

    public static double Distance(IReadOnlyList<PointM> line, PointM p) => SidesOf(line).Min(s => s.DistanceTo(p));

    public static PointM Nearest(IReadOnlyList<PointM> line, PointM p)
    {
        var nearest = SidesOf(line).MinBy(s => s.DistanceTo(p));
        return nearest.At(nearest.ShareNearest(p));
    }
}
