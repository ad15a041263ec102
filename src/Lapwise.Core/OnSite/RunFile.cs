using System.Text.Json;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.OnSite;

/// <summary>A run as JSON text, both ways. Members of a newer program are kept; a newer version of the shape is refused.</summary>
public static class RunFile
{
    public static string Write(RunDocument run) => JsonSerializer.Serialize(run, RunJson.Default.RunDocument);

    public static (RunDocument? Document, IReadOnlyList<Fault> Faults) Read(string json)
    {
        if (JobFile.TooLarge(json.Length) is { } tooLarge) return (null, [tooLarge]);
        try
        {
            using var text = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = JobFile.DeepestNesting });
            if (text.RootElement.ValueKind is not JsonValueKind.Object) return (null, [NotARun(1, "$")]);
            if (text.RootElement.TryGetProperty("lapwise", out var said) && said.ValueKind is JsonValueKind.Number && said.TryGetInt32(out var version)
                && DocumentVersion.Refuse("lapwise", version, RunDocument.CurrentVersion) is { } newer) return (null, [newer]);
            if (JsonSerializer.Deserialize(json, RunJson.Default.RunDocument) is not { } run) return (null, [NotARun(1, "$")]);
            var unnamed = run.Marks.Select((m, i) => (m, i)).Where(x => x.m is null || x.m.Id.Length == 0).Select(x => IdMissing(x.i)).ToList();
            return unnamed.Count > 0 ? (null, unnamed) : (run, []);
        }
        catch (JsonException slip)
        {
            return (null, [NotARun((int)(slip.LineNumber ?? 0) + 1, slip.Path ?? "$")]);
        }
    }

    private static Fault NotARun(int line, string path) => new(path.TrimStart('$').TrimStart('.'), "NotARun",
        v => v.Say("This is not the record of a run.", "Esto no es el registro de una aplicación."),
        v => v.Say("Take the file that the run's page exports; compare it with the published schema.", "Use el archivo que exporta la página de la aplicación; compárelo con el esquema publicado.")) { Line = line };

    private static Fault IdMissing(int mark) => new($"marks[{mark}].id", "MarkWithoutId",
        v => v.Say("A mark has no id, so it cannot be told from another.", "Una marca no tiene identificador, así que no se distingue de otra."),
        v => v.Say("Export the run again from the device that made it.", "Exporte de nuevo la aplicación desde el equipo que la hizo."));
}
