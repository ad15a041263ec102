namespace Lapwise.Drawings;

/// <summary>What a drawing needs to know of polygons. Rings are closed by their last point; first the outside, then holes.</summary>
internal static class Shapes
{
    public static bool Contains(IReadOnlyList<IReadOnlyList<Spot>> rings, Spot spot)
    {
        var inside = false;
        foreach (var ring in rings) inside ^= Contains(ring, spot);
        return inside;
    }

    private static bool Contains(IReadOnlyList<Spot> ring, Spot spot)
    {
        var inside = false;
        for (var (i, j) = (0, ring.Count - 1); i < ring.Count; j = i++)
        {
            var (a, b) = (ring[i], ring[j]);
            if (a.Y > spot.Y != b.Y > spot.Y && spot.X < a.X + ((b.X - a.X) * (spot.Y - a.Y) / (b.Y - a.Y))) inside = !inside;
        }
        return inside;
    }

    public static double DistanceToBoundary(IReadOnlyList<IReadOnlyList<Spot>> rings, Spot spot)
    {
        var nearest = double.PositiveInfinity;
        foreach (var ring in rings)
            for (var (i, j) = (0, ring.Count - 1); i < ring.Count; j = i++) nearest = Math.Min(nearest, Distance(ring[j], ring[i], spot));
        return nearest;
    }

    private static double Distance(Spot a, Spot b, Spot spot)
    {
        var along = b - a;
        var square = along.Dot(along);
        var t = square > 0 ? Math.Clamp((spot - a).Dot(along) / square, 0, 1) : 0;
        return (spot - a - (along * t)).Length;
    }

    /// <summary>Points inside, the one farthest from every side first; of equally roomy ones the one nearest the middle.</summary>
    public static IReadOnlyList<Spot> Insides(IReadOnlyList<IReadOnlyList<Spot>> rings)
    {
        const int Steps = 11;
        // The page draws as one types: plain arrays, and no root until the end.
        var sides = rings.SelectMany(Sides).ToArray();
        var box = Box.Over(rings[0]);
        var middle = new Spot((box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2);
        var found = new List<(Spot At, double Room, double Off)>(Steps * Steps);
        for (var row = 1; row <= Steps; row++)
        {
            for (var column = 1; column <= Steps; column++)
            {
                var (x, y) = (box.Left + (box.Width * column / (Steps + 1)), box.Top + (box.Height * row / (Steps + 1)));
                var (inside, nearest) = (false, double.PositiveInfinity);
                foreach (var (a, b) in sides)
                {
                    var (dx, dy, px, py) = (b.X - a.X, b.Y - a.Y, x - a.X, y - a.Y);
                    if (a.Y > y != b.Y > y && px < dx * py / dy) inside = !inside;
                    var square = (dx * dx) + (dy * dy);
                    var t = square > 0 ? Math.Clamp(((px * dx) + (py * dy)) / square, 0, 1) : 0;
                    nearest = Math.Min(nearest, ((px - (t * dx)) * (px - (t * dx))) + ((py - (t * dy)) * (py - (t * dy))));
                }
                var spot = new Spot(x, y);
                if (inside) found.Add((spot, Math.Round(Math.Sqrt(nearest), 1), (spot - middle).Length));
            }
        }
        return [.. found.OrderByDescending(f => f.Room).ThenBy(f => f.Off).Select(f => f.At)];
    }

    /// <summary>Whether two simple polygons share any surface.</summary>
    public static bool Overlap(IReadOnlyList<Spot> one, IReadOnlyList<Spot> other)
    {
        if (!Box.Over(one).Overlaps(Box.Over(other))) return false;
        for (var (i, j) = (0, one.Count - 1); i < one.Count; j = i++)
            for (var (k, l) = (0, other.Count - 1); k < other.Count; l = k++)
                if (Cross((one[j], one[i]), (other[l], other[k]))) return true;
        return other.Any(s => IsWithin(one, s)) || one.Any(s => IsWithin(other, s));
    }

    // A corner that only touches the other's boundary shares no surface.
    private static bool IsWithin(IReadOnlyList<Spot> ring, Spot spot) => Contains(ring, spot) && DistanceToBoundary([ring], spot) > 1e-6;

    private static bool Cross((Spot A, Spot B) one, (Spot A, Spot B) other)
    {
        static double Turn(Spot a, Spot b, Spot c) => ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
        return (Turn(one.A, one.B, other.A) * Turn(one.A, one.B, other.B)) < 0
            && (Turn(other.A, other.B, one.A) * Turn(other.A, other.B, one.B)) < 0;
    }

    /// <summary>Parallel lines over the inside, at an angle to the sheet and a spacing.</summary>
    public static IEnumerable<(Spot From, Spot To)> Hatch(IReadOnlyList<IReadOnlyList<Spot>> rings, double degrees, double spacing)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var (along, across) = (new Spot(cos, sin), new Spot(-sin, cos));
        var heights = rings[0].Select(s => s.Dot(across)).ToList();
        // Counted from the sheet's corner, so that neighbours' lines run on.
        for (var row = Math.Ceiling(heights.Min() / spacing); row * spacing < heights.Max(); row++)
        {
            var height = row * spacing;
            var cuts = rings.SelectMany(Sides)
                .Where(s => s.A.Dot(across) > height != s.B.Dot(across) > height)
                .Select(s => s.A.Dot(along) + ((s.B - s.A).Dot(along) * (height - s.A.Dot(across)) / (s.B - s.A).Dot(across)))
                .Order().ToList();
            for (var i = 0; i + 1 < cuts.Count; i += 2)
                yield return ((across * height) + (along * cuts[i]), (across * height) + (along * cuts[i + 1]));
        }
    }

    /// <summary>The place at a share of a line's length, and the line's direction there.</summary>
    public static (Spot At, Spot Along) AtShare(IReadOnlyList<Spot> line, double share)
    {
        var lengths = line.Zip(line.Skip(1), (a, b) => (b - a).Length).ToList();
        var wanted = lengths.Sum() * share;
        for (var i = 0; i < lengths.Count; i++)
        {
            if (wanted <= lengths[i] || i == lengths.Count - 1)
                return (line[i] + ((line[i + 1] - line[i]).Unit * Math.Min(wanted, lengths[i])), (line[i + 1] - line[i]).Unit);
            wanted -= lengths[i];
        }
        return (line[0], new Spot(1, 0));
    }

    public static double Length(IReadOnlyList<Spot> line) => line.Zip(line.Skip(1), (a, b) => (b - a).Length).Sum();

    public static IEnumerable<(Spot A, Spot B)> Sides(IReadOnlyList<Spot> ring) =>
        ring.Select((spot, i) => (spot, ring[(i + 1) % ring.Count]));
}
