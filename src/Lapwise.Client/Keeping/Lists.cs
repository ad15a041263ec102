namespace Lapwise.Client.Keeping;

/// <summary>Lists that are never changed, only answered anew.</summary>
internal static class Lists
{
    public static IReadOnlyList<T> With<T>(this IReadOnlyList<T> list, int index, Func<T, T> change) => [.. list.Select((item, i) => i == index ? change(item) : item)];

    public static IReadOnlyList<T> Plus<T>(this IReadOnlyList<T>? list, T item) => [.. list ?? [], item];

    public static IReadOnlyList<T> Without<T>(this IReadOnlyList<T> list, int index) => [.. list.Where((_, i) => i != index)];
}
