using Lapwise.Core.Explain;

namespace Lapwise.Core.Tests;

/// <summary>Holds texts to being said, and said differently, in each language.</summary>
internal static class Said
{
    public static void InEveryVoice(IReadOnlyList<Phrase> phrases)
    {
        Assert.NotEmpty(phrases);
        Assert.All(phrases, phrase =>
        {
            Assert.All(Invented.Voices, voice => Assert.False(string.IsNullOrWhiteSpace(phrase(voice))));
            Assert.All(Enum.GetValues<UnitSystem>(), units =>
                Assert.NotEqual(phrase(new Voice(Language.English, units)), phrase(new Voice(Language.Spanish, units))));
        });
    }
}
