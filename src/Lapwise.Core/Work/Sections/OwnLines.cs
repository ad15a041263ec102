using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>What a drag gave: the changed document, or why the line stays.</summary>
public sealed record LineMoved(JobDocument? Document, Reason? Refused);

/// <summary>A line between sections of a flat, with the way it can be moved.</summary>
/// <param name="Cut">Its number in the plan.</param>
/// <param name="Laps">The laps along it.</param>
/// <param name="Line">As it is given from a side.</param>
/// <param name="Middle">A point of it, in plan.</param>
/// <param name="Way">Square to it and onward along its side, in plan, of length 1.</param>
/// <param name="PerMetre">How far it goes that way while its place on the side goes on by a metre; 1 for a line square to its side.</param>
public sealed record LineOnFlat(int Cut, IReadOnlyList<Lap> Laps, SectionLine Line, PointM Middle, PointM Way, double PerMetre)
{
    /// <summary>Where it is to run when it is moved so far that way.</summary>
    public PointM MovedBy(double metres) => new(Middle.X + (Way.X * metres), Middle.Y + (Way.Y * metres));

    /// <summary>Where it is to run when it meets its side so far from the side's start.</summary>
    public PointM MovedTo(double atM) => MovedBy((atM - Line.AtM) * PerMetre);
}

/// <summary>The finisher's own lines between sections, as a drag on a drawing writes them into the document.</summary>
public static class OwnLines
{
    /// <summary>
    /// The document with every line of the top as the plan has it, and that of one lap moved so that it runs through a point;
    /// with a line of the flat goes the line of a splash or panel that it ends at. From then on the top is cut at these lines; the
    /// order is planned anew.
    /// </summary>
    /// <param name="work">The plan that was drawn.</param>
    /// <param name="lap">A lap of that plan; the whole line it is a part of moves.</param>
    /// <param name="to">In the plane of section <see cref="Lap.A"/>, as the lap's own line.</param>
    public static LineMoved Move(JobDocument document, MeasuredTop top, CoatWork work, Lap lap, PointM to)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (lap.Kind is not LapKind.Flat || lap.Cut is null) return new LineMoved(null, NotALineToMove);
        var faces = work.Sections.Where(s => s.Face.Top == top.Top.Name).ToDictionary(s => s.Id, s => s.Face, StringComparer.Ordinal);
        var drawn = Drawn(work.Laps.Where(l => faces.ContainsKey(l.A) && l.Kind is LapKind.Flat && l.Cut is not null).Select(l => (l.Cut!.Value, faces[l.A], l.Line)));
        var line = drawn[lap.Cut.Value];
        if (line.Through(to) is not { } moved) return new LineMoved(null, LineOffTop(top));
        foreach (var (cut, upright) in LinedUp(top, line, moved, drawn).ToList()) drawn[cut] = upright;
        drawn[lap.Cut.Value] = moved;

        var written = Written(top, drawn.Values);
        if (written.Contains(null)) return new LineMoved(null, NotALineToMove);
        return new LineMoved(With(document, top.Top.Name, [.. written.Select(line => Document(line!, document.Units))]), null);
    }

    /// <summary>The lines of uprights that a line of the flat ends at, moved to where it then meets their fold.</summary>
    private static IEnumerable<(int Cut, DrawnLine Line)> LinedUp(MeasuredTop top, DrawnLine line, DrawnLine moved, SortedDictionary<int, DrawnLine> drawn)
    {
        const double sameM = 0.001;
        if (line.Face.Kind is not FaceKind.Flat) yield break;
        foreach (var fold in top.Folds)
        {
            var ends = line.Crossings(fold.LineOnFlat).Where(c => line.Stretches.Any(s => Math.Min(s.From.DistanceTo(c.At), s.To.DistanceTo(c.At)) < sameM));
            foreach (var (end, endM) in ends)
            {
                var then = moved.Crossings(fold.LineOnFlat).OrderBy(c => c.At.DistanceTo(end)).Select(c => (double?)OnOther(c.AlongM)).FirstOrDefault();
                foreach (var (cut, upright) in drawn.Where(d => d.Value.Face.Id == fold.OtherFace && Math.Abs(d.Value.On.X - OnOther(endM)) < sameM))
                    if (then is { } x && upright.Through(new PointM(x, upright.On.Y)) is { } beside) yield return (cut, beside);
            }

            double OnOther(double alongM) => fold.LineOnOther[0].X + (alongM * fold.LengthM / Plane.Length(fold.LineOnFlat));
        }
    }

    /// <summary>The lines of a top's flat that can be moved, in the order of cutting.</summary>
    public static IReadOnlyList<LineOnFlat> OnFlat(MeasuredTop top, CoatWork work)
    {
        var flat = work.Sections.Where(s => s.Face.Top == top.Top.Name && s.Face.Kind is FaceKind.Flat).ToDictionary(s => s.Id, s => s.Face, StringComparer.Ordinal);
        var cuts = work.Laps.Where(l => flat.ContainsKey(l.A) && l.Kind is LapKind.Flat && l.Cut is not null).GroupBy(l => l.Cut!.Value).OrderBy(g => g.Key);
        return [.. cuts.Select(laps => OnFlat(top, laps.Key, [.. laps], flat[laps.First().A])).OfType<LineOnFlat>()];
    }

    private static LineOnFlat? OnFlat(MeasuredTop top, int cut, IReadOnlyList<Lap> laps, Face face)
    {
        // A line nearly along its side would fly off at a touch.
        const double leastPerMetre = 0.1;
        var drawn = DrawnLine.Of(face, [.. laps.Select(l => (l.Line[0], l.Line[^1]))]);
        if (LineWriting.Write(top, drawn.Runs().First()) is not { } line) return null;
        var side = TopCutting.SideLine(top, line.Side);
        var onward = Plane.Part(side, line.AtM, double.MaxValue);
        var along = onward.Count < 2 ? Axis.From(side[^2], side[^1]) : Axis.From(onward[0], onward[1]);
        var way = drawn.Along.Quarter.Dot(along) < 0 ? drawn.Along.Quarter.Opposite : drawn.Along.Quarter;
        return way.Dot(along) < leastPerMetre ? null : new LineOnFlat(cut, laps, line, drawn.Middle, new PointM(way.X, way.Y), way.Dot(along));
    }

    /// <summary>The document with the lines of a top left to the planner again.</summary>
    public static JobDocument Release(JobDocument document, string top) => With(document, top, null);

    /// <summary>The lines of a cut top as a finisher would give them, in the order of cutting; null for one that cannot be given.</summary>
    public static IReadOnlyList<SectionLine?> Of(CutTop cut) =>
        Written(cut.Top, Drawn(cut.Seams.Where(s => s.Kind is LapKind.Flat).Select(s => (s.Cut!.Value, cut.Sections[s.A].Face, s.Line))).Values);

    private static List<SectionLine?> Written(MeasuredTop top, IEnumerable<DrawnLine> lines) => [.. lines.SelectMany(line => line.Runs()).Select(run => LineWriting.Write(top, run))];

    private static SortedDictionary<int, DrawnLine> Drawn(IEnumerable<(int Cut, Face Face, IReadOnlyList<PointM> Line)> stretches) =>
        new(stretches.GroupBy(s => s.Cut).ToDictionary(g => g.Key, g => DrawnLine.Of(g.First().Face, [.. g.Select(s => (s.Line[0], s.Line[^1]))])));

    private static JobDocument With(JobDocument document, string top, IReadOnlyList<SectionLineDocument>? lines) =>
        document with { Tops = [.. document.Tops.Select(t => t.Name.Trim() == top ? t with { SectionLines = lines } : t)] };

    private static SectionLineDocument Document(SectionLine line, UnitSystem units) => new()
    {
        Side = line.Side.ToString(),
        At = Written(line.AtM, units),
        In = line.InM > 0 ? Written(line.InM, units) : (Entry?)null,
        ToSide = line.To?.Side.ToString(),
        To = line.To is { } to ? Written(to.AtM, units) : (Entry?)null,
        On = line.On is SectionLineOn.Flat ? null : line.On,
    };

    /// <summary>To a hundredth of a millimetre, so that lines that were not moved stay where they are.</summary>
    private static Entry Written(double metres, UnitSystem units) => units == UnitSystem.Us
        ? (metres / Factors.MetresPerInch).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture) + " in"
        : (metres * 1000).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) + " mm";

    private static readonly Reason NotALineToMove = new("NotALineToMove", Limit.AtYourWord,
        v => v.Say("This is no line that can be moved: it is a fold or a planned joint, or it cannot be given from a side.", "Esta línea no se puede mover: es un pliegue o una junta prevista, o no se puede dar desde un lado."),
        v => v.Say("Move a line inside a face; a planned joint is changed where the top is measured.", "Mueva una línea dentro de una cara; una junta prevista se cambia donde se mide la cubierta."));

    private static Reason LineOffTop(MeasuredTop top) => new("LineOffTop", Limit.AtYourWord,
        v => v.Say($"{top.Top.Name}: the line would lie beside the top.", $"{top.Top.Name}: la línea quedaría fuera de la cubierta."),
        v => v.Say("Drop it on the top; to have fewer sections, release the lines and allow larger ones.", "Suéltela sobre la cubierta; para tener menos secciones, libere las líneas y permita secciones más grandes."));
}
