namespace Lapwise.Core.Work;

/// <summary>
/// A place where a long computation lets its caller breathe: a page draws and takes taps there, or throws
/// <see cref="OperationCanceledException"/> to stop. The core itself never looks at a clock.
/// </summary>
public delegate ValueTask Pause();

/// <summary>Work in slices, taken at one go by a caller who does not pause.</summary>
public static class Slices
{
    /// <summary>Without a pause nothing is ever waited for, so the work has ended when it is handed back.</summary>
    /// <exception cref="InvalidOperationException">It paused all the same.</exception>
    public static T AtOnce<T>(ValueTask<T> work) => work.IsCompleted ? work.Result : throw new InvalidOperationException("it paused without a pause");

    /// <summary>Without a pause nothing is ever waited for, so each step has ended when it is handed back.</summary>
    public static IEnumerable<T> AtOnce<T>(IAsyncEnumerable<T> slices)
    {
        var each = slices.GetAsyncEnumerator();
        while (true)
        {
            var next = each.MoveNextAsync();
            if (!next.IsCompleted) throw new InvalidOperationException("it paused without a pause");
            if (!next.Result) yield break;
            yield return each.Current;
        }
    }
}

/// <summary>How hard to search, in counted steps, and where to pause.</summary>
/// <param name="Times">Multiple of the usual number of steps, from 1: more finds younger laps and proves more.</param>
public sealed record Effort(int Times, Pause Pause)
{
    /// <summary>The usual number of steps, without a pause.</summary>
    public static readonly Effort AtOnce = new(1, () => ValueTask.CompletedTask);
}
