using System.Text.RegularExpressions;

namespace Lapwise.Cli.Tests;

/// <summary>The tour in the README: every command there runs, and says every line that is printed there, in that order.</summary>
public sealed partial class ReadmeTourTests : IDisposable
{
    private const string Prompt = "$ ./eng/lapwise ";
    private readonly string folder = Directory.CreateTempSubdirectory("lapwise-tour-").FullName;

    [Fact]
    public void Every_command_of_the_tour_says_what_the_README_prints()
    {
        var steps = Console().Matches(File.ReadAllText(Path.Combine(Shell.Root, "README.md"))).SelectMany(m => Steps(m.Groups["lines"].Value)).ToList();

        Assert.NotEmpty(steps);
        Assert.All(steps, step =>
        {
            var (command, printed) = step;
            var to = command.IndexOf('>', StringComparison.Ordinal);
            var shell = Shell.Run([.. (to < 0 ? command : command[..to]).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Word)]);

            Assert.Equal(Outcome.Done, shell.Outcome);
            if (to >= 0) File.WriteAllText(Word(command[(to + 1)..].Trim()), shell.Out);
            var said = shell.Out.Split('\n').Select(l => l.TrimEnd()).ToList();
            var from = 0;
            Assert.All(printed, line => Assert.True((from = said.IndexOf(line, from) + 1) > 0, $"{command} does not say, or not in this place: {line}"));
        });
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string Word(string word) =>
        word.StartsWith("samples/", StringComparison.Ordinal) ? Path.Combine(Shell.Root, word) :
        word.EndsWith(".json", StringComparison.Ordinal) ? Path.Combine(folder, word) : word;

    private static IEnumerable<(string Command, IReadOnlyList<string> Printed)> Steps(string block) =>
        block.Split(Prompt, StringSplitOptions.RemoveEmptyEntries)
            .Select(step => step.Split('\n'))
            .Select(lines => (lines[0], (IReadOnlyList<string>)[.. lines[1..].Select(l => l.TrimEnd()).Where(l => l.Length > 0)]));

    [GeneratedRegex("^```console\n(?<lines>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture, 30_000)]
    private static partial Regex Console();
}
