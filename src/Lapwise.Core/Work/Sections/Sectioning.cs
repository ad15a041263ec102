using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work.Sections;

/// <summary>How can a top be cut into sections that one can reach and finish at one time?</summary>
public static class Sectioning
{
    private const int MostWays = 24;
    private static readonly double[] Finenesses = [1, 1.5, 2, 3];

    /// <summary>
    /// Ways of cutting a top, at most 24, none twice; larger sections first and, among them, fewer first.
    /// Worked out only as they are asked for.
    /// </summary>
    public static IEnumerable<CutTop> Ways(MeasuredTop top, Aims aims) => Slices.AtOnce(WaysAsync(new TopCutting(top, aims), Effort.AtOnce.Pause));

    /// <summary>The same with a pause after each way.</summary>
    internal static async IAsyncEnumerable<CutTop> WaysAsync(TopCutting cutting, Pause pause)
    {
        var seen = new HashSet<CutTop>(new SameSections());
        foreach (var finer in Finenesses)
        {
            var cuts = new List<CutTop>();
            foreach (var choice in Choices(cutting, finer))
            {
                cuts.Add(cutting.Cut(choice));
                await pause();
            }

            foreach (var cut in cuts.OrderBy(c => c.Sections.Count))
            {
                if (seen.Count == MostWays) yield break;
                if (seen.Add(cut)) yield return cut;
            }
        }
    }

    /// <summary>Cuts a top by one choice.</summary>
    public static CutTop Cut(MeasuredTop top, Aims aims, CutChoice choice) => new TopCutting(top, aims).Cut(choice);

    /// <summary>The usual way, for comparison: a grid of parts of about 4 ft × 2 ft. Common practice, no source.</summary>
    public static CutTop UsualWay(MeasuredTop top, Aims aims) => Cut(top, aims, new CutChoice.UsualGrid());

    /// <summary>One plain choice, then each of its parts changed alone, where the top has something to change: at most 7.</summary>
    private static IEnumerable<CutChoice> Choices(TopCutting cutting, double finer)
    {
        var plain = new CutChoice.Strips(CornerCut.OnItsOwn, CutoutCut.AnyPlace, UprightCut.LinedUp, finer);
        yield return plain;
        if (cutting.HasCorners)
        {
            yield return plain with { Corners = CornerCut.WithTheLength };
            yield return plain with { Corners = CornerCut.WithTheLegs };
            yield return plain with { Corners = CornerCut.Mitred };
        }

        if (cutting.HasCutouts)
        {
            yield return plain with { Cutouts = CutoutCut.ThroughTheMiddle };
            yield return plain with { Cutouts = CutoutCut.AtTheEnds };
        }

        if (cutting.HasWetFolds && finer <= 1.5) yield return plain with { Uprights = UprightCut.Fewest };
    }

    /// <summary>Two ways are one where their sections lie in the same places, to the millimetre and a tenth of a square centimetre.</summary>
    private sealed class SameSections : IEqualityComparer<CutTop>
    {
        public bool Equals(CutTop? one, CutTop? other) =>
            one is not null && other is not null && one.Sections.Count == other.Sections.Count && one.Sections.Select(Place).SequenceEqual(other.Sections.Select(Place));

        public int GetHashCode(CutTop cut) => cut.Sections.Aggregate(cut.Sections.Count, (hash, section) => HashCode.Combine(hash, Place(section)));

        private static (double X, double Y, double Area) Place(SectionShape section) =>
            (Math.Round(section.CentreM.X * 1000), Math.Round(section.CentreM.Y * 1000), Math.Round(section.FaceM2 * 1e5));
    }
}
