using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>Every field says what it is for, wherever it stands.</summary>
public sealed class HelpTests(PublishedServer server)
{
    /// <summary>Every field of a page that no line describes, with everything opened; radios are described by their group.</summary>
    private const string Unexplained = """
        (() => {
          document.querySelectorAll("details").forEach(d => d.open = true);
          const lines = e => (e?.getAttribute("aria-describedby") ?? "").split(" ").filter(i => i.endsWith("-help")).map(i => document.getElementById(i)?.textContent.trim()).filter(t => t);
          return [...document.querySelectorAll("input, select, textarea")].filter(f => f.type !== "hidden" && !f.readOnly && lines(f).length + lines(f.closest("fieldset")).length === 0).map(f => f.id || f.outerHTML.slice(0, 90));
        })()
        """;

    private static readonly string[] Alone = ["/", "/days", "/shelf", "/products", "/products/new", "/phones", .. Lapwise.Core.Quick.QuickSum.All.Select(s => "/quick/" + s.Name)];

    [Theory]
    [InlineData("en-US"), InlineData("es-MX")]
    public async Task Every_field_of_every_page_has_a_line_of_why(string locale)
    {
        await using var window = await server.Window(390, 844, locale);
        var job = await server.CopyOfDemo();
        var page = await window.NewPageAsync();
        page.SetDefaultTimeout(30_000);
        string[] addresses = [.. Alone, .. Lapwise.Core.Phases.All.Where(p => p != Lapwise.Core.Phases.OnSite).Select(p => $"/jobs/{job}/{p.Route}")];
        var lacking = new List<string>();
        var fields = 0;
        foreach (var address in addresses)
        {
            await page.GotoAsync(address);
            await page.Settled();
            lacking.AddRange((await page.EvaluateAsync<string[]>(Unexplained)).Select(f => $"{address}: {f}"));
            fields += await page.Locator("input, select, textarea").CountAsync();
        }
        Assert.True(fields > 150, $"only {fields} fields were seen");
        Assert.True(lacking.Count == 0, "no line of why: " + string.Join("; ", lacking));
    }

    [Fact]
    public async Task What_is_only_blank_yet_is_asked_for_and_not_called_wrong()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "New job" }).First.ClickAsync(new() { Timeout = Pages.FirstStartMs });
        await page.GetByRole(AriaRole.Button, new() { Name = "Add the first top" }).ClickAsync();
        var length = page.Field("Length, side A");
        await Expect(length).ToHaveAttributeAsync("aria-required", "true");
        await Expect(page.Locator(".is-wrong")).ToHaveCountAsync(0);

        await length.FillAsync("abc");
        await Expect(length).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(page.Locator(".stop[aria-current='step']")).ToHaveClassAsync("stop is-wrong");
        await length.FillAsync("");
        await Expect(page.Locator(".is-wrong")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Every_shape_edge_and_part_of_a_top_is_explained_too()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        foreach (var shape in new[] { "U", "RoundedRectangle", "Circle", "Ellipse", "Walk" })
        {
            await page.Locator($"label[for='shape-0-{shape}']").ClickAsync();
            Assert.Empty(await page.EvaluateAsync<string[]>(Unexplained));
        }
        foreach (var kind in new[] { "Splash", "Waterfall", "Open" })
        {
            await page.Locator($"label[for='edge-0-A-{kind}']").ClickAsync();
            Assert.Empty(await page.EvaluateAsync<string[]>(Unexplained));
        }
        await page.GetByRole(AriaRole.Button, new() { Name = "+ Joint" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "+ Diagonal" }).ClickAsync();
        Assert.Empty(await page.EvaluateAsync<string[]>(Unexplained));
    }

    [Fact]
    public async Task The_lines_can_be_put_away_and_stay_away_on_this_device()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/conditions");
        var line = page.GetByText("Drying follows the air.", new() { Exact = true });
        Assert.True((await line.BoundingBoxAsync())!.Height > 10);
        await page.GetByRole(AriaRole.Button, new() { Name = "Hide the lines that say what a field is for" }).ClickAsync();
        Assert.True((await line.BoundingBoxAsync())!.Height < 2);
        await page.ReloadAsync();
        await Expect(page.Field("Air")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        Assert.True((await line.BoundingBoxAsync())!.Height < 2);
        // Those who listen are told all the same.
        await Expect(page.Field("Air")).ToHaveAccessibleDescriptionAsync("Drying follows the air.");
    }
}
