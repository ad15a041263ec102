using System.Text.Json;
using Lapwise.Core.Explain;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Remedies;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Answers;

/// <summary>Turns the results of the phases into the shapes that leave the core as JSON.</summary>
public static class Answering
{
    public static TakeOffAnswer TakeOff(MeasuredJob measured) =>
        new([.. measured.Tops.Select(top => Row(top.TakeOff))], Row(measured.Total));

    public static MaterialsAnswer Materials(WholeJob whole) =>
        new([.. whole.Materials.Coats.Zip(whole.Supply.Coats, Coat)]);

    /// <param name="voice">Language and units of the reasons; the numbers do not change with it.</param>
    public static PlanAnswer Plan(WholeJob whole, Voice voice) =>
        new([.. whole.Work.Coats.Select((_, coat) => CoatPlan(whole, coat, voice))]);

    /// <param name="boughtMl">A and B at hand; null: not known, and the chance of running short is left out.</param>
    public static RiskAnswer Risk(CoatRisk risk, double? boughtMl) => new(
        risk.Trials, risk.Seed, Chance(risk.Line), Chance(risk.BatchOutlivesPot), boughtMl is { } ml ? Chance(risk.RunsShort(ml)) : null,
        Seconds(risk.WorstMargins.MedianMs), Seconds(risk.WorstMargins.TwentiethMs),
        Seconds(risk.WorstMargins.FromMs), Seconds(risk.WorstMargins.BinMs), risk.WorstMargins.Counts,
        [.. risk.Laps.Select(l => new LapRiskAnswer(l.Lap.A, l.Lap.B, Chance(l.Line)))])
    {
        StepLate = risk.StepLate is { } late ? Chance(late) : null,
    };

    public static RemedyAnswer Remedy(Remedy remedy, Voice voice) => new(
        remedy.Code, remedy.Text(voice), remedy.Change(voice), remedy.KeepsTarget, remedy.Holds,
        remedy.LapMarginMs is { } margin ? Seconds(margin) : null, remedy.WorstAgeMs is { } age ? Seconds(age) : null);

    private static ChanceAnswer Chance(Chance chance) => new(Fine(chance.Share), Fine(chance.Within95.Least), Fine(chance.Within95.Most));

    public static OrderAnswer Order(OrderProblem problem, FoundOrder found) => new(
        Seconds(found.WorstLapAgeMs), Seconds(found.BoundMs), found.Proven,
        [.. found.Sections.OrderBy(p => p.StartMs).ThenBy(p => p.Person).Select(p =>
            new OrderedSectionAnswer(problem.Sections[p.Section].Id, p.Person, Seconds(p.StartMs), Seconds(p.EndMs)))]);

    private static TakeOffRow Row(TakeOff t) => new(
        t.Name, Fine(t.FlatM2), Fine(t.EdgeM2), Fine(t.SplashM2), Fine(t.WaterfallM2), Fine(t.RimM2), Fine(t.CoatedM2), Fine(t.MisclosureM));

    private static CoatMaterialsAnswer Coat(CoatMaterial material, CoatSupply supply) => new(
        material.Coat.Product.Id, Fine(material.NetMl), Fine(material.LossMl), Fine(material.NeedMl), Fine(material.ThinnerMl),
        [.. supply.Kits.Select(kit => new KitAnswer(Fine(kit.SizeMl), kit.Count, kit.Price))], supply.CostTotal)
    {
        Voc = material.Voc is { } voc ? new VocAnswer(Fine(voc.ActualGPerL), Fine(voc.LessWaterGPerL)) : null,
    };

    private static CoatPlanAnswer CoatPlan(WholeJob whole, int coat, Voice voice)
    {
        var work = whole.Work.Coats[coat];
        var tickets = whole.Supply.Coats[coat].Tickets.ToDictionary(t => t.Batch, StringComparer.Ordinal);
        string Person(int person) => whole.Job.Crew[person].Name;

        return new CoatPlanAnswer(
            work.Coat.Product.Id,
            Word(work.Coat.Product.Method),
            Seconds(work.OpenTimeMs),
            Word(work.OpenTime.Origin),
            Seconds(work.PotLifeMs),
            Word(work.PotLife.Origin),
            Fine(work.BatchAgeShare),
            Seconds(work.WorstLapAgeMs),
            Seconds(work.WorstSectionAgeMs),
            Seconds(work.LapMarginMs),
            Seconds(work.TargetMarginMs),
            whole.Holds(coat),
            new ProofAnswer(work.Proof.State, work.Proof.Of, Seconds(work.Proof.BoundMs), work.Proof.Ways),
            [.. work.Sections.Select(s => Section(s, Person(s.Person)))],
            [.. work.Laps.Select(l => new LapAnswer(l.A, l.B, l.Kind, Fine(l.LengthM), Seconds(l.AgeMs), Seconds(work.MarginMs(l)), l.JoinedBy))],
            [.. work.Batches.Select(b => Batch(b, tickets[b.Id], Person(b.MixedBy)))],
            [.. work.Steps.Select(t => new StepAnswer(t.Kind, t.Top, t.Sections, Person(t.Person), Seconds(t.StartMs), Seconds(t.EndMs), Seconds(t.FromMs), t.ToMs is { } to ? Seconds(to) : null))],
            [.. work.Baselines.Select(b => new BaselineAnswer(b.Name, Seconds(b.WorstAgeMs)))],
            [.. whole.ReasonsOf(coat).Select(r => new ReasonAnswer(r.Code, Word(r.Limit), r.Text(voice), r.Remedy(voice)))]);
    }

    private static SectionAnswer Section(Section s, string person) => new(
        s.Id, s.Face.Top, s.Face.Id, Ring(s.Rings[0]), [.. s.Rings.Skip(1).Select(Ring)],
        Fine(s.FaceM2), Fine(s.FilmM2), Fine(s.EdgeM), Point(s.StandAt), s.StandSide?.ToString(), Fine(s.DryPassDeg),
        person, Seconds(s.StartMs), Seconds(s.WetEndMs), Seconds(s.EndMs), s.Batch, Seconds(s.UsedMs));

    private static BatchAnswer Batch(Batch b, BatchTicket t, string mixedBy) => new(
        b.Id, mixedBy, Seconds(b.MixStartMs), Seconds(b.MixEndMs), Seconds(b.UseByMs), Fine(b.NetMl), Fine(t.VolumeMl),
        Fine(t.AMl), Fine(t.BMl), Fine(t.ThinnerMl), Fine(t.AG), Fine(t.BG), Fine(t.ThinnerG), Fine(t.RatioError), Fine(t.RatioErrorByMass))
    {
        CMl = t.Parts.Count > 2 ? Fine(t.Parts[2].Ml) : null,
        CG = t.Parts.Count > 2 ? Fine(t.Parts[2].G) : null,
    };

    private static List<double[]> Ring(IReadOnlyList<PointM> ring) => [.. ring.Select(Point)];

    private static double[] Point(PointM p) => [Fine(p.X), Fine(p.Y)];

    private static double Seconds(long milliseconds) => milliseconds / 1000.0;

    /// <summary>Drops the dust of binary fractions; far below what any tape, cup or formula here can tell.</summary>
    private static double Fine(double value) => Math.Round(value, 12);

    private static string Word<T>(T value) where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}
