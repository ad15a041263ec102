using Lapwise.Core.Explain;

namespace Lapwise.Cli;

/// <summary>Prints what was wrong with the input: one line a fault, place first.</summary>
public static class Faults
{
    /// <summary>More than this is not read; the number left out is said.</summary>
    private const int MostPrinted = 100;

    public static Outcome Print(IReadOnlyList<Fault> faults, Voice voice, Terminal terminal)
    {
        foreach (var fault in faults.Take(MostPrinted)) terminal.Error.WriteLine(Screen.OneLine(fault.Say(voice)));
        var left = faults.Count - MostPrinted;
        if (left > 0) terminal.Error.WriteLine(voice.Say($"and {left} more", $"y {left} más"));
        return Outcome.BadInput;
    }
}
