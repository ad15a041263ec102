using Lapwise.Client.Keeping;
using Lapwise.Core.Explain;

namespace Lapwise.Client.Voices;

/// <summary>The voice of this page: language and units, changed live and remembered on this device.</summary>
internal sealed class Spoken(Device device)
{
    private const string Key = "lapwise/voice";
    private Voice? voice;

    public event Action? Changed;

    /// <summary>As chosen here before; the first time, as the browser speaks: its language, and inches where it is set to the United States.</summary>
    public Voice Voice
    {
        get => voice ??= Remembered() with { KeepsUnits = true };
        set
        {
            voice = value;
            device.Write(Key, value.Language + " " + value.Units);
            Tell();
            Changed?.Invoke();
        }
    }

    /// <summary>Tells the browser which language the page is in, for those who listen to it.</summary>
    public void Tell() => device.SayLanguage(Voice.Language == Language.Spanish ? "es" : "en");

    private Voice Remembered()
    {
        if (device.Read(Key)?.Split(' ') is [var language, var units]
            && Enum.TryParse<Language>(language, out var l) && Enum.TryParse<UnitSystem>(units, out var u)) return new Voice(l, u);
        var browser = device.BrowserLanguage();
        return new Voice(
            browser.StartsWith("es", StringComparison.OrdinalIgnoreCase) ? Language.Spanish : Language.English,
            browser.EndsWith("-US", StringComparison.OrdinalIgnoreCase) || !browser.Contains('-', StringComparison.Ordinal) ? UnitSystem.Us : UnitSystem.Metric);
    }
}
