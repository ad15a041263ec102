namespace Lapwise.Store;

/// <summary>What an id may look like: short, and safe in an address and a file name.</summary>
public static class DocumentId
{
    public const int MostCharacters = 64;

    public static bool IsUsable(string id) =>
        id.Length is > 0 and <= MostCharacters && id.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_');

    /// <summary>A new id; ids made later sort later.</summary>
    public static string New(DateTimeOffset now) => Guid.CreateVersion7(now).ToString("N");
}
