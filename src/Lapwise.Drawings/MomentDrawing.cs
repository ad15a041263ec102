using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Moments;

namespace Lapwise.Drawings;

/// <summary>
/// Draws a top at a moment of its coat: which sections are not begun, wet, open and for how long, joined or closed, and
/// who stands where. Laid out once, so that it can be drawn again and again while the clock runs.
/// </summary>
public sealed class MomentDrawing
{
    private const double WedgeInText = 1.7;
    private static readonly double[] NumberSizes = [1, 0.75, 0.6];
    private readonly MeasuredTop top;
    private readonly IReadOnlyList<Person> crew;
    private readonly Sheet sheet;
    private readonly Layout layout;
    private readonly Spot corner;
    private readonly Spot size;
    private readonly IReadOnlyList<Placed> sections;

    private sealed record Placed(string Id, IReadOnlyList<IReadOnlyList<Spot>> Rings, IReadOnlyList<Spot> Insides, double PassDegrees, Standpoint Stand);

    /// <param name="sheet">Its height is the most the whole drawing takes.</param>
    public MomentDrawing(MeasuredTop top, CoatWork work, IReadOnlyList<Person> crew, Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(top);
        ArgumentNullException.ThrowIfNull(work);
        (this.top, this.crew, this.sheet) = (top, crew, sheet);
        // Names stand in a margin of their own, so the picture keeps its place while they come and go.
        var names = new Sketch(sheet.TextSize);
        var room = new Spot(
            (WedgeInText * sheet.TextSize) + crew.Max(p => names.WidthOf(Lettering.Letter, Short(p.Name))),
            (WedgeInText * sheet.TextSize) + names.HeightOf(Lettering.Letter));
        var metres = Box.Over(new Layout(top, 1, 0).Everything);
        var scale = Math.Max(1, Math.Min((sheet.Width - (2 * room.X)) / metres.Width, (sheet.MostHeight - (2 * room.Y)) / metres.Height));
        layout = new Layout(top, scale, 0.35 * sheet.TextSize);
        var box = Box.Over(layout.Everything);
        size = new Spot(Math.Max(sheet.Width, box.Width + (2 * room.X)), box.Height + (2 * room.Y));
        corner = new Spot(((box.Left + box.Right) / 2) - (size.X / 2), box.Top - room.Y);
        sections = [.. work.Sections.Where(s => s.Face.Top == top.Top.Name).Select(Place)];
    }

    /// <summary>The top as it stands then.</summary>
    public Drawing At(Moment moment, Voice voice)
    {
        ArgumentNullException.ThrowIfNull(moment);
        var own = moment with { Sections = [.. moment.Sections.Where(s => Of(s.Section.Id) is not null)], Laps = [.. moment.Laps.Where(l => Of(l.Lap.A) is not null)] };
        var sketch = new Sketch(sheet.TextSize);
        foreach (var section in own.Sections) Film(sketch, Of(section.Section.Id)!, section.State);
        TopDrawing.Edges(sketch, layout);
        foreach (var lap in own.Laps) sketch.Line(InkOf(lap.State), layout.OnSheet(own.Sections.First(s => s.Section.Id == lap.Lap.A).Section.Face, lap.Lap.Line));
        foreach (var section in own.Sections) Label(sketch, Of(section.Section.Id)!, section, voice);
        foreach (var person in own.People) Stand(sketch, person);
        sketch.Move(corner * -1);
        return new Drawing(size.X, size.Y, sketch.Unit,
            voice.Say($"{top.Top.Name}, minute {Clock(moment.AtMs)}", $"{top.Top.Name}, minuto {Clock(moment.AtMs)}"),
            string.Join(" ", MomentWords.Film(own, voice)), sketch.Marks);
    }

    /// <summary>What the washes and lines of the moments mean, once for all tops.</summary>
    public static Drawing Key(Voice voice, Sheet sheet)
    {
        var legend = new Legend(new Sketch(sheet.TextSize), sheet);
        legend.Row([
            .. Enum.GetValues<SectionState>().Select(state => new Legend.Sample(MomentWords.Name(state, voice), (sketch, from, to) =>
            {
                IReadOnlyList<Spot> swatch = [.. Box.Over([from, to]).Grown(0.45 * sketch.TextSize).Corners.Select(c => new Spot(Math.Clamp(c.X, from.X, to.X), c.Y))];
                Film(sketch, [swatch], state, 0);
            })),
            Legend.Stroke(Ink.LapWaiting, voice.Say("lap that waits", "solape que espera")),
            Legend.Stroke(Ink.LapGood, voice.Say("joined", "unido")),
            Legend.Stroke(Ink.LapLost, voice.Say("✗ lost", "✗ perdido")),
        ]);
        return legend.Finish(voice.Say("What the pictures mean", "Qué significan los dibujos"), "");
    }

    private Placed? Of(string id) => sections.FirstOrDefault(s => s.Id == id);

    private Placed Place(Section section)
    {
        IReadOnlyList<IReadOnlyList<Spot>> rings = [.. section.Rings.Select(r => layout.OnSheet(section.Face, r))];
        var (sin, cos) = Math.SinCos(section.DryPassDeg * Math.PI / 180);
        var pass = layout.OnSheet(section.Face, new PointM(cos, sin)) - layout.OnSheet(section.Face, new PointM(0, 0));
        var insides = Shapes.Insides(rings);
        return new Placed(section.Id, rings, insides.Count > 0 ? [.. insides.Take(12)] : [rings[0][0]], Math.Atan2(pass.Y, pass.X) * 180 / Math.PI,
            Standpoint.Of(layout, layout.OnSheet(section.StandAt), sheet.TextSize));
    }

    private static void Film(Sketch sketch, Placed section, SectionState state) => Film(sketch, section.Rings, state, section.PassDegrees);

    private static void Film(Sketch sketch, IReadOnlyList<IReadOnlyList<Spot>> rings, SectionState state, double passDegrees)
    {
        sketch.Area(state switch
        {
            SectionState.Untouched => Wash.Untouched,
            SectionState.Joined => Wash.Joined,
            SectionState.Closed => Wash.Shut,
            _ => Wash.Wet,
        }, rings);
        // What is under the roller carries strokes: across each other while it is wetted, one way in the dry pass.
        double[] strokes = state switch
        {
            SectionState.Wetting => [passDegrees + 45, passDegrees - 45],
            SectionState.Finishing => [passDegrees],
            SectionState.Closed => [45],
            _ => [],
        };
        foreach (var (from, to) in strokes.SelectMany(a => Shapes.Hatch(rings, a, 0.55 * sketch.TextSize))) sketch.Line(Ink.Hatch, from, to);
        foreach (var ring in rings) sketch.Ring(state == SectionState.Untouched ? Ink.Untouched : Ink.Section, ring);
    }

    private static void Label(Sketch sketch, Placed place, SectionMoment section, Voice voice)
    {
        bool Inside(Box box) => box.Grown(sketch.Unit).Corners.All(c => Shapes.Contains(place.Rings, c));
        var places = NumberSizes.SelectMany(scale => place.Insides.Select(at => new Place(at, Scale: scale))).ToList();
        var number = (sketch.TryText(Lettering.Number, [place.Id], places, Inside)
            ?? sketch.Text(Lettering.Number, place.Id, place.Insides.Select(at => new Place(at, Scale: NumberSizes[^1])))).Box;
        var below = new Spot((number.Left + number.Right) / 2, number.Bottom + (0.6 * sketch.HeightOf(Lettering.Clock)));
        var left = Clock(Math.Max(0, section.OpenLeftMs));
        var (style, words) = section.State switch
        {
            SectionState.Untouched => (Lettering.Clock, new[] { voice.Say($"from {Clock(section.Section.StartMs)}", $"desde {Clock(section.Section.StartMs)}"), Clock(section.Section.StartMs) }),
            SectionState.Joined => (Lettering.LapGood, ["✓"]),
            SectionState.Closed => (Lettering.Warning, [voice.Say("✗ closed", "✗ cerrada"), "✗"]),
            _ => (Lettering.Clock, [voice.Say($"{left} left", $"quedan {left}"), left]),
        };
        sketch.TryText(style, words, [new(below), new(below, Scale: 0.85)], Inside, behind: section.State is SectionState.Wetting or SectionState.Finishing or SectionState.Closed);
    }

    private void Stand(Sketch sketch, PersonMoment person)
    {
        var id = person.Doing switch
        {
            Doing.Rolls rolls => rolls.Section.Id,
            Doing.Steps steps => steps.Step.Sections is [var at, ..] ? at : null,
            _ => null,
        };
        if (id is null || Of(id) is not { } section) return;
        sketch.Area(Wash.Stand, section.Stand.Wedge);
        section.Stand.Label(sketch, layout, Short(crew[person.Person].Name), Lettering.Letter);
    }

    /// <summary>A long name would leave no room for the top.</summary>
    private static string Short(string name) => name.Length <= 12 ? name : name[..11] + "…";

    private static Ink InkOf(LapState state) => state switch
    {
        LapState.Untouched => Ink.Untouched,
        LapState.Waiting => Ink.LapWaiting,
        LapState.Joined => Ink.LapGood,
        LapState.Lost => Ink.LapLost,
        LapState.Joint => Ink.Break,
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    private static string Clock(long ms) => Voice.Clock(ms / 1000.0);
}
