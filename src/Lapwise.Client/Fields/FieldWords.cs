using Lapwise.Core.Explain;

namespace Lapwise.Client.Fields;

/// <summary>The place of a value in a document in the words of the page.</summary>
internal static class FieldWords
{
    /// <summary><c>outline.length</c> as "outline, length"; a member without a word here is shown by its own name.</summary>
    public static string Of(string path, Voice voice)
    {
        if (path.Length == 0) return voice.Say("as written", "lo escrito");
        return string.Join(", ", path.Replace("[", ".[", StringComparison.Ordinal).Split('.', StringSplitOptions.RemoveEmptyEntries).Select(part => Word(part, voice)));
    }

    private static string Word(string part, Voice voice) => part switch
    {
        ['[', .. var number, ']'] => voice.Say($"no. {int.Parse(number, System.Globalization.CultureInfo.InvariantCulture) + 1}", $"n.º {int.Parse(number, System.Globalization.CultureInfo.InvariantCulture) + 1}"),
        [>= 'A' and <= 'Z'] => voice.Say($"side {part}", $"lado {part}"),
        "name" => voice.Say("name", "nombre"),
        "units" => voice.Say("units", "unidades"),
        "language" => voice.Say("language", "idioma"),
        "room" => voice.Say("room", "sala"),
        "air" => voice.Say("air", "aire"),
        "humidity" => voice.Say("humidity", "humedad"),
        "airMovement" => voice.Say("air movement", "movimiento del aire"),
        "surface" => voice.Say("surface", "superficie"),
        "material" => voice.Say("material", "material"),
        "crew" => voice.Say("crew", "equipo de trabajo"),
        "pace" => voice.Say("pace", "ritmo"),
        "tools" => voice.Say("tools", "herramientas"),
        "aims" => voice.Say("aims", "metas"),
        "products" => voice.Say("products in the file", "productos del archivo"),
        "thickness" => voice.Say("thickness", "grosor"),
        "outline" => voice.Say("outline", "contorno"),
        "shape" => voice.Say("shape", "forma"),
        "length" => voice.Say("length", "largo"),
        "depth" => voice.Say("depth", "fondo"),
        "radius" => voice.Say("radius", "radio"),
        "diameter" => voice.Say("diameter", "diámetro"),
        "sides" => voice.Say("sides", "lados"),
        "turn" => voice.Say("turn", "giro"),
        "diagonals" => voice.Say("diagonals", "diagonales"),
        "edges" => voice.Say("edges", "lados"),
        "kind" => voice.Say("kind", "tipo"),
        "profile" => voice.Say("profile", "perfil"),
        "height" => voice.Say("height", "altura"),
        "drop" => voice.Say("drop", "caída"),
        "cutouts" => voice.Say("cutouts", "huecos"),
        "along" => voice.Say("along side A", "a lo largo del lado A"),
        "in" => voice.Say("in from side A", "hacia dentro desde el lado A"),
        "rim" => voice.Say("rim", "canto"),
        "breaks" => voice.Say("planned joints", "juntas previstas"),
        "sectionLines" => voice.Say("own section lines", "líneas propias de sección"),
        "dryPass" => voice.Say("dry pass", "pasada en seco"),
        "photos" => voice.Say("photos", "fotos"),
        "product" => voice.Say("product", "producto"),
        "color" => voice.Say("color", "color"),
        "wetFilm" => voice.Say("wet film", "película húmeda"),
        "thinner" => voice.Say("thinner", "diluyente"),
        "testBoardOpenTime" => voice.Say("open time of the test board", "tiempo abierto del tablero de prueba"),
        "at" => voice.Say("at", "a"),
        "side" => voice.Say("side", "lado"),
        _ => part,
    };
}
