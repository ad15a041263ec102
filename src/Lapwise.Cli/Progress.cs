using System.Diagnostics;
using Lapwise.Core.Explain;

namespace Lapwise.Cli;

/// <summary>Says on the error stream that something goes on, once it takes longer than a second.</summary>
public static class Progress
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    /// <param name="work">Runs on another thread, while this one shows the seconds.</param>
    public static T Show<T>(this Terminal terminal, Phrase doing, Voice voice, Func<T> work)
    {
        var running = Task.Run(work);
        var clock = Stopwatch.StartNew();
        var said = false;
        while (Task.WaitAny([running], Patience) != 0)
        {
            var line = $"{doing(voice)} {Voice.Span(clock.Elapsed.TotalSeconds)}";
            if (terminal.ShowsProgress) terminal.Error.Write("\r" + line + "  ");
            else if (!said) terminal.Error.WriteLine(line);
            said = true;
        }

        if (said && terminal.ShowsProgress) terminal.Error.Write("\r" + new string(' ', Terminal.Columns - 1) + "\r");
        return running.GetAwaiter().GetResult();
    }
}
