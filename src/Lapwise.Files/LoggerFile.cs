using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Explain;

namespace Lapwise.Files;

/// <summary>Text of a logger's file: larger than a document may be.</summary>
public static class LoggerFile
{
    /// <summary>Room for a year of readings, one a minute.</summary>
    public const int MostBytes = 100 * 1024 * 1024;

    /// <param name="path">A file, or <c>-</c> for <paramref name="input"/>.</param>
    public static (string? Text, IReadOnlyList<Fault> Faults) Read(string path, TextReader input)
    {
        if (path == "-") return (input.ReadToEnd(), []);
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > MostBytes }) return (null, [TooLarge]);
            return (LoggerText.TextOf(File.ReadAllBytes(path)), []);
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return (null, [new Fault("", "FileNotReadable",
                v => v.Say($"The file {path} cannot be opened.", $"El archivo {path} no se puede abrir."),
                v => v.Say("Check the path and that it may be read.", "Revise la ruta y que se pueda leer."))]);
        }
    }

    private static readonly Fault TooLarge = new("", "FileTooLarge",
        v => v.Say("The file has more than 100 MB.", "El archivo tiene más de 100 MB."),
        v => v.Say("Export only the days you need.", "Exporte solo los días que necesita."));
}
