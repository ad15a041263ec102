using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Measure;

/// <summary>Short ways to write down a top for a test of this phase.</summary>
internal static class Benches
{
    public const double InchM = 0.0254;

    public static readonly Voice English = new(Language.English, UnitSystem.Us);
    public static readonly Voice Spanish = new(Language.Spanish, UnitSystem.Metric);

    public static Edge Open(ProfileShape shape = ProfileShape.Square, double radiusM = 0, double undersideM = 0, double returnM = 0, double widthM = 0) =>
        new Edge.Open(new Profile(shape, radiusM, undersideM, returnM, widthM));

    public static Top Top(OutlineSpec outline, string name = "Run", double thicknessM = 0.04, Dictionary<char, Edge>? edges = null, IReadOnlyList<Cutout>? cutouts = null, IReadOnlyList<BreakLine>? breaks = null) =>
        new(name, thicknessM, outline, edges ?? [], cutouts ?? [], breaks ?? [], null) { Path = "tops[0]" };

    public static Cutout Hole(double alongM, double inM, double lengthM, double depthM, CutoutShape shape = CutoutShape.Rectangle, double radiusM = 0, double rimM = 0, string name = "sink") =>
        new(name, shape, lengthM, depthM, radiusM, alongM, inM, rimM);

    public static Job Job(params Top[] tops) => Invented.Job with { Tops = tops };

    public static MeasuredTop Measured(Top top)
    {
        var job = Measuring.Measure(Job(top));
        Assert.Empty(job.Faults.Select(f => f.Say(English)));
        return Assert.Single(job.Tops);
    }

    public static MeasuredTop Measured(OutlineSpec outline) => Measured(Top(outline));

    /// <summary>The one fault of a top, which is then left out; said in both languages, differently and without a hole.</summary>
    public static Fault TheFault(Top top)
    {
        var job = Measuring.Measure(Job(top));
        Assert.Empty(job.Tops);
        var fault = Assert.Single(job.Faults);
        Said.InEveryVoice([fault.Text, fault.Cure]);
        return fault;
    }

    public static WalkedSide Straight(double lengthM, double turnDeg = 90) => new(lengthM, turnDeg * Math.PI / 180, null, Bend.Right);

    public static WalkedSide Arc(double lengthM, double radiusM, double turnDeg, Bend bend = Bend.Right) => new(lengthM, turnDeg * Math.PI / 180, radiusM, bend);

    public static OutlineSpec.Walk Walk(double tapeStepM, params WalkedSide[] sides) => new(sides) { TapeStepM = tapeStepM };

    public static OutlineSpec.Walk SquareWalk(double tapeStepM, params double[] lengthsM) => Walk(tapeStepM, [.. lengthsM.Select(l => Straight(l))]);

    public static void AssertClose(double expected, double actual, double relative = 1e-9) =>
        Assert.True(Math.Abs(expected - actual) <= relative * Math.Max(1e-12, Math.Abs(expected)), $"expected {expected:R}, got {actual:R}");

    public static double RingAreaM2(IReadOnlyList<PointM> ring)
    {
        var twice = 0.0;
        for (var i = 0; i < ring.Count; i++)
        {
            var (p, q) = (ring[i], ring[(i + 1) % ring.Count]);
            twice += (p.X * q.Y) - (p.Y * q.X);
        }

        return twice / 2;
    }
}
