namespace Lapwise.Core.Explain;

/// <summary>
/// Something entered that cannot be used: where it stands in the document, what is wrong and what would cure it.
/// A fault is a value; nothing that was entered is changed or lost by it.
/// </summary>
/// <param name="Path">Place inside the document, as <c>tops[0].outline.length</c>.</param>
/// <param name="Code">Stable name of the reason, as <c>UnitMissing</c>.</param>
public sealed record Fault(string Path, string Code, Phrase Text, Phrase Cure)
{
    /// <summary>Line of the file it was read from, from 1; null where the document did not come from a file.</summary>
    public int? Line { get; init; }

    /// <summary>Nothing was entered yet: something is still to be filled in, nothing is wrong.</summary>
    public bool IsBlankYet => Code == "QuantityMissing";

    /// <summary>One line: place, what is wrong, what would cure it.</summary>
    public string Say(Voice voice)
    {
        string?[] place = [Path.Length > 0 ? Path : null, Line is { } line ? voice.Say($"line {line}", $"línea {line}") : null];
        var where = string.Join(", ", place.Where(p => p is not null));
        return (where.Length > 0 ? where + ": " : "") + $"{Text(voice)} {Cure(voice)}";
    }
}

/// <summary>How hard a limit of the trade is (see docs/job rules: never, or at the finisher's own word).</summary>
public enum Limit
{
    /// <summary>Cannot be taken up at all.</summary>
    Never,
    /// <summary>Shown as not working; the finisher may take it up with a recorded reason.</summary>
    AtYourWord,
    /// <summary>Worth knowing; the plan works.</summary>
    Note,
}

/// <summary>
/// A refusal or a note of the trade: a code named for its reason, the sentence with the numbers and the limit,
/// and the next step.
/// </summary>
public sealed record Reason(string Code, Limit Limit, Phrase Text, Phrase Remedy);
