using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Materials;

/// <summary>How much of each product, in what mix?</summary>
public static class Estimating
{
    /// <param name="rollers">How many roll each coat; empty: not planned yet, and everyone may.</param>
    public static JobMaterials Estimate(Job job, MeasuredJob measured, IReadOnlyList<int> rollers) =>
        new([.. job.System.Select((coat, i) => EstimateCoat(coat, job, measured.Under(coat), i < rollers.Count && rollers[i] > 0 ? rollers[i] : job.Crew.Count))]);

    public static JobMaterials Estimate(Job job, MeasuredJob measured) => Estimate(job, measured, []);

    private static CoatMaterial EstimateCoat(Coat coat, Job job, MeasuredJob measured, int rollers)
    {
        var takes = Consumption.Of(coat, job.Tools);
        var areaM2 = measured.Total.CoatedM2;
        IReadOnlyList<EdgeStrip> strips = [.. measured.Tops.SelectMany(t => t.Faces).SelectMany(f => f.Strips)];

        var netMl = takes.NetMl(areaM2);
        IReadOnlyList<Loss> beforeCups = areaM2 > 0 ? LossesBeforeCups(takes, coat, rollers, areaM2, strips) : [];
        var batches = takes.BatchesFor(netMl + beforeCups.Sum(l => l.Ml));
        IReadOnlyList<Loss> counted = [.. beforeCups, .. Named(LossKind.CupResidue, batches * takes.CupMlPerBatch)];
        var reserveMl = PracticalUse.ReserveMl(coat, netMl, netMl + counted.Sum(l => l.Ml));
        IReadOnlyList<Loss> losses = [.. counted, .. Named(LossKind.MeasuredUse, reserveMl)];
        var needMl = netMl + losses.Sum(l => l.Ml);
        var thinnerMl = needMl * coat.ThinnerFraction;
        var voc = CoatVoc.Of(coat);

        return new CoatMaterial(
            coat,
            areaM2,
            takes.SpreadMlPerM2,
            Film.Dry(coat.WetFilm, coat.Product.VolumeSolids, coat.ThinnerFraction),
            netMl,
            losses,
            thinnerMl,
            batches,
            [
                .. FilmReasons.Of(coat, takes, measured, needMl, thinnerMl)
                    .Concat(CoatVoc.Reasons(coat, voc, job.Aims))
                    .Concat(PracticalUse.Reasons(coat, netMl, needMl))
                    .OrderBy(r => r.Limit),
            ],
            BasisOf(coat, takes, areaM2, rollers))
        {
            Voc = voc,
            VocBasis = voc is null ? null : CoatVoc.BasisOf(coat),
        };
    }

    private static IReadOnlyList<Loss> LossesBeforeCups(Consumption takes, Coat coat, int rollers, double areaM2, IReadOnlyList<EdgeStrip> strips) =>
    [
        .. Named(LossKind.RollerCharge, rollers * takes.RollerMlPerPerson),
        .. Named(LossKind.TrayResidue, rollers * takes.TrayMlPerPerson),
        .. Named(coat.Product.Method is ApplicationMethod.Poured ? LossKind.RunOff : LossKind.EdgePass,
            takes.EdgeLossMl(strips.Sum(s => s.AreaM2), strips.Sum(s => s.LengthM))),
        .. Named(LossKind.Roughness, takes.RoughMl(areaM2)),
    ];

    private static IEnumerable<Loss> Named(LossKind kind, double ml) => ml > 0 ? [new Loss(kind, ml)] : [];

    private static Basis BasisOf(Coat coat, Consumption takes, double areaM2, int rollers)
    {
        List<BasisInput> inputs =
        [
            new(v => v.Say("film area A", "área de película A"), v => v.Area(areaM2)),
            new(v => v.Say("wet film WFT", "película húmeda WFT"), v => v.Film(coat.WetFilm.Micrometres)),
            new(v => v.Say("thinner f, share of A and B", "diluyente f, parte de A y B"), v => v.Percent(coat.ThinnerFraction, 1)),
            new(v => v.Say("volume solids VS", "sólidos en volumen VS"), v => v.Percent(coat.Product.VolumeSolids, 1)),
        ];
        if (takes.RollerMlPerPerson > 0) inputs.Add(new(v => v.Say("roller charge, each person who rolls", "carga del rodillo, por persona que aplica"), v => v.Volume(takes.RollerMlPerPerson)));
        if (takes.TrayMlPerPerson > 0) inputs.Add(new(v => v.Say("left in the tray, each person who rolls", "queda en la bandeja, por persona que aplica"), v => v.Volume(takes.TrayMlPerPerson)));
        if (takes.PerPersonMl > 0) inputs.Add(new(v => v.Say("people who roll", "personas que aplican"), v => v.Number(rollers, 0)));
        if (takes.CupMlPerBatch > 0) inputs.Add(new(v => v.Say("left in the cup, each batch", "queda en el vaso, por mezcla"), v => v.Volume(takes.CupMlPerBatch)));
        if (takes.EdgeShare > 0) inputs.Add(new(v => v.Say("lost of what goes on edges", "se pierde de lo que va en los cantos"), v => v.Percent(takes.EdgeShare, 1)));
        if (takes.RunOffMlPerM > 0) inputs.Add(new(
            v => v.Say($"runs off the open edges, like a strip {v.Length(takes.RunOffMlPerM / takes.SpreadMlPerM2)} wide", $"escurre por los cantos abiertos, como una franja de {v.Length(takes.RunOffMlPerM / takes.SpreadMlPerM2)}"),
            v => v.VolumePerRun(takes.RunOffMlPerM)));
        if (takes.RoughMlPerM2 > 0) inputs.Add(new(v => v.Say("fills the roughness, peak to valley R: R/2", "llena la rugosidad, de pico a valle R: R/2"), v => v.Film(coat.RoughnessUm)));
        return new Basis("V = A · WFT / (1 + f); DFT = WFT · VS / (1 + f)", inputs, Sources.FilmSpread);
    }
}
