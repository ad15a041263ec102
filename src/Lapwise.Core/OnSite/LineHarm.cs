using Lapwise.Core.Measure;
using Lapwise.Core.Work;

namespace Lapwise.Core.OnSite;

/// <summary>
/// How much a line is seen, as metres of a line across the open flat. Common practice, no source: an eye follows a line over the
/// flat and down a panel; it expects one at an inner corner and in a fold; a splash stands in the shade of what is put before it.
/// </summary>
public static class LineHarm
{
    public static double SeenM(IssuedLap lap, IssuedPlan plan) => lap.LengthM * Share(lap, FaceOf(plan, lap.A), FaceOf(plan, lap.B));

    private static double Share(IssuedLap lap, FaceKind a, FaceKind b) => lap switch
    {
        { Kind: LapKind.Break } => 0,
        { Kind: LapKind.Fold } => 0.25,
        { AtCorner: true } => 0.5,
        _ when a is FaceKind.Splash && b is FaceKind.Splash => 0.4,
        _ => 1,
    };

    private static FaceKind FaceOf(IssuedPlan plan, string section) => plan.Sections.First(s => s.Id == section).Face;
}
