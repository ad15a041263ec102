using Lapwise.Core.Explain;

namespace Lapwise.Verifier;

/// <summary>Something in a plan that is not as it says, or not as it must be.</summary>
/// <param name="Code">Stable name, as <c>LapAgeWrong</c>.</param>
/// <param name="Place">Coat and part, as <c>coats[1] section 3</c>.</param>
public sealed record Violation(string Code, string Place, Phrase Text)
{
    public string Say(Voice voice) => $"{Place}: {Code}: {Text(voice)}";
}

/// <summary>One thing that was looked at, and how many times.</summary>
public sealed record Looked(Phrase At, int Times);

/// <summary>What the checker looked at and what it found.</summary>
public sealed record Verification(IReadOnlyList<Looked> Looked, IReadOnlyList<Violation> Violations);

/// <summary>Gathers what the rules find.</summary>
internal sealed class Findings
{
    private readonly List<(Phrase At, int Times)> looked = [];
    private readonly List<Violation> violations = [];

    public Verification Verification => new([.. looked.Select(l => new Looked(l.At, l.Times))], violations);

    public void LookAt(Phrase at)
    {
        if (!looked.Exists(l => l.At == at)) looked.Add((at, 0));
        current = looked.FindIndex(l => l.At == at);
    }

    private int current;

    /// <summary>Counts one look; keeps a violation where it does not hold.</summary>
    public bool Holds(bool holds, string code, string place, Phrase text)
    {
        looked[current] = (looked[current].At, looked[current].Times + 1);
        if (!holds) violations.Add(new Violation(code, place, text));
        return holds;
    }
}
