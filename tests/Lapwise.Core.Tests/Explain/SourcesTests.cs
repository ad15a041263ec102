using System.Reflection;
using System.Text;
using Lapwise.Core.Explain;

namespace Lapwise.Core.Tests.Explain;

public sealed class SourcesTests
{
    private static readonly string Page = Path.Combine(RepositoryFolder.Root, "docs", "sources.md");

    [Fact]
    public void Every_source_is_registered_once()
    {
        var fields = typeof(Sources).GetFields(BindingFlags.Public | BindingFlags.Static).Where(f => f.FieldType == typeof(Source)).Select(f => (Source)f.GetValue(null)!).ToList();
        Assert.NotEmpty(fields);
        Assert.Equal(fields.Select(s => s.Id).Order(StringComparer.Ordinal), Sources.All.Select(s => s.Id).Order(StringComparer.Ordinal));
        Assert.Equal(Sources.All.Count, Sources.All.Select(s => s.Id).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Every_source_and_standing_is_said_in_both_languages() => Said.InEveryVoice(
        [.. Sources.All.Select(s => s.Title), .. Enum.GetValues<SourceStanding>().Select<SourceStanding, Phrase>(s => v => Sources.Say(s, v))]);

    /// <summary>Run the tests once with LAPWISE_WRITE=1 to write the page anew.</summary>
    [Fact]
    public void The_page_of_sources_is_what_the_registry_says()
    {
        var text = Render();
        if (Environment.GetEnvironmentVariable("LAPWISE_WRITE") is "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Page)!);
            File.WriteAllText(Page, text);
        }

        Assert.Equal(text, File.ReadAllText(Page));
    }

    private static string Render()
    {
        var english = new Voice(Language.English, UnitSystem.Us);
        var text = new StringBuilder()
            .Append("# Sources\n\n")
            .Append("What the numbers rest on. Written from the registry in `src/Lapwise.Core/Explain/Sources.cs`; a test holds the two together.\n\n")
            .Append("| id | source | how it was obtained |\n|---|---|---|\n");
        foreach (var source in Sources.All) text.Append($"| {source.Id} | {source.Title(english)} | {Sources.Say(source.Standing, english)} |\n");
        return text.ToString();
    }
}
