using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Pouring;
using Lapwise.Drawings;

namespace Lapwise.Documents.Parts;

/// <summary>One coat: what to do in which order, from where, and what is proven of it.</summary>
internal static class CoatPart
{
    public static bool Works(WholeJob whole, int coat) => whole.Work.Coats[coat].Holds && whole.Conditions.Coats[coat].MayCoat;

    public static IEnumerable<Block> Blocks(WholeJob whole, int index, Voice voice, Paper paper)
    {
        var work = whole.Work.Coats[index];
        yield return new Block.Heading(1, voice.Say($"Coat {index + 1}: {work.Coat.Title(voice)}", $"Capa {index + 1}: {work.Coat.Title(voice)}"));
        yield return Verdict(whole, index, voice);
        if (Reasons(whole, index, voice) is { Count: > 0 } reasons) yield return new Block.Items(reasons);
        yield return new Block.Facts(
        [
            new(voice.Say("how", "cómo"), Method(work.Coat.Product.Method, voice)),
            new(voice.Say("wet film", "película húmeda"), voice.Film(work.Coat.WetFilm.Micrometres)),
            new(voice.Say("open time", "tiempo abierto"), Say.Time(work.OpenTime.Seconds, work.OpenTime.Origin, voice)),
            new(voice.Say("worst lap age", "peor edad de solape"), work.Laps.Any(l => l.Kind != LapKind.Break) ? Voice.Span(work.WorstLapAgeMs / 1000.0) : voice.Say("no laps", "sin solapes")),
            new(voice.Say("worst section age", "peor edad de sección"), Voice.Span(work.WorstSectionAgeMs / 1000.0)),
            new(voice.Say("lap margin", "margen de solape"), Voice.Span(work.LapMarginMs / 1000.0)),
            new(voice.Say("margin aimed at", "margen buscado"), Voice.Span(work.TargetMarginMs / 1000.0)),
            new(voice.Say("from first mix to last dry pass", "de la primera mezcla a la última pasada"), Voice.Span(work.Sections.Select(s => s.EndMs).DefaultIfEmpty(0).Max() / 1000.0)),
        ]);
        yield return new Block.Figures(
        [
            .. whole.Measured.Tops.Where(t => work.Sections.Any(s => s.Face.Top == t.Top.Name))
                .Select(t => FigureSize.Of(t.Top.Name, FigureSize.For(t, paper), sheet => PlanDrawing.Draw(t, work, whole.Job.Crew, voice, sheet))),
        ]);

        yield return new Block.Heading(2, voice.Say("In this order", "En este orden"));
        yield return new Block.Paragraph(Say.Clock(voice));
        yield return Order(work, whole.Job.Crew, voice);
        if (work.Steps.Count > 0)
        {
            yield return new Block.Heading(2, voice.Say("By the clock", "Por el reloj"));
            yield return Steps(work, whole.Job.Crew, voice);
        }
        if (work.Laps.Count > 0)
        {
            yield return new Block.Heading(2, voice.Say(
                $"Laps; open time from: {Say.Origin(work.OpenTime.Origin, voice)}",
                $"Solapes; tiempo abierto según: {Say.Origin(work.OpenTime.Origin, voice)}"));
            yield return Laps(work, voice);
        }
        yield return new Block.Heading(2, voice.Say("What is proven", "Qué está demostrado"));
        yield return new Block.Paragraph(ProofWords.Of(work, voice));
        if (work.Baselines.Count > 0)
        {
            yield return Baselines(work, voice);
            yield return new Block.Paragraph(ProofWords.OfUsualWays(voice));
        }
    }

    /// <summary>What is to be known of the coat, less the notes that stand under the room already.</summary>
    private static List<Item> Reasons(WholeJob whole, int index, Voice voice)
    {
        var room = whole.Conditions.Coats[index].Reasons.Where(r => r.Limit == Limit.Note).Select(r => Say.Reason(r, voice)).ToHashSet();
        List<Item> items = [.. whole.Work.Coats[index].Reasons.Select(r => Say.Reason(r, voice))];
        if (items.RemoveAll(room.Contains) > 0)
            items.Add(new(ItemMark.Point, voice.Say($"Read also what stands for coat {index + 1} under the room.", $"Lea también lo que dice la sala sobre la capa {index + 1}.")));
        return items;
    }

    private static Block.Verdict Verdict(WholeJob whole, int index, Voice voice)
    {
        var work = whole.Work.Coats[index];
        if (!whole.Conditions.Coats[index].MayCoat)
            return new(Tone.DoesNotWork, voice.Say("This plan does not work: the room does not allow this coat today. See the reasons under the room.", "Este plan no funciona: la sala no admite hoy esta capa. Vea los motivos en la sala."));
        if (!work.Holds)
            return new(Tone.DoesNotWork, work.LapMarginMs < 0
                ? voice.Say($"This plan does not work: a line will show. The open time is passed by {Voice.Span(-work.LapMarginMs / 1000.0)}.", $"Este plan no funciona: se verá una línea. El tiempo abierto se pasa en {Voice.Span(-work.LapMarginMs / 1000.0)}.")
                : voice.Say("This plan does not work; the reasons follow.", "Este plan no funciona; siguen los motivos."));
        return work.LapMarginMs < work.TargetMarginMs
            ? new(Tone.Narrow, voice.Say(
                $"This plan works, narrowly: {Voice.Span(work.LapMarginMs / 1000.0)} in hand of the {Voice.Span(work.TargetMarginMs / 1000.0)} aimed at. It rests on an open time from: {Say.Origin(work.OpenTime.Origin, voice)}.",
                $"Este plan funciona, pero justo: quedan {Voice.Span(work.LapMarginMs / 1000.0)} de los {Voice.Span(work.TargetMarginMs / 1000.0)} buscados. El tiempo abierto sale de: {Say.Origin(work.OpenTime.Origin, voice)}."))
            : new(Tone.Works, voice.Say(
                $"This plan works: {Voice.Span(work.LapMarginMs / 1000.0)} in hand at the tightest lap or section. It rests on an open time from: {Say.Origin(work.OpenTime.Origin, voice)}.",
                $"Este plan funciona: quedan {Voice.Span(work.LapMarginMs / 1000.0)} en el solape o la sección más ajustados. El tiempo abierto sale de: {Say.Origin(work.OpenTime.Origin, voice)}."));
    }

    /// <summary>Sections and mixing in the order of the clock, as they are done.</summary>
    private static Block.Table Order(CoatWork work, IReadOnlyList<Person> crew, Voice voice)
    {
        var sections = work.Sections.Select(s => (s.StartMs, Row: new Row(
        [
            s.Id, $"{s.Face.Top}, {FaceWords.Of(s.Face, voice)}", crew[s.Person].Name, s.StandSide is { } side ? voice.Say($"side {side}", $"lado {side}") : "–",
            Voice.Clock(s.StartMs / 1000.0), Voice.Clock(s.WetEndMs / 1000.0), Voice.Clock(s.EndMs / 1000.0), s.Batch,
        ])));
        var mixing = work.Batches.Select(b => (StartMs: b.MixStartMs, Row: new Row(
        [
            "", voice.Say($"mix batch {b.Id}", $"preparar la mezcla {b.Id}"), crew[b.MixedBy].Name, "",
            Voice.Clock(b.MixStartMs / 1000.0), "", Voice.Clock(b.MixEndMs / 1000.0), b.Id,
        ], Strong: true)));
        return new Block.Table(
            [
                new(voice.Say("n", "n.º"), 0.6), new(voice.Say("section", "sección"), 3.4), new(voice.Say("person", "persona"), 1.4), new(voice.Say("stand at", "de pie en"), 1.1),
                new(voice.Say("start", "inicio"), 0.9, Right: true), new(voice.Say("wet until", "húmeda hasta"), 1.1, Right: true), new(voice.Say("end", "fin"), 0.9, Right: true), new(voice.Say("batch", "mezcla"), 0.9, Right: true),
            ],
            [.. mixing.Concat(sections).OrderBy(r => r.StartMs).Select(r => r.Row)]);
    }

    /// <summary>What is done when on a poured coat; what comes too late is set in bold.</summary>
    private static Block.Table Steps(CoatWork work, IReadOnlyList<Person> crew, Voice voice) => new(
        [
            new(voice.Say("start", "inicio"), 0.9, Right: true), new(voice.Say("end", "fin"), 0.9, Right: true), new(voice.Say("what", "qué"), 3.2), new(voice.Say("top", "cubierta"), 2),
            new(voice.Say("person", "persona"), 1.2), new(voice.Say("due", "plazo"), 1.6),
        ],
        [.. work.Steps.Select(s => new Row([Voice.Clock(s.StartMs / 1000.0), Voice.Clock(s.EndMs / 1000.0), StepWords.What(s, voice), s.Top, crew[s.Person].Name, (s.IsInTime ? "" : "✗ ") + StepWords.When(s, voice)], Strong: !s.IsInTime))]);

    private static Block.Table Laps(CoatWork work, Voice voice) => new(
            [
                new(voice.Say("lap", "solape"), 1.2), new(voice.Say("where", "dónde"), 1.75), new(voice.Say("length", "largo"), 1.15, Right: true), new(voice.Say("age", "edad"), 0.95, Right: true),
                new(voice.Say("margin", "margen"), 1.15, Right: true), new(voice.Say("it is", "queda"), 1.1),
            ],
            [.. work.Laps.Select(lap => Row(work, lap, voice))], Narrow: true);

    private static Row Row(CoatWork work, Lap lap, Voice voice)
    {
        var standing = LapMargin.Of(work, lap);
        var joint = standing == LapStanding.Joint;
        return new(
        [
            $"{lap.A} – {lap.B}",
            lap.Kind switch
            {
                LapKind.Fold => voice.Say("at the fold", "en el pliegue"),
                LapKind.Break => voice.Say("planned joint", "junta prevista"),
                _ => voice.Say("on the face", "en la cara"),
            },
            voice.Run(lap.LengthM),
            joint ? "–" : Voice.Clock(lap.AgeMs / 1000.0),
            joint ? "–" : LapMargin.Clock(work.MarginMs(lap)),
            LapMargin.Word(standing, voice),
        ], Strong: standing is LapStanding.Lost or LapStanding.Narrow);
    }

    private static Block.Table Baselines(CoatWork work, Voice voice)
    {
        var own = work.WorstCountedMs;
        return new(
            [new(voice.Say("the same job, the same pace", "el mismo trabajo, al mismo ritmo"), 5), new(voice.Say("worst age", "peor edad"), 1.2, Right: true), new(voice.Say("margin", "margen"), 1, Right: true), new(voice.Say("it is", "queda"), 1)],
            [
                Compared(voice.Say("this plan", "este plan"), own, strong: true),
                .. work.Baselines.Select(b => Compared(b.Text(voice), b.WorstAgeMs, strong: false)),
            ]);

        Row Compared(string name, long worstMs, bool strong) => new(
            [name, Voice.Clock(worstMs / 1000.0), LapMargin.Clock(work.OpenTimeMs - worstMs), LapMargin.Word(LapMargin.Of(work, work.OpenTimeMs - worstMs), voice)], strong);
    }

    private static string Method(ApplicationMethod method, Voice voice) => method switch
    {
        ApplicationMethod.Rolled => voice.Say("rolled wet, then dry", "a rodillo, húmedo y luego seco"),
        ApplicationMethod.Poured => voice.Say("poured and levelled", "vertido y nivelado"),
        ApplicationMethod.Wiped => voice.Say("brushed or wiped", "a brocha o a paño"),
        _ => throw new ArgumentOutOfRangeException(nameof(method)),
    };
}
