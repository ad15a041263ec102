namespace Lapwise.Client.Phases.OnSite;

/// <summary>
/// A tap means what was read before the finger came down. A target whose meaning has just changed, by the first tap of a double
/// tap or by another phone, rests for a moment: it is seen to, and takes no tap.
/// </summary>
/// <param name="changed">A target rests no more.</param>
internal sealed class Resting(TimeProvider time, Action changed)
{
    private static readonly TimeSpan Moment = TimeSpan.FromSeconds(1.2);

    private readonly Dictionary<string, (string Meaning, long? Since)> _shown = new(StringComparer.Ordinal);
    private readonly HashSet<string> _taken = new(StringComparer.Ordinal);

    /// <summary>Whether a target rests, by what a tap on it would mean now.</summary>
    public bool Is(string target, string meaning)
    {
        if (!_shown.TryGetValue(target, out var before)) before = _shown[target] = (meaning, null);
        if (before.Meaning != meaning)
        {
            before = _shown[target] = (meaning, time.GetTimestamp());
            _ = Wake();
        }

        return _taken.Contains(target) || (before.Since is { } since && time.GetElapsedTime(since) < Moment);
    }

    /// <summary>Takes a tap and, until what it came to is shown, no other on the same target.</summary>
    public async Task Take(string target, Func<Task> tap)
    {
        if (!_taken.Add(target)) return;
        try
        {
            await tap();
        }
        finally
        {
            _taken.Remove(target);
        }
    }

    private async Task Wake()
    {
        await Task.Delay(Moment, time);
        changed();
    }
}
