using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>A direction in a face's plane, of length 1.</summary>
internal readonly record struct Axis(double X, double Y)
{
    public static Axis From(PointM a, PointM b)
    {
        var length = a.DistanceTo(b);
        return new((b.X - a.X) / length, (b.Y - a.Y) / length);
    }

    public double Along(PointM p) => (p.X * X) + (p.Y * Y);
    public double Across(PointM p) => (p.Y * X) - (p.X * Y);
    public double Dot(Axis other) => (X * other.X) + (Y * other.Y);
    public double Cross(Axis other) => (X * other.Y) - (Y * other.X);
    /// <summary>A quarter turn towards <see cref="Across"/>.</summary>
    public Axis Quarter => new(-Y, X);
    public Axis Opposite => new(-X, -Y);
}

/// <summary>A straight line that cuts, with what its seams will be.</summary>
internal readonly record struct CutLine(Axis Normal, double Offset, LapKind Kind)
{
    /// <summary>The line through a point; <see cref="Place"/> grows along <paramref name="direction"/>.</summary>
    public static CutLine Through(PointM point, Axis direction, LapKind kind)
    {
        var normal = new Axis(direction.Y, -direction.X);
        return new(normal, normal.Along(point), kind);
    }

    public double Distance(PointM p) => Normal.Along(p) - Offset;
    public double Place(PointM p) => Normal.Across(p);
}

/// <summary>Points, segments and polylines.</summary>
internal static class Plane
{
    public static PointM Between(PointM a, PointM b, double share) => new(a.X + ((b.X - a.X) * share), a.Y + ((b.Y - a.Y) * share));

    public static PointM Step(PointM from, Axis direction, double metres) => new(from.X + (direction.X * metres), from.Y + (direction.Y * metres));

    public static PointM NearestOnSegment(PointM a, PointM b, PointM p)
    {
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var square = (dx * dx) + (dy * dy);
        if (square == 0) return a;
        return Between(a, b, Math.Clamp((((p.X - a.X) * dx) + ((p.Y - a.Y) * dy)) / square, 0, 1));
    }

    /// <summary>The nearest point of a polyline, and how far along it lies.</summary>
    public static (PointM Point, double DistanceM, double AlongM) Nearest(IReadOnlyList<PointM> line, PointM p)
    {
        var best = (Point: line[0], DistanceM: line[0].DistanceTo(p), AlongM: 0.0);
        var walked = 0.0;
        for (var i = 1; i < line.Count; i++)
        {
            var q = NearestOnSegment(line[i - 1], line[i], p);
            var distance = q.DistanceTo(p);
            if (distance < best.DistanceM) best = (q, distance, walked + line[i - 1].DistanceTo(q));
            walked += line[i - 1].DistanceTo(line[i]);
        }

        return best;
    }

    public static double Length(IReadOnlyList<PointM> line)
    {
        var sum = 0.0;
        for (var i = 1; i < line.Count; i++) sum += line[i - 1].DistanceTo(line[i]);
        return sum;
    }

    /// <summary>The part of a polyline between two distances along it, cut off at its ends.</summary>
    public static IReadOnlyList<PointM> Part(IReadOnlyList<PointM> line, double fromM, double toM)
    {
        var part = new List<PointM>();
        var walked = 0.0;
        for (var i = 1; i < line.Count; i++)
        {
            var length = line[i - 1].DistanceTo(line[i]);
            if (walked + length > fromM + 1e-9 && walked < toM - 1e-9)
            {
                if (part.Count == 0) part.Add(Between(line[i - 1], line[i], Math.Clamp((fromM - walked) / length, 0, 1)));
                part.Add(Between(line[i - 1], line[i], Math.Clamp((toM - walked) / length, 0, 1)));
            }

            walked += length;
        }

        return part;
    }

    /// <summary>Whether all points lie on the straight line between the ends, to a millimetre.</summary>
    public static bool IsStraight(IReadOnlyList<PointM> line) =>
        line[0] != line[^1] && line.All(p => NearestOnSegment(line[0], line[^1], p).DistanceTo(p) < 0.001);

    /// <summary>The polyline without points that it misses by at most so much.</summary>
    public static IReadOnlyList<PointM> Thinned(IReadOnlyList<PointM> line, double byM)
    {
        var kept = new List<PointM> { line[0] };
        var last = 0;
        for (var i = 1; i + 1 < line.Count; i++)
        {
            var (from, to) = (line[last], line[i + 1]);
            if (!Enumerable.Range(last + 1, i - last).Any(k => NearestOnSegment(from, to, line[k]).DistanceTo(line[k]) > byM)) continue;
            kept.Add(line[i]);
            last = i;
        }

        kept.Add(line[^1]);
        return kept;
    }

    public static double SignedArea(IReadOnlyList<PointM> ring)
    {
        var (sum, origin) = (0.0, ring[0]);
        for (var i = 1; i + 1 < ring.Count; i++)
            sum += ((ring[i].X - origin.X) * (ring[i + 1].Y - origin.Y)) - ((ring[i + 1].X - origin.X) * (ring[i].Y - origin.Y));
        return sum / 2;
    }

    /// <summary>Even-odd over all rings; points on a boundary may fall either way.</summary>
    public static bool Contains(IEnumerable<IReadOnlyList<PointM>> rings, PointM p)
    {
        var inside = false;
        foreach (var ring in rings)
        {
            var a = ring[^1];
            foreach (var b in ring)
            {
                if ((a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X + ((p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X))) inside = !inside;
                a = b;
            }
        }

        return inside;
    }

    /// <summary>The stretches of a straight line that lie inside the rings; the line has a length.</summary>
    public static IEnumerable<(PointM From, PointM To)> Inside(IReadOnlyList<IReadOnlyList<PointM>> rings, PointM from, PointM to)
    {
        List<double> shares = [0, .. rings.SelectMany(ring => ring.Select((p, i) => Meeting(from, to, p, ring[(i + 1) % ring.Count]))).OfType<double>().Order(), 1];
        return shares.Zip(shares.Skip(1))
            .Where(x => x.Second - x.First > 1e-6 && Contains(rings, Between(from, to, (x.First + x.Second) / 2)))
            .Select(x => (Between(from, to, x.First), Between(from, to, x.Second)));
    }

    /// <summary>Where an edge crosses a line, as a share of the line.</summary>
    private static double? Meeting(PointM from, PointM to, PointM a, PointM b)
    {
        var along = Axis.From(from, to);
        var (sideA, sideB) = (along.Across(a) - along.Across(from), along.Across(b) - along.Across(from));
        if (sideA > 0 == sideB > 0) return null;
        var share = (along.Along(Between(a, b, sideA / (sideA - sideB))) - along.Along(from)) / from.DistanceTo(to);
        return share is > 0 and < 1 ? share : null;
    }
}
