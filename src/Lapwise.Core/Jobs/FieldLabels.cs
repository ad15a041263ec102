using Lapwise.Core.Explain;

namespace Lapwise.Core.Jobs;

/// <summary>What the fields are called that no job can do without: one name for the field itself and for who points to it.</summary>
public static class FieldLabels
{
    /// <summary>A size of an outline, by its member of the document.</summary>
    public static string Size(OutlineShape shape, string member, Voice voice)
    {
        var hasLegs = shape is OutlineShape.L or OutlineShape.U;
        return member switch
        {
            "length" => hasLegs ? voice.Say("Whole back, side A", "Todo el fondo, lado A") : voice.Say("Length, side A", "Largo, lado A"),
            "depth" => hasLegs ? voice.Say("Depth of the back run", "Fondo del tramo de atrás") : voice.Say("Depth, side B", "Fondo, lado B"),
            "rightLegLength" => voice.Say("Right leg, side B", "Pata derecha, lado B"),
            "rightLegDepth" => voice.Say("Its depth, side C", "Su fondo, lado C"),
            "leftLegLength" => voice.Say("Left leg, side H", "Pata izquierda, lado H"),
            "leftLegDepth" => voice.Say("Its depth, side G", "Su fondo, lado G"),
            "radius" => voice.Say("Corner radius", "Radio de las esquinas"),
            "diameter" => voice.Say("Diameter", "Diámetro"),
            _ => throw new ArgumentOutOfRangeException(nameof(member), member, "no size of an outline"),
        };
    }

    /// <summary>A side walked along, from 0.</summary>
    public static string Side(int index, Voice voice) => voice.Say($"Side {SideLetters.At(index)}", $"Lado {SideLetters.At(index)}");

    /// <summary>A reading of the room, by its member of the document.</summary>
    public static string Room(string member, Voice voice) => member switch
    {
        "air" => voice.Say("Air", "Aire"),
        "humidity" => voice.Say("Relative humidity", "Humedad relativa"),
        "surface" => voice.Say("Surface of the top", "Superficie de la cubierta"),
        "material" => voice.Say("Material in its cans", "Material en sus botes"),
        _ => throw new ArgumentOutOfRangeException(nameof(member), member, "no reading of the room"),
    };
}
