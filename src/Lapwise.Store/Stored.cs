namespace Lapwise.Store;

/// <summary>A document with what the store knows of it.</summary>
public sealed record Stored<T>(string Id, T Document, long Version, DateTimeOffset ChangedAt);

/// <summary>One line of a list.</summary>
public sealed record Listed(string Id, string Name, long Version, DateTimeOffset ChangedAt);

/// <summary>What became of a save or a removal. A clash is an answer, not an accident: nothing was overwritten.</summary>
public abstract record SaveOutcome<T>
{
    private SaveOutcome() { }

    /// <summary>Done; the document as it now stands (or stood, when removed).</summary>
    public sealed record Done(Stored<T> Now) : SaveOutcome<T>;
    /// <summary>Somebody saved in between, or the id is taken: what stands in the store, untouched.</summary>
    public sealed record Clash(Stored<T> InStore) : SaveOutcome<T>;
    /// <summary>There is no such document (any more).</summary>
    public sealed record Missing : SaveOutcome<T>;
}
