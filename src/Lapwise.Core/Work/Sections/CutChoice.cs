using Lapwise.Core.Explain;

namespace Lapwise.Core.Work.Sections;

/// <summary>What becomes of the corner where two arms of a top meet.</summary>
public enum CornerCut
{
    OnItsOwn,
    /// <summary>It stays with the arm that runs along the top's length.</summary>
    WithTheLength,
    /// <summary>It stays with the arm that runs square to the top's length.</summary>
    WithTheLegs,
    /// <summary>Cut from the inner corner to the outer one.</summary>
    Mitred,
}

/// <summary>Where section lines fall at a cutout.</summary>
public enum CutoutCut { AnyPlace, ThroughTheMiddle, AtTheEnds }

/// <summary>How splashes and panels are cut along their length.</summary>
public enum UprightCut
{
    /// <summary>At the lines of the flat, so that each part folds onto one section.</summary>
    LinedUp,
    /// <summary>Into as few parts as the largest section allows.</summary>
    Fewest,
}

/// <summary>How a top is cut.</summary>
public abstract record CutChoice
{
    private CutChoice() { }

    /// <summary>Strips as deep as one can reach, marching along each arm.</summary>
    /// <param name="Finer">How many times smaller than the largest section a strip aims to be, from 1.</param>
    public sealed record Strips(CornerCut Corners, CutoutCut Cutouts, UprightCut Uprights, double Finer) : CutChoice;

    /// <summary>The usual way: parts of about 4 ft × 2 ft, whatever the reach. Common practice, no source.</summary>
    public sealed record UsualGrid : CutChoice;

    /// <summary>Every face at once, cut at planned joints only: for a coat that bears no lap.</summary>
    public sealed record WholeFaces : CutChoice;

    /// <summary>As few parts as one batch each can cover, straight across each top: for a coat that is poured.</summary>
    /// <param name="MostFilmM2">Film that one batch covers.</param>
    public sealed record Pours(double MostFilmM2) : CutChoice;

    /// <summary>At the finisher's own lines, and nowhere else.</summary>
    public sealed record Given : CutChoice;

    /// <summary>How this choice is told to a person.</summary>
    public Phrase Text => this switch
    {
        Strips s => v => string.Join(", ", new[] { Strip(v, s.Finer), Corner(v, s.Corners), Cutout(v, s.Cutouts), Upright(v, s.Uprights) }),
        WholeFaces => v => v.Say("every face at once", "cada cara de una vez"),
        Pours => v => v.Say("one part for each batch", "una parte por mezcla"),
        Given => v => v.Say("your own lines", "sus propias líneas"),
        _ => v => v.Say("parts of about 4 ft × 2 ft", "partes de unos 1,2 m × 0,6 m"),
    };

    private static string Strip(Voice v, double finer) => finer <= 1
        ? v.Say("strips as large as allowed", "franjas tan grandes como se permite")
        : v.Say($"strips of 1/{v.Number(finer, 1)} of the largest section", $"franjas de 1/{v.Number(finer, 1)} de la sección mayor");

    private static string Corner(Voice v, CornerCut corner) => corner switch
    {
        CornerCut.OnItsOwn => v.Say("corners on their own", "esquinas aparte"),
        CornerCut.WithTheLength => v.Say("corners with the long arm", "esquinas con el tramo largo"),
        CornerCut.WithTheLegs => v.Say("corners with the legs", "esquinas con las alas"),
        _ => v.Say("corners mitred", "esquinas a inglete"),
    };

    private static string Cutout(Voice v, CutoutCut cutout) => cutout switch
    {
        CutoutCut.AnyPlace => v.Say("cutouts wherever they fall", "huecos donde caigan"),
        CutoutCut.ThroughTheMiddle => v.Say("lines through the middle of cutouts", "líneas por el centro de los huecos"),
        _ => v.Say("lines at the ends of cutouts", "líneas en los extremos de los huecos"),
    };

    private static string Upright(Voice v, UprightCut upright) => upright switch
    {
        UprightCut.LinedUp => v.Say("uprights lined up with the flat", "verticales alineados con el plano"),
        _ => v.Say("uprights in as few parts as allowed", "verticales en las menos partes posibles"),
    };
}
