using Lapwise.Core.Explain;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Bases;

/// <summary>What the take-off's numbers rest on.</summary>
public static class MeasureBases
{
    public static Basis Flat(params IReadOnlyList<MeasuredTop> tops) => new("A = ½ |Σ (xᵢ yᵢ₊₁ − xᵢ₊₁ yᵢ)| − Σ A_h",
        [
            .. tops.Select(t => new BasisInput(v => v.Say($"{t.Top.Name}, outline", $"{t.Top.Name}, contorno"), v => v.Area(t.Outline.AreaM2))),
            .. tops.SelectMany(t => t.Holes).Select(h => new BasisInput(v => v.Say($"cutout {h.Cutout.Name}", $"hueco {h.Cutout.Name}"), v => v.Area(h.AreaM2))),
        ], Sources.Geometry);

    public static Basis Edges(params IReadOnlyList<MeasuredTop> tops) => Strips(tops, StripKind.Nosing);

    public static Basis Rims(params IReadOnlyList<MeasuredTop> tops) => Strips(tops, StripKind.Rim);

    public static Basis Splashes(params IReadOnlyList<MeasuredTop> tops) => Uprights(tops, FaceKind.Splash);

    public static Basis Waterfalls(params IReadOnlyList<MeasuredTop> tops) => Uprights(tops, FaceKind.Waterfall);

    /// <param name="sums">Of those tops together.</param>
    public static Basis Coated(TakeOff sums) => new("A = Σ A_i",
        [
            new(v => v.Say("flat", "plano"), v => v.Area(sums.FlatM2)),
            new(v => v.Say("edges", "cantos"), v => v.Area(sums.EdgeM2)),
            new(v => v.Say("splashes", "salpicaderos"), v => v.Area(sums.SplashM2)),
            new(v => v.Say("waterfalls", "cascadas"), v => v.Area(sums.WaterfallM2)),
            new(v => v.Say("cutout rims", "bordes de huecos"), v => v.Area(sums.RimM2)),
        ], Sources.Geometry);

    public static Basis Misclosure(MeasuredTop top) => new("e = |Σ (l cos θ, l sin θ)|",
        [
            .. top.Outline.Segments.Select(s => new BasisInput(v => v.Say($"side {s.Side}, adjusted", $"lado {s.Side}, compensado"), v => v.Length(s.LengthM))),
            new(v => v.Say("the tape's step explains", "la graduación de la cinta explica"), v => v.Length(top.Closure.AllowedM)),
        ], Sources.Bowditch);

    public static Basis Diagonal(MeasuredTop top, DiagonalCheck diagonal) => new("d = √(Δx² + Δy²)",
        [
            .. top.Outline.Segments.Select(s => new BasisInput(v => v.Say($"side {s.Side}, adjusted", $"lado {s.Side}, compensado"), v => v.Length(s.LengthM))),
            new(v => v.Say("measured", "medida"), v => v.Length(diagonal.MeasuredM)),
        ], Sources.Geometry);

    private static Basis Strips(IReadOnlyList<MeasuredTop> tops, StripKind kind) => new("A = Σ l · w",
        [
            .. tops.SelectMany(t => t.Faces.SelectMany(f => f.Strips).Where(s => s.Kind == kind).GroupBy(s => Math.Round(s.WidthM, 6))
                .Select(strips => new BasisInput(_ => t.Top.Name, v => v.Say($"{v.Run(strips.Sum(s => s.LengthM))} × developed width {v.Length(strips.Key)}", $"{v.Run(strips.Sum(s => s.LengthM))} × ancho desarrollado {v.Length(strips.Key)}")))),
        ], Sources.Geometry);

    /// <summary>Splashes with their tops and ends, panels with their returns.</summary>
    private static Basis Uprights(IReadOnlyList<MeasuredTop> tops, FaceKind kind) => new("A = Σ (l · h + Σ l · w)",
        [
            .. tops.SelectMany(t => t.Faces).Where(f => f.Kind == kind)
                .Select(f => new BasisInput(v => v.Say($"{f.Top}, side {f.Side}", $"{f.Top}, lado {f.Side}"), v => v.Area(f.CoatedM2))),
        ], Sources.Geometry);
}
