using Microsoft.JSInterop;

namespace Lapwise.Client.Keeping;

/// <summary>The steps of a job that can be taken back, on this device, over a reload.</summary>
internal sealed class EditKeeping(IJSRuntime js)
{
    /// <summary>Every step as field, document before and document after, and how many of them are done.</summary>
    public sealed record KeptSteps(int Count, string[][] Steps);

    public Task<KeptSteps> Read(string job) => js.InvokeAsync<KeptSteps>("lapwise.edits.read", job).AsTask();

    /// <summary>Puts steps at their places, with nothing after them. False where this device has no room for them, or keeps nothing.</summary>
    /// <param name="count">How many of all steps are done.</param>
    public Task<bool> Put(string job, int from, string[][] steps, int count) => js.InvokeAsync<bool>("lapwise.edits.put", job, from, steps, count).AsTask();
}
