using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>Keeps a job to as many sections as can be ordered while one waits: sections so small that there are more are made larger, and that is said.</summary>
internal static class SectionCount
{
    /// <summary>No kitchen has so many; finer ways of cutting that are tried beside have up to three times as many.</summary>
    public const int Most = 400;

    private static readonly CutChoice Largest = new CutChoice.Strips(CornerCut.OnItsOwn, CutoutCut.AnyPlace, UprightCut.LinedUp, 1);

    /// <summary>The aims to cut by; those of the job wherever they make no more than <see cref="Most"/> sections.</summary>
    public static Aims Bounded(Aims aims, MeasuredJob measured)
    {
        while (About(aims, measured) > Most && Counted(aims, measured) is > Most and var count)
            aims = aims with { LargestSectionM2 = aims.LargestSectionM2 * Math.Max(1.5, (double)count / Most) };
        return aims;
    }

    /// <param name="planned">Sections of the plan: finer ways of cutting may have been needed.</param>
    public static Reason MadeLarger(Aims asked, Aims used, int planned) => new("SectionsMadeLarger", Limit.AtYourWord,
        v => v.Say(
            $"Sections of at most {v.Area(asked.LargestSectionM2)} would be too many to plan at one time; the tops are cut into sections of up to {v.Area(used.LargestSectionM2)}, and {planned} of them are planned.",
            $"Con secciones de {v.Area(asked.LargestSectionM2)} como máximo serían demasiadas para planificarlas de una vez; las cubiertas se dividen en secciones de hasta {v.Area(used.LargestSectionM2)}, y se planifican {planned}."),
        v => v.Say("Allow larger sections, or split the tops over separate jobs.", "Permita secciones más grandes, o reparta las cubiertas en varios trabajos."));

    private static double About(Aims aims, MeasuredJob measured) => measured.Tops.Count + (measured.Total.CoatedM2 / aims.LargestSectionM2);

    private static int Counted(Aims aims, MeasuredJob measured) => measured.Tops.Sum(top => Sectioning.Cut(top, aims, Largest).Sections.Count);
}
