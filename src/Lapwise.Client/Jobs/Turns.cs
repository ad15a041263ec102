namespace Lapwise.Client.Jobs;

/// <summary>
/// Parts of the page that take some time to draw, one after the other: the browser takes taps in between, where all of
/// them at once would freeze it.
/// </summary>
internal sealed class Turns
{
    private static readonly TimeSpan TwoFrames = TimeSpan.FromMilliseconds(34);
    private Task last = Task.CompletedTask;

    /// <summary>Completes when it is the caller's turn, in a task of the browser's own.</summary>
    public Task Take() => last = After(last);

    /// <summary>Completes when the turns taken so far are not only drawn but on the screen: the browser shows nothing while it is kept busy.</summary>
    public async Task Shown()
    {
        await Take();
        await Task.Delay(TwoFrames);
    }

    private static async Task After(Task before)
    {
        await before;
        await Task.Delay(1);
    }
}
