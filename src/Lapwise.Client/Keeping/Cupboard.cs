using Microsoft.JSInterop;

namespace Lapwise.Client.Keeping;

/// <summary>What came of keeping something on this device.</summary>
internal enum Shelved
{
    Kept,
    /// <summary>There is no room left.</summary>
    Full,
    /// <summary>The browser keeps nothing here, as in a private window.</summary>
    Refused,
}

/// <summary>The kinds of records on this device.</summary>
internal enum Drawer { Jobs, Drafts, Products, Photos, PhotosToSend }

/// <summary>Documents on this device, in the browser's database; <see cref="Device"/> has the small settings. A record is a few texts under a key.</summary>
internal sealed class Cupboard(IJSRuntime js)
{
    /// <summary>How the last write went.</summary>
    public Shelved Last { get; private set; } = Shelved.Kept;

    /// <summary>Whether the browser has promised not to clear this by itself; null: not asked yet.</summary>
    public bool? IsLasting { get; private set; }

    public async Task<Shelved> Write(Drawer drawer, string key, params string[] texts)
    {
        return Last = Went(await js.InvokeAsync<string>("lapwise.cupboard.write", [Name(drawer), key, .. texts]));
    }

    /// <param name="cause">Why something was not kept, as the page's scripts say it.</param>
    public static Shelved Went(string cause) => cause switch { "" => Shelved.Kept, "full" => Shelved.Full, _ => Shelved.Refused };

    public Task<string[]?> Read(Drawer drawer, string key) => js.InvokeAsync<string[]?>("lapwise.cupboard.read", Name(drawer), key).AsTask();

    public Task Remove(Drawer drawer, string key) => js.InvokeVoidAsync("lapwise.cupboard.remove", Name(drawer), key).AsTask();

    /// <summary>Every record: its key, then the first <paramref name="most"/> of its texts.</summary>
    public Task<string[][]> Heads(Drawer drawer, int most) => js.InvokeAsync<string[][]>("lapwise.cupboard.heads", Name(drawer), most).AsTask();

    /// <summary>Asks the browser to keep what is here even when space is short.</summary>
    public async Task AskToLast() => IsLasting = await js.InvokeAsync<bool>("lapwise.cupboard.persist");

    /// <summary>The id of this tab, the same after a reload.</summary>
    public Task<string> Tab() => js.InvokeAsync<string>("lapwise.tab").AsTask();

    public Task<string[]> OpenTabs() => js.InvokeAsync<string[]>("lapwise.openTabs").AsTask();

    private static string Name(Drawer drawer) => drawer == Drawer.PhotosToSend ? "photosToSend" : drawer.ToString().ToLowerInvariant();
}
