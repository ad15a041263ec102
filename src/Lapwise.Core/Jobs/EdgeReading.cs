using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>Reads what each side of an outline is.</summary>
internal static class EdgeReading
{
    /// <summary>One edge for each side: a side without one, and a letter without a side, are faults.</summary>
    public static Dictionary<char, Edge> ReadAll(Fields fields, string path, IReadOnlyDictionary<string, EdgeDocument>? edges, IReadOnlyList<char> letters, double thicknessM)
    {
        edges ??= new Dictionary<string, EdgeDocument>(StringComparer.Ordinal);
        foreach (var key in edges.Keys.Where(k => !IsOneOf(letters, k))) NoSuchSide(fields, $"{path}.{key}", key, letters);

        var read = new Dictionary<char, Edge>();
        foreach (var letter in letters)
        {
            var place = $"{path}.{letter}";
            if (edges.TryGetValue(letter.ToString(), out var edge) && edge is not null) read[letter] = Read(fields, place, edge, thicknessM);
            else NotSaid(fields, place, letter);
        }

        return read;
    }

    /// <summary>A letter that names a side or the corner where it starts.</summary>
    public static char Letter(Fields fields, string path, string? entered, IReadOnlyList<char> letters)
    {
        if (entered is not null && IsOneOf(letters, entered)) return entered[0];
        NoSuchSide(fields, path, entered ?? "", letters);
        return '?';
    }

    private static bool IsOneOf(IReadOnlyList<char> letters, string entered) => entered.Length == 1 && letters.Contains(entered[0]);

    private static Edge Read(Fields fields, string path, EdgeDocument edge, double thicknessM) => edge.Kind switch
    {
        EdgeKind.Open => new Edge.Open(ReadProfile(fields, path + ".profile", edge.Profile ?? new ProfileDocument(), thicknessM)),
        EdgeKind.Splash => new Edge.Splash(
            fields.Length(path + ".height", edge.Height, Ranges.Upstand),
            Fields.Or(edge.TopWidth, 0, e => fields.Length(path + ".topWidth", e, Ranges.Strip)),
            ReadCoatedEnds(fields, path + ".coatedEnds", edge.CoatedEnds ?? 0),
            edge.Joint ?? false),
        EdgeKind.Waterfall => new Edge.Waterfall(
            fields.Length(path + ".drop", edge.Drop, Ranges.Upstand),
            Fields.Or(edge.Return, 0, e => fields.Length(path + ".return", e, Ranges.Strip)),
            edge.Joint ?? false),
        _ => new Edge.Wall(),
    };

    private static int ReadCoatedEnds(Fields fields, string path, int ends)
    {
        if (ends is < 0 or > 2)
        {
            fields.Add(path, "CoatedEndsNotPossible",
                v => v.Say($"A splash has two ends; {ends} cannot be coated.", $"Un salpicadero tiene dos extremos; no se pueden recubrir {ends}."),
                v => v.Say("Enter 0, 1 or 2.", "Escriba 0, 1 o 2."));
        }

        return ends;
    }

    private static Profile ReadProfile(Fields fields, string path, ProfileDocument profile, double thicknessM)
    {
        // How often the radius goes into the thickness; 0: the shape has none.
        var radiiInThickness = profile.Shape switch
        {
            ProfileShape.Eased or ProfileShape.Ogee => 2,
            ProfileShape.RoundOver or ProfileShape.Bevel or ProfileShape.Cove => 1,
            _ => 0,
        };
        var radius = radiiInThickness == 0 ? 0 : fields.Length(path + ".radius", profile.Radius, Ranges.Thickness);
        var most = radiiInThickness == 0 ? 0 : thicknessM / radiiInThickness;
        if (radius > most)
        {
            fields.Add(path + ".radius", "RadiusOverThickness",
                v => v.Say($"A radius of {v.Length(radius)} does not fit a top {v.Length(thicknessM)} thick; this shape takes at most {v.Length(most)}.", $"Un radio de {v.Length(radius)} no cabe en un grueso de {v.Length(thicknessM)}; esta forma admite como mucho {v.Length(most)}."),
                v => v.Say("Check the radius and the thickness, or measure the width round the edge with a strip.", "Revise el radio y el grueso, o mida con una tira el ancho alrededor del canto."));
        }

        var underside = Fields.Or(profile.Underside, 0, e => fields.Length(path + ".underside", e, Ranges.Strip));
        var apron = Fields.Or(profile.Return, 0, e => fields.Length(path + ".return", e, Ranges.Strip));
        var measured = profile.Shape == ProfileShape.Measured ? fields.Length(path + ".width", profile.Width, Ranges.Upstand) : 0;
        return new Profile(profile.Shape, radius, underside, apron, measured);
    }

    private static void NotSaid(Fields fields, string path, char letter) => fields.Add(path, "EdgeNotSaid",
        v => v.Say($"Side {letter} is not said to be open, wall, splash or waterfall.", $"No se dice si el lado {letter} es libre, pared, salpicadero o cascada."),
        v => v.Say($"Say what side {letter} is, so that nothing to coat is forgotten.", $"Diga qué es el lado {letter}, para no olvidar nada que recubrir."));

    private static void NoSuchSide(Fields fields, string path, string entered, IReadOnlyList<char> letters)
    {
        var range = letters.Count == 0 ? "–" : letters.Count == 1 ? $"{letters[0]}" : $"{letters[0]}–{letters[^1]}";
        fields.Add(path, "NoSuchSide",
            v => v.Say($"This outline has no side {Misreads.Quote(v, entered)}; its sides are {range}.", $"Este contorno no tiene el lado {Misreads.Quote(v, entered)}; sus lados son {range}."),
            v => v.Say("Use a capital letter of a side, in walking order from A.", "Use la letra mayúscula de un lado, en orden de recorrido desde la A."));
    }
}
