using Lapwise.Core.Explain;

namespace Lapwise.Core.Measure;

/// <summary>A face as it is called to a person; its id is for files.</summary>
public static class FaceWords
{
    /// <summary>Which face of its top.</summary>
    public static string Of(Face face, Voice voice)
    {
        ArgumentNullException.ThrowIfNull(face);
        return Of(face.Kind, $"{face.Side}", voice);
    }

    /// <summary>The top and, where it is not its flat, the face.</summary>
    public static string OnTop(Face face, Voice voice)
    {
        ArgumentNullException.ThrowIfNull(face);
        return OnTop(face.Top, face.Kind, $"{face.Side}", voice);
    }

    /// <inheritdoc cref="OnTop(Face, Voice)"/>
    public static string OnTop(string top, FaceKind kind, string? side, Voice voice) =>
        kind is FaceKind.Flat ? top : $"{top}, {Of(kind, side, voice)}";

    private static string Of(FaceKind kind, string? side, Voice voice) => kind switch
    {
        FaceKind.Flat => voice.Say("flat", "plano"),
        FaceKind.Splash => voice.Say($"splash {side}", $"salpicadero {side}"),
        FaceKind.Waterfall => voice.Say($"waterfall {side}", $"cascada {side}"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
