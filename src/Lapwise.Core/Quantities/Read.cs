using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using Lapwise.Core.Explain;

namespace Lapwise.Core.Quantities;

/// <summary>What reading an entry gave: a value, or the reason why there is none.</summary>
public abstract record Read<T>
{
    private Read() { }

    public sealed record Got(T Value) : Read<T>;

    public sealed record Refused(Misread Why) : Read<T>;

    public static implicit operator Read<T>(T value) => new Got(value);

    public static implicit operator Read<T>(Misread why) => new Refused(why);

    /// <summary>True with the reason, or false with the value.</summary>
    public bool Failed([NotNullWhen(true)] out Misread? why, [MaybeNullWhen(true)] out T value)
    {
        (why, value) = this switch
        {
            Got got => ((Misread?)null, (T?)got.Value),
            Refused refused => (refused.Why, default),
            _ => throw new UnreachableException(),
        };
        return why is not null;
    }
}

/// <summary>Why an entry gives no value.</summary>
/// <param name="Code">Stable name of the reason, as <c>UnitMissing</c>.</param>
/// <param name="Position">Character of the entry it points at, from 0.</param>
public sealed record Misread(string Code, int Position, Phrase Text, Phrase Cure);
