using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Drawings;

/// <summary>The words a drawing and its sheet share.</summary>
public static class Words
{
    public static string Kind(Edge edge, Voice voice) => edge switch
    {
        Edge.Open => voice.Say("open", "libre"),
        Edge.Wall => voice.Say("wall", "pared"),
        Edge.Splash => voice.Say("splash", "salpicadero"),
        Edge.Waterfall => voice.Say("waterfall", "cascada"),
        _ => throw new ArgumentOutOfRangeException(nameof(edge)),
    };

    public static Ink InkOf(Edge edge) => edge switch
    {
        Edge.Open => Ink.OpenEdge,
        Edge.Wall => Ink.WallEdge,
        Edge.Splash => Ink.SplashEdge,
        Edge.Waterfall => Ink.WaterfallEdge,
        _ => throw new ArgumentOutOfRangeException(nameof(edge)),
    };

    /// <summary>A cutout with its size and its place: centre along side A and in from it.</summary>
    public static string Placed(Hole hole, Voice voice)
    {
        var (name, along, into) = (hole.Cutout.Name, voice.Length(hole.Cutout.AlongM), voice.Length(hole.Cutout.InM));
        return voice.Say(
            $"{name}: {Size(hole, voice)}, centre {along} along A, {into} in from A",
            $"{name}: {Size(hole, voice)}, centro a {along} por el lado A, a {into} de A");
    }

    public static string Size(Hole hole, Voice voice)
    {
        var box = Box.Over(hole.Segments.SelectMany(s => s.Flatten(0.0001)).Select(p => new Spot(p.X, p.Y)));
        return hole.Cutout.Shape == CutoutShape.Circle
            ? "ø " + voice.Length(box.Width)
            : $"{voice.Length(box.Width)} × {voice.Length(box.Height)}";
    }
}
