using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>Finds where sections meet: along the cuts they share, and across folds. Touching at a point is no lap.</summary>
internal static class Seams
{
    /// <summary>A shorter seam is no lap to care for.</summary>
    private const double ShortestM = 0.005;

    /// <summary>A stretch of a common line that belongs to a section.</summary>
    private readonly record struct Stretch(int Section, double FromM, double ToM, PointM From, PointM To);

    /// <param name="first">Index of the first of these pieces, all of one face.</param>
    public static IEnumerable<Seam> Along(IReadOnlyList<Piece> pieces, int first, IReadOnlyList<CutLine> lines)
    {
        var sides = new SortedDictionary<int, (List<Stretch> Onward, List<Stretch> Backward)>();
        for (var p = 0; p < pieces.Count; p++)
        {
            foreach (var ring in pieces[p].Rings)
            {
                for (var i = 0; i < ring.Points.Length; i++)
                {
                    if (ring.Tags[i] >= 0) continue;
                    var cut = ~ring.Tags[i];
                    if (!sides.TryGetValue(cut, out var both)) sides[cut] = both = ([], []);
                    var (a, b) = (ring.Points[i], ring.Next(i));
                    var (from, to) = (lines[cut].Place(a), lines[cut].Place(b));
                    if (from < to) both.Onward.Add(new(first + p, from, to, a, b));
                    else both.Backward.Add(new(first + p, to, from, b, a));
                }
            }
        }

        return sides.SelectMany(s => Meetings(s.Value.Onward, s.Value.Backward)
            .Select(m => new Seam(Math.Min(m.A, m.B), Math.Max(m.A, m.B), lines[s.Key].Kind, m.From.DistanceTo(m.To), [m.From, m.To], s.Key)));
    }

    /// <param name="flats">Each flat section's stretches of the fold; likewise the other face's.</param>
    public static IEnumerable<Seam> Across(Fold fold, IEnumerable<(int Section, double FromM, double ToM)> flats, IEnumerable<(int Section, double FromM, double ToM)> others) =>
        Meetings([.. flats.Select(OnFold)], [.. others.Select(OnFold)])
            .Select(m => new Seam(m.A, m.B, fold.IsJoint ? LapKind.Break : LapKind.Fold, m.ToM - m.FromM, Foot(fold, m.FromM, m.ToM), null));

    /// <summary>A stretch of a fold in plan. On a curved side the flat's line is a little shorter than the fold: it follows the chords.</summary>
    public static IReadOnlyList<PointM> Foot(Fold fold, double fromM, double toM)
    {
        var share = Plane.Length(fold.LineOnFlat) / fold.LengthM;
        return Plane.Part(fold.LineOnFlat, fromM * share, toM * share);
    }

    /// <summary>The stretches of a fold that lie on a piece, joined where they go on.</summary>
    public static IEnumerable<(double FromM, double ToM)> OnFold(FaceEdges face, Piece piece, int fold)
    {
        var stretches = new List<(double FromM, double ToM)>();
        foreach (var ring in piece.Rings)
        {
            for (var i = 0; i < ring.Points.Length; i++)
            {
                if (face.Edge(ring.Tags[i]) is not { } edge || edge.Fold != fold) continue;
                var (a, b) = (edge.FoldPlaceM(ring.Points[i]), edge.FoldPlaceM(ring.Next(i)));
                stretches.Add((Math.Min(a, b), Math.Max(a, b)));
            }
        }

        stretches.Sort();
        var joined = new List<(double FromM, double ToM)>();
        foreach (var s in stretches)
        {
            if (joined.Count > 0 && s.FromM - joined[^1].ToM < ShortestM) joined[^1] = (joined[^1].FromM, Math.Max(joined[^1].ToM, s.ToM));
            else joined.Add(s);
        }

        return joined;
    }

    private static Stretch OnFold((int Section, double FromM, double ToM) s) => new(s.Section, s.FromM, s.ToM, default, default);

    private static IEnumerable<(int A, int B, double FromM, double ToM, PointM From, PointM To)> Meetings(List<Stretch> ones, List<Stretch> others)
    {
        var met = new List<(int A, int B, double FromM, double ToM, PointM From, PointM To)>();
        foreach (var a in ones)
        {
            foreach (var b in others)
            {
                var (from, to) = (Math.Max(a.FromM, b.FromM), Math.Min(a.ToM, b.ToM));
                if (a.Section == b.Section || to - from <= 0) continue;
                met.Add((a.Section, b.Section, from, to, a.FromM >= b.FromM ? a.From : b.From, a.ToM <= b.ToM ? a.To : b.To));
            }
        }

        met.Sort((x, y) => (x.A, x.B, x.FromM).CompareTo((y.A, y.B, y.FromM)));
        for (var i = met.Count - 1; i > 0; i--)
        {
            var (before, after) = (met[i - 1], met[i]);
            if (before.A != after.A || before.B != after.B || after.FromM - before.ToM > 1e-6) continue;
            met[i - 1] = before with { ToM = after.ToM, To = after.To };
            met.RemoveAt(i);
        }

        return met.Where(m => m.ToM - m.FromM >= ShortestM);
    }
}
