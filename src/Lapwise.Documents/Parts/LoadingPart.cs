using Lapwise.Core;
using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;
using Lapwise.Core.Timeline;
using Lapwise.Core.Work;

namespace Lapwise.Documents.Parts;

/// <summary>What to buy, what comes from the shelf, and what is loaded for the day.</summary>
internal static class LoadingPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice, PaperBasis basis)
    {
        foreach (var block in PackingPart.Blocks(whole, voice)) yield return block;
        if (basis.Picks.Any(p => p.Batches.Any(b => b.Packs.Count > 0) || p.Reasons.Count > 0))
        {
            var amount = voice.Volumes(basis.Picks.SelectMany(p => p.Batches).SelectMany(b => b.Packs.Select(k => k.Ml).Append(b.MissingMl)));
            yield return new Block.Heading(2, voice.Say("From the shelf, first expired first", "Del estante, primero lo que antes caduca"));
            yield return new Block.Table(
                [new(voice.Say("coat, batch", "capa, mezcla"), 1.4), new(voice.Say("packs", "envases"), 3.6), new(voice.Say("to buy", "por comprar"), 1.2, Right: true)],
                [.. basis.Picks.SelectMany(p => p.Batches.Select(b => new Row(
                [
                    $"{p.Coat + 1}, {b.Batch}",
                    string.Join("; ", b.Packs.Select(k => voice.Say($"{k.Pack.Id}, lot {k.Pack.Lot}: {amount(k.Ml)}", $"{k.Pack.Id}, lote {k.Pack.Lot}: {amount(k.Ml)}"))),
                    b.MissingMl > 0 ? amount(b.MissingMl) : "–",
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
        var batches = whole.Supply.Coats.Sum(c => c.Tickets.Count);
        var cups = voice.OnCup(whole.Job.Tools.CupStepMl);
        if (batches > 0)
            yield return voice.Count(batches, ("mixing cup", "mixing cups"), ("vaso de mezcla", "vasos de mezcla")) + voice.Say(
                $" marked every {cups}, as many clean containers to pour over into, and sticks", $", con marcas cada {cups}, otros tantos recipientes limpios para trasvasar y paletas para remover");
        yield return voice.Say($"scale with steps of {voice.OnScale(whole.Job.Tools.ScaleStepG)}, its batteries", $"báscula con pasos de {voice.OnScale(whole.Job.Tools.ScaleStepG)}, con pilas");
        if (whole.Work.Coats.Sum(Rollers) is > 0 and var naps)
            yield return voice.Count(naps, ("roller nap", "roller naps"), ("funda de rodillo", "fundas de rodillo")) + voice.Say(" and one to spare, ", " y una de repuesto, ")
                + voice.Count(naps, ("tray liner", "tray liners"), ("forro de bandeja", "forros de bandeja"));
        if (whole.Job.System.Any(c => c.Product.Method == ApplicationMethod.Poured))
            yield return voice.Say("spreader, spiked roller for the bubbles, scraper for the drips", "llana para extender, rodillo de púas para las burbujas, rasqueta para los goteos");
        foreach (var strained in whole.Supply.Coats.Where(c => c.Coat.Product.Strain is not null).GroupBy(c => c.Coat.Product.Strain!, StringComparer.Ordinal))
            yield return voice.Say("to strain ", "para colar ") + voice.Count(strained.Sum(c => c.Tickets.Count), ("batch", "batches"), ("mezcla", "mezclas")) + $": {strained.Key}";
        if (whole.Supply.Coats.Any(c => c.Tickets.Any(t => !t.CupReadsThinner))) yield return voice.Say("syringe marked in mL, for the thinner", "jeringa marcada en mL, para el diluyente");

        foreach (var thinner in whole.Job.System.Where(c => c.ThinnerFraction > 0).Select(c => c.Product.Thinner?.Name).OfType<string>().Distinct(StringComparer.Ordinal)) yield return thinner;
        foreach (var wipe in whole.Job.System.Select(c => c.Wipe).OfType<Wipe>().GroupBy(w => w.Solvent))
            yield return voice.Say($"{Solvents.Of(wipe.Key).Name(voice)} for the wipe, {voice.Volume(wipe.Sum(w => w.AmountMl))}, in its closed can", $"{Solvents.Of(wipe.Key).Name(voice)} para la limpieza, {voice.Volume(wipe.Sum(w => w.AmountMl))}, en su bote cerrado");
        foreach (var line in whole.Timeline.Steps.Select(s => Needs(s, voice)).OfType<string>().Distinct(StringComparer.Ordinal)) yield return line;
        yield return voice.Say("extraction with fine-dust filter, lint-free wipes", "aspirador con filtro de polvo fino, paños sin pelusa");
        yield return voice.Say("thermometer for air and surface, hygrometer", "termómetro de aire y superficie, higrómetro");
        yield return voice.Say("raking light, clock, wet-film comb", "luz rasante, reloj, peine de película húmeda");
        yield return voice.Say("gloves, eye protection, respirator and cartridges as the safety data sheets name; the sheets themselves", "guantes, protección ocular, respirador y cartuchos según las hojas de datos de seguridad; y las propias hojas");
        if (whole.Job.System.Any(c => c.Wipe is not null || c.Product.Hazards.Contains(Hazard.FlammableVapour))) yield return voice.Say("extinguisher; closed metal can with water for rags", "extintor; bote metálico cerrado con agua para los trapos");
    }

    /// <summary>What a step of the timeline takes beside the coats; null: nothing that is loaded for it.</summary>
    private static string? Needs(PlannedStep step, Voice voice) => step.Kind switch
    {
        SiteStep.PracticeBoard => voice.Say("practice board, prepared like the tops", "placa de prueba, preparada como las cubiertas"),
        SiteStep.ProtectRoom => voice.Say("floor covering, sheeting", "protección de suelo, plástico"),
        SiteStep.OldSilicone => voice.Say("blades and remover for the old silicone", "cuchillas y quitasiliconas"),
        SiteStep.BondTest => voice.Say("tape and blade for the bond test", "cinta y cuchilla para la prueba de adherencia"),
        SiteStep.Clean => voice.Say($"to {step.Name(voice)}: degreaser or what the surface asks for, water, cloths", $"para {step.Name(voice)}: desengrasante o lo que pida la superficie, agua, paños"),
        SiteStep.Repair => voice.Say("filler that the coating's data sheet allows, spatula", "masilla que admita la ficha del recubrimiento, espátula"),
        SiteStep.Tent => voice.Say("plastic, poles and tape for the tent", "plástico, postes y cinta para la carpa"),
        SiteStep.Mask => voice.Say("masking tape", "cinta de enmascarar"),
        SiteStep.Sand or SiteStep.SandBetween => voice.Say($"abrasive to {step.Name(voice)}", $"abrasivo para {step.Name(voice)}") + (step.How is { } how ? $": {how(voice)}" : ""),
        SiteStep.Prime => voice.Say($"to {step.Name(voice)}", $"para {step.Name(voice)}") + (step.How is { } how ? $": {how(voice)}" : ""),
        SiteStep.NewCaulk => voice.Say("new caulk and its gun", "silicona nueva y su pistola"),
        _ => null,
    };

    /// <summary>One for each who rolls, and as many again wherever fresh ones are taken.</summary>
    private static int Rollers(CoatWork work) => work.Coat.Product.Method == ApplicationMethod.Rolled
        ? work.Sections.Select(s => s.Person).Distinct().Count() * (1 + FreshRollers.Before(work).Count)
        : 0;
}
