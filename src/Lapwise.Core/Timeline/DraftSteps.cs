using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work;

namespace Lapwise.Core.Timeline;

/// <summary>A step with its length, before it has its days.</summary>
internal sealed record DraftStep(
    SiteStep Kind, Phrase Name, Phrase? How, Doer By, int? Coat, int Hands, double Seconds, bool Splits, Basis TimeBasis, IReadOnlyList<Phrase> Cautions, bool IsInserted);

/// <summary>Windows that could not be met, and how that was answered.</summary>
/// <param name="Sanded">Coats whose latest recoat is missed, each with the one it is sanded before.</param>
/// <param name="PullsLate">The masking comes off a hard film.</param>
/// <param name="GoesWithout">The limit on how long the customer can be without is passed.</param>
internal sealed record Eased(IReadOnlySet<(int Coat, int Before)> Sanded, bool PullsLate, bool GoesWithout)
{
    public static readonly Eased Nothing = new(new HashSet<(int, int)>(), PullsLate: false, GoesWithout: true);
}

/// <summary>The steps of one job from its system and its tops, with what stands between them.</summary>
internal sealed class DraftSteps
{
    private readonly Job job;
    private readonly MeasuredJob measured;
    private readonly JobWork work;
    private readonly RoomWaits waits;
    private readonly Eased eased;
    private readonly List<DraftStep> steps = [];
    private readonly List<Link> links = [];
    private readonly Layers layers;
    /// <summary>Place of the step of each coat so far.</summary>
    private readonly List<int> coated = [];

    private DraftSteps(Job job, MeasuredJob measured, Layers layers, JobWork work, RoomWaits waits, Eased eased) =>
        (this.job, this.measured, this.layers, this.work, this.waits, this.eased) = (job, measured, layers, work, waits, eased);

    public static (IReadOnlyList<DraftStep> Steps, IReadOnlyList<Link> Links) Of(Job job, MeasuredJob measured, Layers layers, JobWork work, RoomWaits waits, Eased eased)
    {
        var drafts = new DraftSteps(job, measured, layers, work, waits, eased);
        drafts.Before();
        drafts.Coats();
        drafts.After();
        drafts.LimitWithout();
        return (drafts.steps, drafts.links);
    }

    /// <summary>A product whose use the customer waits for, with cautious figures where its sheet gives none.</summary>
    public static Product Used(Coat coat) => coat.Product is { UsableFrom: null } silent ? silent with { UsableFrom = UsualTimes.Usable } : coat.Product;

    private void Before()
    {
        Step(SiteStep.PracticeBoard, v => v.Say("practice board", "placa de prueba"), v => v.Say("roll and lap it in this room, beside the sample the customer signed", "rodillo y solapes en esta sala, junto a la muestra que firmó el cliente"));
        Step(SiteStep.ProtectRoom, v => v.Say("clear and protect the room", "despejar y proteger la sala"), null);
        foreach (var fixture in Fixtures())
            Fixed(SiteStep.TakeOut, v => v.Say($"{fixture.Name} out", $"quitar {fixture.Name}"), fixture.By, fixture.OutS, UsualTimes.TakeOut);
        Step(SiteStep.OldSilicone, v => v.Say("old silicone out", "quitar la silicona vieja"), v => v.Say("blade, then remover; no trace left, nothing sticks to it", "cuchilla y luego quitasiliconas; sin rastro, nada se pega a ella"));
        if (job.Timeline.BondTest ?? measured.Tops.Any(t => Surfaces.IsInDoubt(t.Top.Substrate))) BondTest();
        foreach (var (surface, tops) in BySurface())
            Prepared(SiteStep.Clean, v => v.Say($"clean {surface.Name(v)}", $"limpiar {surface.Name(v)}"), surface.Clean, tops, surface.CleanSPerM2, []);
        var repair = Step(SiteStep.Repair, v => v.Say("fill and repair", "masillar y reparar"), null);
        Step(SiteStep.Tent, v => v.Say("tent", "carpa"), v => v.Say("plastic to floor and ceiling; keep a way for fresh air", "plástico de suelo a techo; deje paso al aire fresco"));
        Step(SiteStep.AirOff, v => v.Say("air handling off", "apagar la climatización"), v => v.Say("heating, cooling and fans that blow into the tent; vapour still leaves as the safety data sheet says", "calefacción, frío y ventiladores que den en la carpa; el vapor sale como indica la hoja de seguridad"));
        Step(SiteStep.Mask, v => v.Say("mask", "enmascarar"), null);
        var sanded = steps.Count;
        foreach (var (surface, tops) in BySurface())
            Prepared(SiteStep.Sand, v => v.Say($"sand {surface.Name(v)}", $"lijar {surface.Name(v)}"), surface.Sand, tops, surface.SandSPerM2, [Core.Explain.Cautions.For(Hazard.SandingDust), .. surface.Cautions]);
        if (repair is { } filled && steps.Count > sanded)
            Wait(filled, sanded, v => v.Say("filler hardens", "endurece la masilla"), UsualTimes.FillerS, Sources.Trade);
        Primers();
    }

    private void BondTest()
    {
        var test = Step(SiteStep.BondTest, v => v.Say("bond test", "prueba de adherencia"), v => v.Say("sand and coat a patch in a corner; tape test when it has hardened", "lijar y recubrir un parche en una esquina; ensayo con cinta cuando endurezca"));
        if (test is not { } patch) return;
        var product = job.System[0].Product;
        links.Add(new Link(patch, steps.Count, LinkKind.Wait, product.Recoat is null ? end => end + Minutes(UsualTimes.BondTestS) : Earliest(product, WaitFor.EarliestRecoat))
        {
            Name = v => v.Say("bond test hardens", "endurece la prueba de adherencia"),
            Basis = product.Recoat is null ? _ => Given(UsualTimes.BondTestS, Sources.CautiousGuess) : end => BasisOf(product, WaitFor.EarliestRecoat, end) with { Source = Sources.TapeTest },
        });
    }

    private void Primers()
    {
        var primed = BySurface().Where(s => s.Surface.Primer is not null).ToList();
        foreach (var (surface, tops) in primed)
            Prepared(SiteStep.Prime, v => v.Say($"prime {surface.Name(v)}", $"imprimar {surface.Name(v)}"), surface.Primer!, tops, surface.PrimeSPerM2, []);
        if (primed.Count == 0 || steps[^1].Kind != SiteStep.Prime) return;
        var primer = job.System[0].Product with { Id = "\0primer", PotLife = [], Recoat = new Recoat(UsualTimes.Primer.Seconds, UsualTimes.Primer.Seconds, UsualTimes.Primer.Celsius) };
        links.Add(new Link(steps.Count - 1, steps.Count, LinkKind.Wait, Earliest(primer, WaitFor.EarliestRecoat))
        {
            Name = v => v.Say("primer dries", "seca la imprimación"),
            Basis = end => BasisOf(primer, WaitFor.EarliestRecoat, end) with { Source = Sources.CautiousGuess },
        });
    }

    private void Coats()
    {
        for (var coat = 0; coat < job.System.Count; coat++)
        {
            var beneath = layers.Beneath(coat).Select(b => (b.Coat, Touched: SandBetween(b.Coat, b.On, coat))).ToList();
            var wiped = Step(SiteStep.Wipe, Wiped(layers.Tops(coat)), v => v.Say("vacuum, then a clean cloth; no dust left", "aspirar y luego un paño limpio; sin polvo"), layers.Tops(coat), coat);
            coated.Add(Coat(coat));
            if (wiped is { } wipe && FitInADay(wipe, coated[coat])) links.Add(new Link(wipe, coated[coat], LinkKind.Sequence, end => end) { NotAfter = end => end + Minutes(UsualTimes.WipedS) });
            foreach (var (last, sanded) in beneath) Recoat(last, sanded, wiped, coat);
            // Dust of sanding must not settle in a film that is fresh on another top.
            if (beneath.Select(b => b.Touched).FirstOrDefault(t => t is not null) is { } dusty && beneath.TrueForAll(b => b.Coat != coat - 1)) DustFree(coat - 1, dusty);
            if (coat != layers.Outermost[^1] && layers.Outermost.Contains(coat)) Unmask(coat);
        }
    }

    private Phrase Wiped(IReadOnlyList<MeasuredTop> tops) => IsAll(tops)
        ? v => v.Say("wipe, tools out", "pasar el paño, sacar útiles")
        : v => v.Say($"wipe {v.List(Names(tops))}, tools out", $"pasar el paño a {v.List(Names(tops))}, sacar útiles");

    /// <summary>Two steps one after the other; where they do not, dust that settles in between is the lesser evil.</summary>
    private bool FitInADay(int one, int other) => Minutes(steps[one].Seconds) + Minutes(steps[other].Seconds) <= job.Timeline.WorkToMin - job.Timeline.WorkFromMin;

    /// <summary>Place of the step; null where the coat beneath is not sanded.</summary>
    private int? SandBetween(int last, IReadOnlyList<MeasuredTop> tops, int coat)
    {
        var inserted = eased.Sanded.Contains((last, coat));
        var recoat = job.System[last].Product.Recoat;
        if (!inserted && recoat is not { IsAlwaysSanded: true }) return null;
        var how = recoat?.Sanding;
        return Step(SiteStep.SandBetween, v => v.Say($"sand coat {last + 1}", $"lijar la capa {last + 1}"),
            v => how ?? v.Say("dull all over, fine grit; the data sheet names it", "mate por completo, grano fino; la ficha técnica lo indica"), tops, coat, inserted, [Core.Explain.Cautions.For(Hazard.SandingDust)]);
    }

    private int Coat(int coat)
    {
        var planned = work.Coats[coat];
        var seconds = planned.Sections.Select(s => s.EndMs).Concat(planned.Steps.Select(s => s.EndMs)).Concat(planned.Batches.Select(b => b.MixEndMs)).DefaultIfEmpty(0).Max() / 1000.0;
        var basis = new Basis("t = max e",
            [
                new(v => v.Say("last end e, from the first mixing on", "último fin e, desde la primera mezcla"), _ => Voice.Span(seconds)),
                new(v => v.Say("order of work", "orden de trabajo"), v => v.Count(planned.Sections.Count, ("section", "sections"), ("sección", "secciones")) + ", " + v.Count(planned.Batches.Count, ("batch", "batches"), ("mezcla", "mezclas"))),
            ], Sources.AsEntered);
        var product = planned.Coat.Product;
        Add(new DraftStep(SiteStep.Coat, v => v.Say($"coat {coat + 1}", $"capa {coat + 1}"), planned.Coat.Title, Doer.Crew, coat, job.Crew.Count, seconds, Splits: false, basis, [.. Core.Explain.Cautions.For(product.Hazards)], IsInserted: false));
        return steps.Count - 1;
    }

    /// <summary>The window between two coats. Wiping and sanding touch the film, so they wait for its earliest too.</summary>
    private void Recoat(int last, int? sanded, int? wiped, int coat)
    {
        var product = job.System[last].Product;
        var (from, next) = (coated[last], coated[coat]);
        var firstTouch = sanded ?? wiped ?? next;
        Phrase name = v => v.Say($"coat {last + 1} to coat {coat + 1}", $"de la capa {last + 1} a la {coat + 1}");
        if (product.Recoat is null)
        {
            links.Add(new Link(from, firstTouch, LinkKind.Wait, end => end + Minutes(UsualTimes.RecoatS)) { Name = name, Basis = _ => Given(UsualTimes.RecoatS, Sources.CautiousGuess) });
            return;
        }

        var earliest = Earliest(product, WaitFor.EarliestRecoat);
        if (firstTouch < next) links.Add(new Link(from, firstTouch, LinkKind.Sequence, earliest));
        links.Add(new Link(from, sanded ?? next, LinkKind.Recoat, earliest)
        {
            NotAfter = sanded is null ? Latest(product, WaitFor.LatestRecoat) : null,
            Name = name,
            Basis = end => BasisOf(product, WaitFor.EarliestRecoat, end),
        });
    }

    /// <summary>The masking comes off a coat that nothing more goes on.</summary>
    private void Unmask(int coat)
    {
        var tops = layers.Finished(coat);
        Phrase name = IsAll(tops)
            ? v => v.Say("masking off", "quitar la cinta")
            : v => v.Say($"masking off {v.List(Names(tops))}", $"quitar la cinta de {v.List(Names(tops))}");
        if (Step(SiteStep.Unmask, name, v => v.Say("slowly, back on itself, while the film still gives", "despacio, doblada sobre sí misma, mientras la película aún cede"), tops) is not { } unmask) return;
        var product = job.System[coat].Product;
        var openS = work.Coats[coat].OpenTime.Seconds;
        links.Add(new Link(coated[coat], unmask, LinkKind.Unmask, end => end + Minutes(openS))
        {
            NotAfter = eased.PullsLate ? null : product.Recoat is null ? end => end + (4 * 60) : Latest(product, WaitFor.EarliestRecoat),
            Name = v => v.Say("masking off while the film gives", "quitar la cinta mientras la película cede"),
            Basis = _ => Given(openS, Sources.Trade),
        });
    }

    private void After()
    {
        Unmask(layers.Outermost[^1]);
        if (Step(SiteStep.ClearRoom, v => v.Say("tent down, air handling on", "quitar la carpa, encender la climatización"), v => v.Say("when the film takes no dust and the vapour has cleared", "cuando la película no coja polvo y el vapor se haya ido")) is { } clear)
            foreach (var coat in layers.Outermost) DustFree(coat, clear);

        var back = steps.Count;
        foreach (var fixture in Fixtures())
            Fixed(SiteStep.PutBack, v => v.Say($"{fixture.Name} back", $"volver a poner {fixture.Name}"), fixture.By, fixture.BackS, UsualTimes.PutBack);
        if (steps.Count > back) UseWait(back, _ => WaitFor.LightUse);
        if (Step(SiteStep.NewCaulk, v => v.Say("new caulk", "silicona nueva"), v => v.Say("neutral cure; not on film that still hardens", "de curado neutro; no sobre película que aún endurece")) is { } caulk)
            UseWait(caulk, product => product.UsableFrom?.WaterS is null ? WaitFor.FullUse : WaitFor.Water);
        Step(SiteStep.TouchUp, v => v.Say("touch-up visit", "visita de retoques"), null);
        if (Step(SiteStep.Handover, v => v.Say("handover", "entrega"), v => v.Say("raking light together, care sheet, dates of use", "luz rasante juntos, hoja de cuidados, fechas de uso")) is { } handover && steps[handover - 1].Kind == SiteStep.Coat)
            UseWait(handover, _ => WaitFor.LightUse);
    }

    private void DustFree(int coat, int clear)
    {
        var product = Used(job.System[coat]);
        var what = product.DryToTouch is not null ? WaitFor.DryToTouch : WaitFor.EarliestRecoat;
        var known = product.DryToTouch is not null || product.Recoat is not null;
        links.Add(new Link(coated[coat], clear, LinkKind.Wait, known ? Earliest(product, what) : end => end + Minutes(UsualTimes.RecoatS))
        {
            Name = v => v.Say("film takes no dust", "la película no coge polvo"),
            Basis = known ? end => BasisOf(product, what, end) : _ => Given(UsualTimes.RecoatS, Sources.CautiousGuess),
        });
    }

    /// <summary>A step that waits until every film is hard enough for something.</summary>
    private void UseWait(int step, Func<Product, WaitFor> whatFor)
    {
        foreach (var coat in layers.Outermost)
        {
            var product = Used(job.System[coat]);
            var what = whatFor(product);
            links.Add(new Link(coated[coat], step, LinkKind.Wait, Earliest(product, what))
            {
                Name = v => v.Say($"film hardens for {Waits.Say(what, v)}", $"endurece para {Waits.Say(what, v)}"),
                Basis = end => BasisOf(product, what, end),
            });
        }
    }

    private void LimitWithout()
    {
        if (job.Timeline.LongestWithoutS is not { } seconds || eased.GoesWithout) return;
        var (first, last) = (steps.FindIndex(s => s.Kind == SiteStep.TakeOut), steps.FindLastIndex(s => s.Kind == SiteStep.PutBack));
        if (first < 0 || last < 0) return;
        var backMin = Minutes(steps[last].Seconds);
        links.Add(new Link(first, last, LinkKind.Without, _ => 0)
        {
            NotAfter = end => end + (long)Math.Floor(seconds / 60) - backMin,
            Name = v => v.Say($"without what was taken out for at most {Voice.Span(seconds)}", $"sin lo desmontado como mucho {Voice.Span(seconds)}"),
            Basis = _ => Given(seconds, Sources.AsEntered),
        });
    }

    private IReadOnlyList<Fixture> Fixtures() => job.Timeline.Fixtures ??
        [.. measured.Tops.SelectMany(t => t.Top.Cutouts.Select(c => new Fixture(Fixture.In(c.Name, t.Top.Name, measured.Tops.Count), Doer.Trade, null, null)))];

    private bool IsAll(IReadOnlyList<MeasuredTop> tops) => tops.Count == measured.Tops.Count;

    private static IReadOnlyList<string> Names(IReadOnlyList<MeasuredTop> tops) => [.. tops.Select(t => t.Top.Name)];

    private IEnumerable<(Surface Surface, IReadOnlyList<MeasuredTop> Tops)> BySurface() =>
        measured.Tops.GroupBy(t => t.Top.Substrate).OrderBy(g => g.Key is null).ThenBy(g => g.Key).Select(g => (Surfaces.Of(g.Key), (IReadOnlyList<MeasuredTop>)[.. g]));

    private int? Step(SiteStep kind, Phrase name, Phrase? how) => Step(kind, name, how, measured.Tops);

    /// <param name="tops">The tops it is done to.</param>
    private int? Step(SiteStep kind, Phrase name, Phrase? how, IReadOnlyList<MeasuredTop> tops, int? coat = null, bool isInserted = false, IReadOnlyList<Phrase>? cautions = null) =>
        Timed(kind, name, how, Doer.Crew, UsualTimes.Of(kind), tops.Count, tops.Sum(t => t.TakeOff.CoatedM2), coat, splits: kind is SiteStep.ProtectRoom or SiteStep.OldSilicone or SiteStep.Repair or SiteStep.Mask, isInserted, cautions ?? []);

    private void Prepared(SiteStep kind, Phrase name, Phrase how, IReadOnlyList<MeasuredTop> tops, double perM2S, IReadOnlyList<Phrase> cautions) =>
        Timed(kind, name, how, Doer.Crew, UsualTimes.Of(kind) with { PerM2S = perM2S }, tops.Count, tops.Sum(t => t.TakeOff.CoatedM2), null, splits: true, isInserted: false, cautions);

    private void Fixed(SiteStep kind, Phrase name, Doer by, double? ofFixture, UsualTime usual)
    {
        var ask = job.Timeline.Steps.FirstOrDefault(s => s.Step == kind);
        if (ask?.IsLeftOut == true) return;
        var entered = ofFixture ?? ask?.TimeS;
        var seconds = entered ?? usual.FixedS;
        Phrase? how = by switch
        {
            Doer.Trade => v => v.Say("by a licensed trade: water, gas and mains off first", "por un oficio con licencia: antes, agua, gas y corriente cortados"),
            Doer.Customer => v => v.Say("by the customer", "por el cliente"),
            _ => null,
        };
        Add(new DraftStep(kind, name, how, by, null, 1, seconds, false, Given(seconds, entered is null ? Sources.Trade : Sources.AsEntered), [], false));
    }

    private int? Timed(SiteStep kind, Phrase name, Phrase? how, Doer by, UsualTime usual, int tops, double m2, int? coat, bool splits, bool isInserted, IReadOnlyList<Phrase> cautions)
    {
        var ask = job.Timeline.Steps.FirstOrDefault(s => s.Step == kind);
        if (ask?.IsLeftOut == true && !isInserted) return null;
        var hands = Math.Min(job.Crew.Count, UsualTimes.MostHands);
        var seconds = ask?.TimeS ?? RoundUp(usual.For(tops, m2) / hands);
        var basis = ask?.TimeS is { } entered ? Given(entered, Sources.AsEntered) : new Basis("t = (a + b · n + c · A) / h",
            [
                new(v => v.Say("fixed part a", "parte fija a"), _ => Voice.Span(usual.FixedS)),
                new(v => v.Say("each of n tops, b", "cada una de n cubiertas, b"), _ => $"{Voice.Span(usual.PerTopS)} × {tops}"),
                new(v => v.Say("by area A, c", "por superficie A, c"), v => $"{Voice.Span(usual.PerM2S * m2)} ({v.Area(m2)})"),
                new(v => v.Say("hands h", "manos h"), _ => $"{hands}"),
            ], Sources.Trade);
        Add(new DraftStep(kind, name, how, by, coat, hands, seconds, splits, basis, cautions, isInserted));
        return steps.Count - 1;
    }

    private void Add(DraftStep step)
    {
        if (steps.Count > 0) links.Add(new Link(steps.Count - 1, steps.Count, LinkKind.Sequence, end => end));
        steps.Add(step);
    }

    private void Wait(int from, int to, Phrase name, double seconds, Source source) =>
        links.Add(new Link(from, to, LinkKind.Wait, end => end + Minutes(seconds)) { Name = name, Basis = _ => Given(seconds, source) });

    private Func<long, long> Earliest(Product product, WaitFor what) => end => end + Minutes(waits.After(product, what, end)!.Seconds!.Value);

    private Func<long, long> Latest(Product product, WaitFor what) => end => end + (long)Math.Floor(waits.After(product, what, end)!.Seconds!.Value / 60);

    private Basis BasisOf(Product product, WaitFor what, long end) => waits.After(product, what, end)!.Basis;

    private static Basis Given(double seconds, Source source) => new("t", [new(v => v.Say("time", "tiempo"), _ => Voice.Span(seconds))], source);

    private static long Minutes(double seconds) => (long)Math.Ceiling(seconds / 60);

    private static double RoundUp(double seconds) => Math.Ceiling(seconds / 300) * 300;
}
