namespace Lapwise.Drawings;

/// <summary>The colours of a drawing by their part, so that a page can change each one. They stay apart in grey.</summary>
public enum Colour { Ink, Soft, Paper, Top, Panel, Good, Narrow, Lost, First, Second, Third, Further, Wet, Shut }

/// <param name="Width">In tenths of the text size.</param>
/// <param name="Dash">On and off lengths in tenths of the text size; empty: a full line.</param>
public sealed record Pen(string Class, Colour Colour, double Width, IReadOnlyList<double> Dash);

public sealed record Fill(string Class, Colour Colour);

/// <param name="Scale">Size against the ordinary text.</param>
public sealed record Type(string Class, Colour Colour, double Scale, bool Bold);

/// <summary>How each meaning looks: the one place for line styles, washes and lettering.</summary>
public static class Pens
{
    /// <summary>Workshop paper: slate ink on a warm sheet, one ochre and one brick for what needs an eye.</summary>
    public static string Hex(Colour colour) => colour switch
    {
        Colour.Ink => "#20282d",
        Colour.Soft => "#66727a",
        Colour.Paper => "#ffffff",
        Colour.Top => "#f4efe4",
        Colour.Panel => "#e9e6df",
        Colour.Good => "#2f5d62",
        Colour.Narrow => "#774c00",
        Colour.Lost => "#8c1c13",
        Colour.First => "#f4efe4",
        Colour.Second => "#d9e2e1",
        Colour.Third => "#ead9c4",
        Colour.Further => "#d8d3de",
        Colour.Wet => "#b9d6d4",
        Colour.Shut => "#efd3cb",
        _ => throw new ArgumentOutOfRangeException(nameof(colour)),
    };

    /// <summary>Name of the CSS custom property that changes the colour on a page.</summary>
    public static string Property(Colour colour) => "--lw-" + colour.ToString().ToLowerInvariant();

    public static Pen Of(Ink ink) => ink switch
    {
        Ink.OpenEdge => new("lw-open", Colour.Ink, 2.2, []),
        Ink.WallEdge => new("lw-wall", Colour.Ink, 1, [1.2, 2.2]),
        Ink.SplashEdge => new("lw-splash", Colour.Ink, 1.6, [7, 2.2]),
        Ink.WaterfallEdge => new("lw-waterfall", Colour.Ink, 2.2, [9, 2.4, 1.6, 2.4]),
        Ink.Panel => new("lw-panel", Colour.Soft, 0.8, []),
        Ink.Cutout => new("lw-cutout", Colour.Ink, 1, []),
        Ink.Section => new("lw-section", Colour.Soft, 0.7, []),
        Ink.LapGood => new("lw-lap-good", Colour.Good, 1.2, []),
        Ink.LapNarrow => new("lw-lap-narrow", Colour.Narrow, 2.2, []),
        Ink.LapLost => new("lw-lap-lost", Colour.Lost, 3.6, []),
        Ink.Break => new("lw-break", Colour.Ink, 1.2, [4, 3]),
        Ink.Dimension => new("lw-dimension", Colour.Soft, 0.6, []),
        Ink.Diagonal => new("lw-diagonal", Colour.Soft, 0.6, [5, 2, 1, 2]),
        Ink.Hatch => new("lw-hatch", Colour.Soft, 0.45, []),
        Ink.Suspect => new("lw-suspect", Colour.Lost, 1.4, []),
        Ink.DryPass => new("lw-dry-pass", Colour.Soft, 0.9, []),
        Ink.Joining => new("lw-joining", Colour.Ink, 0.9, []),
        Ink.LapWaiting => new("lw-lap-waiting", Colour.Good, 2.6, [3, 2]),
        Ink.Untouched => new("lw-untouched", Colour.Soft, 0.5, [2, 2]),
        Ink.Curve => new("lw-curve", Colour.Ink, 2.2, []),
        Ink.SecondCurve => new("lw-second-curve", Colour.Good, 1.8, [5, 2.5]),
        Ink.Level => new("lw-level", Colour.Lost, 1.2, [1.5, 2]),
        Ink.Moment => new("lw-moment", Colour.Ink, 1.4, []),
        Ink.Leader => new("lw-leader", Colour.Soft, 0.5, []),
        _ => throw new ArgumentOutOfRangeException(nameof(ink)),
    };

    public static Fill Of(Wash wash) => wash switch
    {
        Wash.Top => new("lw-top", Colour.Top),
        Wash.Panel => new("lw-panel-face", Colour.Panel),
        Wash.Hole => new("lw-hole", Colour.Paper),
        Wash.FirstPerson => new("lw-first", Colour.First),
        Wash.SecondPerson => new("lw-second", Colour.Second),
        Wash.ThirdPerson => new("lw-third", Colour.Third),
        Wash.FurtherPerson => new("lw-further", Colour.Further),
        Wash.Stand => new("lw-stand", Colour.Ink),
        Wash.Untouched => new("lw-blank", Colour.Paper),
        Wash.Wet => new("lw-wet", Colour.Wet),
        Wash.Joined => new("lw-joined", Colour.Top),
        Wash.Shut => new("lw-shut", Colour.Shut),
        Wash.Behind => new("lw-behind", Colour.Paper),
        _ => throw new ArgumentOutOfRangeException(nameof(wash)),
    };

    public static Type Of(Lettering lettering) => lettering switch
    {
        Lettering.Side => new("lw-t-side", Colour.Ink, 1, false),
        Lettering.Letter => new("lw-t-letter", Colour.Ink, 1, true),
        Lettering.Number => new("lw-t-number", Colour.Ink, 1.6, true),
        Lettering.Clock => new("lw-t-clock", Colour.Ink, 0.85, false),
        Lettering.LapGood => new("lw-t-lap-good", Colour.Good, 0.85, false),
        Lettering.LapNarrow => new("lw-t-lap-narrow", Colour.Narrow, 0.85, true),
        Lettering.LapLost => new("lw-t-lap-lost", Colour.Lost, 0.85, true),
        Lettering.Break => new("lw-t-break", Colour.Ink, 0.85, false),
        Lettering.Name => new("lw-t-name", Colour.Ink, 0.9, false),
        Lettering.Legend => new("lw-t-legend", Colour.Ink, 0.9, false),
        Lettering.Note => new("lw-t-note", Colour.Ink, 0.9, false),
        Lettering.Warning => new("lw-t-warning", Colour.Lost, 0.9, true),
        _ => throw new ArgumentOutOfRangeException(nameof(lettering)),
    };
}
