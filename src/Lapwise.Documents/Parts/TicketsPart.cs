using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;
using Lapwise.Core.Work;

namespace Lapwise.Documents.Parts;

/// <summary>One slip for each batch: what to measure, when to mix, when to throw the rest away.</summary>
internal static class TicketsPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, int coat, Voice voice)
    {
        var (work, supply) = (whole.Work.Coats[coat], whole.Supply.Coats[coat]);
        foreach (var ticket in supply.Tickets)
            if (work.Batches.FirstOrDefault(b => b.Id == ticket.Batch) is { } batch)
                yield return Ticket(ticket, batch, work, coat, whole.Job.Crew, voice);
    }

    private static Block.Ticket Ticket(BatchTicket ticket, Batch batch, CoatWork work, int coat, IReadOnlyList<Person> crew, Voice voice)
    {
        var product = work.Coat.Product;
        var large = new List<Fact>
        {
            new("A", Amount(ticket.AMl, ticket.AG, voice)),
            new("B", Amount(ticket.BMl, ticket.BG, voice)),
        };
        if (ticket.ThinnerMl > 0) large.Add(new(product.Thinner?.Name ?? voice.Say("thinner", "diluyente"), Amount(ticket.ThinnerMl, ticket.ThinnerG, voice)));
        return new(
            voice.Say($"Batch {batch.Id}, coat {coat + 1}: {Say.Coat(work.Coat)}", $"Mezcla {batch.Id}, capa {coat + 1}: {Say.Coat(work.Coat)}"),
            large,
            [
                new(voice.Say("mix at", "mezclar a las"), Voice.Clock(batch.MixStartMs / 1000.0)),
                new(voice.Say("mixed by", "la prepara"), $"{crew[batch.MixedBy].Name}, {Voice.Span((batch.MixEndMs - batch.MixStartMs) / 1000.0)}"),
                new(voice.Say("pour out by", "desechar a las"), Voice.Clock(batch.UseByMs / 1000.0)),
                new(voice.Say("A and B together", "A y B juntos"), voice.Volume(ticket.VolumeMl)),
                new(voice.Say("ratio error by cup", "error de proporción con vaso"), Error(ticket.RatioError, voice)),
                new(voice.Say("ratio error by scale", "error de proporción con báscula"), Error(ticket.RatioErrorByMass, voice)),
                new(voice.Say("for sections", "para las secciones"), string.Join(", ", batch.Sections)),
            ],
            [.. Lines(product, ticket, voice)]);
    }

    private static IEnumerable<Item> Lines(Product product, BatchTicket ticket, Voice voice)
    {
        if (product.StirFirst is { Length: > 0 } stir)
            yield return new(ItemMark.Tick, voice.Say($"Stir first: {stir}", $"Remover antes: {stir}"));
        if (product.Thinner is { } thinner)
            yield return new(ItemMark.Stop, voice.Say(
                $"{thinner.Name}: never more than {voice.PercentAtMost(thinner.LimitFraction)} of A and B together, here {voice.Volume(ticket.VolumeMl * thinner.LimitFraction)}.",
                $"{thinner.Name}: nunca más del {voice.PercentAtMost(thinner.LimitFraction)} de A y B juntos, aquí {voice.Volume(ticket.VolumeMl * thinner.LimitFraction)}."));
        else
            yield return new(ItemMark.Stop, voice.Say("No thinner: the data sheet as entered permits none.", "Sin diluyente: la ficha técnica anotada no admite ninguno."));
        if (product.EndsBy == EndOfPotLife.Hidden)
            yield return new(ItemMark.Stop, voice.Say(
                "This mix looks usable after its time and is not. The clock rules, from the moment A touches B.",
                "Esta mezcla parece utilizable pasado su tiempo y no lo es. Manda el reloj, desde que A toca B."));
        if (product.Hazards.Count > 0)
            yield return new(ItemMark.Caution, voice.Say(
                $"Can hurt: {string.Join(", ", product.Hazards.Select(h => Say.Hazard(h, voice)))}. Read the cautions of this sheet and the safety data sheet before opening.",
                $"Puede dañar: {string.Join(", ", product.Hazards.Select(h => Say.Hazard(h, voice)))}. Lea las precauciones de esta hoja y la hoja de datos de seguridad antes de abrir."));
        if (product.EndsBy == EndOfPotLife.Overheats)
            yield return new(ItemMark.Caution, voice.Say(
                "What is left over heats by itself. Do what the data sheet says with it, never in a closed bin.",
                "Lo que sobra se calienta solo. Siga la ficha técnica, nunca en un cubo cerrado."));
    }

    private static string Amount(double ml, double grams, Voice voice) => voice.Units == UnitSystem.Us
        ? $"{voice.Volume(ml)} / {voice.Number(grams, 1)} g ({voice.Mass(grams)})"
        : $"{voice.Volume(ml)} / {voice.Mass(grams)}";

    private static string Error(double fraction, Voice voice) => (fraction >= 0.0005 ? "+" : fraction <= -0.0005 ? "−" : "") + voice.Percent(Math.Abs(fraction), 1);
}
