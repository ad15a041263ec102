using System.Text.Json;
using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work;
using Lapwise.Files;

namespace Lapwise.Benchmarks;

/// <summary>The sample jobs as input: their sections as the plan cuts them, and their tops together as one large kitchen.</summary>
public static class Samples
{
    /// <summary>Sections and laps of each sample's last coat, to the second.</summary>
    public static IReadOnlyList<Instance> Instances() => [.. Documents().Select(d => (d.Name, Job: Read(d.Document))).Select(j => InstanceOf(j.Name, j.Job))];

    /// <summary>Twelve tops out of all samples on one document.</summary>
    public static JobDocument TwelveTops()
    {
        var documents = Documents().Select(d => d.Document).ToList();
        return documents[0] with { Tops = [.. documents.SelectMany(d => d.Tops).Take(12)] };
    }

    public static IReadOnlyList<ProductDocument> Library { get; } =
        [.. Directory.GetFiles("samples/products", "*.product.yaml").Order(StringComparer.Ordinal).Select(f => JsonSerializer.Deserialize(JsonOf(f), JobJson.Default.ProductDocument)!)];

    private static IEnumerable<(string Name, JobDocument Document)> Documents() =>
        Directory.GetFiles("samples", "*.job.yaml").Order(StringComparer.Ordinal).Select(f =>
            (Path.GetFileName(f)[..^".job.yaml".Length], JsonSerializer.Deserialize(JsonOf(f), JobJson.Default.JobDocument)!));

    private static Job Read(JobDocument document) =>
        JobReading.Read(document, Library).Job ?? throw new InvalidOperationException($"{document.Name} cannot be read");

    private static Instance InstanceOf(string name, Job job)
    {
        var coat = Planning.Plan(job, Measuring.Measure(job), Judging.Judge(job)).Coats[^1];
        var place = coat.Sections.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i, StringComparer.Ordinal);
        return new(
            "sample",
            name,
            [.. coat.Sections.Select(s => (int)Math.Max(1, Math.Round((s.EndMs - s.StartMs) / 1000.0)))],
            [.. coat.Laps.Where(l => l.Kind != LapKind.Break).Select(l => (place[l.A], place[l.B])).Distinct()]);
    }

    private static string JsonOf(string file) =>
        DocumentText.JsonOf(file, TextReader.Null).Json ?? throw new InvalidOperationException($"{file} cannot be read");
}
