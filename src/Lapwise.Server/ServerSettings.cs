using System.Globalization;

namespace Lapwise.Server;

/// <summary>What one running server is told from outside.</summary>
/// <param name="DataFolder">Folder of the database file.</param>
/// <param name="Port">Port on the loopback address; 0: any free one.</param>
/// <param name="PhonePort">Port of the encrypted door for phones, while it is open; the next one hands out the certificate.</param>
/// <param name="LetPhonesIn">Opens that door at the start, as its button on the page does.</param>
public sealed record ServerSettings(string DataFolder, int Port, int PhonePort = ServerSettings.UsualPhonePort, bool LetPhonesIn = false)
{
    public const int UsualPort = 7407;
    public const int UsualPhonePort = 7408;
    private const int MostPort = 65535;

    public string DatabasePath => Path.Combine(DataFolder, "lapwise.db");

    /// <summary>What lets phones in: the shop's authority with its key, and the list of devices.</summary>
    public string PhonesFolder => Path.Combine(DataFolder, "phones");

    /// <summary>
    /// Reads <c>LAPWISE_DATA</c>, <c>LAPWISE_PORT</c>, <c>LAPWISE_PHONE_PORT</c> and <c>LAPWISE_PHONES</c> (<c>on</c>: let them in);
    /// left out: the person's own data folder, the usual ports, and as it was left.
    /// </summary>
    public static ServerSettings FromEnvironment()
    {
        var folder = Environment.GetEnvironmentVariable("LAPWISE_DATA");
        if (string.IsNullOrWhiteSpace(folder))
            folder = Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create), "lapwise");
        var letIn = string.Equals(Environment.GetEnvironmentVariable("LAPWISE_PHONES"), "on", StringComparison.OrdinalIgnoreCase);
        var port = PortIn("LAPWISE_PORT", UsualPort);
        var phonePort = PortIn("LAPWISE_PHONE_PORT", UsualPhonePort);
        // The three ports tell the doors apart, so none may be any free one or another's.
        if (phonePort == 0 || phonePort == port || phonePort + 1 == port) phonePort = port is 0 or > MostPort - 2 ? UsualPhonePort : port + 1;
        return new ServerSettings(Path.GetFullPath(folder), port, phonePort, letIn);
    }

    private static int PortIn(string variable, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out var given) && given is >= 0 and < MostPort ? given : usual;
}
