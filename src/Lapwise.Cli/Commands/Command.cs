using Lapwise.Core;
using Lapwise.Core.Explain;

namespace Lapwise.Cli.Commands;

/// <summary>One action of the command line.</summary>
/// <param name="Arguments">What stands beside its name, as <c>JOB</c>.</param>
/// <param name="Answers">The phases whose question it answers.</param>
/// <param name="Summary">One line for the list of commands.</param>
/// <param name="More">What the command's own help says further.</param>
public sealed record Command(
    string Name,
    IReadOnlyList<string> Arguments,
    IReadOnlyList<Phase> Answers,
    Phrase Summary,
    Phrase More,
    Func<Request, Terminal, Outcome> Run)
{
    /// <summary>The last argument may be left out or stand many times.</summary>
    public bool LastRepeats { get; init; }

    /// <summary>Whether this many words beside the name are what it takes.</summary>
    public bool Takes(int words) => LastRepeats ? words >= Arguments.Count - 1 : words == Arguments.Count;

    /// <summary>Every command, in the order of the help.</summary>
    public static IReadOnlyList<Command> All { get; } = 
    [
        CheckCommand.Command, TakeOffCommand.Command, MaterialsCommand.Command, PlanCommand.Command, TimelineCommand.Command, DaysCommand.Command, PriceCommand.Command, BuyCommand.Command, SheetCommand.Command, VerifyCommand.Command, OrderCommand.Command, QuickCommand.Command, HoursCommand.Command, DryingCommand.Command, RecordCommand.Command,
    ];
}
