using Lapwise.Core.Measure;
using Lapwise.Drawings;

namespace Lapwise.Documents.Parts;

/// <summary>How much of the paper a top's drawing takes: small pieces stand two side by side, and what is left of a page may make one a little lower.</summary>
internal static class FigureSize
{
    private const double SmallPieceM = 1.3;

    /// <summary>A metre of a deep top, such as a U, is drawn no smaller than 3 cm where the page has room: its sections would not be told apart.</summary>
    private const double PtPerMetre = 85;

    /// <summary>A top is drawn no lower than this share of its height: sections must be told apart at arm's length.</summary>
    private const double Least = 0.7;

    public static Figure Of(string caption, Sheet sheet, Func<Sheet, Drawing> draw)
    {
        var whole = draw(sheet);
        return new(caption, whole) { Within = height => Lower(whole, sheet, draw, height) };
    }

    private static Drawing? Lower(Drawing whole, Sheet sheet, Func<Sheet, Drawing> draw, double height)
    {
        if (height < Least * whole.Height) return null;
        // Legend and notes stay as they are: one drawn too low on purpose tells what they add. Fitting is to half a point.
        var low = Least * whole.Height / 2;
        var below = draw(sheet with { MostHeight = low }).Height - low;
        var top = height - below - 1;
        if (top < Least * (whole.Height - below)) return null;
        var lower = draw(sheet with { MostHeight = top });
        return lower.Height <= height && Words(lower) >= Words(whole) ? lower : null;
    }

    /// <summary>What finds no room is left out of a drawing; on paper it cannot be looked for elsewhere.</summary>
    private static int Words(Drawing drawing) => drawing.Marks.Count(m => m is Mark.Text);

    /// <summary>To know the tops by, not to work from: two side by side where there are several.</summary>
    public static Sheet Overview(int tops, Paper paper) => tops == 1 ? new Sheet(paper.InnerWidthPt - 4, 225, 8.5) : new Sheet((paper.InnerWidthPt - 20) / 2, 190, 7);

    public static Sheet For(MeasuredTop top, Paper paper)
    {
        // Room for the thick lines that reach past the sheet on either side.
        var width = paper.InnerWidthPt - 4;
        var outline = Box.Over(top.Outline.Segments.SelectMany(s => s.Flatten(0.001)).Select(p => new Spot(p.X, p.Y)));
        if (Math.Max(outline.Width, outline.Height) < SmallPieceM && top.Faces.Count == 1) return new Sheet((width - 16) / 2, 150, 8);
        var deepM = outline.Height + top.Faces.Where(f => f.Kind != FaceKind.Flat).Sum(f => f.Ring.Max(p => p.Y));
        return new Sheet(width, Math.Clamp(deepM * PtPerMetre, 225, 420), 8.5);
    }
}
