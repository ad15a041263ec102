using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>The shelf: what came in, the least that is kept, what is low.</summary>
public sealed class ShelfTests(PublishedServer server)
{
    [Fact]
    public async Task A_batch_says_which_lot_it_is_measured_from()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/shelf");
        await Expect(page.Locator("#levels")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await page.Locator("#e-product").SelectOptionAsync("clear-fast-two-part");
        await page.Locator("#e-lot").FillAsync("Q-41");
        await page.Locator("#e-size").FillAsync("24 fl oz");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it in the log" }).ClickAsync();
        await Expect(page.Locator("#packs ~ ul")).ToContainTextAsync("Q-41", new() { Timeout = 30_000 });

        await page.GotoAsync("/jobs/demo/supply");
        await Expect(page.Locator(".ticket-lots").First).ToContainTextAsync("Q-41", new() { Timeout = Pages.FirstStartMs });
        Assert.Equal(0, await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth"));
    }

    [Fact]
    public async Task What_came_in_is_on_the_shelf_and_low_once_more_is_to_be_kept()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/shelf");
        await Expect(page.Locator("#levels")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        var name = (await page.Locator("#e-product option").Nth(1).InnerTextAsync()).Trim();
        await page.Locator("#e-product").SelectOptionAsync(new SelectOptionValue { Label = name });
        await page.Locator("#e-lot").FillAsync("K-7");
        await page.Locator("#e-size").FillAsync("24 fl oz");
        await page.Locator("#e-color").FillAsync("slate");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it in the log" }).ClickAsync();
        await Expect(page.Locator("#packs ~ ul")).ToContainTextAsync("K-7", new() { Timeout = 30_000 });
        var row = page.Locator("#levels ~ table tr", new() { HasText = "slate" });
        await Expect(row).ToContainTextAsync("24 fl oz");
        await Expect(row).ToContainTextAsync("✓");

        var least = page.GetByLabel($"{name} (slate)", new() { Exact = true });
        await least.FillAsync("a drop");
        await least.BlurAsync();
        await Expect(page.Locator(".field.is-wrong")).ToContainTextAsync("no number");
        await least.FillAsync("2 qt");
        await least.BlurAsync();
        await Expect(row).ToContainTextAsync("✗ low", new() { Timeout = 30_000 });
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));
        Assert.Equal(0, await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth"));

        await page.ReloadAsync();
        await Expect(least).ToHaveValueAsync("2 qt", new() { Timeout = Pages.FirstStartMs });
    }

    [Fact]
    public async Task What_to_buy_is_asked_for_again_where_the_server_did_not_answer()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.NewPageAsync();
        await page.RouteAsync("**/api/purchase?*", route => route.AbortAsync());
        await page.GotoAsync("/shelf");
        await Expect(page.GetByText("The server took too long, or does not answer.")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await Expect(page.Locator("#levels")).ToBeVisibleAsync();

        await page.UnrouteAsync("**/api/purchase?*");
        await page.GetByRole(AriaRole.Button, new() { Name = "Try again" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Shopping list as PDF" })).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await Expect(page.GetByText("The server took too long")).ToHaveCountAsync(0);
    }
}
