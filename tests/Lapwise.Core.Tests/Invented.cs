using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests;

/// <summary>An invented clear, room and job to start a case from; a test says with <c>with</c> what matters to it.</summary>
internal static class Invented
{
    public const double MlPerUsFluidOunce = 29.5735295625;

    /// <summary>2 : 1 by volume, water at most 2 %: common practice, no source.</summary>
    public static Product Clear { get; } = new(
        "clear", "Invented clear", new MixRatio(MixBasis.Volume, 2, 1), 1.04, 1.11, 0.62,
        new Thinner("water", 0.02, 1) { Kind = ThinnerKind.Water }, new WetFilm(152.4), new WetFilm(190.5), new WetFilm(203.2),
        [new TimeAt(45 * 60, 23), new TimeAt(26 * 60, 32)],
        [new TimeAt(11 * 60, 23), new TimeAt(7 * 60, 32)],
        null, null, new ProductLimits(15, 30, 0.75, 3), null, ApplicationMethod.Rolled, EndOfPotLife.Gels, null,
        [new Kit(24 * MlPerUsFluidOunce, 84)], [Hazard.SolventVapour]);

    public static Coat Coat { get; } = new(Clear, null, new WetFilm(165), 0, null);

    public static Tools Tools { get; } = new(60, 45, 15, 0.1, 1400, 10, 1);

    public static Room Room { get; } = new(new AirTemperature(24), 0.45, AirMovement.Still, new SurfaceTemperature(23), new MaterialTemperature(23));

    public static Person Person { get; } = new("Alba", new Pace(0.02, 0.04, 0.1, 20, 8, 150));

    public static Job Job { get; } = new(
        "Invented job", UnitSystem.Metric, Language.English, Room, [Person], [], [Coat], Tools, new Aims(0.2, 0.8, 0.8));

    /// <summary>A flat of this area with one open edge of this length and developed width.</summary>
    public static MeasuredJob Measured(double flatM2, double edgeM = 0, double edgeWidthM = 0.04, params IReadOnlyList<FaceKind> verticals)
    {
        IReadOnlyList<EdgeStrip> strips = edgeM > 0 ? [new EdgeStrip(StripKind.Nosing, [], edgeM, edgeWidthM)] : [];
        var edgeM2 = edgeM * edgeWidthM;
        IReadOnlyList<Face> faces =
        [
            new Face("Run/flat", "Run", FaceKind.Flat, null, [], [], strips, [], flatM2 + edgeM2),
            .. verticals.Select(kind => new Face($"Run/{kind}", "Run", kind, 'A', [], [], [], [], 0.5)),
        ];
        var takeOff = new TakeOff("Run", flatM2, edgeM2, 0.5 * verticals.Count(k => k is FaceKind.Splash), 0.5 * verticals.Count(k => k is FaceKind.Waterfall), 0, 0);
        var top = new Top("Run", 0.038, new OutlineSpec.Rectangle(1, 1), new Dictionary<char, Edge>(), [], [], null);
        return new MeasuredJob(
            [new MeasuredTop(top, new Outline([], flatM2, 0), [], new Closure(0, 0, 0, [], []), faces, [], takeOff)],
            takeOff with { Name = "" }, []);
    }

    /// <summary>Every way the program speaks.</summary>
    public static IReadOnlyList<Voice> Voices { get; } =
        [.. from language in Enum.GetValues<Language>() from units in Enum.GetValues<UnitSystem>() select new Voice(language, units)];
}
