using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.OnSite;
using Lapwise.Core.Timeline;

namespace Lapwise.Documents;

/// <summary>The record of what was done: one coat as its marks tell it. Nothing on it is planned; what the program filled in is said to be assumed.</summary>
public static class RecordSheet
{
    /// <param name="zone">Whose clock hung on the wall.</param>
    public static byte[] Pdf(Run run, Voice voice, TimeZoneInfo zone) => PdfWriting.Write(Compose(run, voice, zone), DateTimeOffset.FromUnixTimeMilliseconds(run.Log[^1].AtMs));

    /// <inheritdoc cref="Pdf"/>
    public static string Html(Run run, Voice voice, TimeZoneInfo zone) => HtmlWriting.Write(Compose(run, voice, zone));

    private static Document Compose(Run run, Voice voice, TimeZoneInfo zone)
    {
        var title = voice.Say($"Record of what was done: {run.Plan.Job}", $"Registro de lo hecho: {run.Plan.Job}");
        return new Document(title, voice.Say("en", "es"), voice.Units == UnitSystem.Us ? Paper.Letter : Paper.A4, title, [.. new Told(run, voice, zone).Blocks()]) { Fingerprint = run.Plan.Fingerprint };
    }

    private sealed class Told(Run run, Voice voice, TimeZoneInfo zone)
    {
        private IssuedPlan Plan => run.Plan;

        public IEnumerable<Block> Blocks()
        {
            var lines = LinesLeft.Of(run);
            yield return new Block.Title(Plan.Job, voice.Say($"Record of what was done. Coat {Plan.Coat + 1}: ", $"Registro de lo hecho. Capa {Plan.Coat + 1}: ") + Plan.Coating() + ".");
            yield return Verdict(lines);
            yield return Facts();
            if (run.Sections.Count > 0)
            {
                yield return new Block.Heading(1, voice.Say("Sections", "Secciones"));
                yield return Sections();
            }

            if (run.Batches.Count > 0)
            {
                yield return new Block.Heading(1, voice.Say("Batches", "Mezclas"));
                yield return Batches();
            }

            if (JoinedLaps.Of(run) is { Count: > 0 } laps)
            {
                yield return new Block.Heading(1, voice.Say("Laps", "Solapes"));
                yield return Laps(laps);
            }

            if (lines.Count > 0)
            {
                yield return new Block.Heading(1, voice.Say("Lines left, and their mend", "Líneas que quedan, y su arreglo"));
                yield return new Block.Items([.. lines.Select(l => new Item(ItemMark.Stop, Line(l)))]);
                yield return new Block.Items([.. LinesLeft.Mend(run, lines).Select(m => new Item(ItemMark.Tick, m(voice)))]);
            }

            foreach (var block in Said(voice.Say("Read on site", "Leído en obra"), l => l.Mark.What is What.Reading)) yield return block;
            foreach (var block in Said(voice.Say("At the finisher's word", "Bajo la palabra del aplicador"), l => l.Mark.What is What.TakenUp)) yield return block;
            foreach (var block in Said(voice.Say("Noted", "Anotado"), l => l.Mark.What is What.Noted)) yield return block;
            if (run.Notes.Count > 0)
            {
                yield return new Block.Heading(1, voice.Say("To know of this record", "Sobre este registro"));
                yield return new Block.Items([.. run.Notes.Select(n => new Item(ItemMark.Caution, n(voice)))]);
            }

            yield return new Block.Heading(1, voice.Say("Every mark", "Todas las marcas"));
            yield return new Block.Table(
                [new(voice.Say("hour", "hora"), 1.2, Right: true), new(voice.Say("mark", "marca"), 7), new(voice.Say("how", "cómo"), 1.6)],
                [.. run.Log.Select(l => new Row([Hour(l.AtMs), MarkWords.Of(l, run, voice), MarkWords.How(l, voice)]))]);
            yield return new Block.Paragraph(voice.Say($"Made from the plan with inputs {Fingerprint.Printed(Plan.Fingerprint)}; program {Plan.Core}. Hours: {zone.Id}.", $"Hecho del plan con datos {Fingerprint.Printed(Plan.Fingerprint)}; programa {Plan.Core}. Horas: {zone.Id}."));
        }

        private Block.Verdict Verdict(IReadOnlyList<SalvageLine> lines) => (lines.Count, run.IsDone) switch
        {
            ( > 0, _) => new(Tone.DoesNotWork, voice.Say($"Lines left to be seen: {lines.Count}.", $"Líneas que quedan a la vista: {lines.Count}.")),
            (_, true) when run.Left.Count > 0 => new(Tone.Works, voice.Say("Every section is done or was left for another day, and every lap was joined in time by these marks.", "Cada sección está hecha o se dejó para otro día, y según estas marcas cada solape se unió a tiempo.")),
            (_, true) => new(Tone.Works, voice.Say("Every section is done, and every lap was joined in time by these marks.", "Cada sección está hecha, y según estas marcas cada solape se unió a tiempo.")),
            _ => new(Tone.Narrow, voice.Say("This run is not at its end; what is done so far was joined in time.", "Esta aplicación no ha terminado; lo hecho hasta ahora se unió a tiempo.")),
        };

        private Block.Facts Facts()
        {
            var done = run.Sections.Values.Where(s => s.DryAtMs is not null).ToList();
            return new Block.Facts(
            [
                new(voice.Say("day", "día"), voice.Date(DateOnly.FromDateTime(Local(run.Log[0].AtMs).DateTime))),
                .. run.Sections.Count > 0 ? [new(voice.Say("first wet material", "primer material"), Hour(run.Sections.Values.Min(s => s.WetAtMs)))] : Array.Empty<Fact>(),
                .. done.Count > 0 ? [new(voice.Say("last dry pass", "última pasada en seco"), Hour(done.Max(s => s.DryAtMs!.Value)))] : Array.Empty<Fact>(),
                new(voice.Say("open time counted", "tiempo abierto contado"), Voice.Span(run.OpenTimeMs / 1000.0)),
                new(voice.Say("crew", "equipo"), string.Join(", ", Plan.Crew)),
            ]);
        }

        private Block.Table Sections() => new(
            [new(voice.Say("section", "sección"), 1), new(voice.Say("where", "dónde"), 3), new(voice.Say("by", "por"), 2.2), new(voice.Say("begun", "empezada"), 1.4, Right: true), new(voice.Say("dry pass", "en seco"), 1.4, Right: true), new("", 1.4)],
            [
                .. run.Sections.Values.OrderBy(s => s.WetAtMs).Select(s => new Row(
                    [s.Section, MarkWords.Place(run.SectionOf(s.Section), voice), MarkWords.Name(run, s.Person), Hour(s.WetAtMs), s.DryAtMs is { } dry ? Hour(dry) : "–", s.IsAssumed ? voice.Say("assumed", "supuesto") : ""])),
                .. Plan.Sections.Where(s => !run.IsBegun(s.Id)).Select(s => new Row([s.Id, MarkWords.Place(s, voice), "–", "–", "–", run.Left.Contains(s.Id) ? voice.Say("left", "se dejó") : voice.Say("not begun", "sin empezar")], Strong: true)),
            ]);

        private Block.Table Batches() => new(
            [new(voice.Say("batch", "mezcla"), 1), new(voice.Say("planned", "previsto"), 2, Right: true), new(voice.Say("mixed by", "la preparó"), 2), new(voice.Say("A and B together", "A y B juntos"), 2, Right: true), new(voice.Say("use by", "usar antes de"), 2, Right: true), new("", 1.8)],
            [
                .. run.Batches.Select(b => new Row(
                    [b.Batch, Plan.Batches.FirstOrDefault(p => p.Id == b.Batch) is { } planned ? voice.Volume(planned.VolumeMl) : "–", MarkWords.Name(run, b.Person), Hour(b.AtMs), Hour(run.UseByMs(b.AtMs)), b.Assumed ? voice.Say("assumed", "supuesto") : ""])),
            ]);

        private Block.Table Laps(IReadOnlyList<JoinedLap> laps) => new(
            [new(voice.Say("lap", "solape"), 1.25), new(voice.Say("age", "edad"), 1.85, Right: true), new(voice.Say("margin", "margen"), 2, Right: true), new("", 3.6)],
            [
                .. laps.Select(l => new Row(
                    [MarkWords.Of(l.Lap), Voice.Span(l.AgeMs / 1000.0), Voice.Span(l.MarginMs / 1000.0),
                        (l.IsLost ? voice.Say("joined too late", "unido tarde") : voice.Say("in time", "a tiempo")) + (l.IsAssumed ? voice.Say(", times assumed", ", horas supuestas") : "")],
                    Strong: l.IsLost)),
            ],
            Narrow: true);

        private string Line(SalvageLine line) => line.IsStop
            ? voice.Say($"Between sections {MarkWords.Of(line.Lap)}: the work stopped here.", $"Entre las secciones {MarkWords.Of(line.Lap)}: aquí se paró.")
            : voice.Say($"Between sections {MarkWords.Of(line.Lap)}: joined too late.", $"Entre las secciones {MarkWords.Of(line.Lap)}: unido tarde.");

        private IEnumerable<Block> Said(string heading, Func<LoggedMark, bool> which)
        {
            var marks = run.Log.Where(l => l.Counts && which(l)).ToList();
            if (marks.Count == 0) yield break;
            yield return new Block.Heading(1, heading);
            yield return new Block.Items([.. marks.Select(l => new Item(ItemMark.Point, $"{Hour(l.AtMs)}  {MarkWords.Of(l, run, voice)}"))]);
        }

        private DateTimeOffset Local(long ms) => TimeZoneInfo.ConvertTime(DateTimeOffset.FromUnixTimeMilliseconds(ms), zone);

        private string Hour(long ms) => voice.HourToTheSecond(Local(ms).DateTime);
    }
}
