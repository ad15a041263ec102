using System.Globalization;

namespace Lapwise.Server;

/// <summary>What one running server is told from outside.</summary>
/// <param name="DataFolder">Folder of the database file.</param>
/// <param name="Port">Port on the loopback address; 0: any free one.</param>
public sealed record ServerSettings(string DataFolder, int Port)
{
    public const int UsualPort = 7407;

    public string DatabasePath => Path.Combine(DataFolder, "lapwise.db");

    /// <summary>Reads <c>LAPWISE_DATA</c> and <c>LAPWISE_PORT</c>; left out: the person's own data folder, and the usual port.</summary>
    public static ServerSettings FromEnvironment()
    {
        var folder = Environment.GetEnvironmentVariable("LAPWISE_DATA");
        if (string.IsNullOrWhiteSpace(folder))
            folder = Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create), "lapwise");
        var port = int.TryParse(Environment.GetEnvironmentVariable("LAPWISE_PORT"), CultureInfo.InvariantCulture, out var given) && given is >= 0 and <= 65535
            ? given
            : UsualPort;
        return new ServerSettings(Path.GetFullPath(folder), port);
    }
}
