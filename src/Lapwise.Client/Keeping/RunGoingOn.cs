using System.Globalization;

namespace Lapwise.Client.Keeping;

/// <summary>
/// Whether somebody is rolling right now, by any tab of this device. The run's page says when it begins and when it ends; while
/// it goes on nothing is offered that would load the page anew.
/// </summary>
internal sealed class RunGoingOn(Device device, TimeProvider time)
{
    private const string Key = "lapwise/run-going-on";
    /// <summary>A run that was left open and forgotten does not hold back new versions for ever.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromHours(18);

    public bool Is =>
        device.Read(Key)?.Split(' ') is [_, var since]
        && DateTimeOffset.TryParse(since, CultureInfo.InvariantCulture, out var begun)
        && (time.GetUtcNow() - begun).Duration() < Longest;

    public event Action? Changed;

    public void Begin(string runId)
    {
        device.Write(Key, runId + " " + time.GetUtcNow().ToString("O", CultureInfo.InvariantCulture));
        Changed?.Invoke();
    }

    /// <summary>Ends this run; another that began since goes on.</summary>
    public void End(string runId)
    {
        if (device.Read(Key)?.Split(' ')[0] == runId) device.Remove(Key);
        Changed?.Invoke();
    }
}
