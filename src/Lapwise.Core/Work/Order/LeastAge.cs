namespace Lapwise.Core.Work.Order;

internal static class LeastAge
{
    /// <summary>The least age from <paramref name="low"/> on that will do, or <paramref name="high"/>; where one will do, so will all above.</summary>
    public static long That(Func<long, bool> willDo, long low, long high)
    {
        // Mostly the first will do, or none that is less than the last.
        if (willDo(low)) return low;
        if (high <= low + 1 || !willDo(high - 1)) return high;
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            if (willDo(middle)) high = middle;
            else low = middle + 1;
        }

        return low;
    }
}
