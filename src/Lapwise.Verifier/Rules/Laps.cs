using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Verifier.Rules;

/// <summary>
/// Every two sections that touch along a line have their laps, with the length of that line and the right kind; and
/// there is no lap where none touch. Two sections may touch along several lines, as before and behind a cutout.
/// </summary>
internal static class Laps
{
    /// <summary>A shorter line is no lap to care for.</summary>
    private const double ShortestM = 0.005;

    private sealed record Touch(string A, string B, string Kind, double LengthM);

    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Laps);
        var planned = c.Plan.Laps.ToLookup(l => Key(l.A, l.B, l.Kind), l => l);
        var own = InFaces(c).Concat(OverFolds(c)).GroupBy(t => Key(t.A, t.B, t.Kind)).ToDictionary(g => g.Key, g => g.Sum(t => t.LengthM));

        foreach (var (key, lengthM) in own.Where(o => o.Value > Tolerance.LapM))
        {
            var place = $"{c.Place} lap {key.A}-{key.B}";
            if (planned[key].Any())
            {
                var plannedM = planned[key].Sum(l => l.LengthM);
                f.Holds(Math.Abs(plannedM - lengthM) <= Tolerance.LapM, "LapLengthWrong", place,
                    v => v.Say($"The plan gives {v.Length(plannedM)}; they touch along {v.Length(lengthM)}.", $"El plan da {v.Length(plannedM)}; se tocan a lo largo de {v.Length(lengthM)}."));
                continue;
            }

            var otherKind = c.Plan.Laps.FirstOrDefault(l => Key(l.A, l.B, key.Kind) == key);
            f.Holds(false, otherKind is null ? "LapMissing" : "LapKindWrong", place, otherKind is null
                ? v => v.Say($"They touch along {v.Length(lengthM)} and the plan has no lap.", $"Se tocan a lo largo de {v.Length(lengthM)} y el plan no tiene solape.")
                : v => v.Say($"The plan calls it {otherKind.Kind}; it is {key.Kind}.", $"El plan la llama {otherKind.Kind}; es {key.Kind}."));
        }

        foreach (var lap in c.Plan.Laps)
        {
            var known = c.ById.ContainsKey(lap.A) && c.ById.ContainsKey(lap.B);
            f.Holds(known && own.Keys.Any(k => k == Key(lap.A, lap.B, k.Kind)), "LapWithoutTouch", c.At(lap),
                v => v.Say("These sections do not touch.", "Estas secciones no se tocan."));
        }
    }

    private static (string A, string B, string Kind) Key(string a, string b, string kind) =>
        string.CompareOrdinal(a, b) <= 0 ? (a, b, kind) : (b, a, kind);

    private static IEnumerable<Touch> InFaces(CoatCase c)
    {
        foreach (var face in c.Sections.GroupBy(s => s.Face))
        {
            var joints = Joints(c, face.Key);
            var sections = face.ToList();
            for (var i = 0; i < sections.Count; i++)
                for (var j = i + 1; j < sections.Count; j++)
                {
                    var (a, b) = (sections[i], sections[j]);
                    if (!a.Region.IsNear(b.Region)) continue;
                    foreach (var common in a.Region.Sides.SelectMany(x => b.Region.Sides.Select(x.CommonWith)).OfType<Side>())
                        if (common.LengthM >= ShortestM) yield return new Touch(a.Plan.Id, b.Plan.Id, joints.Any(joint => LiesOn(joint, common)) ? "break" : "flat", common.LengthM);
                }
        }
    }

    private static IEnumerable<Touch> OverFolds(CoatCase c)
    {
        foreach (var fold in c.Measured.Tops.SelectMany(t => t.Folds))
        {
            var others = c.Sections.Where(s => s.Face.Id == fold.OtherFace).Select(s => (s.Plan.Id, On: Joined(FoldLine.OnSectionOfOther(s.Region)))).ToList();
            foreach (var flat in c.Sections.Where(s => s.Face.Id == fold.FlatFace))
            {
                var onFlat = Joined(FoldLine.OnSectionOfFlat(fold, flat.Region));
                foreach (var (id, onOther) in others)
                {
                    var lengthM = onFlat.SelectMany(x => onOther.Select(y => Math.Min(x.To, y.To) - Math.Max(x.From, y.From))).Where(m => m >= ShortestM).Sum();
                    if (lengthM > 0) yield return new Touch(flat.Plan.Id, id, fold.IsJoint ? "break" : "fold", lengthM);
                }
            }
        }
    }

    /// <summary>Stretches that go on in one another, as along an arc's chords, made one.</summary>
    private static List<(double From, double To)> Joined(IEnumerable<(double From, double To)> stretches)
    {
        var joined = new List<(double From, double To)>();
        foreach (var s in stretches.Order())
        {
            if (joined.Count > 0 && s.From - joined[^1].To < ShortestM) joined[^1] = (joined[^1].From, Math.Max(joined[^1].To, s.To));
            else joined.Add(s);
        }

        return joined;
    }

    /// <summary>The planned joints of a flat: a point on the side they start from, and the direction square to it.</summary>
    private static List<(PointM Start, double X, double Y)> Joints(CoatCase c, Face face)
    {
        if (face.Kind != FaceKind.Flat || !c.Coat.Product.BreakAllowed) return [];
        var top = c.Measured.Tops.First(t => t.Top.Name == face.Top);
        return [.. top.Top.Breaks.Select(b =>
        {
            var side = top.Outline.Segments.First(s => s.Side == b.Side);
            var (x, y) = ((side.To.X - side.From.X) / side.LengthM, (side.To.Y - side.From.Y) / side.LengthM);
            return (new PointM(side.From.X + (x * b.AtM), side.From.Y + (y * b.AtM)), -y, x);
        })];
    }

    private static bool LiesOn((PointM Start, double X, double Y) joint, Side side) => new[] { side.From, side.To }
        .All(p => Math.Abs(((p.X - joint.Start.X) * joint.Y) - ((p.Y - joint.Start.Y) * joint.X)) <= 1e-4);
}
