using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Drawings;

/// <summary>Draws a top as measured: to scale, every side with its letter, length and kind.</summary>
public static class TopDrawing
{
    public static Drawing Draw(MeasuredTop top, Voice voice, Sheet sheet)
    {
        var sketch = SheetFitting.Fit(top, sheet, gapInText: 0.35, (sketch, layout) => Put(sketch, layout, top, voice));
        var legend = new Legend(sketch, sheet);
        legend.Row([.. Legend.Edges(top, voice)]);
        foreach (var hole in top.Holes) legend.Note(Lettering.Note, Words.Placed(hole, voice));
        foreach (var (style, text) in ClosingCheck(top, voice)) legend.Note(style, text);
        return legend.Finish(voice.Say($"{top.Top.Name}, as measured", $"{top.Top.Name}, según medida"), Describe(top, voice));
    }

    private static readonly double[] Shifts = [0, 0.15, -0.15, 0.3, -0.3];

    private static void Put(Sketch sketch, Layout layout, MeasuredTop top, Voice voice)
    {
        sketch.LaidAt(layout.PerMetre);
        foreach (var panel in layout.Panels) sketch.Area(Wash.Panel, panel.Ring);
        sketch.Area(Wash.Top, [layout.Outline, .. layout.Holes.Select(h => h.Ring)]);
        foreach (var panel in layout.Panels) sketch.Ring(Ink.Panel, panel.Ring);
        Edges(sketch, layout);
        Diagonals(sketch, layout, top.Closure);
        var named = NamePanels(sketch, layout, top.Top, voice);
        foreach (var side in layout.Sides) sketch.Grip(new Grip(side.Letter, side.Line, new Spot(0, 0)));
        foreach (var side in layout.Sides) Dimension(sketch, layout, side, top, voice, named.Contains(side.Letter));
        foreach (var (hole, ring) in layout.Holes) Cutout(sketch, hole, ring, voice);
    }

    internal static void Edges(Sketch sketch, Layout layout)
    {
        foreach (var (_, ring) in layout.Holes) sketch.Ring(Ink.Cutout, ring);
        foreach (var side in layout.Sides) sketch.Line(Words.InkOf(side.Edge), side.Line);
    }

    /// <summary>Writes what a panel is into it; the letters of those that had room.</summary>
    private static HashSet<char> NamePanels(Sketch sketch, Layout layout, Top top, Voice voice)
    {
        var named = new HashSet<char>();
        foreach (var (face, ring) in layout.Panels)
        {
            if (face.Side is not { } letter || !top.Edges.TryGetValue(letter, out var edge)) continue;
            var box = Box.Over(ring);
            var centre = new Spot((box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2);
            bool Inside(Box words) => words.Grown(1.5 * sketch.Unit).Corners.All(c => Shapes.Contains([ring], c));
            var text = sketch.TryText(Lettering.Name, [Kind(edge, voice)], [new(centre), new(centre, Upright: true)], Inside);
            if (text is null && SizeOf(edge, voice) is { Length: > 0 } size)
            {
                var half = new Spot(0, 0.55 * sketch.HeightOf(Lettering.Name));
                text = sketch.TryText(Lettering.Name, [Words.Kind(edge, voice)], [new(centre - half)], Inside);
                if (text is not null && sketch.TryText(Lettering.Name, [size], [new(centre + half)], Inside) is null) text = null;
            }
            if (text is not null) named.Add(letter);
        }
        return named;
    }

    /// <param name="named">What the side is stands in its panel already.</param>
    private static void Dimension(Sketch sketch, Layout layout, SideOnSheet side, MeasuredTop top, Voice voice, bool named)
    {
        var suspect = !top.Closure.Closes && top.Closure.SuspectSides.Contains(side.Letter);
        var words = string.Join(" · ", new[] { suspect ? $"{side.Letter} ?" : side.Letter.ToString(), SizeOf(side, top.Top, voice), named ? "" : Kind(side.Edge, voice) }.Where(w => w.Length > 0));
        var clear = layout.Reach(side) + (0.9 * sketch.TextSize);
        if (Span(side, top.Top.Outline, layout) is { } span)
        {
            var outward = (span.To - span.From).Outward.Unit;
            var (from, to) = (span.From + (outward * clear), span.To + (outward * clear));
            sketch.Line(Ink.Dimension, from, to);
            foreach (var (end, edge) in new[] { (from, span.From), (to, span.To) })
                sketch.Line(Ink.Dimension, edge + (outward * (0.3 * sketch.TextSize)), end + (outward * (0.25 * sketch.TextSize)));
            if (suspect) Suspect(sketch, from, to);
        }
        SideLabel(sketch, [.. layout.Solids], side, words, clear, suspect ? Lettering.Warning : Lettering.Side);
    }

    /// <summary>A side's text beyond everything that lies beside it, along the side where that reads well.</summary>
    internal static void SideLabel(Sketch sketch, IReadOnlyList<IReadOnlyList<Spot>> solids, SideOnSheet side, string words, double clear, Lettering style)
    {
        var (middle, outward) = side.Middle;
        var upright = Math.Abs(outward.X) > 0.98 && words.Length > 3;
        var half = new Spot(sketch.WidthOf(style, words) / 2, sketch.HeightOf(style) / 2);
        var places =
            from step in Enumerable.Range(0, 8)
            from shift in Shifts
            from turn in Enumerable.Range(0, upright ? 2 : 1)
            let up = upright && turn == 0
            let depth = (Math.Abs(outward.X) * (up ? half.Y : half.X)) + (Math.Abs(outward.Y) * (up ? half.X : half.Y))
            let out_ = clear + (0.25 * sketch.TextSize) + depth + (step * 0.6 * sketch.TextSize)
            select new Place(middle + (outward * out_) + (outward.Outward * (shift * Shapes.Length(side.Line))), up);
        sketch.Text(style, words, places, box => !solids.Any(ring => Shapes.Overlap(ring, box.Corners)), behind: true);
    }

    /// <summary>A zigzag: a side to measure again.</summary>
    private static void Suspect(Sketch sketch, Spot from, Spot to)
    {
        var outward = (to - from).Outward.Unit * (0.2 * sketch.TextSize);
        var teeth = Math.Max(2, (int)((to - from).Length / (0.5 * sketch.TextSize)));
        sketch.Line(Ink.Suspect, [.. Enumerable.Range(0, teeth + 1).Select(i => from + ((to - from) * ((double)i / teeth)) + (outward * (i % 2 == 0 ? 1 : -1)))]);
    }

    /// <summary>The two ends of what is dimensioned along a side; null where a line would mislead, as along an arc.</summary>
    private static (Spot From, Spot To)? Span(SideOnSheet side, OutlineSpec outline, Layout layout)
    {
        if (side.Straight is not { } straight) return null;
        if (outline is not OutlineSpec.RoundedRectangle rounded) return straight;
        var corner = (straight.To - straight.From).Unit * (rounded.RadiusM * layout.PerMetre);
        return (straight.From - corner, straight.To + corner);
    }

    private static string SizeOf(SideOnSheet side, Top top, Voice voice) => top.Outline switch
    {
        OutlineSpec.RoundedRectangle rounded => voice.Length(side.Letter is 'A' or 'C' ? rounded.LengthM : rounded.DepthM),
        OutlineSpec.Circle circle => "ø " + voice.Length(circle.DiameterM),
        OutlineSpec.Ellipse ellipse => $"{voice.Length(ellipse.LengthM)} × {voice.Length(ellipse.DepthM)}",
        _ => voice.Length(side.LengthM) + (side.Straight is null ? voice.Say(" arc", " de arco") : ""),
    };

    /// <summary>How far a splash rises or a panel drops.</summary>
    private static string SizeOf(Edge edge, Voice voice) => edge switch
    {
        Edge.Splash splash => voice.Length(splash.HeightM),
        Edge.Waterfall fall => voice.Length(fall.DropM),
        _ => "",
    };

    private static string Kind(Edge edge, Voice voice) => $"{Words.Kind(edge, voice)} {SizeOf(edge, voice)}".TrimEnd();

    private static void Cutout(Sketch sketch, Hole hole, IReadOnlyList<Spot> ring, Voice voice)
    {
        var box = Box.Over(ring);
        var centre = new Spot((box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2);
        var line = sketch.HeightOf(Lettering.Name);
        bool Inside(Box text) => text.Left > box.Left && text.Right < box.Right && text.Top > box.Top && text.Bottom < box.Bottom;
        if (sketch.TryText(Lettering.Name, [hole.Cutout.Name], [new(centre - new Spot(0, line * 0.55)), new(centre), new(centre, Upright: true)], Inside) is null)
        {
            // Too small for its name: the name stands beside it.
            sketch.Text(Lettering.Name, hole.Cutout.Name,
                new[] { box.Bottom + line, box.Top - line }.Select(y => new Place(new Spot(centre.X, y))));
            return;
        }
        sketch.TryText(Lettering.Name, [Words.Size(hole, voice)], [new(centre + new Spot(0, line * 0.55))], Inside);
    }

    private static void Diagonals(Sketch sketch, Layout layout, Closure closure)
    {
        foreach (var check in closure.Diagonals)
        {
            var from = layout.Sides.FirstOrDefault(s => s.Letter == check.From);
            var to = layout.Sides.FirstOrDefault(s => s.Letter == check.To);
            if (from is not null && to is not null) sketch.Line(Ink.Diagonal, from.Line[0], to.Line[0]);
        }
    }

    /// <summary>What the tape's own check says, in sentences.</summary>
    public static IEnumerable<(Lettering Style, string Text)> ClosingCheck(MeasuredTop top, Voice voice)
    {
        var closure = top.Closure;
        var walked = top.Top.Outline is OutlineSpec.Walk;
        if (walked && closure.Closes)
            yield return (Lettering.Note, voice.Say(
                $"The tape closes: {voice.Length(closure.MisclosureM)} open over {voice.Length(closure.PerimeterM)} round.",
                $"La medida cierra: {voice.Length(closure.MisclosureM)} de error en {voice.Length(closure.PerimeterM)} de contorno."));
        if (walked && !closure.Closes)
            yield return (Lettering.Warning, voice.Say(
                $"The tape does not close: {voice.Length(closure.MisclosureM)} open, {voice.Length(closure.AllowedM)} allowed. Measure again: {string.Join(", ", closure.SuspectSides)}.",
                $"La medida no cierra: {voice.Length(closure.MisclosureM)} de error, {voice.Length(closure.AllowedM)} admitido. Mida otra vez: {string.Join(", ", closure.SuspectSides)}."));
        if (walked && DrawnOtherwise(top, voice) is { Length: > 0 } sides)
            yield return (Lettering.Note, voice.Say($"Drawn so that it closes: {sides}.", $"Dibujado para que cierre: {sides}."));
        foreach (var d in closure.Diagonals)
            yield return (Lettering.Note, voice.Say(
                $"Diagonal {d.From}–{d.To}: {voice.Length(d.MeasuredM)} by tape, {voice.Length(d.ComputedM)} from the sides.",
                $"Diagonal {d.From}–{d.To}: {voice.Length(d.MeasuredM)} con la cinta, {voice.Length(d.ComputedM)} por los lados."));
    }

    /// <summary>The sides whose length as drawn reads otherwise than as taped.</summary>
    private static string DrawnOtherwise(MeasuredTop top, Voice voice) =>
        string.Join(", ", Letters(top).Where(s => voice.Length(top.DrawnM(s)) != voice.Length(top.TapedM(s))).Select(s => $"{s} {voice.Length(top.DrawnM(s))}"));

    private static IEnumerable<char> Letters(MeasuredTop top) => top.Outline.Segments.Select(s => s.Side).Distinct();

    private static string Describe(MeasuredTop top, Voice voice)
    {
        var sides = Letters(top).Select(side =>
        {
            var edge = top.Top.Edges.TryGetValue(side, out var e) ? e : new Edge.Wall();
            return voice.Say($"side {side} {voice.Length(top.TapedM(side))}, {Kind(edge, voice)}", $"lado {side} {voice.Length(top.TapedM(side))}, {Kind(edge, voice)}");
        });
        var sentences = new List<string> { string.Join("; ", sides) + "." };
        sentences.AddRange(top.Holes.Select(h => Words.Placed(h, voice) + "."));
        sentences.AddRange(ClosingCheck(top, voice).Select(c => c.Text));
        sentences.Add(voice.Say($"Flat {voice.Area(top.TakeOff.FlatM2)}, coated in all {voice.Area(top.TakeOff.CoatedM2)}.", $"Plano {voice.Area(top.TakeOff.FlatM2)}, recubierto en total {voice.Area(top.TakeOff.CoatedM2)}."));
        return string.Join(" ", sentences);
    }
}
