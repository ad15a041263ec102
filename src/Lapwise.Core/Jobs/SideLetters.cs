namespace Lapwise.Core.Jobs;

/// <summary>
/// Which side letters an outline has, in walking order, clockwise seen from above.
/// Rectangle and rounded rectangle: A back, B right, C front, D left (a corner arc belongs to the side before it).
/// L: A back, B right, C front of the leg, D inside of the leg, E front of the back run, F left.
/// U: A back, B right, C front of the right leg, D its inside, E front of the back run, F inside of the left leg,
/// G its front, H left. Circle and ellipse: one side A. Walk: one letter a side.
/// </summary>
public static class SideLetters
{
    /// <summary>As many sides as there are letters.</summary>
    public const int Most = 26;

    /// <summary>The letters of an outline that has been read.</summary>
    public static IReadOnlyList<char> Of(OutlineSpec outline) => outline switch
    {
        OutlineSpec.Rectangle or OutlineSpec.RoundedRectangle => First(4),
        OutlineSpec.L => First(6),
        OutlineSpec.U => First(8),
        OutlineSpec.Circle or OutlineSpec.Ellipse => First(1),
        OutlineSpec.Walk walk => First(walk.Sides.Count),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The letters of an outline as entered: they depend on the shape, never on its sizes.</summary>
    public static IReadOnlyList<char> Of(OutlineDocument outline) => outline.Shape switch
    {
        OutlineShape.Rectangle or OutlineShape.RoundedRectangle => First(4),
        OutlineShape.L => First(6),
        OutlineShape.U => First(8),
        OutlineShape.Circle or OutlineShape.Ellipse => First(1),
        OutlineShape.Walk => First(Math.Min(outline.Sides?.Count ?? 0, Most)),
        _ => [],
    };

    /// <summary>Letter of the side at a place in walking order, from 0 to <see cref="Most"/> − 1.</summary>
    public static char At(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Most);
        return (char)('A' + index);
    }

    /// <summary>Place of a side in walking order, from 0.</summary>
    public static int IndexOf(char letter)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(letter, 'A');
        ArgumentOutOfRangeException.ThrowIfGreaterThan(letter, 'Z');
        return letter - 'A';
    }

    private static char[] First(int count) => [.. Enumerable.Range(0, count).Select(At)];
}
