using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;
using Lapwise.Core.Work;

namespace Lapwise.Documents.Parts;

/// <summary>One slip for each batch: what to measure, when to mix, when to throw the rest away.</summary>
internal static class TicketsPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, int coat, Voice voice, PaperBasis? basis = null)
    {
        var (work, supply) = (whole.Work.Coats[coat], whole.Supply.Coats[coat]);
        foreach (var ticket in supply.Tickets)
            if (work.Batches.FirstOrDefault(b => b.Id == ticket.Batch) is { } batch)
                yield return ForTheDay(Marked(Ticket(ticket, batch, work, supply, coat, whole.Job.Crew, voice), CoatPart.Works(whole, coat), voice), basis, coat, batch.Id, voice);
    }

    /// <summary>A slip is cut out and carried by itself, so it says for itself where it is not to be mixed by.</summary>
    private static Block.Ticket Marked(Block.Ticket ticket, bool works, Voice voice) => works ? ticket : ticket with
    {
        Lines = [new(ItemMark.Stop, voice.Say("The plan of this coat does not work: do not mix by this ticket.", "El plan de esta capa no funciona: no mezcle según esta boleta.")), .. ticket.Lines],
    };

    /// <summary>With the lots it is measured from, and the squares that open its step on the phone.</summary>
    private static Block.Ticket ForTheDay(Block.Ticket ticket, PaperBasis? basis, int coat, string batch, Voice voice)
    {
        if (basis is null) return ticket;
        var packs = basis.Picks.FirstOrDefault(p => p.Coat == coat)?.Batches.FirstOrDefault(b => b.Batch == batch)?.Packs ?? [];
        var lots = packs.Count == 0 ? "__________" : string.Join("; ", packs.Select(p => voice.Say($"{p.Pack.Id}, lot {p.Pack.Lot}", $"{p.Pack.Id}, lote {p.Pack.Lot}")));
        return ticket with
        {
            Small = [.. ticket.Small, new Fact(voice.Say("from pack and lot", "del envase y lote"), lots)],
            Code = basis.StepAddress is { } address ? ScanCode.Of(address(coat, batch), 78, voice.Say("opens this step", "abre este paso")) : null,
        };
    }

    private static Block.Ticket Ticket(BatchTicket ticket, Batch batch, CoatWork work, CoatSupply supply, int coat, IReadOnlyList<Person> crew, Voice voice)
    {
        var product = work.Coat.Product;
        var large = ticket.Parts.Select(part => new Fact(part.Name, Amount(part.Ml, part.G, voice))).ToList();
        if (ticket.ThinnerWantedMl > 0) large.Add(new(product.Thinner?.Name ?? voice.Say("thinner", "diluyente"), ThinnerAmount(ticket, voice)));
        return new(
            voice.Say($"Batch {batch.Id}, coat {coat + 1}: {work.Coat.Title(voice)}", $"Mezcla {batch.Id}, capa {coat + 1}: {work.Coat.Title(voice)}"),
            large,
            [
                new(voice.Say("mix at (clock)", "preparar a (reloj)"), Voice.Clock(batch.MixStartMs / 1000.0)),
                new(voice.Say("mixed by", "la prepara"), $"{crew[batch.MixedBy].Name}, {Voice.Span((batch.MixEndMs - batch.MixStartMs) / 1000.0)}"),
                new(voice.Say("pour out by (clock)", "desechar a (reloj)"), Voice.Clock(batch.UseByMs / 1000.0)),
                new(voice.Say($"{product.Recipe.Names(voice)} together", $"{product.Recipe.Names(voice)} juntos"), voice.Volume(ticket.VolumeMl)),
                new(voice.Say("ratio error by cup", "error de proporción con vaso"), Error(ticket.RatioError, voice)),
                new(voice.Say("ratio error by scale", "error de proporción con báscula"), Error(ticket.RatioErrorByMass, voice)),
                new(voice.Say("for sections", "para las secciones"), string.Join(", ", batch.Sections)),
                new(voice.Say("from plan", "del plan"), Fingerprint.Printed(TicketMark.Of(supply, work))),
            ],
            [.. TicketLines.Of(work, supply, ticket).Select(line => new Item(Mark(line.Kind), line.Text(voice))), .. Hazards(product, voice)]);
    }

    private static ItemMark Mark(TicketLineKind kind) => kind switch
    {
        TicketLineKind.Do => ItemMark.Tick,
        TicketLineKind.Never => ItemMark.Stop,
        _ => ItemMark.Caution,
    };

    private static IEnumerable<Item> Hazards(Product product, Voice voice)
    {
        if (product.Hazards.Count == 0) yield break;
        yield return new(ItemMark.Caution, voice.Say(
            $"Can hurt: {string.Join(", ", product.Hazards.Select(h => Say.Hazard(h, voice)))}. Read the cautions of this sheet and the safety data sheet before opening.",
            $"Puede dañar: {string.Join(", ", product.Hazards.Select(h => Say.Hazard(h, voice)))}. Lea las precauciones de esta hoja y la hoja de datos de seguridad antes de abrir."));
    }

    /// <summary>Thinner that the cup's marks cannot show is drawn up in mL.</summary>
    private static string ThinnerAmount(BatchTicket ticket, Voice voice) => ticket.CupReadsThinner
        ? Amount(ticket.ThinnerMl, ticket.ThinnerG, voice)
        : voice.Say($"{voice.OnSyringe(ticket.ThinnerWantedMl)} by syringe", $"{voice.OnSyringe(ticket.ThinnerWantedMl)} con jeringa")
            + (ticket.ScaleReadsThinner ? $" / {voice.OnScale(ticket.ThinnerG)}" : "");

    private static string Amount(double ml, double grams, Voice voice) => voice.Units == UnitSystem.Us
        ? $"{voice.Volume(ml)} / {voice.Number(grams, 1)} g ({voice.Mass(grams)})"
        : $"{voice.Volume(ml)} / {voice.Mass(grams)}";

    private static string Error(double fraction, Voice voice) => (fraction >= 0.0005 ? "+" : fraction <= -0.0005 ? "−" : "") + voice.Percent(Math.Abs(fraction), 1);
}
