namespace Lapwise.Drawings.Tests;

/// <summary>No text of a drawing lies on another or off the sheet.</summary>
internal static class Overlaps
{
    public static void None(Drawing drawing)
    {
        var texts = drawing.Marks.OfType<Mark.Text>().ToList();
        Assert.NotEmpty(texts);
        for (var i = 0; i < texts.Count; i++)
        {
            var box = texts[i].Box;
            Assert.True(box.Left >= -0.5 && box.Top >= -0.5 && box.Right <= drawing.Width + 0.5 && box.Bottom <= drawing.Height + 0.5,
                $"{drawing.Title}: \"{texts[i].Words}\" leaves the sheet ({box} of {drawing.Width} × {drawing.Height})");
            for (var j = 0; j < i; j++)
                Assert.False(box.Overlaps(texts[j].Box), $"{drawing.Title}: \"{texts[i].Words}\" lies on \"{texts[j].Words}\"");
        }
    }
}
