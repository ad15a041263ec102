using Microsoft.JSInterop;

namespace Lapwise.Client.Keeping;

/// <summary>Photos on this device, by their content; sent to the server by themselves.</summary>
internal sealed class Photos(IJSRuntime js)
{
    /// <summary>How many the server does not have yet.</summary>
    public int Waiting { get; private set; }

    /// <summary>Takes what was chosen in a field: for each an id, or a word with <c>!</c> of why not.</summary>
    public Task<string[]> Take(string fieldId) => js.InvokeAsync<string[]>("lapwise.photos.take", fieldId).AsTask();

    public async Task Send() => Waiting = await js.InvokeAsync<int>("lapwise.photos.send");

    /// <summary>Where the page finds the picture; empty: neither this device nor the server has it now.</summary>
    public Task<string> Address(string id) => js.InvokeAsync<string>("lapwise.photos.address", id).AsTask();
}
