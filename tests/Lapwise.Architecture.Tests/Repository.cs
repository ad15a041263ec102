namespace Lapwise.Architecture.Tests;

/// <summary>The files of this repository, as they stand in the working tree.</summary>
public static class Repository
{
    private static readonly string[] Made = ["bin", "obj", ".git", ".vs", "artifacts", "TestResults", "BenchmarkDotNet.Artifacts", "node_modules"];

    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    public static bool Has(string path) => File.Exists(Path.Combine(Root, path));

    /// <summary>Paths below the root, with forward slashes; what a build makes is left out.</summary>
    public static IReadOnlyList<string> Files { get; } = [.. Walk(Root).Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Walk(string folder) =>
        Directory.EnumerateFiles(folder).Concat(Directory.EnumerateDirectories(folder)
            .Where(d => !Made.Contains(Path.GetFileName(d), StringComparer.Ordinal))
            .SelectMany(Walk));

    private static string FindRoot(string folder) =>
        File.Exists(Path.Combine(folder, "Lapwise.slnx")) ? folder : FindRoot(Path.GetDirectoryName(folder)
            ?? throw new InvalidOperationException("the tests must run from inside the repository"));
}
