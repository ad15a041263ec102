using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>A closed boundary whose edges remember where they come from.</summary>
/// <param name="Points">Interior to the left of each edge (in x right, y down: clockwise outside, anticlockwise round a hole).</param>
/// <param name="Tags">Of the edge from a point to the next: the number of the face's edge, or ~ the number of the cut.</param>
internal sealed record Ring(PointM[] Points, int[] Tags)
{
    public PointM Next(int i) => Points[i + 1 == Points.Length ? 0 : i + 1];
}

/// <summary>A part of a face while it is being cut: outer ring first, then holes.</summary>
internal sealed class Piece
{
    /// <summary>A corner this near a cutting line counts as on it, so no slivers arise; the seam bends there instead.</summary>
    private const double OnTheLineM = 0.0002;
    private const double LeastAreaM2 = 1e-10;
    /// <summary>Nobody rolls a part this small for itself, as where a line touches the round of a cutout that a joint runs through.</summary>
    public const double SliverM2 = 0.001;

    public Piece(IReadOnlyList<Ring> rings)
    {
        Rings = rings;
        Outlines = [.. rings.Select(r => r.Points)];
        AreaM2 = Outlines.Sum(Plane.SignedArea);
    }

    public IReadOnlyList<Ring> Rings { get; }
    public IReadOnlyList<PointM[]> Outlines { get; }
    public PointM[] Outer => Outlines[0];
    public double AreaM2 { get; }

    public bool Contains(PointM p) => Plane.Contains(Outlines, p);

    public PointM NearestOnBoundary(PointM p) =>
        Rings.SelectMany(ring => ring.Points.Select((q, i) => Plane.NearestOnSegment(q, ring.Next(i), p))).MinBy(q => q.DistanceTo(p));

    /// <summary>The corners at which its cuts begin and end.</summary>
    public IEnumerable<PointM> CutEnds =>
        Rings.SelectMany(ring => ring.Points.Where((_, i) => ring.Tags[i] < 0 || ring.Tags[i == 0 ? ^1 : i - 1] < 0));

    public PointM Centre()
    {
        var (x, y, area, origin) = (0.0, 0.0, 0.0, Outer[0]);
        foreach (var ring in Rings)
        {
            for (var i = 0; i < ring.Points.Length; i++)
            {
                var (a, b) = (ring.Points[i], ring.Next(i));
                var cross = ((a.X - origin.X) * (b.Y - origin.Y)) - ((b.X - origin.X) * (a.Y - origin.Y));
                area += cross;
                x += cross * (a.X + b.X - (2 * origin.X));
                y += cross * (a.Y + b.Y - (2 * origin.Y));
            }
        }

        return new(origin.X + (x / (3 * area)), origin.Y + (y / (3 * area)));
    }

    public (double Least, double Most) Extent(Axis axis)
    {
        var (least, most) = (double.MaxValue, double.MinValue);
        foreach (var p in Outer) (least, most) = (Math.Min(least, axis.Along(p)), Math.Max(most, axis.Along(p)));
        return (least, most);
    }

    /// <summary>
    /// Cuts along a straight line; with <paramref name="from"/>, only from that point on, until the line first leaves the top.
    /// The parts share exactly the same points along the cut. A line that misses gives the piece itself back.
    /// </summary>
    /// <param name="cut">Number the new edges are tagged with.</param>
    public IReadOnlyList<Piece> Split(CutLine line, int cut, PointM? from = null)
    {
        if (!Meets(line)) return [this];
        var net = new Net(this, line);
        var chords = net.Chords(this);
        if (from is { } start) chords = net.FirstRun(chords, line.Place(start));
        return SplitAlong(net, chords, cut);
    }

    /// <summary>Leaves out the parts of the line that would cut off a sliver.</summary>
    private IReadOnlyList<Piece> SplitAlong(Net net, List<(int A, int B)> chords, int cut)
    {
        if (chords.Count == 0) return [this];
        var parts = net.Trace(chords, cut);
        var whole = net.WithoutSlivers(chords, parts);
        return whole.Count == chords.Count ? parts : SplitAlong(net, whole, cut);
    }

    /// <summary>Cuts the part of the piece a point of the line lies in, to both sides until the line leaves the top.</summary>
    public IReadOnlyList<Piece> SplitAt(CutLine line, int cut, PointM through)
    {
        if (!Plane.Contains([Outer], through)) return [this];
        var net = new Net(this, line);
        var chords = net.RunAt(net.Chords(this), line.Place(through));
        return chords.Count == 0 ? [this] : net.Trace(chords, cut);
    }

    private bool Meets(CutLine line)
    {
        var (least, most) = Extent(line.Normal);
        return least < line.Offset && line.Offset < most;
    }

    private static PointM Crossing(PointM a, PointM b, CutLine line)
    {
        // The same edge is met in both directions from its two sides: one order, so one point.
        if ((b.X, b.Y).CompareTo((a.X, a.Y)) < 0) (a, b) = (b, a);
        var (da, db) = (line.Distance(a), line.Distance(b));
        return Plane.Between(a, b, da / (da - db));
    }

    /// <summary>The rings of a piece with the points where a line meets them.</summary>
    private sealed class Net
    {
        private readonly CutLine line;
        private readonly List<PointM> points = [];
        private readonly List<int> tags = [];
        private readonly List<int> next = [];
        private readonly List<int> on = [];
        private readonly int outerCount;

        public Net(Piece piece, CutLine line)
        {
            this.line = line;
            foreach (var ring in piece.Rings)
            {
                var first = points.Count;
                for (var i = 0; i < ring.Points.Length; i++)
                {
                    var (a, b) = (ring.Points[i], ring.Next(i));
                    var (sideA, sideB) = (SideOf(a), SideOf(b));
                    if (sideA == 0) on.Add(points.Count);
                    Add(a, ring.Tags[i]);
                    if (sideA * sideB >= 0) continue;
                    on.Add(points.Count);
                    Add(Crossing(a, b, line), ring.Tags[i]);
                }

                next[^1] = first;
                if (outerCount == 0) outerCount = points.Count;
            }

            on.Sort((a, b) => (line.Place(points[a]), a).CompareTo((line.Place(points[b]), b)));
        }

        private void Add(PointM p, int tag)
        {
            points.Add(p);
            tags.Add(tag);
            next.Add(points.Count);
        }

        private int SideOf(PointM p)
        {
            var distance = line.Distance(p);
            return Math.Abs(distance) < OnTheLineM ? 0 : Math.Sign(distance);
        }

        /// <summary>The parts of the line inside the piece, in order.</summary>
        public List<(int A, int B)> Chords(Piece piece)
        {
            var chords = new List<(int A, int B)>();
            for (var i = 1; i < on.Count; i++)
            {
                var (a, b) = (on[i - 1], on[i]);
                var isBoundary = next[a] == b || next[b] == a;
                if (!isBoundary && piece.Contains(Plane.Between(points[a], points[b], 0.5))) chords.Add((a, b));
            }

            return chords;
        }

        /// <summary>The chords from a place on, across holes, until the outer boundary is met.</summary>
        public List<(int A, int B)> FirstRun(List<(int A, int B)> chords, double place)
        {
            var start = chords.FindIndex(c => Math.Abs(line.Place(points[c.A]) - place) < OnTheLineM);
            if (start < 0) return [];
            var end = chords.FindIndex(start, c => c.B < outerCount);
            return end < 0 ? [] : chords.GetRange(start, end - start + 1);
        }

        /// <summary>The chords round a place, across holes, between two meetings with the outer boundary.</summary>
        public List<(int A, int B)> RunAt(List<(int A, int B)> chords, double place)
        {
            var start = 0;
            for (var i = 0; i < chords.Count; i++)
            {
                if (chords[i].A < outerCount) start = i;
                if (chords[i].B >= outerCount) continue;
                if (line.Place(points[chords[start].A]) <= place && place <= line.Place(points[chords[i].B])) return chords.GetRange(start, i - start + 1);
            }

            return [];
        }

        /// <summary>The chords that are no side of a sliver.</summary>
        public List<(int A, int B)> WithoutSlivers(List<(int A, int B)> chords, IReadOnlyList<Piece> parts)
        {
            var slivers = parts.Where(p => p.AreaM2 < SliverM2).Select(p => p.Outer).ToList();
            return chords.FindAll(c => !slivers.Exists(s => s.Contains(points[c.A]) && s.Contains(points[c.B])));
        }

        /// <summary>Walks every boundary, turning left as hard as it can, and puts holes back into the part they lie in.</summary>
        public IReadOnlyList<Piece> Trace(List<(int A, int B)> chords, int cut)
        {
            var edges = new List<(int From, int To, int Tag)>();
            for (var i = 0; i < points.Count; i++) edges.Add((i, next[i], tags[i]));
            var branches = new Dictionary<int, List<int>>();
            foreach (var (a, b) in chords)
            {
                Branch(a).Add(edges.Count);
                edges.Add((a, b, ~cut));
                Branch(b).Add(edges.Count);
                edges.Add((b, a, ~cut));
            }

            var (outers, holes) = (new List<Ring>(), new List<Ring>());
            var walked = new bool[edges.Count];
            for (var first = 0; first < edges.Count; first++)
            {
                if (walked[first]) continue;
                var (ringPoints, ringTags) = (new List<PointM>(), new List<int>());
                for (var edge = first; !walked[edge]; edge = Following(edge))
                {
                    walked[edge] = true;
                    ringPoints.Add(points[edges[edge].From]);
                    ringTags.Add(edges[edge].Tag);
                }

                var ring = new Ring([.. ringPoints], [.. ringTags]);
                var area = Plane.SignedArea(ring.Points);
                if (area > LeastAreaM2) outers.Add(ring);
                else if (area < -LeastAreaM2) holes.Add(ring);
            }

            return [.. outers.Select(outer => new Piece([outer, .. holes.Where(h => outers.Count == 1 || Plane.Contains([outer.Points], h.Points[0]))]))];

            List<int> Branch(int node)
            {
                if (!branches.TryGetValue(node, out var list)) branches[node] = list = [node];
                return list;
            }

            int Following(int edge)
            {
                var (origin, node, _) = edges[edge];
                if (!branches.TryGetValue(node, out var choices)) return node;
                var back = Axis.From(points[node], points[origin]);
                return choices.MinBy(c => Turn(back, Axis.From(points[node], points[edges[c].To])));
            }
        }

        /// <summary>How far an edge lies from the way one came, turning right from it: the least is the hardest left turn.</summary>
        private static double Turn(Axis back, Axis ahead)
        {
            var angle = Math.Atan2(ahead.Cross(back), ahead.Dot(back));
            return angle <= 1e-12 ? angle + (2 * Math.PI) : angle;
        }
    }
}
