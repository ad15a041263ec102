using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Drawings;

/// <summary>Draws a top whose outline is not there yet: the sides taped so far, to scale, each with its letter and length.</summary>
public static class SoFarDrawing
{
    private const double ChordErrorM = 0.0005;
    /// <summary>Of what a whole top may take: it is looked at beside the field that is typed into.</summary>
    private const double ShareOfHeight = 0.55;

    public static Drawing Draw(OutlineSoFar top, Voice voice, Sheet sheet)
    {
        var sketch = SheetFitting.Fit(sheet with { MostHeight = ShareOfHeight * sheet.MostHeight }, Box.Over(On(top, 1).SelectMany(s => s.Line)), (sketch, scale) => Put(sketch, On(top, scale), top, voice));
        var legend = new Legend(sketch, sheet);
        if (IsOpen(top)) legend.Row(Legend.Stroke(Ink.Diagonal, voice.Say("still open", "aún abierto")));
        var letters = string.Join(", ", top.Sides.Select(s => s.Side));
        legend.Note(Lettering.Note, top.Sides.Count == 1
            ? voice.Say($"So far: side {letters}.", $"Hasta ahora: el lado {letters}.")
            : voice.Say($"So far: sides {letters}.", $"Hasta ahora: los lados {letters}."));
        return legend.Finish(voice.Say($"{top.Name}, so far", $"{top.Name}, hasta ahora"), Describe(top, voice));
    }

    private static void Put(Sketch sketch, IReadOnlyList<SideOnSheet> sides, OutlineSoFar top, Voice voice)
    {
        IReadOnlyList<Spot> ring = [.. sides.SelectMany(s => s.Line)];
        if (IsOpen(top)) sketch.Line(Ink.Diagonal, ring[^1], ring[0]);
        foreach (var side in sides)
        {
            sketch.Line(Ink.Cutout, side.Line);
            sketch.Grip(new Grip(side.Letter, side.Line, new Spot(0, 0)));
        }

        foreach (var side in sides) TopDrawing.SideLabel(sketch, [ring], side, $"{side.Letter} · {SizeOf(side, voice)}", 0.5 * sketch.TextSize, Lettering.Side);
    }

    private static IReadOnlyList<SideOnSheet> On(OutlineSoFar top, double scale) => [.. top.Sides.Select(side =>
    {
        IReadOnlyList<Spot> line = [.. side.Flatten(ChordErrorM).Prepend(side.From).Select(p => new Spot(p.X, p.Y) * scale)];
        return new SideOnSheet(side.Side, new Edge.Wall(), line, side is Segment.Line ? (line[0], line[^1]) : null, side.LengthM);
    })];

    /// <summary>Two sides walked leave a gap to close; of one, and of a shape entered by its sizes, a line back would say nothing.</summary>
    private static bool IsOpen(OutlineSoFar top) => top.IsWalked && top.Sides.Count > 1 && top.Sides[^1].To.DistanceTo(top.Sides[0].From) > ChordErrorM;

    private static string SizeOf(SideOnSheet side, Voice voice) => voice.Length(side.LengthM) + (side.Straight is null ? voice.Say(" arc", " de arco") : "");

    private static string Describe(OutlineSoFar top, Voice voice) =>
        voice.Say("Not whole yet: ", "Aún incompleta: ") + string.Join("; ", top.Sides.Select(s => voice.Say($"side {s.Side} {voice.Length(s.LengthM)}", $"lado {s.Side} {voice.Length(s.LengthM)}"))) + ".";
}
