using Microsoft.JSInterop;

namespace Lapwise.Client.Keeping;

/// <summary>A new version of the page: fetched by itself, offered, and taken only when somebody says so; never while a run goes on.</summary>
public sealed class Updates : IDisposable
{
    private readonly IJSInProcessRuntime js;
    private readonly Server server;
    private readonly RunGoingOn run;
    private readonly DotNetObjectReference<Updates> self;

    internal Updates(IJSInProcessRuntime js, Server server, RunGoingOn run)
    {
        (this.js, this.server, this.run) = (js, server, run);
        self = DotNetObjectReference.Create(this);
        js.InvokeVoid("lapwise.updates.watch", self);
        server.VersionSeen += Look;
        run.Changed += Tell;
    }

    /// <summary>A new version can be taken now.</summary>
    public bool IsOffered => !run.Is && (js.Invoke<bool>("lapwise.updates.isReady") || (server.IsOtherVersion && !js.Invoke<bool>("lapwise.updates.comeByThemselves")));

    public event Action? Changed;

    [JSInvokable]
    public void OnUpdateReady() => Tell();

    /// <summary>Loads the new version; what was typed is kept on this device already.</summary>
    public void Take()
    {
        if (IsOffered) js.InvokeVoid("lapwise.updates.take");
    }

    public void Dispose()
    {
        server.VersionSeen -= Look;
        run.Changed -= Tell;
        self.Dispose();
    }

    private void Look()
    {
        js.InvokeVoid("lapwise.updates.look");
        Tell();
    }

    private void Tell() => Changed?.Invoke();
}
