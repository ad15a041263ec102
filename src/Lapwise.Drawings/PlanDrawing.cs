using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Pouring;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Drawings;

/// <summary>
/// Draws the order of work over a top: sections numbered in order, who rolls each, from where, which way the dry pass
/// goes, and every lap with its margin and the way it is joined.
/// </summary>
public static class PlanDrawing
{
    private static readonly double[] AlongLap = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];
    private static readonly double[] TowardsEnds = [0.14, 0.86, 0.22, 0.78, 0.3, 0.7, 0.07, 0.93, 0.4, 0.6, 0.5];
    private static readonly double[] NumberSizes = [1, 0.75, 0.6];

    public static Drawing Draw(MeasuredTop top, CoatWork work, IReadOnlyList<Person> crew, Voice voice, Sheet sheet) => Draw(top, work, crew, [], voice, sheet);

    /// <param name="movable">Lines a page lets the finisher take hold of.</param>
    public static Drawing Draw(MeasuredTop top, CoatWork work, IReadOnlyList<Person> crew, IReadOnlyList<LineOnFlat> movable, Voice voice, Sheet sheet) =>
        Slices.AtOnce(DrawAsync(top, work, crew, movable, voice, sheet, Effort.AtOnce.Pause));

    /// <summary>The same in slices: a page with one thread takes taps between them.</summary>
    /// <exception cref="OperationCanceledException">The pause stopped it.</exception>
    public static async ValueTask<Drawing> DrawAsync(MeasuredTop top, CoatWork work, IReadOnlyList<Person> crew, IReadOnlyList<LineOnFlat> movable, Voice voice, Sheet sheet, Pause pause)
    {
        var sections = work.Sections.Where(s => s.Face.Top == top.Top.Name).ToList();
        var plan = new TopPlan(top, work, sections, [.. work.Laps.Where(l => sections.Exists(s => s.Id == l.A))], crew, movable, voice);
        // Fold laps are labelled in the gap between a side and its panel.
        var sketch = await SheetFitting.FitAsync(top, sheet, gapInText: top.Folds.Count > 0 ? 1.7 : 0.35, (sketch, layout) => plan.Put(sketch, layout, pause), mayTurn: true);
        var legend = new Legend(sketch, sheet);
        plan.PutLegend(legend);
        await pause();
        return legend.Finish(
            voice.Say($"{top.Top.Name}, order of work: {work.Coat.Name}", $"{top.Top.Name}, orden de trabajo: {work.Coat.Name}"),
            plan.Describe());
    }

    private sealed record TopPlan(MeasuredTop Top, CoatWork Work, List<Section> Sections, List<Lap> Laps, IReadOnlyList<Person> Crew, IReadOnlyList<LineOnFlat> Movable, Voice Voice)
    {
        public async ValueTask Put(Sketch sketch, Layout layout, Pause pause)
        {
            foreach (var line in Movable)
                foreach (var lap in line.Laps) sketch.Grip(new Grip(line.Cut, [.. lap.Line.Select(layout.OnSheet)], layout.OnSheet(line.Way)));
            foreach (var section in Sections)
            {
                var rings = OnSheet(section, layout);
                sketch.Area(WashOf(section.Person), rings);
                Hatch(sketch, section.Person, rings);
                foreach (var ring in rings) sketch.Ring(Ink.Section, ring);
                await pause();
            }
            TopDrawing.Edges(sketch, layout);
            foreach (var lap in Laps) sketch.Line(InkOf(lap), LineOf(lap, layout));

            // The roomiest places are enough to try, and the page draws as one types.
            var insides = new List<IReadOnlyList<Spot>>();
            foreach (var section in Sections)
            {
                insides.Add([.. Shapes.Insides(OnSheet(section, layout)).Take(40)]);
                Number(sketch, layout, OnSheet(section, layout), insides[^1], section);
                await pause();
            }
            // Before the labels, which can make do with fewer words.
            foreach (var lap in Laps.Where(l => l.Kind != LapKind.Break))
            {
                Joining(sketch, layout, lap);
                await pause();
            }
            foreach (var lap in Laps)
            {
                Label(sketch, layout, lap);
                await pause();
            }
            Standing(sketch, layout);
            foreach (var (section, inside) in Sections.Zip(insides))
            {
                DryPass(sketch, layout, inside, section);
                await pause();
            }
            foreach (var (hole, ring) in layout.Holes)
            {
                var box = Box.Over(ring);
                sketch.TryText(Lettering.Name, [hole.Cutout.Name], [new(new Spot((box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2))], text => text.Width < box.Width && text.Height < box.Height);
            }
            foreach (var side in layout.Sides)
                TopDrawing.SideLabel(sketch, [.. layout.Solids], side, side.Letter.ToString(), layout.Reach(side) + (0.2 * sketch.TextSize), Lettering.Letter);
        }

        private void Number(Sketch sketch, Layout layout, List<IReadOnlyList<Spot>> rings, IReadOnlyList<Spot> insides, Section section)
        {
            if (insides.Count == 0) insides = [rings[0][0]];
            if (InCutout(sketch, layout, rings, insides, section.Id)) return;
            bool Inside(Box box) => box.Grown(sketch.Unit).Corners.All(c => Shapes.Contains(rings, c));
            var places = NumberSizes.SelectMany(size => insides.Select(at => new Place(at, Scale: size))).ToList();
            if (sketch.TryText(Lettering.Number, [section.Id], places, Inside) is not { } put)
                put = sketch.Text(Lettering.Number, section.Id, insides.Select(at => new Place(at, Scale: NumberSizes[^1])));
            var number = put.Box;

            var clock = $"{Voice.Clock(section.StartMs / 1000.0)}–{Voice.Clock(section.EndMs / 1000.0)}";
            var below = new Spot((number.Left + number.Right) / 2, number.Bottom + (0.6 * sketch.HeightOf(Lettering.Clock)));
            sketch.TryText(Lettering.Clock, [clock, Voice.Clock(section.StartMs / 1000.0)], [new(below)], Inside);
        }

        /// <summary>The number of a section that is narrow all round a cutout stands in the cutout, on a leader: between lap and rim it could not be told apart.</summary>
        private static bool InCutout(Sketch sketch, Layout layout, List<IReadOnlyList<Spot>> rings, IReadOnlyList<Spot> insides, string id)
        {
            var (size, air) = (NumberSizes[1], 2.5 * sketch.Unit);
            var (width, height) = (size * sketch.WidthOf(Lettering.Number, id), size * sketch.HeightOf(Lettering.Number));
            if (insides.Any(at => Box.Round(at, width, height).Grown(air).Corners.All(c => Shapes.Contains(rings, c)))) return false;
            foreach (var (_, ring) in layout.Holes)
            {
                var hole = Box.Over(ring);
                // From where it is roomiest to the near end of the cutout, so that the cutout's name keeps the middle.
                var from = insides[0];
                if ((hole.Nearest(from) - from).Length > height) continue;
                var at = hole.Grown(-air - (Math.Max(width, height) / 2)).Nearest(from);
                var box = Box.Round(at, width, height);
                if (!sketch.IsClear(box) || !box.Grown(sketch.Unit).Corners.All(c => Shapes.Contains([ring], c))) continue;
                IReadOnlyList<Spot> leader = [box.Nearest(from), from];
                sketch.Line(Ink.Leader, leader);
                sketch.KeepClear(Box.Over(leader).Grown(sketch.Unit));
                sketch.Text(Lettering.Number, id, [new(at, Scale: size)]);
                return true;
            }

            return false;
        }

        private void Label(Sketch sketch, Layout layout, Lap lap)
        {
            var line = LineOf(lap, layout);
            var (style, fold) = (StyleOf(lap), lap.Kind == LapKind.Fold);
            // A fold is labelled beside its line, in the gap, so that neither face is written over.
            var aside = fold ? GapOf(lap, layout) * 0.3 : new Spot(0, 0);
            var places = AlongLap.SelectMany(share =>
            {
                var (at, along) = Shapes.AtShare(line, share);
                var upright = Math.Abs(along.Y) > 0.9;
                return upright ? new Place[] { new(at + aside, Upright: true), new(at + aside) } : [new(at + aside)];
            }).ToList();
            // A label that reaches past the ends of its lap would hide what lies there.
            var direction = Shapes.AtShare(line, 0.5).Along;
            var room = Shapes.Length(line) - sketch.Unit;
            var rings = new[] { lap.A, lap.B }.Select(id => OnSheet(Sections.First(s => s.Id == id), layout)).ToList();
            // Over an edge or a cutout it could be read by nobody.
            bool Clear(Box box) => fold
                ? !layout.Solids.Any(ring => Shapes.Overlap(ring, box.Corners))
                : box.Corners.All(c => rings.Exists(r => Shapes.Contains(r, c)));
            bool Within(Box box) => (Math.Abs(direction.X) * box.Width) + (Math.Abs(direction.Y) * box.Height) < room && Clear(box);
            if (sketch.TryText(style, Wordings(lap)[..^1], places, Within, behind: !fold) is not null) return;
            // A sign on its side is another sign.
            List<Place> level = [.. new[] { 1, 0.8, 0.65 }.SelectMany(scale => places.Where(p => !p.Upright).Select(p => p with { Scale = scale }))];
            if (sketch.TryText(style, Wordings(lap)[^1..], level, Within, behind: !fold) is null)
                sketch.Text(style, Wordings(lap)[^1], level, behind: !fold);
        }

        /// <summary>An arrow over a lap, from the section that is wet first into the one that joins it.</summary>
        private void Joining(Sketch sketch, Layout layout, Lap lap)
        {
            var line = LineOf(lap, layout);
            var fold = lap.Kind == LapKind.Fold;
            var later = Sections.First(s => s.Id == lap.JoinedBy);
            var rings = OnSheet(later, layout);
            // Over a fold it lies in the gap, between the side and its panel.
            var aside = fold ? GapOf(lap, layout) * 0.3 : new Spot(0, 0);
            double[] sizes = fold ? [1.1, 0.8] : [1.5, 1.1, 0.8, 0.6];
            var arrows =
                from size in sizes
                from share in TowardsEnds
                let place = Shapes.AtShare(line, share)
                let way = fold ? GapOf(lap, layout).Unit * (later.Face.Kind == FaceKind.Flat ? -1 : 1) : Into(rings, place.At, place.Along.Outward, sketch.Unit)
                let half = way * (size * sketch.TextSize / 2)
                select (From: place.At + aside - half, To: place.At + aside + half);
            var (from, to) = arrows.Select(a => ((Spot From, Spot To)?)a).FirstOrDefault(a => sketch.IsClear(Room(a!.Value))) ?? arrows.Last();
            sketch.Arrow(Ink.Joining, from, to);
            sketch.KeepClear(Room((from, to)));

            // The point is wider than the shaft.
            Box Room((Spot From, Spot To) arrow) => Box.Over([arrow.From, arrow.To]).Grown(2.2 * sketch.Unit);
        }

        private static Spot Into(IReadOnlyList<IReadOnlyList<Spot>> rings, Spot at, Spot across, double unit) =>
            Shapes.Contains(rings, at + (across * (1.5 * unit))) ? across : across * -1;

        /// <summary>A lap on its face; at a fold just off the edge, so that the edge's own line still shows.</summary>
        private IReadOnlyList<Spot> LineOf(Lap lap, Layout layout)
        {
            var line = layout.OnSheet(FaceOf(lap), lap.Line);
            if (lap.Kind != LapKind.Fold) return line;
            var off = GapOf(lap, layout) * (FaceOf(lap).Kind == FaceKind.Flat ? 0.2 : -0.8);
            return [.. line.Select(s => s + off)];
        }

        /// <summary>From a side to the panel unfolded beside it.</summary>
        private Spot GapOf(Lap lap, Layout layout)
        {
            var panel = FaceOf(lap).Kind == FaceKind.Flat ? Sections.First(s => s.Id == lap.B).Face : FaceOf(lap);
            var side = layout.Sides.First(s => s.Letter == panel.Side);
            var (at, outward) = side.Middle;
            return outward * layout.Panels.First(p => p.Face.Id == panel.Id).Ring.Min(s => (s - at).Dot(outward));
        }

        /// <summary>A wedge outside the edge for every place stood at, with the sections done from there.</summary>
        private void Standing(Sketch sketch, Layout layout)
        {
            var stands = new List<(Spot At, List<string> Ids)>();
            foreach (var section in Sections)
            {
                var at = layout.OnSheet(section.StandAt);
                var near = stands.FindIndex(s => (s.At - at).Length < sketch.TextSize);
                if (near < 0) stands.Add((at, [section.Id]));
                else stands[near].Ids.Add(section.Id);
            }
            // Every wedge before the first label, so that none lies on a label already put.
            var wedges = stands.ConvertAll(s => Standpoint.Of(layout, s.At, sketch.TextSize));
            foreach (var stand in wedges)
            {
                sketch.Area(Wash.Stand, stand.Wedge);
                sketch.KeepClear(Box.Over(stand.Wedge));
            }
            foreach (var (stand, (_, ids)) in wedges.Zip(stands)) stand.Label(sketch, layout, string.Join(" ", ids));
        }

        private static void DryPass(Sketch sketch, Layout layout, IReadOnlyList<Spot> insides, Section section)
        {
            // On a splash the pass comes down to the fold; a panel's plane already points down.
            var turn = section.Face.Kind == FaceKind.Splash ? section.DryPassDeg + 180 : section.DryPassDeg;
            var (sin, cos) = Math.SinCos(turn * Math.PI / 180);
            var zero = layout.OnSheet(section.Face, new PointM(0, 0));
            var along = (layout.OnSheet(section.Face, new PointM(cos, sin)) - zero).Unit;
            var rings = OnSheet(section, layout);
            // A short one close to its neighbours still says the way, where a long one has no room.
            foreach (var (length, clear) in new[] { (2.6, 3.5), (1.8, 3.5), (1.1, 3.5), (0.8, 1.5), (0.6, 0.5) })
            {
                var half = along * (length * sketch.TextSize / 2);
                var fromSide = Math.Min(2, clear) * sketch.Unit;
                bool Free(Spot at) =>
                    sketch.IsClear(Box.Over([at + half, at - half]).Grown(clear * sketch.Unit))
                    && Shapes.Contains(rings, at + half) && Shapes.Contains(rings, at - half)
                    && Shapes.DistanceToBoundary(rings, at + half) > fromSide && Shapes.DistanceToBoundary(rings, at - half) > fromSide;
                foreach (var at in insides.Where(Free).Take(1))
                {
                    sketch.Arrow(Ink.DryPass, at - half, at + half);
                    sketch.KeepClear(Box.Over([at + half, at - half]).Grown(Math.Min(2, clear) * sketch.Unit));
                    return;
                }
            }
        }

        public void PutLegend(Legend legend)
        {
            legend.Row([
                .. Sections.Select(s => s.Person).Distinct().Order().Select(person => new Legend.Sample(Crew[person].Name, (sketch, from, to) =>
                {
                    IReadOnlyList<Spot> swatch = Box.Over([from, to]).Grown(0.4 * sketch.TextSize).Corners;
                    swatch = [.. swatch.Select(c => new Spot(Math.Clamp(c.X, from.X, to.X), c.Y))];
                    sketch.Area(WashOf(person), swatch);
                    Hatch(sketch, person, [swatch]);
                    sketch.Ring(Ink.Section, swatch);
                })),
                new(Work.Steps.Count > 0 ? Voice.Say("levelled this way", "se nivela así") : Voice.Say("dry pass", "pasada en seco"), (sketch, from, to) => sketch.Arrow(Ink.DryPass, from, to)),
                new(Voice.Say("stand here for sections", "de pie aquí para las secciones"), (sketch, from, to) =>
                {
                    var middle = (from + to) * 0.5;
                    var size = 0.42 * sketch.TextSize;
                    sketch.Area(Wash.Stand, [middle - new Spot(0, size), middle + new Spot(size, size), middle + new Spot(-size, size)]);
                }),
                .. Laps.Where(l => l.Kind != LapKind.Break).Take(1).Select(_ => new Legend.Sample(
                    Voice.Say("wet first → joins it later", "húmeda antes → se une después"), (sketch, from, to) => sketch.Arrow(Ink.Joining, from + ((to - from) * 0.2), to - ((to - from) * 0.2)))),
                .. Laps.DistinctBy(InkOf).OrderBy(InkOf).Select(lap => Legend.Stroke(InkOf(lap), Meaning(lap))),
                .. Legend.Edges(Top, Voice),
            ]);
            foreach (var step in Work.Steps.Where(s => s.Top == Top.Top.Name && s.Kind is StepKind.BubblePass or StepKind.ScrapeDrips))
                legend.Note(step.IsInTime ? Lettering.Note : Lettering.Warning, $"{(step.IsInTime ? "" : "✗ ")}{Voice.Clock(step.StartMs / 1000.0)} {StepWords.What(step, Voice)} ({Crew[step.Person].Name})");
        }

        public string Describe()
        {
            var sections = Sections.Select(s => Voice.Say(
                $"Section {s.Id}: {Crew[s.Person].Name}, {Voice.Clock(s.StartMs / 1000.0)} to {Voice.Clock(s.EndMs / 1000.0)}.",
                $"Sección {s.Id}: {Crew[s.Person].Name}, de {Voice.Clock(s.StartMs / 1000.0)} a {Voice.Clock(s.EndMs / 1000.0)}."));
            var laps = Laps.Select(l => Voice.Say($"Lap {l.A}–{l.B}: {Wordings(l)[0]}, joined by {l.JoinedBy}.", $"Solape {l.A}–{l.B}: {Wordings(l)[0]}, lo une {l.JoinedBy}."));
            return string.Join(" ", sections.Concat(laps));
        }

        private static List<IReadOnlyList<Spot>> OnSheet(Section section, Layout layout) => [.. section.Rings.Select(r => layout.OnSheet(section.Face, r))];

        private Face FaceOf(Lap lap) => Sections.First(s => s.Id == lap.A).Face;

        private static void Hatch(Sketch sketch, int person, IReadOnlyList<IReadOnlyList<Spot>> rings)
        {
            double[] angles = person switch { 0 => [], 1 => [45], 2 => [-45], _ => [0, 90] };
            foreach (var (from, to) in angles.SelectMany(a => Shapes.Hatch(rings, a, 0.6 * sketch.TextSize))) sketch.Line(Ink.Hatch, from, to);
        }

        private static Wash WashOf(int person) => person switch { 0 => Wash.FirstPerson, 1 => Wash.SecondPerson, 2 => Wash.ThirdPerson, _ => Wash.FurtherPerson };

        private Ink InkOf(Lap lap) => LapMargin.Of(Work, lap) switch
        {
            LapStanding.Joint => Ink.Break,
            LapStanding.Lost => Ink.LapLost,
            LapStanding.Narrow => Ink.LapNarrow,
            _ => Ink.LapGood,
        };

        private Lettering StyleOf(Lap lap) => LapMargin.Of(Work, lap) switch
        {
            LapStanding.Joint => Lettering.Break,
            LapStanding.Lost => Lettering.LapLost,
            LapStanding.Narrow => Lettering.LapNarrow,
            _ => Lettering.LapGood,
        };

        private string Meaning(Lap lap) => LapMargin.Of(Work, lap) switch
        {
            LapStanding.Joint => Voice.Say("planned joint", "junta prevista"),
            LapStanding.Lost => Voice.Say("✗ lap lost: a line will show", "✗ solape perdido: se verá una línea"),
            LapStanding.Narrow => Voice.Say("! narrow lap", "! solape justo"),
            _ => Voice.Say("✓ good lap, with its margin", "✓ solape bueno, con su margen"),
        };

        /// <summary>The longest wording first; every one says the standing without its colour.</summary>
        private string[] Wordings(Lap lap)
        {
            var standing = LapMargin.Of(Work, lap);
            if (standing == LapStanding.Joint) return [Voice.Say("joint", "junta")];
            var margin = LapMargin.Clock(Work.MarginMs(lap));
            var (word, sign) = (LapMargin.Word(standing, Voice), standing switch { LapStanding.Lost => "✗", LapStanding.Narrow => "!", _ => "✓" });
            return [$"{word} {margin}", $"{sign} {margin}", margin, sign];
        }
    }
}
