using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Supply;
using Lapwise.Core.Timeline;
using Lapwise.Core.Work;

namespace Lapwise.Core.Bases;

/// <summary>A number of a job with what it rests on.</summary>
/// <param name="Of">Whose number it is: a top or a coat; empty: the job's.</param>
public sealed record BasedNumber(Phase Phase, string Of, Phrase Name, Phrase Shown, Basis Basis);

/// <summary>Every kind of number a job's pages and sheets show, in the order of the phases, each with its basis.</summary>
public static class JobBases
{
    public static IEnumerable<BasedNumber> Of(WholeJob whole) =>
    [
        .. Measured(whole.Measured), .. Materials(whole.Materials), .. Conditions(whole.Conditions), .. Hours(whole.Job),
        .. whole.Work.Coats.SelectMany(c => Work(c, whole.Job)), .. whole.Supply.Coats.SelectMany(c => Supply(c, whole.Job.Tools)), .. Days(whole.Timeline),
    ];

    /// <summary>What is said of one coat in every phase.</summary>
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    public static IEnumerable<BasedNumber> OfCoat(WholeJob whole, int coat) =>
    [
        .. Materials(new JobMaterials([whole.Materials.Coats[coat]])), .. Conditions(whole.Conditions with { Coats = [whole.Conditions.Coats[coat]] }),
        .. Work(whole.Work.Coats[coat], whole.Job), .. Supply(whole.Supply.Coats[coat], whole.Job.Tools),
    ];

    public static IEnumerable<BasedNumber> Measured(MeasuredJob measured)
    {
        foreach (var top in measured.Tops)
        {
            BasedNumber Area(Phrase name, double m2, Basis basis) => new(Phases.Measure, top.Top.Name, name, v => v.Area(m2), basis);
            var t = top.TakeOff;
            yield return Area(v => v.Say("flat", "plano"), t.FlatM2, MeasureBases.Flat(top));
            if (t.EdgeM2 > 0) yield return Area(v => v.Say("edges", "cantos"), t.EdgeM2, MeasureBases.Edges(top));
            if (t.SplashM2 > 0) yield return Area(v => v.Say("splashes", "salpicaderos"), t.SplashM2, MeasureBases.Splashes(top));
            if (t.WaterfallM2 > 0) yield return Area(v => v.Say("waterfalls", "cascadas"), t.WaterfallM2, MeasureBases.Waterfalls(top));
            if (t.RimM2 > 0) yield return Area(v => v.Say("cutout rims", "bordes de huecos"), t.RimM2, MeasureBases.Rims(top));
            yield return Area(v => v.Say("to coat", "por recubrir"), t.CoatedM2, MeasureBases.Coated(t));
            if (top.Closure.MisclosureM > 0) yield return new(Phases.Measure, top.Top.Name, v => v.Say("left open by the tape", "abierto según la cinta"), v => v.Length(top.Closure.MisclosureM), MeasureBases.Misclosure(top));
            foreach (var d in top.Closure.Diagonals)
                yield return new(Phases.Measure, top.Top.Name, v => v.Say($"diagonal {d.From}-{d.To}, computed", $"diagonal {d.From}-{d.To}, calculada"), v => v.Length(d.ComputedM), MeasureBases.Diagonal(top, d));
        }
    }

    public static IEnumerable<BasedNumber> Materials(JobMaterials materials)
    {
        foreach (var coat in materials.Coats)
        {
            BasedNumber Volume(Phrase name, double ml, Basis basis) => new(Phases.Materials, coat.Coat.Product.Name, name, v => v.Volume(ml), basis);
            yield return Volume(v => v.Say("net", "neto"), coat.NetMl, MaterialBases.Net(coat));
            yield return Volume(v => v.Say("loss", "pérdida"), coat.LossMl, MaterialBases.Loss(coat));
            yield return Volume(v => v.Say("need", "necesidad"), coat.NeedMl, MaterialBases.Need(coat));
            if (coat.ThinnerMl > 0) yield return Volume(v => v.Say("thinner", "diluyente"), coat.ThinnerMl, MaterialBases.Thinner(coat));
            if (coat is { Voc: { } voc, VocBasis: { } vocBasis }) yield return new(Phases.Materials, coat.Coat.Product.Name, v => v.Say("VOC as applied", "COV tal como se aplica"), v => v.VocOfRules(voc.ActualGPerL), vocBasis);
            yield return new(Phases.Materials, coat.Coat.Product.Name, v => v.Say("dry film", "película seca"), v => v.Film(coat.DryFilm.Micrometres), MaterialBases.DryFilm(coat));
        }
    }

    public static IEnumerable<BasedNumber> Conditions(JobConditions conditions)
    {
        if (double.IsNaN(conditions.DewPointC)) yield break;
        yield return new(Phases.Conditions, "", v => v.Say("dew point", "punto de rocío"), v => v.Temperature(conditions.DewPointC), conditions.DewPointBasis);
        foreach (var coat in conditions.Coats)
        {
            var name = coat.Coat.Product.Name;
            yield return new(Phases.Conditions, name, v => v.Say("surface above the dew point", "superficie sobre el punto de rocío"), v => v.TemperatureDifference(coat.DewMarginC), coat.DewMarginBasis);
            yield return new(Phases.Conditions, name, v => v.Say("open time", "tiempo abierto"), _ => Voice.Span(coat.OpenTime.Seconds), coat.OpenTimeBasis);
            yield return new(Phases.Conditions, name, v => v.Say("pot life", "vida de la mezcla"), _ => Voice.Span(coat.PotLife.Seconds), coat.PotLifeBasis);
            yield return new(Phases.Conditions, name, v => v.Say("share of a batch's age its film no longer stays open", "parte de la edad de la mezcla que la película ya no queda abierta"), v => v.Percent(coat.Ageing.Share), coat.Ageing.Basis);
            foreach (var vapour in coat.Vapours)
                yield return new(Phases.Conditions, name, v => v.Say("vapour in the room", "vapor en la sala"), v => v.Number(vapour.PeakPpm, 0) + " ppm", vapour.Basis);
        }
    }

    /// <summary>The best hours for each product, where the room swings.</summary>
    public static IEnumerable<BasedNumber> Hours(Job job)
    {
        if (DailySwing.Of(job) is not { } swing) yield break;
        foreach (var product in job.System.Select(c => c.Product).DistinctBy(p => p.Id))
        {
            var day = RoomDay.Over24Hours(product, swing);
            yield return new(Phases.Conditions, product.Name, v => v.Say("best hours", "mejores horas"), v => day.Strip.Best?.Hours(v) ?? v.Say("none of this day", "ninguna de este día"), day.Basis(product));
        }
    }

    /// <summary>How a coat dries: the stages of its water, and every wait.</summary>
    public static IEnumerable<BasedNumber> Drying(CoatDrying drying)
    {
        var name = drying.Coat.Product.Name;
        if (drying is { Water: { } water, WaterBasis: { } basis } && double.IsFinite(drying.DriedS))
        {
            yield return new(Phases.Conditions, name, v => v.Say("water leaves at a constant rate for", "el agua sale a velocidad constante durante"), _ => Voice.Span(water.ConstantRateS), basis);
            yield return new(Phases.Conditions, name, v => v.Say("a twentieth of the water is left after", "queda la vigésima parte del agua tras"), _ => Voice.Span(drying.DriedS), basis);
        }

        foreach (var wait in drying.Waits)
            yield return new(Phases.Conditions, name, v => Waits.Say(wait.For, v), v => wait.Seconds is { } s ? Voice.Span(s) : v.Say("not known", "no se sabe"), wait.Basis);
    }

    public static IEnumerable<BasedNumber> Work(CoatWork work, Job job)
    {
        if (work.Sections.Count == 0) yield break;
        BasedNumber Time(Phrase name, long ms, Basis basis) => new(Phases.Work, work.Coat.Product.Name, name, _ => Voice.Span(ms / 1000.0), basis);
        yield return Time(v => v.Say("lap margin", "margen de solape"), work.LapMarginMs, WorkBases.LapMargin(work));
        yield return Time(v => v.Say("margin aimed at", "margen buscado"), work.TargetMarginMs, WorkBases.Target(work, job.Aims));
        if (work.Laps.Any(l => l.Kind != LapKind.Break)) yield return Time(v => v.Say("worst lap age", "peor edad de solape"), work.WorstLapAgeMs, WorkBases.WorstLap(work));
        yield return Time(v => v.Say("worst section age", "peor edad de sección"), work.WorstSectionAgeMs, WorkBases.WorstSection(work, job.Crew));
        yield return new(Phases.Work, work.Coat.Product.Name, v => v.Say("starts of the sections", "inicios de las secciones"), v => v.Count(work.Sections.Count, ("section", "sections"), ("sección", "secciones")), WorkBases.Starts(work, job.Crew));
        if (work.Laps.Any(l => l.Kind != LapKind.Break)) yield return new(Phases.Work, work.Coat.Product.Name, v => v.Say("ages of the laps", "edades de los solapes"), v => v.Count(work.Laps.Count(l => l.Kind != LapKind.Break), ("lap", "laps"), ("solape", "solapes")), WorkBases.Laps(work));
        yield return Time(v => v.Say("least worst age that can be", "menor peor edad posible"), work.Proof.BoundMs, WorkBases.Bound(work));
        foreach (var usual in work.Baselines) yield return Time(v => v.Say($"usual way, {usual.Text(v)}", $"forma habitual, {usual.Text(v)}"), usual.WorstAgeMs, WorkBases.UsualWays(work));
        yield return Time(v => v.Say("from first mix to last end", "de la primera mezcla al último fin"), work.Sections.Max(s => s.EndMs), WorkBases.WholeTime(work));
        foreach (var batch in work.Batches)
            yield return new(Phases.Work, work.Coat.Product.Name, v => v.Say($"use batch {batch.Id} by", $"usar la mezcla {batch.Id} antes de"), _ => Voice.Clock(batch.UseByMs / 1000.0), WorkBases.UseBy(work, batch));
    }

    public static IEnumerable<BasedNumber> Supply(CoatSupply supply, Tools tools)
    {
        var name = supply.Coat.Product.Name;
        yield return new(Phases.Supply, name, v => v.Say("needed", "necesario"), v => v.Volume(supply.NeedMl), SupplyBases.Need(supply));
        if (supply.Kits.Count > 0)
        {
            yield return new(Phases.Supply, name, v => v.Say("kits", "juegos"), v => string.Join(" + ", supply.Kits.Select(k => $"{k.Count} × {v.Volume(k.SizeMl)}")), SupplyBases.Kits(supply));
            yield return new(Phases.Supply, name, v => v.Say("cost, in the money of the prices entered", "coste, en la moneda de los precios anotados"), v => v.Number((double)supply.CostTotal, 2), SupplyBases.Cost(supply));
            yield return new(Phases.Supply, name, v => v.Say("left over", "sobrante"), v => v.Volume(supply.LeftOverMl), SupplyBases.LeftOver(supply));
        }

        foreach (var ticket in supply.Tickets)
        {
            yield return new(Phases.Supply, name, v => v.Say($"ticket of batch {ticket.Batch}", $"boleta de la mezcla {ticket.Batch}"),
                v => string.Join(", ", ticket.Parts.Select(p => $"{p.Name} {v.Volume(p.Ml)} / {v.Mass(p.G)}").Append(v.Percent(ticket.RatioError, 1))), SupplyBases.Ticket(supply, ticket, tools));
        }
    }

    public static IEnumerable<BasedNumber> Days(JobTimeline timeline) =>
    [
        .. timeline.Steps.Select(s => new BasedNumber(Phases.Timeline, "", s.Name, _ => Voice.Span(s.Worked.TotalSeconds), s.TimeBasis)),
        .. timeline.Waits.Select(w => new BasedNumber(Phases.Timeline, "", w.Name, v => SiteClock.Moment(timeline, w.Earliest, v), w.Basis)),
        .. timeline.UseDates.Select(u => new BasedNumber(Phases.Timeline, "", v => UseDate.Say(u.Use, v), v => SiteClock.Moment(timeline, u.From, v), u.Basis)),
    ];
}
