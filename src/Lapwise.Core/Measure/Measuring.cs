using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>What is there to coat, and is my tape right?</summary>
public static class Measuring
{
    /// <summary>Closes and takes off every top; a top whose geometry does not work is left out and said in the faults.</summary>
    public static MeasuredJob Measure(Job job)
    {
        var faults = new List<Fault>();
        MeasuredTop[] tops = [.. job.Tops.Select(t => MeasureTop(t, faults)).OfType<MeasuredTop>()];
        return new MeasuredJob(tops, TakeOff.Sum(job.Name, tops), faults);
    }

    private static MeasuredTop? MeasureTop(Top top, List<Fault> faults)
    {
        if (Closing.Close(top, faults) is not { } closed) return null;

        var found = new List<Fault>();
        var outline = new Outline(closed.Segments, closed.Segments.Sum(s => s.SignedAreaM2), closed.Segments.Sum(s => s.LengthM));
        var holes = Cutouts.Place(top, outline, found);
        var sides = Sides(top, outline);
        var nosingM = NosingWidths(top, sides, found);
        CheckBreaks(top, sides, found);
        CheckSplashEnds(top, sides, found);
        faults.AddRange(found);
        if (found.Count > 0) return null;

        var (faces, folds) = Faces.Of(top, outline, holes, sides, nosingM);
        return new MeasuredTop(top, outline, holes, closed.Closure, faces, folds, TakeOffOf(top.Name, outline, holes, faces, closed.Closure.MisclosureM));
    }

    /// <summary>A side that nothing was said of is a wall.</summary>
    private static Side[] Sides(Top top, Outline outline) =>
        [.. outline.Segments.GroupBy(s => s.Side).Select(g => new Side(g.Key, top.Edges.GetValueOrDefault(g.Key) ?? new Edge.Wall(), [.. g]))];

    private static Dictionary<char, double> NosingWidths(Top top, IReadOnlyList<Side> sides, List<Fault> faults)
    {
        var widths = new Dictionary<char, double>();
        foreach (var side in sides)
        {
            if (side.Edge is not Edge.Open { Profile: var profile }) continue;
            if (EdgeProfiles.DevelopedWidthM(profile, top.ThicknessM) is { } width)
            {
                widths[side.Letter] = width;
                continue;
            }

            var path = $"{top.Path}.edges.{side.Letter}.profile";
            faults.Add(profile.Shape == ProfileShape.Measured
                ? MeasureFaults.ProfileWithoutWidth(path)
                : MeasureFaults.ProfileDoesNotFit(path, profile, top.ThicknessM));
        }

        return widths;
    }

    private static void CheckBreaks(Top top, IReadOnlyList<Side> sides, List<Fault> faults)
    {
        for (var i = 0; i < top.Breaks.Count; i++)
        {
            var line = top.Breaks[i];
            var path = $"{top.Path}.breaks[{i}]";
            if (sides.First(s => s.Letter == line.Side).Segments[0] is not Segment.Line straight) faults.Add(MeasureFaults.BreakOnCurve(path, line));
            else if (!(line.AtM > 0 && line.AtM < straight.LengthM)) faults.Add(MeasureFaults.BreakOutside(path, line, straight.LengthM));
        }
    }

    /// <summary>The end of a splash is as wide as its top; without that width its film would be forgotten.</summary>
    private static void CheckSplashEnds(Top top, IReadOnlyList<Side> sides, List<Fault> faults) => faults.AddRange(sides
        .Where(s => s.Edge is Edge.Splash { CoatedEnds: > 0, TopWidthM: <= 0 })
        .Select(s => MeasureFaults.SplashEndWithoutWidth($"{top.Path}.edges.{s.Letter}.topWidth")));

    private static TakeOff TakeOffOf(string name, Outline outline, IReadOnlyList<Hole> holes, IReadOnlyList<Face> faces, double misclosureM)
    {
        return new TakeOff(
            name,
            FlatM2: outline.AreaM2 - holes.Sum(h => h.AreaM2),
            EdgeM2: StripsM2(StripKind.Nosing),
            SplashM2: FacesM2(FaceKind.Splash),
            WaterfallM2: FacesM2(FaceKind.Waterfall),
            RimM2: StripsM2(StripKind.Rim),
            misclosureM);

        double FacesM2(FaceKind kind) => faces.Where(f => f.Kind == kind).Sum(f => f.CoatedM2);
        double StripsM2(StripKind kind) => faces.SelectMany(f => f.Strips).Where(s => s.Kind == kind).Sum(s => s.AreaM2);
    }
}
