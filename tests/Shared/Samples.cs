using System.Collections.Concurrent;
using System.Text.Json;
using Lapwise.Core;
using Lapwise.Core.Jobs;
using Lapwise.Files;

namespace Lapwise.Shared;

/// <summary>The sample jobs, read as the program reads them.</summary>
internal static class Samples
{
    // Before what reads from it: static members start in the order they stand.
    public static readonly string Folder = FindFolder();

    public static readonly string[] Names = ["l-kitchen", "jumbo-island", "eight-small-pieces", "vanity", "bar-top"];

    public static IReadOnlyList<ProductDocument> Library { get; } =
        [.. Directory.GetFiles(Path.Combine(Folder, "products"), "*.yaml").Order(StringComparer.Ordinal).Select(f => Read(f, JobJson.Default.ProductDocument))];

    public static JobDocument Document(string name) => Read(Path.Combine(Folder, name + ".job.yaml"), JobJson.Default.JobDocument);

    public static Job Job(string name)
    {
        var read = JobReading.Read(Document(name), Library);
        return read.Faults.Count == 0 ? read.Job! : throw new InvalidDataException(string.Join('\n', read.Faults));
    }

    public static WholeJob Whole(string name) => Planned.GetOrAdd(name, n => WholeJob.From(Document(n), Library).Whole!);

    // A plan takes its time; every test may look at the same one.
    private static readonly ConcurrentDictionary<string, WholeJob> Planned = new(StringComparer.Ordinal);

    private static T Read<T>(string path, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> type) =>
        JsonSerializer.Deserialize(YamlText.ToJson(File.ReadAllText(path)).Json!, type)!;

    private static string FindFolder()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (Directory.Exists(Path.Combine(folder.FullName, "samples", "products"))) return Path.Combine(folder.FullName, "samples");
        throw new DirectoryNotFoundException("The sample jobs are not above the tests.");
    }
}
