using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Verifier;

/// <summary>Places along a fold, counted on the other face, where an arc has its true length.</summary>
internal static class FoldLine
{
    /// <summary>The point on the flat that meets a place along the fold.</summary>
    public static PointM OnFlat(Fold fold, double place)
    {
        for (var i = 1; i < fold.LineOnOther.Count; i++)
        {
            var (from, to) = (Along(fold, i - 1), Along(fold, i));
            if (place > to && i < fold.LineOnOther.Count - 1) continue;
            var share = to > from ? Math.Clamp((place - from) / (to - from), 0, 1) : 0;
            return new Side(fold.LineOnFlat[i - 1], fold.LineOnFlat[i]).At(share);
        }

        return fold.LineOnFlat[0];
    }

    /// <summary>The stretches of a fold that a section of the flat has on its boundary.</summary>
    public static IEnumerable<(double From, double To)> OnSectionOfFlat(Fold fold, Region section)
    {
        for (var i = 1; i < fold.LineOnFlat.Count; i++)
        {
            var line = new Side(fold.LineOnFlat[i - 1], fold.LineOnFlat[i]);
            foreach (var side in section.Sides)
            {
                if (line.CommonWith(side) is not { } common) continue;
                var (from, to) = (Along(fold, i - 1), Along(fold, i));
                yield return (from + ((to - from) * line.ShareNearest(common.From)), from + ((to - from) * line.ShareNearest(common.To)));
            }
        }
    }

    /// <summary>The stretches of a fold that a section of the upright has on its boundary.</summary>
    public static IEnumerable<(double From, double To)> OnSectionOfOther(Region section) =>
        section.Sides.Where(s => Math.Abs(s.From.Y) <= Region.OnBoundaryM && Math.Abs(s.To.Y) <= Region.OnBoundaryM)
            .Select(s => (Math.Min(s.From.X, s.To.X), Math.Max(s.From.X, s.To.X)));

    private static double Along(Fold fold, int i) => fold.LineOnOther[i].X;
}
