using Lapwise.Core.Explain;
using Lapwise.Core.Measure;
using Lapwise.Shared;

namespace Lapwise.Drawings.Tests;

/// <summary>
/// A drawing as a person sees it, kept as a file that opens in any browser. To accept a change, look at the new picture
/// and run with LAPWISE_ACCEPT=1.
/// </summary>
public class SnapshotTests
{
    [Theory]
    [InlineData("vanity", 0, Language.Spanish, UnitSystem.Metric)]
    [InlineData("l-kitchen", 0, Language.English, UnitSystem.Us)]
    [InlineData("l-kitchen", 1, Language.English, UnitSystem.Us)]
    public void A_measured_top_is_drawn_as_it_was_last_seen(string sample, int index, Language language, UnitSystem units)
    {
        var top = Measuring.Measure(Samples.Job(sample)).Tops[index];
        var drawn = TopDrawing.Draw(top, new Voice(language, units), Sheet.Phone).Svg();

        var file = Path.Combine(Samples.Folder, "..", "tests", "Lapwise.Drawings.Tests", "Snapshots", $"{sample}-{index}.svg");
        if (Environment.GetEnvironmentVariable("LAPWISE_ACCEPT") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, drawn);
        }
        Assert.Equal(File.ReadAllText(file), drawn);
    }
}
