using System.Text.Json;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>A test board from its first strip to the job: what is seen in raking light becomes the open time.</summary>
public sealed class TestBoardTests(PublishedServer server)
{
    [Fact]
    public async Task What_the_lamp_shows_replaces_the_data_sheets_open_time()
    {
        var job = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{job}/conditions");
        var coat = page.Locator("section.verdict").First;
        await Expect(coat.Locator(".figure-note", new() { HasText = "from the data sheet" }).First).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await coat.GetByText("Find the open time with a test board").ClickAsync();
        var strips = coat.Locator(".strips fieldset");
        await Expect(strips).ToHaveCountAsync(8);

        // A line before a good lap tells nothing, and says so.
        await Seen(strips, 0, "a line shows");
        await Seen(strips, 1, "no line");
        await Expect(coat.Locator(".board .wrong")).ToContainTextAsync("must not cross");

        await Seen(strips, 0, "no line");
        await Seen(strips, 2, "a line shows");
        var (good, bad) = (await Minute(strips, 1), await Minute(strips, 2));
        await Expect(coat.Locator(".board .answer")).ToContainTextAsync($"between {good} and {bad}");
        await coat.GetByRole(AriaRole.Button, new() { Name = "Use it for this coat" }).ClickAsync();

        var openTime = coat.Locator(".figure.is-main");
        await Expect(openTime).ToContainTextAsync(good);
        await Expect(openTime).ToContainTextAsync("from your test board");
        await Expect(openTime.Locator(".basis")).ToContainTextAsync(bad);
        await page.Until($"fetch('/api/jobs/{job}').then(r => r.json()).then(j => Boolean(j.system[0].testBoardFirstBad))");
        var saved = JsonDocument.Parse(await server.Http.GetStringAsync("/api/jobs/" + job, TestContext.Current.CancellationToken)).RootElement.GetProperty("system")[0];
        Assert.Equal((good, bad), (saved.GetProperty("testBoardOpenTime").GetString(), saved.GetProperty("testBoardFirstBad").GetString()));
    }

    private static Task Seen(ILocator strips, int strip, string what) => strips.Nth(strip).Locator("label", new() { HasText = what }).ClickAsync();

    private static async Task<string> Minute(ILocator strips, int strip) => (await strips.Nth(strip).Locator("legend").InnerTextAsync())["Lapped at ".Length..].Replace('\u00A0', ' ');
}
