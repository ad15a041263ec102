using Lapwise.Core.OnSite;

namespace Lapwise.Drawings;

/// <summary>One section on the picture of a run.</summary>
/// <param name="Number">Middle of its number.</param>
/// <param name="Letter">Height of its number.</param>
/// <param name="Leader">From a number that stands outside to its section; null: the number stands in it.</param>
public sealed record RunPiece(IssuedSection Section, IReadOnlyList<IReadOnlyList<Spot>> Rings, Spot Number, double Letter, (Spot From, Spot To)? Leader);

/// <summary>
/// Lays out one top of a run, in metres: each face in its own plane, the flat on top, splashes and panels in rows below it. A number
/// that would be too small to read at arm's length in its section stands beside it, in a cutout or past the edge, on a leader.
/// </summary>
public sealed class RunLayout
{
    /// <summary>The least a number may be, as a share of an ordinary one.</summary>
    public const double LeastLetter = 0.8;
    private const double MostLetter = 1.3;
    private const double LetterInWidth = 0.055;
    private const double WidthOverHeight = 0.7;
    private const double GapM = 0.12;

    private readonly IReadOnlyDictionary<string, Plane> planes;

    /// <param name="Tall">Splashes are low: they are drawn taller, so that their numbers can be read.</param>
    private readonly record struct Plane(double X, double Y, double Tall)
    {
        public Spot On(IssuedPoint p) => new(p.X + X, (p.Y * Tall) + Y);
    }

    /// <summary>Height of an ordinary number.</summary>
    public double Letter { get; }

    public Box Box { get; }

    public IReadOnlyList<RunPiece> Pieces { get; }

    public RunLayout(IEnumerable<IssuedSection> sections)
    {
        List<IssuedSection> drawn = [.. sections.Where(s => s.Rings.Any(r => r.Count > 0))];
        var all = drawn.SelectMany(PointsOf).ToList();
        // A tall top is fitted by its height: its letters count from that, or they would shrink with it.
        var across = all.Count == 0 ? 0 : Math.Max(all.Max(p => p.X) - all.Min(p => p.X), (all.Max(p => p.Y) - all.Min(p => p.Y)) * WidthOverHeight);
        Letter = Math.Max(across, 0.3) * LetterInWidth;
        planes = PlanesOf(drawn);
        var rings = drawn.ToDictionary(s => s.Id, s => (IReadOnlyList<IReadOnlyList<Spot>>)[.. s.Rings.Select(r => (IReadOnlyList<Spot>)[.. r.Select(planes[s.Id].On)])], StringComparer.Ordinal);
        Pieces = PiecesOf(drawn, rings);
        Box = Box.Over(rings.Values.SelectMany(r => r[0]).Concat(Pieces.SelectMany(p => BoxOf(p.Section.Id, p.Number, p.Letter).Corners)).DefaultIfEmpty()).Grown(Letter * 0.3);
    }

    public bool Has(string section) => planes.ContainsKey(section);

    /// <summary>A point of a section's face on the sheet.</summary>
    public Spot OnSheet(string section, IssuedPoint point) => planes[section].On(point);

    private Dictionary<string, Plane> PlanesOf(List<IssuedSection> sections)
    {
        var found = new Dictionary<string, Plane>(StringComparer.Ordinal);
        var height = 0.0;
        foreach (var face in sections.GroupBy(s => (s.Face, s.Side)).OrderBy(f => f.Key.Face))
        {
            var points = face.SelectMany(PointsOf).ToList();
            var (left, high) = (points.Min(p => p.X), points.Min(p => p.Y));
            var rise = points.Max(p => p.Y) - high;
            if (height > 0) height += GapM;
            var tall = Math.Max(1, Letter * 1.6 / Math.Max(0.01, rise));
            foreach (var section in face) found[section.Id] = new Plane(-left, height - (high * tall), tall);
            height += rise * tall;
        }

        return found;
    }

    private List<RunPiece> PiecesOf(List<IssuedSection> sections, Dictionary<string, IReadOnlyList<IReadOnlyList<Spot>>> rings)
    {
        var pieces = new List<RunPiece>();
        var taken = new List<Box>();
        var narrow = new List<(IssuedSection Section, Spot Deepest)>();
        foreach (var section in sections)
        {
            var (at, room) = Roomiest(rings[section.Id]);
            if (room * MostLetter < Letter * LeastLetter)
            {
                narrow.Add((section, at));
                continue;
            }

            var letter = Math.Min(room * MostLetter, Letter * MostLetter);
            pieces.Add(new RunPiece(section, rings[section.Id], at, letter, null));
            taken.Add(BoxOf(section.Id, at, letter));
        }

        foreach (var (section, deepest) in narrow)
        {
            var at = Beside(section.Id, deepest, rings.Values, taken) ?? deepest;
            var box = BoxOf(section.Id, at, Letter * LeastLetter);
            taken.Add(box);
            var from = new Spot(Math.Clamp(deepest.X, box.Left, box.Right), Math.Clamp(deepest.Y, box.Top, box.Bottom));
            pieces.Add(new RunPiece(section, rings[section.Id], at, Letter * LeastLetter, at == deepest ? null : (from, deepest)));
        }

        return pieces;
    }

    /// <summary>The nearest place where a number lies on nothing that is rolled and on no other number.</summary>
    private Spot? Beside(string id, Spot deepest, IEnumerable<IReadOnlyList<IReadOnlyList<Spot>>> pieces, List<Box> taken)
    {
        const int Ways = 24;
        var step = Letter * 0.25;
        for (var far = 2; far <= 24; far++)
        {
            for (var way = 0; way < Ways; way++)
            {
                var (sin, cos) = Math.SinCos((0.25 + ((way + 1) / 2 * (way % 2 == 0 ? 1.0 : -1.0) / Ways)) * 2 * Math.PI);
                var at = deepest + (new Spot(cos, sin) * (far * step));
                var box = BoxOf(id, at, Letter * LeastLetter);
                if (!taken.Any(box.Overlaps) && !pieces.Any(rings => Touches(rings, box))) return at;
            }
        }

        return null;
    }

    private static bool Touches(IReadOnlyList<IReadOnlyList<Spot>> rings, Box box)
    {
        const int Steps = 4;
        for (var i = 0; i <= Steps; i++)
            for (var k = 0; k <= Steps; k++)
                if (Shapes.Contains(rings, new Spot(box.Left + (box.Width * i / Steps), box.Top + (box.Height * k / Steps)))) return true;
        return false;
    }

    /// <summary>What a number takes with the signs that may come behind it.</summary>
    internal static Box BoxOf(string id, Spot at, double letter) => Box.Round(at, letter * TextWidth.Of(id + "✓", bold: true), letter);

    /// <summary>The place of a small grid that lies deepest inside, so that a number never lies over a cutout.</summary>
    private static (Spot At, double Room) Roomiest(IReadOnlyList<IReadOnlyList<Spot>> rings)
    {
        const int Steps = 13;
        var sides = rings.SelectMany(Shapes.Sides).ToArray();
        var box = Box.Over(rings[0]);
        var middle = new Spot((box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2);
        var best = (At: middle, Room: 0.0);
        for (var i = 1; i < Steps; i++)
        {
            for (var k = 1; k < Steps; k++)
            {
                var spot = new Spot(box.Left + (box.Width * i / Steps), box.Top + (box.Height * k / Steps));
                if (!Shapes.Contains(rings, spot)) continue;
                // Of places as deep, the one nearest to the middle.
                var room = sides.Min(s => Away(s.A, s.B, spot)) - (0.01 * (Math.Abs(spot.X - middle.X) + Math.Abs(spot.Y - middle.Y)));
                if (room > best.Room) best = (spot, room);
            }
        }

        return best;
    }

    /// <summary>A number is wider than it is tall, so what lies beside it counts as nearer.</summary>
    private static double Away(Spot a, Spot b, Spot spot)
    {
        var along = b - a;
        var square = along.Dot(along);
        var (dx, dy) = spot - a - (along * (square > 0 ? Math.Clamp((spot - a).Dot(along) / square, 0, 1) : 0));
        return Math.Sqrt((0.3 * dx * dx) + (dy * dy));
    }

    private static IEnumerable<IssuedPoint> PointsOf(IssuedSection section) => section.Rings.SelectMany(r => r);
}
