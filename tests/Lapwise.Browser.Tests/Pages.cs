using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>What the tests do over and over on a page.</summary>
internal static class Pages
{
    /// <summary>A loaded machine may need long for the page's first start.</summary>
    public const float FirstStartMs = 90_000;
    private static readonly LocatorAssertionsToBeVisibleOptions Patient = new() { Timeout = FirstStartMs };

    public static readonly string[] Steps = ["measure", "materials", "conditions", "work", "supply"];

    public static async Task<IPage> Open(this IBrowserContext window, string address)
    {
        var page = await window.NewPageAsync();
        page.SetDefaultTimeout(30_000);
        await page.GotoAsync(address);
        await Expect(page.Locator(".jobs, .teach, h2, main:has(.main-action)").First).ToBeVisibleAsync(Patient);
        return page;
    }

    public static ILocator Field(this IPage page, string label) => page.GetByLabel(label, new() { Exact = true });

    public static ILocator Verdict(this IPage page) => page.Locator("section.verdict .answer");

    /// <summary>Waits until the order of work on show belongs to what is typed.</summary>
    public static Task Planned(this IPage page) =>
        Expect(page.Locator("[aria-busy=false] section.verdict")).ToBeVisibleAsync(Patient);

    /// <summary>Waits until nothing on the page is still being looked up, opened or planned.</summary>
    public static async Task Settled(this IPage page)
    {
        await Expect(page.Locator("h1").First).ToBeAttachedAsync(new() { Timeout = FirstStartMs });
        await Expect(page.Locator(".starting, .waiting, [aria-busy=true]")).ToHaveCountAsync(0, new() { Timeout = FirstStartMs });
    }

    public static Task Kept(this IPage page, string words) =>
        Expect(page.Locator(".kept")).ToContainTextAsync(words, new() { Timeout = 30_000 });

    /// <summary>What the page complains of from now on; that the server refused an answer is told by the browser, not the page.</summary>
    public static IReadOnlyCollection<string> Errors(this IPage page)
    {
        var errors = new List<string>();
        page.Console += (_, line) =>
        {
            if (line.Type == "error" && !line.Text.StartsWith("Failed to load resource", StringComparison.Ordinal)) errors.Add(line.Text);
        };
        page.PageError += (_, error) => errors.Add(error);
        return errors;
    }

    /// <summary>Waits for a promise to give true; waiting for a function takes the promise itself for a yes.</summary>
    public static async Task Until(this IPage page, string promise)
    {
        for (var waitedMs = 0; !await page.EvaluateAsync<bool>(promise); waitedMs += 100)
        {
            Assert.True(waitedMs < FirstStartMs, "never: " + promise);
            await page.WaitForTimeoutAsync(100);
        }
    }

    public static Task Go(this IPage page, string step) => page.Locator("nav.tape a", new() { HasText = step }).ClickAsync();
}
