using Lapwise.Core.Jobs;

namespace Lapwise.Core.Measure;

/// <summary>
/// Developed width of an edge profile: the width of film it takes, measured round the shape from the rim of the flat
/// to where the coating ends. Plain geometry; t is the thickness of the top and r the radius (of a bevel: its leg),
/// all in metres, and every shape is cut into the edge of a top whose outline is its outermost line.
/// </summary>
/// <remarks>
/// <list type="bullet">
/// <item>Square: the straight face, t. Eased arrises are too small to count.</item>
/// <item>Eased: a quarter round of r at top and bottom with the face between: (t − 2r) + 2 · πr/2. Needs 2r ≤ t.</item>
/// <item>Round-over: one quarter round at the top, the rest straight: (t − r) + πr/2. Needs r ≤ t.</item>
/// <item>Full round: a half circle of diameter t: πt/2.</item>
/// <item>Bevel: a 45° chamfer whose two legs are r, the rest straight: (t − r) + r√2. Needs r ≤ t.</item>
/// <item>Cove: a hollow quarter of r cut into the top arris, the rest straight: (t − r) + πr/2. Needs r ≤ t.</item>
/// <item>
/// Ogee: a bulging quarter of r that runs on into a hollow quarter of r, the S shape. Each goes down by r and out by r,
/// so together they take 2r of the thickness and the rest is straight: (t − 2r) + 2 · πr/2. Needs 2r ≤ t.
/// </item>
/// <item>Measured: the width read from a strip bent round the shape.</item>
/// </list>
/// To each come the coated underside and the face of a build-down (return).
/// The flat is taken up to the outline, so what a rounded or hollow shape takes from it in plan is counted in both:
/// at most 2r a running metre too much, never too little.
/// </remarks>
public static class EdgeProfiles
{
    /// <summary>Developed width in metres, or null where the shape does not fit the thickness.</summary>
    /// <param name="thicknessM">Thickness of the top, above 0.</param>
    public static double? DevelopedWidthM(Profile profile, double thicknessM) => Fits(profile, thicknessM)
        ? ShapeWidthM(profile, thicknessM) + profile.UndersideM + profile.ReturnM
        : null;

    /// <summary>The largest radius or leg that the shape can have in this thickness.</summary>
    public static double LargestRadiusM(ProfileShape shape, double thicknessM) =>
        shape is ProfileShape.Eased or ProfileShape.Ogee ? thicknessM / 2 : thicknessM;

    private static bool Fits(Profile profile, double thicknessM) => profile.Shape switch
    {
        ProfileShape.Measured => profile.MeasuredWidthM > 0,
        ProfileShape.Square or ProfileShape.FullRound => thicknessM > 0,
        // A radius read off as half of the thickness may come out a rounding error above it.
        _ => thicknessM > 0 && profile.RadiusM >= 0 && profile.RadiusM <= LargestRadiusM(profile.Shape, thicknessM) + 1e-9,
    };

    private static double ShapeWidthM(Profile profile, double t)
    {
        var r = profile.RadiusM;
        return profile.Shape switch
        {
            ProfileShape.Square => t,
            ProfileShape.Eased or ProfileShape.Ogee => t - (2 * r) + (Math.PI * r),
            ProfileShape.RoundOver or ProfileShape.Cove => t - r + (Math.PI * r / 2),
            ProfileShape.FullRound => Math.PI * t / 2,
            ProfileShape.Bevel => t - r + (r * Math.Sqrt(2)),
            ProfileShape.Measured => profile.MeasuredWidthM,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
