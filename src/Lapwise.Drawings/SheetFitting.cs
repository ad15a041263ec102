using Lapwise.Core.Measure;
using Lapwise.Core.Work;

namespace Lapwise.Drawings;

/// <summary>Finds the scale at which a top with its texts fills the sheet.</summary>
internal static class SheetFitting
{
    /// <summary>A top is best known as it was measured: only where it is drawn so much larger is it turned.</summary>
    private const double WorthTurning = 1.4;

    /// <param name="gapInText">Room between a side and its unfolded panel, against the text size.</param>
    public static Sketch Fit(MeasuredTop top, Sheet sheet, double gapInText, Action<Sketch, Layout> put) =>
        Slices.AtOnce(FitAsync(top, sheet, gapInText, (sketch, layout) =>
        {
            put(sketch, layout);
            return ValueTask.CompletedTask;
        }));

    /// <summary>The same for what is put in slices.</summary>
    /// <param name="mayTurn">A long top may lie along a tall sheet, where that makes it much larger.</param>
    public static async ValueTask<Sketch> FitAsync(MeasuredTop top, Sheet sheet, double gapInText, Func<Sketch, Layout, ValueTask> put, bool mayTurn = false)
    {
        var gap = gapInText * sheet.TextSize;
        var turned = Box.Over(new Layout(top, 1, 0, isTurned: true).Everything);
        var metres = Box.Over(new Layout(top, 1, 0).Everything);
        var isTurned = mayTurn && sheet.MostHeight > sheet.Width && Filling(sheet, turned) >= WorthTurning * Filling(sheet, metres);
        if (isTurned) metres = turned;
        return await ScaledAsync(sheet, metres, (sketch, scale) => put(sketch, new Layout(top, scale, gap, isTurned)));
    }

    /// <summary>The same for what is no whole top.</summary>
    /// <param name="metres">What it takes at one sheet unit a metre; flat where it is one line.</param>
    public static Sketch Fit(Sheet sheet, Box metres, Action<Sketch, double> put) =>
        Slices.AtOnce(ScaledAsync(sheet, metres, (sketch, scale) =>
        {
            put(sketch, scale);
            return ValueTask.CompletedTask;
        }));

    private static async ValueTask<Sketch> ScaledAsync(Sheet sheet, Box metres, Func<Sketch, double, ValueTask> put)
    {
        var scale = Filling(sheet, metres);
        // Texts do not grow with the scale, so what they add is measured and the scale solved again; twice settles it.
        for (var attempt = 0; ; attempt++)
        {
            var sketch = new Sketch(sheet.TextSize);
            await put(sketch, scale);
            var box = sketch.Bounds();
            var fits = box.Width <= sheet.Width + 0.5 && box.Height <= sheet.MostHeight + 0.5;
            if (attempt == 4 || (fits && attempt > 0))
            {
                sketch.Move(new Spot(Math.Max(0, (sheet.Width - box.Width) / 2) - box.Left, sketch.Unit - box.Top));
                return sketch;
            }
            var wide = (sheet.Width - (box.Width - (metres.Width * scale))) / metres.Width;
            var high = (sheet.MostHeight - (box.Height - (metres.Height * scale))) / metres.Height;
            scale = Math.Max(Math.Min(wide, high), 0.2 * scale);
        }
    }

    private static double Filling(Sheet sheet, Box metres) => Math.Min(sheet.Width / metres.Width, sheet.MostHeight / metres.Height);
}
