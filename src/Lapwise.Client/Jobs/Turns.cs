namespace Lapwise.Client.Jobs;

/// <summary>
/// Parts of the page that take some time to draw, one after the other: the browser takes taps in between, where all of
/// them at once would freeze it.
/// </summary>
internal sealed class Turns
{
    private Task last = Task.CompletedTask;

    /// <summary>Completes when it is the caller's turn, in a task of the browser's own.</summary>
    public Task Take() => last = After(last);

    private static async Task After(Task before)
    {
        await before;
        await Task.Delay(1);
    }
}
