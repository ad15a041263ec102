using Lapwise.Cli.Commands;
using Lapwise.Core.Explain;

namespace Lapwise.Cli;

/// <summary>The program: words in, answer out, exit code back.</summary>
public static class CommandLine
{
    public static Outcome Run(IReadOnlyList<string> words, Terminal terminal)
    {
        var (request, faults) = Request.Read(words);
        if (faults.Count > 0) return Faults.Print(faults, request.Voice, terminal);

        if (request.Command.Length == 0 || request.Command == "help") return Help(request, terminal);
        if (Command.All.FirstOrDefault(c => c.Name == request.Command) is not { } command)
        {
            return Faults.Print([new Fault(request.Command, "CommandUnknown",
                v => v.Say("There is no such command.", "No existe ese comando."),
                v => v.Say($"Use one of: {Names}.", $"Use uno de: {Names}."))], request.Voice, terminal);
        }

        if (request.Help) return Help(request with { Files = [command.Name] }, terminal);
        if (!command.Takes(request.Files.Count))
        {
            return Faults.Print([new Fault(command.Name, "ArgumentsWrong",
                v => v.Say($"It takes {string.Join(' ', command.Arguments)}.", $"Lleva {string.Join(' ', command.Arguments)}."),
                v => v.Say($"See `lapwise help {command.Name}`.", $"Vea `lapwise help {command.Name}`."))], request.Voice, terminal);
        }

        return command.Run(request, terminal);
    }

    private static string Names => string.Join(", ", Command.All.Select(c => c.Name));

    private static Outcome Help(Request request, Terminal terminal)
    {
        var about = Command.All.FirstOrDefault(c => request.Files is [var name, ..] && c.Name == name);
        terminal.Out.Write(about is null ? HelpText.Of(request.Voice) : HelpText.Of(about, request.Voice));
        return Outcome.Done;
    }
}
