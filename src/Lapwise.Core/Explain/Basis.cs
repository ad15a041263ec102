namespace Lapwise.Core.Explain;

/// <summary>How sure we are of a source.</summary>
public enum SourceStanding
{
    /// <summary>The document or an excerpt of it was read.</summary>
    Read,
    /// <summary>A secondary document that quotes it was read.</summary>
    ReadSecondHand,
    /// <summary>Recalled; confirm before citing.</summary>
    FromMemory,
    /// <summary>A fact of the trade; no source.</summary>
    CommonPractice,
    /// <summary>Plain geometry or arithmetic, provable on the spot.</summary>
    Derived,
    /// <summary>Entered by the finisher or taken from the product's data sheet as entered.</summary>
    Entered,
    /// <summary>A cautious figure of this program, where nothing better was given.</summary>
    Assumed,
}

/// <summary>A source that a number may rest on. All of them are listed by <see cref="Sources"/>.</summary>
public sealed record Source(string Id, Phrase Title, SourceStanding Standing)
{
    /// <summary>A published document keeps its own title; what is said about it is said in both languages.</summary>
    public Source(string id, string document, Phrase says, SourceStanding standing)
        : this(id, v => $"{document}: {says(v)}", standing) { }
}

/// <summary>One input of a number, by name and as shown.</summary>
public sealed record BasisInput(Phrase Name, Phrase Value);

/// <summary>Where a number comes from: formula in symbols, inputs and source.</summary>
public sealed record Basis(string Formula, IReadOnlyList<BasisInput> Inputs, Source Source);
