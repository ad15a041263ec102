namespace Lapwise.Documents;

/// <summary>The sign that stands before a line.</summary>
internal static class Signs
{
    public static string Of(ItemMark mark) => mark switch
    {
        ItemMark.Stop => "✗",
        ItemMark.Caution => "⚠",
        ItemMark.Tick => "☐",
        _ => "·",
    };
}
