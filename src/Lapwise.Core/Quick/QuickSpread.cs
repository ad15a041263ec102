using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Quick;

/// <summary>How far material goes: in theory, with a loss or rough ground, and as a job really used it.</summary>
internal static class QuickSpread
{
    private static readonly QuickField Area = Asks.Area("area", v => v.Say("area to coat", "área por recubrir")).Must;
    private static readonly QuickField Wet = Asks.Film("wet", v => v.Say("wet film (poured: the depth)", "película húmeda (vertido: la profundidad)")).Must;
    private static readonly QuickField Solids = Asks.Share("solids", v => v.Say("volume solids", "sólidos en volumen"));
    private static readonly QuickField Thinner = Asks.Share("thinner", v => v.Say("thinner, share of A and B", "diluyente, parte de A y B")) with { Finer = true, Else = "0%" };
    private static readonly QuickField Loss = Asks.Share("loss", v => v.Say("share lost in tools and edges", "parte que se pierde en útiles y cantos"));
    private static readonly QuickField Rough = Asks.Film("rough", v => v.Say("roughness, peak to valley", "rugosidad, de pico a valle")).CanWait;
    private static readonly QuickField Edge = Asks.Length("edge", v => v.Say("open edge a poured coat runs off", "canto abierto por el que escurre una capa vertida")).CanWait;
    private static readonly QuickField Used = Asks.Volume("used", v => v.Say("A and B really used", "A y B que se usaron de verdad"));

    public static readonly QuickSum Sum = new("spread", Phases.Materials, v => v.Say("Spread", "Rendimiento"),
        v => v.Say("How much goes on an area, and how far did it really go?", "¿Cuánto lleva un área, y cuánto rindió de verdad?"),
        [Area, Wet, Solids, Thinner, Loss, Rough, Edge, Used], Work);

    private static QuickResult Work(QuickValues values)
    {
        var (areaM2, wet, thinner) = (values.Of(Area), new WetFilm(values.Of(Wet)), values.Of(Thinner));
        var loss = values.Or(Loss, 0);
        if (loss >= 1)
        {
            values.Refuse(Loss, "AllIsLost", v => v.Say("All of it would be lost.", "Se perdería todo."), v => v.Say("Enter a loss under 100 %.", "Escriba una pérdida menor del 100 %."));
            return new QuickResult([]);
        }

        var rough = Film.RoughnessMlPerM2(values.Or(Rough, 0)) / (1 + thinner) * areaM2;
        var runOff = values.Or(Edge, 0) * Defaults.Tools.RunOff.Value * Film.SpreadMlPerM2(wet, thinner);
        var net = Film.SpreadMlPerM2(wet, thinner) * areaM2;
        var need = (net + rough + runOff) / (1 - loss);
        var theory = areaM2 / net * 1000;
        var basis = new Basis("V = (A · WFT / (1 + f) + A · R/2 + edge) / (1 − loss)",
            [
                new(v => v.Say("area A", "área A"), v => v.Area(areaM2)),
                new(v => v.Say("wet film WFT", "película húmeda WFT"), v => v.Film(wet.Micrometres)),
                new(v => v.Say("thinner f", "diluyente f"), v => v.Percent(thinner, 1)),
                new(v => v.Say("roughness R", "rugosidad R"), v => v.Film(values.Or(Rough, 0))),
                new(v => v.Say("runs off the edges", "escurre por los cantos"), v => v.Volume(runOff)),
                new(v => v.Say("loss", "pérdida"), v => v.Percent(loss, 1)),
            ], Sources.FilmSpread);
        List<QuickRow> rows =
        [
            new("netMl", v => v.Say("in the film, A and B", "en la película, A y B"), net, v => v.Volume(net), basis),
            new("needMl", v => v.Say("needed, A and B", "necesario, A y B"), need, v => v.Volume(need), basis),
            new("theoreticalM2PerL", v => v.Say("spreading rate in theory", "rendimiento teórico"), theory, v => v.SpreadingRate(theory), basis),
        ];
        if (values.If(Solids) is { } solids)
        {
            var dry = Film.Dry(wet, solids, thinner).Micrometres;
            rows.Add(new("dryFilmUm", v => v.Say("dry film", "película seca"), dry, v => v.Film(dry), basis));
        }

        if (values.If(Used) is { } used)
        {
            var practical = Film.PracticalM2PerL(areaM2, used);
            var lost = Film.LossShare(practical, theory);
            var measured = new Basis("practical = A / V; loss = 1 − practical / theory", [new(v => v.Say("used V", "usado V"), v => v.Volume(used)), .. basis.Inputs], Sources.AsEntered);
            rows.Add(new("practicalM2PerL", v => v.Say("spreading rate in practice", "rendimiento práctico"), practical, v => v.SpreadingRate(practical), measured));
            rows.Add(new("lossShare", v => v.Say("really lost (below 0: rolled thinner than wanted)", "pérdida real (bajo 0: se aplicó más fino)"), lost, v => v.Percent(lost, 1), measured));
        }

        return new QuickResult(rows);
    }
}
