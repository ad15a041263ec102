using Spectre.Console;

namespace Lapwise.Cli;

/// <summary>Where a command reads and writes. Answers go to <see cref="Out"/>, faults and progress to <see cref="Error"/>.</summary>
/// <param name="IsInteractive">A person looks at <see cref="Out"/>: bold and colour may be used, beside words and never instead of them.</param>
/// <param name="ShowsProgress">A person looks at <see cref="Error"/>: a running count of seconds may be shown.</param>
public sealed record Terminal(TextReader In, TextWriter Out, TextWriter Error, bool IsInteractive = false, bool ShowsProgress = false)
{
    /// <summary>Everything printed fits this many columns.</summary>
    public const int Columns = 80;

    /// <summary>A console over <see cref="Out"/> for tables; plain text where nobody looks.</summary>
    public IAnsiConsole Tables()
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = IsInteractive ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = IsInteractive ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(new HeldGaps(Out)),
        });
        console.Profile.Width = Columns;
        console.Profile.Capabilities.Unicode = true;
        return console;
    }
}

/// <summary>What a command ends with.</summary>
public enum Outcome
{
    Done = 0,
    /// <summary>The input is good; the plan, room or measurement does not work. The reasons are printed.</summary>
    DoesNotWork = 1,
    /// <summary>The input cannot be used: one line a fault on the error stream.</summary>
    BadInput = 2,
}
