using System.Text;
using Lapwise.Core.Explain;
using Lapwise.Drawings;

namespace Lapwise.Cli;

/// <summary>Puts what a command makes into a file; a place that cannot be written to is a fault of <c>--out</c>.</summary>
internal static class OutFile
{
    /// <returns>Null where it was written.</returns>
    public static Outcome? Write(string path, byte[] bytes, Voice v, Terminal terminal)
    {
        try
        {
            File.WriteAllBytes(path, bytes);
            return null;
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Faults.Print([new Fault("--out", "FileNotWritable",
                x => x.Say($"The file {path} cannot be written.", $"El archivo {path} no se puede escribir."),
                x => x.Say("Give a place that may be written to.", "Indique un lugar donde se pueda escribir."))], v, terminal);
        }
    }

    /// <summary>A picture as SVG.</summary>
    public static Outcome? Write(string path, Drawing picture, Voice v, Terminal terminal) => Write(path, Encoding.UTF8.GetBytes(picture.Svg()), v, terminal);
}
