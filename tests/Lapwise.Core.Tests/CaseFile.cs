using System.Globalization;

namespace Lapwise.Core.Tests;

/// <summary>Check cases kept as data under <c>cases/</c>: lines of fields between bars, the last one naming the source.</summary>
internal static class CaseFile
{
    public static IReadOnlyList<string[]> Rows(string path)
    {
        string[][] rows = [.. File.ReadLines(Path.Combine(RepositoryFolder.Root, "cases", path))
            .Where(l => l.Length > 0 && l[0] != '#')
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries))];
        Assert.NotEmpty(rows);
        Assert.All(rows, r => Assert.NotEqual("", r[^1]));
        return rows;
    }

    public static double Number(string field) => double.Parse(field, CultureInfo.InvariantCulture);

    public static decimal Price(string field) => decimal.Parse(field, CultureInfo.InvariantCulture);
}
