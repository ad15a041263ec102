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
    /// <summary>No answer: no reception, or the server is off.</summary>
    public sealed record Unreachable : Reply<T>;
}
