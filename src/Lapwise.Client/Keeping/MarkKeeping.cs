using System.Text.Json;
using System.Text.Json.Serialization;
using Lapwise.Core.OnSite;
using Microsoft.JSInterop;

namespace Lapwise.Client.Keeping;

/// <summary>A mark as this device keeps it.</summary>
/// <param name="Sent">The server has it.</param>
internal sealed record KeptMark(string Run, bool Sent, string Text);

/// <summary>Marks on this device, and the little else a run needs of the browser. Where storage is refused, marks live as long as the page.</summary>
internal sealed class MarkKeeping(IJSRuntime js, Device device)
{
    private const string DeviceKey = "lapwise/device";
    private const string GroundKey = "lapwise/ground";

    private readonly string _madeUp = Guid.NewGuid().ToString("N");
    private IJSObjectReference? _module;

    /// <summary>One start of the page: the steady counter begins anew with it.</summary>
    public string Session { get; } = Guid.CreateVersion7().ToString("N");

    /// <summary>This device, by an id that stays where the browser lets it.</summary>
    public string DeviceId
    {
        get
        {
            if (device.Read(DeviceKey) is { Length: > 0 } known) return known;
            device.Write(DeviceKey, _madeUp);
            return _madeUp;
        }
    }

    /// <summary>Every mark of a job that is kept here, with its run.</summary>
    public async Task<IReadOnlyList<(string Run, bool Sent, MarkDocument Mark)>> All(string job)
    {
        var text = await (await Module()).InvokeAsync<string>("all", job);
        if (text.Length == 0) return [];
        var kept = JsonSerializer.Deserialize(text, KeptJson.Default.IReadOnlyListKeptMark) ?? [];
        return [.. kept.Select(k => (k.Run, k.Sent, JsonSerializer.Deserialize(k.Text, RunJson.Default.MarkDocument)!))];
    }

    /// <summary>Kept once the marks are on the disk, all of them or none.</summary>
    public async Task<Shelved> Put(string job, string run, IReadOnlyList<(bool Sent, MarkDocument Mark)> marks)
    {
        if (marks.Count == 0) return Shelved.Kept;
        var texts = marks.Select(m => new MarkText(m.Mark.Id, m.Sent, JsonSerializer.Serialize(m.Mark, RunJson.Default.MarkDocument))).ToArray();
        return Cupboard.Went(await (await Module()).InvokeAsync<string>("put", job, run, texts));
    }

    public async Task<(long ClockMs, long TicksMs)> Clocks()
    {
        var clocks = await (await Module()).InvokeAsync<double[]>("clocks");
        return ((long)clocks[0], (long)clocks[1]);
    }

    /// <summary>False where the browser does not keep the screen on.</summary>
    public async Task<bool> StayAwake(bool wanted) => await (await Module()).InvokeAsync<bool>("stayAwake", wanted);

    /// <summary>After a tap; false where nothing may sound.</summary>
    public async Task<bool> AllowSound() => await (await Module()).InvokeAsync<bool>("allowSound");

    /// <summary>Sounds and buzzes; false where the device does not buzz.</summary>
    public async Task<bool> Alarm(bool high) => await (await Module()).InvokeAsync<bool>("alarm", high);

    public async Task<IJSObjectReference> Watch(DotNetObjectReference<SeenAgain> page) => await (await Module()).InvokeAsync<IJSObjectReference>("watch", page);

    /// <summary>Focus that fell with a button that is gone goes to the next one.</summary>
    public async Task Stand() => await (await Module()).InvokeVoidAsync("stand");

    /// <summary>Whether a section of the picture is drawn smaller than a gloved thumb.</summary>
    public async Task<bool> IsCramped() => await (await Module()).InvokeAsync<bool>("isCramped");

    public async Task Save(string name, string text) => await (await Module()).InvokeVoidAsync("save", name, text);

    /// <summary>Dark ground or bright, as chosen here before; the first time, as the device is set.</summary>
    public async Task<bool> IsDark() => device.Read(GroundKey) is { } chosen ? chosen == "dark" : await (await Module()).InvokeAsync<bool>("likesDark");

    public void Choose(bool dark) => device.Write(GroundKey, dark ? "dark" : "bright");

    private async Task<IJSObjectReference> Module() => _module ??= await js.InvokeAsync<IJSObjectReference>("import", "./js/run.js");
}

/// <summary>The page is looked at again, or has reception again; or the browser emptied the storage of this device.</summary>
public sealed class SeenAgain(Func<Task> then, Func<Task> lost)
{
    [JSInvokable] public Task OnSeenAgain() => then();
    [JSInvokable] public Task OnLost() => lost();
}

internal sealed record MarkText(string Id, bool Sent, string Text);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(IReadOnlyList<KeptMark>))]
internal sealed partial class KeptJson : JsonSerializerContext;
