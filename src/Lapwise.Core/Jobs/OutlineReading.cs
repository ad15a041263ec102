using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>Reads an outline by its shape.</summary>
internal static class OutlineReading
{
    /// <summary>Null where it could not be read; the faults say why.</summary>
    public static OutlineSpec? Read(Fields fields, UnitSystem units, string path, OutlineDocument outline)
    {
        var before = fields.Count;
        var shape = Shape(fields, path, outline);
        var diagonals = ReadDiagonals(fields, path + ".diagonals", outline.Diagonals, SideLetters.Of(outline));
        var tapeStep = Fields.Or(outline.TapeStep, Defaults.TapeStep(units), e => fields.Length(path + ".tapeStep", e, Ranges.TapeStep));
        return shape is null || fields.Count > before ? null : shape with { Diagonals = diagonals, TapeStepM = tapeStep };
    }

    /// <summary>The shape by its sizes, with NaN for each that could not be read; null where there is none of that name.</summary>
    public static OutlineSpec? Shape(Fields fields, string path, OutlineDocument outline)
    {
        return outline.Shape switch
        {
            OutlineShape.Rectangle => new OutlineSpec.Rectangle(Length(), Depth()),
            OutlineShape.L => ReadL(fields, path, outline, Length(), Depth()),
            OutlineShape.U => ReadU(fields, path, outline, Length(), Depth()),
            OutlineShape.RoundedRectangle => ReadRounded(fields, path, outline, Length(), Depth()),
            OutlineShape.Circle => new OutlineSpec.Circle(fields.Length(path + ".diameter", outline.Diameter, Ranges.Side)),
            OutlineShape.Ellipse => new OutlineSpec.Ellipse(Length(), Depth()),
            OutlineShape.Walk => ReadWalk(fields, path, outline),
            _ => null,
        };

        double Length() => fields.Length(path + ".length", outline.Length, Ranges.Side);
        double Depth() => fields.Length(path + ".depth", outline.Depth, Ranges.Side);
    }

    /// <summary>Two corner arcs must fit on each side.</summary>
    public static void RadiusFits(Fields fields, string path, double radiusM, double lengthM, double depthM)
    {
        var most = Math.Min(lengthM, depthM) / 2;
        if (!(radiusM > most)) return;
        fields.Add(path, "RadiusTooLarge",
            v => v.Say($"A corner radius of {v.Length(radiusM)} is more than half the shorter side, {v.Length(most)}.", $"Un radio de esquina de {v.Length(radiusM)} es más que la mitad del lado más corto, {v.Length(most)}."),
            v => v.Say($"Enter at most {v.Length(most)}, or choose a circle or an ellipse.", $"Escriba como mucho {v.Length(most)}, o elija un círculo o una elipse."));
    }

    private static OutlineSpec.L ReadL(Fields fields, string path, OutlineDocument outline, double lengthM, double depthM)
    {
        var legLength = fields.Length(path + ".rightLegLength", outline.RightLegLength, Ranges.Side);
        var legDepth = fields.Length(path + ".rightLegDepth", outline.RightLegDepth, Ranges.Side);
        LegReachesPastRun(fields, path + ".rightLegLength", legLength, depthM);
        LegsFitOnBack(fields, path + ".rightLegDepth", legDepth, lengthM);
        return new OutlineSpec.L(lengthM, depthM, legLength, legDepth);
    }

    private static OutlineSpec.U ReadU(Fields fields, string path, OutlineDocument outline, double lengthM, double depthM)
    {
        var rightLength = fields.Length(path + ".rightLegLength", outline.RightLegLength, Ranges.Side);
        var rightDepth = fields.Length(path + ".rightLegDepth", outline.RightLegDepth, Ranges.Side);
        var leftLength = fields.Length(path + ".leftLegLength", outline.LeftLegLength, Ranges.Side);
        var leftDepth = fields.Length(path + ".leftLegDepth", outline.LeftLegDepth, Ranges.Side);
        LegReachesPastRun(fields, path + ".rightLegLength", rightLength, depthM);
        LegReachesPastRun(fields, path + ".leftLegLength", leftLength, depthM);
        LegsFitOnBack(fields, path + ".leftLegDepth", rightDepth + leftDepth, lengthM);
        return new OutlineSpec.U(lengthM, depthM, rightLength, rightDepth, leftLength, leftDepth);
    }

    private static OutlineSpec.RoundedRectangle ReadRounded(Fields fields, string path, OutlineDocument outline, double lengthM, double depthM)
    {
        var radius = fields.Length(path + ".radius", outline.Radius, Ranges.Side);
        RadiusFits(fields, path + ".radius", radius, lengthM, depthM);
        return new OutlineSpec.RoundedRectangle(lengthM, depthM, radius);
    }

    private static void LegReachesPastRun(Fields fields, string path, double legM, double depthM)
    {
        if (!(legM <= depthM)) return;
        fields.Add(path, "LegTooShort",
            v => v.Say($"A leg of {v.Length(legM)} does not reach past the back run, which is {v.Length(depthM)} deep.", $"Un brazo de {v.Length(legM)} no pasa del tramo de fondo, que tiene {v.Length(depthM)} de profundidad."),
            v => v.Say("A leg is measured from the back wall to its own front.", "El brazo se mide desde la pared del fondo hasta su propio frente."));
    }

    private static void LegsFitOnBack(Fields fields, string path, double legsM, double lengthM)
    {
        if (!(legsM >= lengthM)) return;
        fields.Add(path, "LegsTooWide",
            v => v.Say($"The legs take {v.Length(legsM)} of the back, which is only {v.Length(lengthM)} long.", $"Los brazos ocupan {v.Length(legsM)} del fondo, que solo mide {v.Length(lengthM)}."),
            v => v.Say("Enter the whole back as the length, and how deep each leg is from its outer side.", "Escriba el fondo entero como largo, y la profundidad de cada brazo desde su lado exterior."));
    }

    private static OutlineSpec.Walk ReadWalk(Fields fields, string path, OutlineDocument outline)
    {
        var count = outline.Sides?.Count ?? 0;
        if (count > SideLetters.Most)
        {
            fields.Add(path + ".sides", "TooManySides",
                v => v.Say($"{count} sides are more than the letters A to Z, {SideLetters.Most}.", $"{count} lados son más que las letras de la A a la Z, {SideLetters.Most}."),
                v => v.Say("Split the top in two at a planned joint, or enter a curve as one arc.", "Divida la cubierta en dos por una junta prevista, o escriba la curva como un solo arco."));
            return new OutlineSpec.Walk([]);
        }

        var sides = new List<WalkedSide>();
        foreach (var (side, place) in fields.Items(path + ".sides", outline.Sides, SideLetters.Most)) sides.Add(ReadSide(fields, place, side));

        var least = sides.Exists(s => s.ArcRadiusM is not null) ? 2 : 3;
        if (count < least)
        {
            fields.Add(path + ".sides", "TooFewSides",
                v => v.Say($"{count} sides do not close an outline; at least {least} are needed.", $"{count} lados no cierran un contorno; hacen falta al menos {least}."),
                v => v.Say("Walk once round the top, back to where you started.", "Recorra la cubierta una vez, hasta volver al punto de partida."));
        }

        return new OutlineSpec.Walk(sides);
    }

    private static WalkedSide ReadSide(Fields fields, string path, WalkedSideDocument side)
    {
        var radius = Fields.OrNull(side.Radius, e => fields.Length(path + ".radius", e, Ranges.ArcRadius));
        var length = fields.Length(path + ".length", side.Length, Ranges.Side);
        var turn = Fields.Or(side.Turn, Math.PI / 2, e => fields.Turn(path + ".turn", e));
        if (radius is { } r && length >= 2 * Math.PI * r)
        {
            fields.Add(path + ".length", "ArcOverFullTurn",
                v => v.Say($"An arc of {v.Length(length)} at a radius of {v.Length(r)} goes once round or more.", $"Un arco de {v.Length(length)} con radio de {v.Length(r)} da una vuelta entera o más."),
                v => v.Say("Check the radius; for a whole round top choose the circle.", "Revise el radio; para una cubierta redonda elija el círculo."));
        }

        return new WalkedSide(length, turn, radius, side.Bend ?? Bend.Right);
    }

    private static List<Diagonal> ReadDiagonals(Fields fields, string path, IReadOnlyList<DiagonalDocument>? diagonals, IReadOnlyList<char> letters)
    {
        var read = new List<Diagonal>();
        foreach (var (diagonal, place) in fields.Items(path, diagonals, Ranges.MostOnOneTop))
        {
            var before = fields.Count;
            var from = EdgeReading.Letter(fields, place + ".from", diagonal.From, letters);
            var to = EdgeReading.Letter(fields, place + ".to", diagonal.To, letters);
            if (fields.Count == before && from == to)
            {
                fields.Add(place + ".to", "DiagonalGoesNowhere",
                    v => v.Say($"This diagonal goes from corner {from} to itself.", $"Esta diagonal va de la esquina {from} a ella misma."),
                    v => v.Say("Name two corners; corner A is where side A starts.", "Nombre dos esquinas; la esquina A es donde empieza el lado A."));
            }

            read.Add(new Diagonal(from, to, fields.Length(place + ".length", diagonal.Length, Ranges.Diagonal)));
        }

        return read;
    }
}
