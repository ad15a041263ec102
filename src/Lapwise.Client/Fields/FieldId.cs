namespace Lapwise.Client.Fields;

/// <summary>The id in the page of the field for a place in the document, so that a fault can lead to its field.</summary>
internal static class FieldId
{
    public static string Of(string path) => "at-" + string.Concat(path.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
}
