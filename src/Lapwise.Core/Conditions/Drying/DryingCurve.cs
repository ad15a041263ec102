using Lapwise.Core.Explain;

namespace Lapwise.Core.Conditions.Drying;

/// <summary>A wait against the temperature of the top over the day.</summary>
public static class DryingCurve
{
    /// <param name="course">In order of time, at least two points, at equal steps or not.</param>
    /// <param name="doneS">When the wait is over, from the first point.</param>
    public static Curve Of(Phrase title, TemperatureLaw law, IReadOnlyList<TemperatureAt> course, double doneS)
    {
        var start = course[0].Seconds;
        var (done, progress) = (0.0, new List<(double X, double Y)> { (0, 0) });
        foreach (var (from, to) in course.Zip(course.Skip(1)).TakeWhile(p => p.First.Seconds - start < doneS))
            progress.Add((to.Seconds - start, Math.Min(1, done += EquivalentAge.Progress(law, [from, to]))));
        return new Curve(
            title, v => v.Say("since the coat ended", "desde que acabó la capa"), (_, x) => Voice.Span(Math.Round(x / 60) * 60),
            CurveLine.Celsius(v => v.Say("temperature of the top", "temperatura de la cubierta"), [.. course.Take(progress.Count).Select(c => (c.Seconds - start, c.Celsius))]))
        {
            Second = CurveLine.Share(v => v.Say("share of the wait done", "parte de la espera cumplida"), progress),
            Marks = [new CurveMark(doneS, v => v.Say($"done after {Voice.Span(doneS)}", $"cumplida tras {Voice.Span(doneS)}"))],
        };
    }
}
