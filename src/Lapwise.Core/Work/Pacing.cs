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

    public static SectionTime Of(SectionShape section, Pace pace, ApplicationMethod method)
    {
        var wetS = pace.WalkS + pace.ReloadS + (section.FaceM2 / pace.WetOutM2PerS) + (section.StripLengthM / pace.EdgeMPerS);
        var isFinished = method is ApplicationMethod.Rolled || (method is ApplicationMethod.Poured && section.Face.Kind is FaceKind.Flat);
        var dryS = isFinished ? section.FaceM2 / pace.DryPassM2PerS : 0;
        return new SectionTime(WholeSecondsMs(wetS), WholeSecondsMs(dryS));
    }

    private static long WholeSecondsMs(double seconds) => (long)Math.Ceiling(seconds - 1e-9) * 1000;
}
