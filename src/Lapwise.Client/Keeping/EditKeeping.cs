using Microsoft.JSInterop;

namespace Lapwise.Client.Keeping;

/// <summary>The steps of a job that can be taken back, on this device, over a reload.</summary>
internal sealed class EditKeeping(IJSRuntime js)
{
    /// <summary>Every step as field, document before and document after, and how many of them are done.</summary>
    public sealed record KeptSteps(int Count, string[][] Steps);

    public Task<KeptSteps> Read(string job) => js.InvokeAsync<KeptSteps>("lapwise.edits.read", job).AsTask();

    /// <summary>False where this device has no room for it, or keeps nothing.</summary>
    public Task<bool> Put(string job, int place, params string[] step) => js.InvokeAsync<bool>("lapwise.edits.put", job, place, step).AsTask();

    public Task<bool> Stand(string job, int count) => js.InvokeAsync<bool>("lapwise.edits.stand", job, count).AsTask();
}
