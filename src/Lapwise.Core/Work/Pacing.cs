using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>How long one person takes for a section. Each part is rounded up to a whole second: nobody paces finer.</summary>
/// <param name="WetMs">From the first material: walk and reload, wetting out or pouring out and spreading, edges.</param>
/// <param name="DryMs">The dry pass; of a pour, its levelling, taken at the pace of a dry pass. Nothing where it is brushed or wiped.</param>
internal readonly record struct SectionTime(long WetMs, long DryMs)
{
    public long TotalMs => WetMs + DryMs;

    public static SectionTime Of(SectionShape section, Pace pace, ApplicationMethod method) => Of(section.Face.Kind, section.FaceM2, section.StripLengthM, pace, method);

    public static SectionTime Of(Section section, Pace pace, ApplicationMethod method) => Of(section.Face.Kind, section.FaceM2, section.EdgeM, pace, method);

    private static SectionTime Of(FaceKind face, double faceM2, double stripM, Pace pace, ApplicationMethod method)
    {
        var wetS = pace.WalkS + pace.ReloadS + (faceM2 / pace.WetOutM2PerS) + (stripM / pace.EdgeMPerS);
        var isFinished = method is ApplicationMethod.Rolled || (method is ApplicationMethod.Poured && face is FaceKind.Flat);
        var dryS = isFinished ? faceM2 / pace.DryPassM2PerS : 0;
        return new SectionTime(WholeSecondsMs(wetS), WholeSecondsMs(dryS));
    }

    private static long WholeSecondsMs(double seconds) => (long)Math.Ceiling(seconds - 1e-9) * 1000;
}
