using System.Text.Json;
using System.Text.Json.Serialization;
using Lapwise.Core.Work.Order;

namespace Lapwise.Benchmarks;

/// <summary>One order problem for one person: times in whole seconds, laps by index. Saved in the shape that <c>lapwise order</c> reads.</summary>
public sealed record Instance(string Family, string Name, IReadOnlyList<int> Seconds, IReadOnlyList<(int A, int B)> Laps)
{
    public int Count => Seconds.Count;

    /// <summary>All the work there is, seconds.</summary>
    public int TotalS => Seconds.Sum();

    public OrderProblem Problem { get; } = new(
        [.. Seconds.Select((s, i) => new OrderSection(IdOf(i), [s * 1000L]))],
        [.. Laps.Select(l => new OrderLap(l.A, l.B))],
        []);

    /// <summary>The worst lap age in seconds of sections rolled in this order without a break.</summary>
    public int WorstLapAgeS(IReadOnlyList<int> order)
    {
        var start = new int[Count];
        var now = 0;
        foreach (var i in order)
        {
            start[i] = now;
            now += Seconds[i];
        }

        return Laps.Select(l => Math.Max(start[l.A] + Seconds[l.A], start[l.B] + Seconds[l.B]) - Math.Min(start[l.A], start[l.B])).DefaultIfEmpty(0).Max();
    }

    public void Save(string folder)
    {
        Directory.CreateDirectory(folder);
        var file = new OrderFile(1, [.. Seconds.Select((s, i) => new SectionRow(IdOf(i), s))], [.. Laps.Select(l => new[] { IdOf(l.A), IdOf(l.B) })]);
        File.WriteAllText(Path.Combine(folder, $"{Family}-{Name}.json"), JsonSerializer.Serialize(file, InstanceJson.Default.OrderFile) + "\n");
    }

    private static string IdOf(int index) => $"s{index + 1}";
}

internal sealed record OrderFile(int Crew, IReadOnlyList<SectionRow> Sections, IReadOnlyList<string[]> Laps);

internal sealed record SectionRow(string Id, int Seconds);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(OrderFile))]
internal sealed partial class InstanceJson : JsonSerializerContext;
