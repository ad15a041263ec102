namespace Lapwise.Core.Tests;

/// <summary>Finds the repository from where the tests run, for cases kept as data.</summary>
internal static class RepositoryFolder
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Lapwise.slnx"))) return folder.FullName;
        throw new DirectoryNotFoundException("The tests run from inside the repository.");
    }
}
