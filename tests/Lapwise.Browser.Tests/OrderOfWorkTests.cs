using System.Globalization;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>The order of work on the page: planned without freezing it, searched on, stopped.</summary>
public sealed class OrderOfWorkTests(PublishedServer server)
{
    [Fact]
    public async Task The_page_is_never_frozen_while_the_kitchen_is_planned()
    {
        await using var window = await server.Window(390, 844);
        await window.AddInitScriptAsync("""
            globalThis.frozenMs = [];
            new PerformanceObserver(seen => seen.getEntries().forEach(e => frozenMs.push(Math.round(e.duration)))).observe({ type: "longtask" });
            """);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        await page.Planned();
        await page.Locator("details", new() { HasText = "Pace" }).First.EvaluateAsync("d => d.open = true");
        var (frozen, planned) = (double.PositiveInfinity, double.PositiveInfinity);
        foreach (var pace in new[] { "30 s", "40 s", "50 s", "60 s", "20 s" })
        {
            var before = await Worst(page).InnerTextAsync();
            await page.EvaluateAsync("frozenMs.length = 0");
            await page.Field("Reload, each section").FillAsync(pace);
            await Expect(Worst(page)).Not.ToHaveTextAsync(before, new() { Timeout = 60_000 });
            await page.Planned();
            await page.WaitForTimeoutAsync(100);
            var tasks = await page.EvaluateAsync<double[]>("frozenMs");
            TestContext.Current.SendDiagnosticMessage("tasks over 50 ms while planning: {0}", string.Join(", ", tasks));
            frozen = Math.Min(frozen, tasks.DefaultIfEmpty(0).Max());
            planned = Math.Min(planned, double.Parse((await page.Locator("section.verdict").GetAttributeAsync("data-plan-ms"))!, CultureInfo.InvariantCulture));
        }
        TestContext.Current.SendDiagnosticMessage("longest task {0} ms, plan after {1} ms", frozen, planned);
        // Aims: 50 ms and 300 ms. The slack is for machines that do other things meanwhile; the best of five counts.
        Assert.InRange(frozen, 0, 200);
        Assert.InRange(planned, 0, 3000);
    }

    [Fact]
    public async Task An_order_that_is_not_proven_can_be_searched_on_and_stopped_and_stays_as_it_was()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        await page.Planned();
        // Slow hands, so that the order no longer keeps its target.
        await page.Locator("details", new() { HasText = "Pace" }).First.EvaluateAsync("d => d.open = true");
        await page.Field("Reload, each section").FillAsync("150 s");
        var searchOn = page.GetByRole(AriaRole.Button, new() { Name = "Search on" });
        await Expect(searchOn).ToBeEnabledAsync(new() { Timeout = 60_000 });
        await page.Planned();
        var margin = page.Locator(".figure.is-main .figure-value");
        var before = await margin.InnerTextAsync();

        await searchOn.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByText("Searching for a better order")).ToBeVisibleAsync();
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop", Exact = true }).ClickAsync();
        await Expect(page.GetByText("Stopped.")).ToBeVisibleAsync();
        await Expect(searchOn).ToBeEnabledAsync();
        await Expect(margin).ToHaveTextAsync(before);
    }

    private static ILocator Worst(IPage page) => page.Locator(".figure", new() { HasText = "Worst section age" }).Locator(".figure-value");
}
