using System.Text;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Files;

/// <summary>Text of a document from a file or a stream: as large as a document can be, and no larger.</summary>
public static class DocumentText
{
    private const string StandardInput = "-";

    /// <summary>The JSON of a file, YAML turned into it line for line; or the one fault.</summary>
    /// <param name="path">A file, or <c>-</c> for <paramref name="input"/>.</param>
    public static (string? Json, IReadOnlyList<Fault> Faults) JsonOf(string path, TextReader input)
    {
        var (text, fault) = path == StandardInput ? Take(input) : Take(path);
        return text is null ? (null, [fault!]) : JsonOf(text);
    }

    /// <summary>The JSON of a text; what begins like JSON is left as it is.</summary>
    public static (string? Json, IReadOnlyList<Fault> Faults) JsonOf(string text)
    {
        if (text.AsSpan().TrimStart() is ['{' or '[', ..]) return (text, []);
        var yaml = YamlText.ToJson(text);
        return yaml.Fault is { } fault ? (null, [fault]) : (yaml.Json, []);
    }

    private static (string? Text, Fault? Fault) Take(string path)
    {
        try
        {
            // A device or a pipe has no length; the reader below stops by itself.
            var file = new FileInfo(path);
            if (file.Exists && JobFile.TooLarge(file.Length) is { } tooLarge) return (null, tooLarge);
            using var reader = new StreamReader(path, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true));
            return Take(reader);
        }
        catch (DecoderFallbackException)
        {
            return (null, new Fault("", "NotText",
                v => v.Say("The file is not text in UTF-8.", "El archivo no es texto en UTF-8."),
                v => v.Say("Save it as UTF-8.", "Guárdelo en UTF-8.")));
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return (null, new Fault("", "FileNotReadable",
                v => v.Say($"The file {path} cannot be opened.", $"El archivo {path} no se puede abrir."),
                v => v.Say("Check the path and that it may be read.", "Revise la ruta y que se pueda leer.")));
        }
    }

    private static (string? Text, Fault? Fault) Take(TextReader reader)
    {
        var text = new StringBuilder();
        var buffer = new char[64 * 1024];
        for (int count; (count = reader.Read(buffer)) > 0;)
        {
            text.Append(buffer, 0, count);
            if (JobFile.TooLarge(text.Length) is { } tooLarge) return (null, tooLarge);
        }

        return (text.ToString(), null);
    }
}
