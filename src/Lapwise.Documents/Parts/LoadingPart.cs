using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Documents.Parts;

/// <summary>What to buy, what comes from the shelf, and what is loaded for the day.</summary>
internal static class LoadingPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice, PaperBasis basis)
    {
        foreach (var block in PackingPart.Blocks(whole, voice)) yield return block;
        if (basis.Picks.Any(p => p.Batches.Any(b => b.Packs.Count > 0) || p.Reasons.Count > 0))
        {
            yield return new Block.Heading(2, voice.Say("From the shelf, first expired first", "Del estante, primero lo que antes caduca"));
            yield return new Block.Table(
                [new(voice.Say("coat, batch", "capa, mezcla"), 1.4), new(voice.Say("packs", "envases"), 3.6), new(voice.Say("to buy", "por comprar"), 1.2, Right: true)],
                [.. basis.Picks.SelectMany(p => p.Batches.Select(b => new Row(
                [
                    $"{p.Coat + 1}, {b.Batch}",
                    string.Join("; ", b.Packs.Select(k => voice.Say($"{k.Pack.Id}, lot {k.Pack.Lot}: {voice.Volume(k.Ml)}", $"{k.Pack.Id}, lote {k.Pack.Lot}: {voice.Volume(k.Ml)}"))),
                    b.MissingMl > 0 ? voice.Volume(b.MissingMl) : "–",
                ])))]);
            var reasons = basis.Picks.SelectMany(p => p.Reasons).Select(r => Say.Reason(r, voice)).Distinct().ToList();
            if (reasons.Count > 0) yield return new Block.Items(reasons);
        }

        yield return new Block.Heading(1, voice.Say("To load", "Por cargar"));
        yield return new Block.Items([.. Load(whole, voice).Select(text => new Item(ItemMark.Tick, text))]);
        yield return new Block.Paragraph(voice.Say("Common practice, no source, but for what comes from the plan. The safety data sheets name the gloves and the respirator.",
            "Práctica común, sin fuente, salvo lo que sale del plan. Las hojas de datos de seguridad dicen qué guantes y qué respirador."));
    }

    private static IEnumerable<string> Load(WholeJob whole, Voice voice)
    {
        var rolled = whole.Job.System.Count(c => c.Product.Method == ApplicationMethod.Rolled);
        var batches = whole.Supply.Coats.Sum(c => c.Tickets.Count);
        yield return voice.Say($"{batches} mixing cups marked every {voice.OnCup(whole.Job.Tools.CupStepMl)}, and sticks", $"{batches} vasos de mezcla marcados cada {voice.OnCup(whole.Job.Tools.CupStepMl)}, y paletas para remover");
        yield return voice.Say($"scale with steps of {voice.OnScale(whole.Job.Tools.ScaleStepG)}, its batteries", $"báscula con pasos de {voice.OnScale(whole.Job.Tools.ScaleStepG)}, con pilas");
        if (rolled > 0)
        {
            var naps = rolled * whole.Job.Crew.Count;
            yield return voice.Say($"{naps} roller naps and one to spare, {naps} tray liners", $"{naps} fundas de rodillo y una de repuesto, {naps} forros de bandeja");
        }

        foreach (var thinner in whole.Job.System.Where(c => c.ThinnerFraction > 0).Select(c => c.Product.Thinner?.Name).OfType<string>().Distinct(StringComparer.Ordinal)) yield return thinner;
        yield return voice.Say("masking tape, sheeting, new caulk", "cinta, plástico, silicona nueva");
        yield return voice.Say("abrasive, extraction with fine-dust filter, lint-free wipes", "abrasivo, aspirador con filtro de polvo fino, paños sin pelusa");
        yield return voice.Say("thermometer for air and surface, hygrometer", "termómetro de aire y superficie, higrómetro");
        yield return voice.Say("raking light, clock, wet-film comb", "luz rasante, reloj, peine de película húmeda");
        yield return voice.Say("gloves, eye protection, respirator and cartridges as the safety data sheets name; the sheets themselves", "guantes, protección ocular, respirador y cartuchos según las hojas de datos de seguridad; y las propias hojas");
        if (whole.Job.System.Any(c => c.Product.Hazards.Contains(Hazard.FlammableVapour))) yield return voice.Say("extinguisher; closed metal can with water for rags", "extintor; bote metálico cerrado con agua para los trapos");
    }
}
