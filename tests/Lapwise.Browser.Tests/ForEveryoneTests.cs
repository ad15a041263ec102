using System.Globalization;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>Phone and wide page, by eye, by ear and by keyboard; and quick to start.</summary>
public sealed class ForEveryoneTests(PublishedServer server)
{
    /// <summary>
    /// Bytes over the wire of the framework's own empty Blazor WebAssembly template, published and served the same way,
    /// until its first page stands; measured with the SDK this project names.
    /// </summary>
    private const long BareTemplateBytes = 2_384_992;
    private const long RoomForOurs = 1_500_000;

    public static TheoryData<int, int, string> Windows => new()
    {
        { 390, 844, "en-US" }, { 1440, 900, "en-US" }, { 390, 844, "es-MX" }, { 1440, 900, "es-MX" },
    };

    [Theory]
    [MemberData(nameof(Windows))]
    public async Task No_page_scrolls_sideways_and_an_automatic_check_finds_no_barrier(int width, int height, string locale)
    {
        await using var window = await server.Window(width, height, locale);
        var page = await window.Open("/");
        await Check(page, "list");
        foreach (var step in Pages.Steps)
        {
            await page.GotoAsync("/jobs/demo/" + step);
            await Expect(page.Locator("h2")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
            if (step == "work") await page.Planned();
            if (step == "supply") await Expect(page.Locator(".ticket").First).ToBeVisibleAsync();
            await Check(page, step);
        }

        async Task Check(IPage page, string name)
        {
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"{name} scrolls sideways at {width} px");
            var found = await page.RunAxe();
            Assert.True(found.Violations.Length == 0, $"{name}: " + string.Join("; ", found.Violations.Select(v => $"{v.Id}: {v.Help} ({string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))})")));
        }
    }

    [Fact]
    public async Task Every_button_field_and_link_of_the_path_is_large_enough_for_a_gloved_thumb()
    {
        await using var window = await server.Window(390, 844);
        foreach (var step in Pages.Steps)
        {
            var page = await window.Open("/jobs/demo/" + step);
            if (step == "work") await page.Planned();
            var small = await page.EvaluateAsync<string[]>("""
                [...document.querySelectorAll('button, input:not([type=radio]):not([type=checkbox]), select, a.stop, a.next, a.add, .choice-row label, .tick')]
                  .filter(e => e.offsetParent !== null || getComputedStyle(e).position === 'fixed')
                  .filter(e => e.getBoundingClientRect().height < 48)
                  .map(e => `${e.outerHTML.slice(0, 90)} ${e.getBoundingClientRect().height}`)
                """);
            Assert.Empty(small);
            await page.CloseAsync();
        }
    }

    [Fact]
    public async Task The_keyboard_alone_leads_from_the_list_to_a_typed_length()
    {
        await using var window = await server.Window();
        var page = await window.Open("/");
        await Reach("New job");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Add the first top" })).ToBeVisibleAsync();
        await Reach("Add the first top");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Field("Length, side A")).ToBeVisibleAsync();
        await Reach("Length, side A");
        await page.Keyboard.TypeAsync("6 ft");
        await Reach("Depth, side B");
        await page.Keyboard.TypeAsync("30 in");
        await Expect(page.Locator(".lw-drawing")).ToBeVisibleAsync();

        async Task Reach(string name)
        {
            for (var presses = 0; presses < 60; presses++)
            {
                await page.Keyboard.PressAsync("Tab");
                if (await page.EvaluateAsync<string>("(document.activeElement.labels?.[0] ?? document.activeElement).innerText ?? ''") is var text && text.Trim() == name) return;
            }
            Assert.Fail($"60 presses of Tab do not reach \"{name}\"");
        }
    }

    [Fact]
    public async Task The_page_is_usable_within_its_budget_of_bytes()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.NewPageAsync();
        var wire = await window.NewCDPSessionAsync(page);
        await wire.SendAsync("Network.enable");
        long bytes = 0;
        wire.Event("Network.loadingFinished").OnEvent += (_, e) => Interlocked.Add(ref bytes, (long)e!.Value.GetProperty("encodedDataLength").GetDouble());
        await page.GotoAsync("/jobs/demo/work");
        await page.Planned();

        var ours = Interlocked.Read(ref bytes);
        TestContext.Current.SendDiagnosticMessage("{0} bytes over the wire until the plan stands; {1} allowed", ours, BareTemplateBytes + RoomForOurs);
        // A page that arrived from a cache would prove nothing.
        Assert.InRange(ours, 1_000_000, BareTemplateBytes + RoomForOurs);
    }

    [Fact]
    public async Task The_plan_of_the_kitchen_is_there_soon_once_the_page_is_loaded()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        var best = double.PositiveInfinity;
        var sectionAge = page.Locator(".figure", new() { HasText = "Worst section age" }).Locator(".figure-value");
        await page.Locator("details", new() { HasText = "Pace" }).First.EvaluateAsync("d => d.open = true");
        foreach (var pace in new[] { "30 s", "40 s", "50 s", "60 s", "20 s" })
        {
            var before = await sectionAge.InnerTextAsync();
            await page.Field("Reload, each section").FillAsync(pace);
            await Expect(sectionAge).Not.ToHaveTextAsync(before, new() { Timeout = 30_000 });
            await page.Planned();
            best = Math.Min(best, double.Parse((await page.Locator("section.verdict").GetAttributeAsync("data-plan-ms"))!, CultureInfo.InvariantCulture));
        }
        TestContext.Current.SendDiagnosticMessage("plan of the kitchen in the browser: {0} ms", best);
        // Aim: 300 ms. The slack is for machines that do other things meanwhile.
        Assert.InRange(best, 0, 1500);
    }
}
