using Lapwise.Wire;

namespace Lapwise.Client.Keeping;

/// <summary>What came of asking the server.</summary>
internal abstract record Reply<T>
{
    private Reply() { }

    public sealed record Got(T Value, long Version) : Reply<T>;
    /// <summary>Somebody saved in between.</summary>
    public sealed record Clash : Reply<T>;
    public sealed record Missing : Reply<T>;
    public sealed record Refused(Problem Problem) : Reply<T>;
    /// <summary>A whole answer that this page cannot read: it was written by a newer version of the program.</summary>
    public sealed record Newer(string Text) : Reply<T>;
    /// <summary>This device is not, or no longer, let in by the shop's computer.</summary>
    public sealed record NotLetIn : Reply<T>;
    /// <summary>No answer: no reception, or the server is off.</summary>
    public sealed record Unreachable : Reply<T>;
}
