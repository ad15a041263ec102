using System.Xml.Linq;
using Microsoft.Playwright;

namespace Lapwise.Browser.Tests;

/// <summary>A drawing leaves the page as a file that stands alone.</summary>
public sealed class SaveDrawingTests(PublishedServer server)
{
    [Theory]
    [InlineData("measure", "as measured")]
    [InlineData("work", "Sink run")]
    [InlineData("timeline", "days")]
    public async Task A_drawing_is_saved_as_svg_that_a_reader_of_xml_takes(string phase, string name)
    {
        await using var window = await server.Window();
        var page = await window.Open("/jobs/demo/" + phase);
        await page.Settled();
        var save = page.GetByRole(AriaRole.Button, new() { Name = "Save the drawing (SVG)" }).Filter(new() { HasText = name }).First;
        var saved = await page.RunAndWaitForDownloadAsync(() => save.ClickAsync(), new() { Timeout = Pages.FirstStartMs });
        Assert.EndsWith(".svg", saved.SuggestedFilename, StringComparison.Ordinal);
        var svg = XDocument.Load(await saved.PathAsync()).Root!;
        Assert.Equal("svg", svg.Name.LocalName);
        Assert.NotEmpty(svg.Elements(svg.Name.Namespace + "path"));
    }
}
