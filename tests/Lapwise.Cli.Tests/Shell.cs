using System.Reflection;
using System.Text.Json.Nodes;

namespace Lapwise.Cli.Tests;

/// <summary>Runs the program as a shell would, with its streams kept.</summary>
internal sealed record Shell(Outcome Outcome, string Out, string Error)
{
    public static readonly string Root = typeof(Shell).Assembly
        .GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "RepositoryRoot").Value!;

    public JsonNode Json => JsonNode.Parse(Out)!;

    /// <summary>Without what is said while it is waited for: on a busy machine that comes too.</summary>
    public IReadOnlyList<string> Faults => [.. Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(l => !l.Contains("… ", StringComparison.Ordinal) || !l.EndsWith(" s", StringComparison.Ordinal))];

    public static Shell Run(params string[] words) => RunWith("", words);

    /// <param name="input">What stands on the standard input.</param>
    public static Shell RunWith(string input, params string[] words)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var outcome = CommandLine.Run(words, new Terminal(new StringReader(input), output, error));
        return new Shell(outcome, output.ToString().Replace("\r\n", "\n"), error.ToString());
    }

    public static string Sample(string name) => Path.Combine(Root, "samples", name);

    /// <summary>
    /// Compares with the kept snapshot, and that it fits 80 columns. After a deliberate change LAPWISE_ACCEPT=1 rewrites it.
    /// </summary>
    public void Matches(string snapshot)
    {
        Assert.All(Out.Split('\n'), line => Assert.True(line.Length <= Terminal.Columns, line));
        var path = Path.Combine(Root, "tests", "Lapwise.Cli.Tests", "Snapshots", snapshot + ".txt");
        if (Environment.GetEnvironmentVariable("LAPWISE_ACCEPT") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, Out);
        }

        Assert.Equal(File.ReadAllText(path), Out);
    }
}
