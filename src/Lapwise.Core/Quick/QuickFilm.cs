using Lapwise.Core.Explain;
using Lapwise.Core.Materials;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Quick;

/// <summary>Wet and dry film, thinned or not, in several coats.</summary>
internal static class QuickFilm
{
    private static readonly QuickField Wet = Asks.Film("wet", v => v.Say("wet film of one coat", "película húmeda de una capa"));
    private static readonly QuickField Dry = Asks.Film("dry", v => v.Say("dry film of one coat", "película seca de una capa"));
    private static readonly QuickField Solids = Asks.Share("solids", v => v.Say("volume solids", "sólidos en volumen")).Must;
    private static readonly QuickField Thinner = Asks.Share("thinner", v => v.Say("thinner, share of A and B", "diluyente, parte de A y B")) with { Else = "0%" };
    private static readonly QuickField Coats = Asks.Number("coats", v => v.Say("coats", "capas"), "2", 1, 20) with { Else = "1" };

    public static readonly QuickSum Sum = new("film", Phases.Materials, v => v.Say("Film", "Película"),
        v => v.Say("Which dry film does a wet one leave, or the other way round?", "¿Qué película seca deja una húmeda, o al revés?"),
        [Wet, Dry, Solids, Thinner, Coats], Work);

    private static QuickResult Work(QuickValues values)
    {
        var (solids, thinner, coats) = (values.Of(Solids), values.Of(Thinner), values.Of(Coats));
        if (solids <= 0) SolidsNeeded(values, Solids);
        if (values.Has(Wet) == values.Has(Dry)) OneOfTwo(values, Wet, Dry);
        if (values.Faults.Count > 0) return new QuickResult([]);

        var wet = values.Has(Wet) ? new WetFilm(values.Of(Wet)) : Film.Wet(new DryFilm(values.Of(Dry)), solids, thinner);
        var dry = Film.Dry(wet, solids, thinner);
        var basis = new Basis("DFT = WFT · VS / (1 + f)",
            [
                values.Has(Wet) ? new(v => v.Say("wet film WFT", "película húmeda WFT"), v => v.Film(wet.Micrometres)) : new(v => v.Say("dry film DFT", "película seca DFT"), v => v.Film(dry.Micrometres)),
                new(v => v.Say("volume solids VS", "sólidos en volumen VS"), v => v.Percent(solids, 1)),
                new(v => v.Say("thinner f", "diluyente f"), v => v.Percent(thinner, 1)),
                new(v => v.Say("coats", "capas"), v => v.Number(coats, 0)),
            ], Sources.FilmSpread);
        return new QuickResult(
        [
            new("wetFilmUm", v => v.Say("wet film", "película húmeda"), wet.Micrometres, v => v.Film(wet.Micrometres), basis),
            new("dryFilmUm", v => v.Say("dry film", "película seca"), dry.Micrometres, v => v.Film(dry.Micrometres), basis),
            new("allCoatsDryUm", v => v.Say("dry film of all coats", "película seca de todas las capas"), dry.Micrometres * coats, v => v.Film(dry.Micrometres * coats), basis),
            new("thinnedSolids", v => v.Say("solids once thinned", "sólidos una vez diluido"), Film.ThinnedSolids(solids, thinner), v => v.Percent(Film.ThinnedSolids(solids, thinner), 1), basis),
        ]);
    }

    public static void SolidsNeeded(QuickValues values, QuickField solids) => values.Refuse(solids, "NotPositive",
        v => v.Say("A coating without solids leaves no film.", "Un producto sin sólidos no deja película."), v => v.Say("Enter the volume solids of the data sheet.", "Escriba los sólidos en volumen de la ficha técnica."));

    public static void OneOfTwo(QuickValues values, QuickField one, QuickField other) => values.Refuse(one, "OneOfTwo",
        v => v.Say($"One of the two is needed: {one.Label(v)}, or {other.Label(v)}.", $"Hace falta uno de los dos: {one.Label(v)}, o {other.Label(v)}."),
        v => v.Say("Give one of them and leave the other out.", "Dé uno de ellos y deje el otro en blanco."));
}
