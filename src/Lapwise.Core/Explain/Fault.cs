namespace Lapwise.Core.Explain;

/// <summary>
/// Something entered that cannot be used: where it stands in the document, what is wrong and what would cure it.
/// A fault is a value; nothing that was entered is changed or lost by it.
/// </summary>
/// <param name="Path">Place inside the document, as <c>tops[0].outline.length</c>.</param>
/// <param name="Code">Stable name of the reason, as <c>LengthNotUnderstood</c>.</param>
public sealed record Fault(string Path, string Code, Phrase Text, Phrase Cure)
{
    public string Say(Voice voice) => $"{Path}: {Text(voice)} {Cure(voice)}";
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
