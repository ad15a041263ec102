using System.Reflection;

namespace Lapwise.Files.Tests;

/// <summary>Files of the repository that tests read: samples and published schemas.</summary>
internal static class Repository
{
    private static readonly string Root = typeof(Repository).Assembly
        .GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "RepositoryRoot").Value!;

    public static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    public static IEnumerable<string> Samples(string pattern) =>
        Directory.EnumerateFiles(Path("samples"), pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal);
}
