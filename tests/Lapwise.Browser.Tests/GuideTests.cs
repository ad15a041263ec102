using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>A first job, guided: one next thing at a time, on the user's own measurements.</summary>
public sealed partial class GuideTests(PublishedServer server)
{
    /// <summary>What a stranger's tape, thermometers and meter say, by the name of the field.</summary>
    private static readonly Dictionary<string, string> Readings = new(StringComparer.Ordinal)
    {
        ["Whole back, side A"] = "132 in", ["Depth of the back run"] = "25 1/2 in", ["Right leg, side B"] = "96 in", ["Its depth, side C"] = "25 1/2 in",
        ["Air"] = "71 °F", ["Relative humidity"] = "48 %", ["Surface of the top"] = "70 °F", ["Material in its cans"] = "70 °F",
        ["Todo el fondo, lado A"] = "3350 mm", ["Fondo del tramo de atrás"] = "630 mm", ["Pata derecha, lado B"] = "2440 mm", ["Su fondo, lado C"] = "630 mm",
        ["Aire"] = "22 °C", ["Humedad relativa"] = "48 %", ["Superficie de la cubierta"] = "21 °C", ["Material en sus botes"] = "21 °C",
    };

    [Theory]
    [InlineData(390, 844, "en-US", "New job", "stands")]
    [InlineData(1440, 900, "es-MX", "Trabajo nuevo", "está en pie")]
    public async Task Whoever_follows_the_guide_alone_arrives_at_a_plan_that_stands(int width, int height, string locale, string begin, string stands)
    {
        await using var window = await server.Window(width, height, locale);
        var page = await window.Open("/");
        await page.GetByRole(AriaRole.Button, new() { Name = begin, Exact = true }).ClickAsync();
        var steps = new List<string>();
        for (var said = await Said(page); !said.Contains(stands, StringComparison.Ordinal); said = await Said(page))
        {
            steps.Add(said);
            Assert.True(steps.Count < 20, string.Join("\n", steps));
            Assert.Empty((await page.RunAxe()).Violations.Select(v => $"{said}: {v.Id}"));
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), said);
            await Do(page, said);
            await Expect(Status(page)).Not.ToHaveTextAsync(said, new() { Timeout = Pages.FirstStartMs });
        }

        await page.Planned();
        await Expect(page.Locator("section.verdict.is-good")).ToBeVisibleAsync();
        Assert.Equal(steps.Count, steps.Distinct(StringComparer.Ordinal).Count());
        // Nobody who has come through is guided again unasked.
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Button, new() { Name = begin, Exact = true }).ClickAsync();
        await Expect(page.Locator("#add-top")).ToBeVisibleAsync();
        await Expect(page.Locator("#guide")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task It_takes_nobodys_focus_and_is_put_away_and_called_back()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "New job", Exact = true }).ClickAsync();
        await page.Locator("#add-top").ClickAsync();
        var length = page.Field("Length, side A");
        await length.ClickAsync();
        await page.Keyboard.TypeAsync("72");
        await Expect(Status(page)).ToContainTextAsync("Depth, side B");
        await Expect(length).ToBeFocusedAsync();
        Assert.Equal("status", await Status(page).GetAttributeAsync("role"));

        await page.GetByRole(AriaRole.Button, new() { Name = "Put the guide away" }).ClickAsync();
        await Expect(page.Locator("#guide")).ToBeHiddenAsync();
        var turn = page.GetByRole(AriaRole.Button, new() { Name = "Guide", Exact = true });
        await Expect(turn).ToBeFocusedAsync();
        await page.ReloadAsync();
        await Expect(length).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await Expect(page.Locator("#guide")).ToBeHiddenAsync();

        await turn.PressAsync("Enter");
        await Expect(Status(page)).ToContainTextAsync("Depth, side B");
        await Expect(turn).ToBeFocusedAsync();
        await page.ReloadAsync();
        await Expect(Status(page)).ToContainTextAsync("Depth, side B", new() { Timeout = Pages.FirstStartMs });
    }

    [Fact]
    public async Task A_job_that_has_its_plan_is_not_guided_unasked()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Guide", Exact = true })).ToBeVisibleAsync();
        await page.Field("Depth of the back run").FillAsync("");
        await page.WaitForTimeoutAsync(1000);
        await Expect(page.Locator("#guide")).ToBeHiddenAsync();
    }

    /// <summary>Does what the guide says and no more: goes where it points, types what it asks for, else takes its way on.</summary>
    private static async Task Do(IPage page, string said)
    {
        // The kitchen is an L.
        if (said.Contains("Length, side A", StringComparison.Ordinal) || said.Contains("Largo, lado A", StringComparison.Ordinal)) await page.Locator("label[for='shape-0-L']").ClickAsync();
        else if (Quoted().Match(said) is { Success: true } match)
        {
            await page.Locator("#guide > button:not(.guide-away)").ClickAsync();
            var field = match.Groups["field"].Value;
            Assert.Equal(field, await page.EvaluateAsync<string>("document.activeElement.labels[0].innerText"));
            await page.Keyboard.TypeAsync(Readings[field]);
        }
        else if (await page.Locator("#guide > a").CountAsync() > 0)
        {
            if (await page.Locator("label[for='edge-0-D-Open']").CountAsync() > 0) foreach (var side in new[] { "D", "E" }) await page.Locator($"label[for='edge-0-{side}-Open']").ClickAsync();
            await page.Locator("#guide > a").ClickAsync();
        }
        else if (await page.Locator("#guide > button:not(.guide-away)").CountAsync() > 0)
        {
            await page.Locator("#guide > button:not(.guide-away)").ClickAsync();
            if (await page.EvaluateAsync<string>("document.activeElement.id") == "first-coat") await page.GetByRole(AriaRole.Button, new() { Name = "Fast clear" }).ClickAsync();
            else await page.Keyboard.PressAsync("Enter");
        }
    }

    private static ILocator Status(IPage page) => page.Locator("#guide > p");

    private static async Task<string> Said(IPage page)
    {
        await Expect(Status(page)).ToBeVisibleAsync(new() { Timeout = 30_000 });
        return await Status(page).InnerTextAsync();
    }

    [GeneratedRegex("[“«](?<field>.+?)[”»]", RegexOptions.ExplicitCapture, 30_000)]
    private static partial Regex Quoted();
}
