using Lapwise.Core.Jobs;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Lapwise.Client.Keeping;

/// <summary>The small settings of this device and what its browser knows, read and written at once; documents lie on the <see cref="Cupboard"/>.</summary>
internal sealed class Device(IJSInProcessRuntime js)
{
    public string? Read(string key) => js.Invoke<string?>("lapwise.read", key);

    /// <summary>False where the browser keeps nothing (private window, storage full).</summary>
    public bool Write(string key, string value) => js.Invoke<bool>("lapwise.write", key, value);

    public void Remove(string key) => js.InvokeVoid("lapwise.remove", key);

    public string[] Keys(string prefix) => js.Invoke<string>("lapwise.keys", prefix).Split('\n', StringSplitOptions.RemoveEmptyEntries);

    public string BrowserLanguage() => js.Invoke<string>("lapwise.language");

    /// <summary>IANA name of the time zone the device stands in; null: the browser does not tell.</summary>
    public string? Zone() => js.Invoke<string?>("lapwise.zone") is { } zone && TimelineAsks.CanBeZone(zone) ? zone : null;

    public void SayLanguage(string language) => js.InvokeVoid("lapwise.sayLanguage", language);

    public bool IsWide() => js.Invoke<bool>("lapwise.isWide");

    /// <summary>Lengths are typed on the page's own large keys: as chosen on this device, else where it is worked by touch.</summary>
    public bool UsesPad() => js.Invoke<bool>("lapwise.usesPad");

    public void UsePad(bool wanted) => Write("lapwise/pad", wanted ? "yes" : "no");

    /// <summary>The line under each field is shown: until somebody who knows them has put them away on this device.</summary>
    public bool ShowsHelp() => js.Invoke<bool>("lapwise.showsHelp");

    public void ShowHelp(bool wanted) => js.InvokeVoid("lapwise.showHelp", wanted);

    /// <summary>The guide to a first plan is wanted on this device; null: nobody has said.</summary>
    public bool? WantsGuide() => Read("lapwise/guide") is { } said ? said == "yes" : null;

    public void WantGuide(bool wanted) => Write("lapwise/guide", wanted ? "yes" : "no");

    /// <summary>Whoever looks asked the system for less motion.</summary>
    public bool PrefersStill() => js.Invoke<bool>("lapwise.prefersStill");

    /// <summary>Tells the page what happens to it, from now on.</summary>
    public void Watch(DotNetObjectReference<Watcher> watcher) => js.InvokeVoid("lapwise.watch", watcher);

    /// <summary>Lets lines marked with <c>data-grip</c> be dragged in a drawing; calls <see cref="LineMover.OnDragged"/> when one is let go.</summary>
    public void Drag(ElementReference drawing, DotNetObjectReference<LineMover> mover) => js.InvokeVoid("lapwise.drag", drawing, mover);

    /// <summary>Lets corners marked with <c>data-corner</c> be dragged in a drawing, or stepped by the arrow keys.</summary>
    public void Corners(ElementReference drawing, DotNetObjectReference<CornerMover> mover) => js.InvokeVoid("lapwise.corners", drawing, mover);

    /// <summary>The address of the page as it stands, so that opening it again shows the same.</summary>
    public void SayAddress(string address) => js.InvokeVoid("lapwise.sayAddress", address);

    public void Focus(string id) => js.InvokeVoid("lapwise.focus", id);
}

/// <summary>What the browser tells the page unasked.</summary>
public sealed class Watcher
{
    public event Action? WidthChanged;
    public event Action? BackOnline;
    /// <summary>By the keys that ask for it everywhere.</summary>
    public event Action? UndoAsked;
    public event Action? RedoAsked;
    /// <summary>The page is looked at again, after the screen was off or another page was in front.</summary>
    public event Action? LookedAt;
    /// <summary>The browser emptied the storage of this device.</summary>
    public event Action? CupboardLost;

    [JSInvokable] public void OnWidthChanged() => WidthChanged?.Invoke();
    [JSInvokable] public void OnBackOnline() => BackOnline?.Invoke();
    [JSInvokable] public void OnUndoAsked() => UndoAsked?.Invoke();
    [JSInvokable] public void OnRedoAsked() => RedoAsked?.Invoke();
    [JSInvokable] public void OnLookedAt() => LookedAt?.Invoke();
    [JSInvokable] public void OnCupboardLost() => CupboardLost?.Invoke();
}

/// <summary>What the browser tells of a line that was dragged.</summary>
public sealed class LineMover(Action<int, double> dragged)
{
    [JSInvokable] public void OnDragged(int index, double metres) => dragged(index, metres);
}

/// <summary>What the browser tells of a corner that is dragged or stepped; distances in the drawing's units.</summary>
public sealed class CornerMover(Action<char, double, double> moving, Action<char, double, double> letGo, Action<char, int, int, bool> stepped)
{
    [JSInvokable] public void OnMoving(string letter, double x, double y) => moving(letter[0], x, y);
    /// <summary>Nowhere where it was left as it stood.</summary>
    [JSInvokable] public void OnLetGo(string letter, double x, double y) => letGo(letter[0], x, y);
    [JSInvokable] public void OnStepped(string letter, int x, int y, bool finely) => stepped(letter[0], x, y, finely);
}
