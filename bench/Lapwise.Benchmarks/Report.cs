using System.Globalization;

namespace Lapwise.Benchmarks;

/// <summary>Tables and files of results.</summary>
public static class Report
{
    /// <summary>The machine in general words.</summary>
    public static string Machine { get; } = string.Create(CultureInfo.InvariantCulture,
        $"Machine: {Environment.ProcessorCount} cores, {GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 1073741824.0:0} GiB, {(OperatingSystem.IsLinux() ? "Linux" : OperatingSystem.IsWindows() ? "Windows" : "macOS")} on {System.Runtime.InteropServices.RuntimeInformation.ProcessArchitecture}, .NET {Environment.Version}, Release build{Load}");

    private const double Quiet = 0.5;

    /// <summary>What else ran meanwhile: work waiting for a core at the start, where the system tells.</summary>
    private static string Load => !File.Exists("/proc/loadavg") ? ""
        : double.Parse(File.ReadAllText("/proc/loadavg").Split(' ')[0], CultureInfo.InvariantCulture) is var load and >= Quiet
            ? string.Create(CultureInfo.InvariantCulture, $"; the machine was shared, with a load of {load:0.#} at the start, so times are longer than alone")
            : ", with nothing else running";

    public static void Write(Options options, string name, IEnumerable<string> lines)
    {
        var folder = Path.Combine(options.Folder, "reports");
        Directory.CreateDirectory(folder);
        var path = Path.Combine(folder, name + ".md");
        File.WriteAllText(path, string.Join('\n', lines) + "\n");
        Console.WriteLine(File.ReadAllText(path));
        Console.WriteLine($"-> {path}");
    }

    public static IEnumerable<string> Table(IReadOnlyList<string> head, IEnumerable<string[]> rows) =>
        rows.Prepend([.. head.Select(_ => "---")]).Prepend([.. head]).Select(r => "| " + string.Join(" | ", r) + " |");

    public static string Time(double seconds) => seconds switch
    {
        < 0.001 => string.Create(CultureInfo.InvariantCulture, $"{seconds * 1e6:0} µs"),
        < 1 => string.Create(CultureInfo.InvariantCulture, $"{seconds * 1e3:0.0} ms"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{seconds:0.0} s"),
    };

    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted.Count % 2 == 1 ? sorted[sorted.Count / 2] : (sorted[(sorted.Count / 2) - 1] + sorted[sorted.Count / 2]) / 2;
    }

    public static double GeometricMean(IEnumerable<double> values)
    {
        var logs = values.Select(v => Math.Log(v)).ToList();
        return logs.Count == 0 ? 0 : Math.Exp(logs.Average());
    }
}
