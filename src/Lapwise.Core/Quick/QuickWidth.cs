using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Quick;

/// <summary>Developed width of an edge.</summary>
internal static class QuickWidth
{
    private static readonly (QuickWord Word, ProfileShape Shape)[] Shapes =
    [
        (Asks.Word("square", "square", "recto"), ProfileShape.Square), (Asks.Word("eased", "eased", "matado"), ProfileShape.Eased),
        (Asks.Word("roundOver", "round over", "redondeado"), ProfileShape.RoundOver), (Asks.Word("fullRound", "full round", "media caña"), ProfileShape.FullRound),
        (Asks.Word("bevel", "bevel", "chaflán"), ProfileShape.Bevel), (Asks.Word("cove", "cove", "caveto"), ProfileShape.Cove), (Asks.Word("ogee", "ogee", "gola"), ProfileShape.Ogee),
    ];

    private static readonly QuickField Shape = Asks.OneOf("shape", v => v.Say("edge profile", "perfil del canto"), [.. Shapes.Select(s => s.Word)]);
    private static readonly QuickField Thickness = Asks.Length("thickness", v => v.Say("thickness of the top", "grueso de la cubierta")).Must with { Example = v => v.Units is UnitSystem.Us ? "\"1 1/2 in\"" : "38mm" };
    private static readonly QuickField Radius = Asks.Length("radius", v => v.Say("radius, or leg of a bevel", "radio, o cateto de un chaflán")) with { Else = "0 in", Example = v => v.Units is UnitSystem.Us ? "\"1/4 in\"" : "6mm" };
    private static readonly QuickField Underside = Asks.Length("underside", v => v.Say("coated underside", "parte inferior recubierta")) with { Finer = true, Else = "0 in" };
    private static readonly QuickField Run = Asks.Length("run", v => v.Say("length of edge", "longitud de canto"));

    public static readonly QuickSum Sum = new("width", Phases.Measure, v => v.Say("Edge width", "Ancho del canto"),
        v => v.Say("How wide is the film round an edge?", "¿Qué ancho tiene la película alrededor de un canto?"),
        [Shape, Thickness, Radius, Underside, Run], Work);

    private static QuickResult Work(QuickValues values)
    {
        var shape = Shapes.Single(s => s.Word.Word == values.Word(Shape)).Shape;
        var (thickness, radius) = (values.Of(Thickness), values.Of(Radius));
        if (EdgeProfiles.DevelopedWidthM(new Profile(shape, radius, values.Of(Underside), 0, 0), thickness) is not { } width)
        {
            values.Refuse(Radius, "RadiusTooLarge",
                v => v.Say($"{v.Length(radius)} does not fit a top of {v.Length(thickness)}.", $"{v.Length(radius)} no cabe en una cubierta de {v.Length(thickness)}."),
                v => v.Say($"At most {v.Length(EdgeProfiles.LargestRadiusM(shape, thickness))} fit this shape.", $"En esta forma caben como mucho {v.Length(EdgeProfiles.LargestRadiusM(shape, thickness))}."));
            return new QuickResult([]);
        }

        var basis = new Basis(Formula(shape),
            [
                new(v => v.Say("thickness t", "grueso t"), v => v.Length(thickness)),
                new(v => v.Say("radius r", "radio r"), v => v.Length(radius)),
                new(v => v.Say("underside", "parte inferior"), v => v.Length(values.Of(Underside))),
            ], Sources.Geometry);
        List<QuickRow> rows = [new("widthM", v => v.Say("developed width", "ancho desarrollado"), width, v => v.Length(width), basis)];
        if (values.If(Run) is { } run) rows.Add(new("areaM2", v => v.Say("film area of the edge", "área de película del canto"), width * run, v => v.Area(width * run), basis));
        return new QuickResult(rows);
    }

    private static string Formula(ProfileShape shape) => shape switch
    {
        ProfileShape.Square => "w = t",
        ProfileShape.Eased or ProfileShape.Ogee => "w = (t − 2r) + π r",
        ProfileShape.FullRound => "w = π t / 2",
        ProfileShape.Bevel => "w = (t − r) + r √2",
        _ => "w = (t − r) + π r / 2",
    };
}
