using Lapwise.Core.Measure;
using Lapwise.Drawings;

namespace Lapwise.Documents.Parts;

/// <summary>How much of the paper a top's drawing takes: small pieces stand two side by side.</summary>
internal static class FigureSize
{
    private const double SmallPieceM = 1.3;

    /// <summary>To know the tops by, not to work from: two side by side where there are several.</summary>
    public static Sheet Overview(int tops, Paper paper) => tops == 1 ? new Sheet(paper.InnerWidthPt - 4, 225, 8.5) : new Sheet((paper.InnerWidthPt - 20) / 2, 190, 7);

    public static Sheet For(MeasuredTop top, Paper paper)
    {
        // Room for the thick lines that reach past the sheet on either side.
        var width = paper.InnerWidthPt - 4;
        var longest = top.Outline.Segments.SelectMany(s => s.Flatten(0.001)).ToList() is var points
            ? Math.Max(points.Max(p => p.X) - points.Min(p => p.X), points.Max(p => p.Y) - points.Min(p => p.Y))
            : 0;
        return longest < SmallPieceM && top.Faces.Count == 1 ? new Sheet((width - 16) / 2, 150, 8) : new Sheet(width, 225, 8.5);
    }
}
