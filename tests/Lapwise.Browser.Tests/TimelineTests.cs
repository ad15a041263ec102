using System.Text.Json.Nodes;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>Everything the days of a job rest on can be entered on their page.</summary>
public sealed class TimelineTests(PublishedServer server)
{
    [Theory]
    [InlineData(390), InlineData(1440)]
    public async Task Who_takes_out_what_days_off_and_steps_of_ones_own_are_entered_beside_the_days(int width)
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(width, 900);
        var page = await window.Open($"/jobs/{id}/timeline");
        await page.Planned();

        await page.GetByText("Who takes out what, and how long it takes").ClickAsync();
        var trades = page.Locator("section[aria-labelledby=taken-out] > p");
        await Expect(trades).ToHaveTextAsync("sink and tap: licensed trade; cooktop: licensed trade.");
        await page.Field("Out and back by").First.SelectOptionAsync("Customer");
        await Expect(trades).ToHaveTextAsync("sink and tap: customer; cooktop: licensed trade.");
        await Expect(page.Locator(".site-steps li", new() { HasText = "(customer)" })).ToHaveCountAsync(2);
        await page.Keyboard.PressAsync("Control+z");
        await Expect(trades).ToHaveTextAsync("sink and tap: licensed trade; cooktop: licensed trade.");

        await page.GetByText("Days off, time zone, warmest hour").ClickAsync();
        await page.Field("One more day off").FillAsync("2026-12-08");
        await page.Field("One more day off").FillAsync("2026-12-09");
        await Expect(page.Locator("section[aria-label='Step by step'] h3", new() { HasText = "Tue Dec 8" })).ToHaveCountAsync(0);
        var zone = page.Field("Time zone of the site");
        await zone.FillAsync("local");
        await Expect(zone).ToHaveAttributeAsync("aria-invalid", "true");
        await zone.FillAsync("Europe/Madrid");
        await Expect(zone).ToHaveAttributeAsync("aria-invalid", "false");
        await Expect(zone).ToBeVisibleAsync();

        await page.Locator("label[for='bond-Yes']").ClickAsync();
        await Expect(page.Locator(".site-steps")).ToContainTextAsync(["Bond test"]);

        await page.GetByText("Change a step", new() { Exact = true }).ClickAsync();
        await page.Field("Step to change").SelectOptionAsync("Mask");
        await Expect(page.Field("Step to change")).ToHaveValueAsync("");
        await page.Field("Takes").FillAsync("95 min");
        await page.Field("Step to change").SelectOptionAsync("Tent");
        await page.GetByText("Left out: this job has no such step").Last.ClickAsync();
        await Expect(page.Locator("section[aria-labelledby=own-steps] > p")).ToHaveTextAsync("mask: 95 min; tent up: left out.");

        await page.Settled();
        Assert.Equal(0, await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth"));
        Assert.Empty((await page.RunAxe()).Violations.SelectMany(v => v.Nodes.Select(n => $"{v.Id}: {n.Html} {n.Any.FirstOrDefault()?.Message}")));
        await page.Kept("Saved");
        var days = JsonNode.Parse(await server.Http.GetStringAsync("/api/jobs/" + id, TestContext.Current.CancellationToken))!["timeline"]!;
        Assert.Equal(["2026-12-08", "2026-12-09"], days["daysOff"]!.AsArray().Select(d => (string?)d));
        Assert.Equal(("Europe/Madrid", true), ((string?)days["zone"], (bool?)days["bondTest"]));
        Assert.Equal([("mask", "95 min"), ("tent", null)], days["steps"]!.AsArray().Select(s => ((string?)s!["step"], (string?)s["time"])));
    }

    [Fact]
    public async Task A_new_job_is_in_the_time_zone_of_the_device()
    {
        await using var window = await server.Window(390, 844, zone: "America/Denver");
        var page = await window.Open("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "New job" }).First.ClickAsync(new() { Timeout = Pages.FirstStartMs });
        await page.GetByRole(AriaRole.Button, new() { Name = "Add the first top" }).WaitForAsync();
        await page.GotoAsync(page.Url.Replace("/measure", "/timeline", StringComparison.Ordinal));
        await Expect(page.Field("Time zone of the site")).ToHaveValueAsync("America/Denver", new() { Timeout = Pages.FirstStartMs });
    }
}
