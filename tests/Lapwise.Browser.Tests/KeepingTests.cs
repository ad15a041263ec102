using System.Text.Json;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>Nothing typed is lost: not by a server that goes away, not by a second tab, not by a slip.</summary>
public sealed class KeepingTests(PublishedServer server)
{
    [Fact]
    public async Task What_is_typed_while_the_server_is_away_is_kept_and_saved_when_it_is_back()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{id}/measure");
        await server.StopServer();
        try
        {
            await page.Field("Whole back, side A").FillAsync("13' 3\"");
            await page.Kept("Kept on this device. The server does not answer");
            // The plan goes on without a server.
            await page.Go("Order of work");
            await page.Planned();
        }
        finally
        {
            await server.StartServer();
        }
        await page.Kept("Saved");
        var saved = JsonDocument.Parse(await server.Http.GetStringAsync("/api/jobs/" + id, TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal("13' 3\"", saved.GetProperty("tops")[0].GetProperty("outline").GetProperty("length").GetString());
    }

    [Fact]
    public async Task What_is_typed_just_before_a_reload_is_still_there_after_it()
    {
        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await page.Field("Whole back, side A").FillAsync("14' 1\"");
        await page.ReloadAsync();
        await Expect(page.Field("Whole back, side A")).ToHaveValueAsync("14' 1\"", new() { Timeout = Pages.FirstStartMs });
        await page.Kept("Saved");
    }

    [Fact]
    public async Task A_shape_tried_out_and_changed_back_loses_neither_sizes_nor_edges()
    {
        var id = await server.CopyOfDemo();
        var before = await Top();
        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{id}/measure");
        foreach (var shape in new[] { "Circle", "Rectangle", "L" })
        {
            await page.Locator($"label[for='shape-0-{shape}']").ClickAsync();
            await page.Kept("Saved");
        }
        Assert.Equal(before, await Top());

        async Task<string> Top() =>
            JsonDocument.Parse(await server.Http.GetStringAsync("/api/jobs/" + id, TestContext.Current.CancellationToken)).RootElement.GetProperty("tops")[0].GetRawText();
    }

    [Theory]
    [InlineData("Go on with what is here", "mine")]
    [InlineData("Go on with the saved one", "theirs")]
    public async Task Two_tabs_never_overwrite_each_other_and_both_versions_stay(string choice, string expected)
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window();
        var first = await window.Open($"/jobs/{id}/measure");
        await using var otherWindow = await server.Window();
        var second = await otherWindow.Open($"/jobs/{id}/measure");

        await first.Field("Name of the job").FillAsync($"theirs {id}");
        await first.Kept("Saved");
        await second.Field("Name of the job").FillAsync($"mine {id}");
        await Expect(second.GetByRole(AriaRole.Alert)).ToContainTextAsync("Nothing is lost");
        await second.GetByRole(AriaRole.Button, new() { Name = choice }).ClickAsync();
        await second.Kept("Saved");
        await Expect(second.Field("Name of the job")).ToHaveValueAsync($"{expected} {id}");

        var list = await server.Http.GetStringAsync("/api/jobs", TestContext.Current.CancellationToken);
        Assert.Contains($"\"mine {id}", list, StringComparison.Ordinal);
        Assert.Contains($"\"theirs {id}", list, StringComparison.Ordinal);
    }
}
