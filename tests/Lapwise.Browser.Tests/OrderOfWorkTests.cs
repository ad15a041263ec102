using System.Globalization;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>The order of work on the page: planned without freezing it, searched on, stopped.</summary>
public sealed partial class OrderOfWorkTests(PublishedServer server)
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
        Assert.InRange(frozen, 0, 100);
        Assert.InRange(planned, 0, 3000);
    }

    [Fact]
    public async Task A_page_whose_timers_the_browser_holds_back_plans_all_the_same()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        await page.Planned();
        await page.Locator("details", new() { HasText = "Pace" }).First.EvaluateAsync("d => d.open = true");
        // As browsers do with a page that nobody looks at: no timer sooner than a second.
        await page.EvaluateAsync("{ const soon = setTimeout; globalThis.setTimeout = (act, ms, ...more) => soon(act, Math.max(ms ?? 0, 1000), ...more); }");
        var before = await Worst(page).InnerTextAsync();
        await page.Field("Reload, each section").FillAsync("50 s");
        await Expect(Worst(page)).Not.ToHaveTextAsync(before, new() { Timeout = 20_000 });
    }

    [Fact]
    public async Task How_much_better_an_order_could_be_is_what_lies_between_its_worst_age_and_the_bound()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        await page.Planned();
        // The second batch of the demo has aged when it is rolled, so its film counts as older than its laps are.
        var proof = await page.Locator("p.proof").AllInnerTextsAsync();
        Assert.Equal(2, proof.Count);
        var (worst, bound) = (SpansIn(proof[0])[^2], SpansIn(proof[0])[^1]);
        // Each is rounded to whole seconds of its own.
        Assert.InRange(SpansIn(proof[1])[0], worst - bound - 1, worst - bound + 1);
    }

    private static double[] SpansIn(string sentence) =>
        [.. Spans().Matches(sentence).Select(m => (m.Groups["min"].Success ? 60 * double.Parse(m.Groups["min"].Value, CultureInfo.InvariantCulture) : 0) + (m.Groups["s"].Success ? double.Parse(m.Groups["s"].Value, CultureInfo.InvariantCulture) : 0))];

    [GeneratedRegex(@"(?<min>\d+)\smin(\s(?<s>\d+)\ss)?|(?<s>\d+)\ss", RegexOptions.ExplicitCapture, 30_000)]
    private static partial Regex Spans();

    [Fact]
    public async Task An_order_that_is_not_proven_can_be_searched_on_and_stopped_and_stays_as_it_was()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        await page.Planned();
        // Slow hands, so that the order no longer keeps its target.
        await page.Locator("details", new() { HasText = "Pace" }).First.EvaluateAsync("d => d.open = true");
        await page.Field("Reload, each section").FillAsync("150 s");
        await Expect(page.Verdict()).ToContainTextAsync("too late", new() { Timeout = 60_000 });
        var searchOn = page.GetByRole(AriaRole.Button, new() { Name = "Search on" });
        await Expect(searchOn).ToBeEnabledAsync(new() { Timeout = 60_000 });
        await page.Planned();
        var margin = page.Locator(".figure.is-main .figure-value");
        var before = await margin.InnerTextAsync();

        await searchOn.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByText("Searching for a better order")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop", Exact = true }).ClickAsync();
        await Expect(page.GetByText("Stopped.")).ToBeVisibleAsync();
        await Expect(searchOn).ToBeEnabledAsync();
        await Expect(margin).ToHaveTextAsync(before);
        await searchOn.ClickAsync();
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));
    }

    [Fact]
    public async Task The_plan_runs_against_the_clock_by_key_by_step_and_by_itself()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/jobs/demo/work");
        await page.Planned();
        var minutes = page.Locator(".minutes");
        await Expect(minutes.Locator(".lw-drawing").First).ToBeVisibleAsync();
        var hand = page.GetByRole(AriaRole.Slider);
        await hand.FocusAsync();
        await Expect(minutes.Locator(".minutes-words")).ToContainTextAsync("mixes batch A");
        await Expect(minutes.Locator(".lw-blank").First).ToBeAttachedAsync();
        await page.Keyboard.PressAsync("End");
        await Expect(minutes.Locator(".minutes-words")).ToContainTextAsync("nothing more in this coat");
        await Expect(minutes.Locator(".lw-blank")).ToHaveCountAsync(1);
        await page.Keyboard.PressAsync("Home");

        await minutes.GetByRole(AriaRole.Button, new() { Name = "Step on" }).ClickAsync();
        await Expect(minutes.Locator(".minutes-words")).ToContainTextAsync("wets section 1");
        await Expect(hand).ToHaveAttributeAsync("aria-valuetext", WetsTheFirst());
        // Its name stands at the top it works on.
        await Expect(minutes.Locator(".lw-drawing .lw-t-letter", new() { HasText = "Ines" })).ToHaveCountAsync(1);

        await minutes.GetByRole(AriaRole.Button, new() { Name = "Let it run" }).ClickAsync();
        await Expect(minutes.Locator(".lw-joined").Nth(3)).ToBeAttachedAsync(new() { Timeout = 30_000 });
        await minutes.GetByRole(AriaRole.Button, new() { Name = "Hold" }).ClickAsync();
        var held = await hand.InputValueAsync();
        await page.WaitForTimeoutAsync(700);
        Assert.Equal(held, await hand.InputValueAsync());
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));
    }

    [Fact]
    public async Task Whoever_asked_for_less_motion_sees_the_plan_run_step_by_step()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.NewPageAsync();
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        await page.GotoAsync("/jobs/demo/work");
        await page.Planned();
        var minutes = page.Locator(".minutes");
        await minutes.GetByRole(AriaRole.Button, new() { Name = "Let it run" }).ClickAsync();
        await page.WaitForTimeoutAsync(1000);
        await Expect(minutes.Locator(".minutes-words")).ToContainTextAsync("mixes batch A");
        await Expect(minutes.Locator(".minutes-words")).ToContainTextAsync("wets section 1");
    }

    [Theory]
    [InlineData(390, 844, true)]
    [InlineData(390, 844, false)]
    [InlineData(1440, 900, false)]
    public async Task A_line_that_is_dragged_stays_where_it_was_put_until_it_is_given_back(int width, int height, bool byThumb)
    {
        await using var window = await server.Window(width, height);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        await page.Planned();
        var top = page.Locator("section.drawn").Last;
        await Expect(top.Locator("polyline.grip")).ToHaveCountAsync(0);
        await top.Locator(".move-lines summary").ClickAsync();
        var place = top.Locator(".move-lines input").First;
        var before = await place.InputValueAsync();
        var grip = top.Locator("polyline.grip").First;
        await grip.ScrollIntoViewIfNeededAsync();
        var box = (await grip.BoundingBoxAsync())!;
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        if (byThumb) await DragByThumb(window, page, x, y, 9);
        else
        {
            await page.Mouse.MoveAsync(x, y);
            await page.Mouse.DownAsync();
            await page.Mouse.MoveAsync(x + 9, y + 9, new() { Steps = 3 });
            await page.Mouse.UpAsync();
        }
        await Expect(top.Locator(".own-lines")).ToBeVisibleAsync();
        await Expect(place).Not.ToHaveValueAsync(before, new() { Timeout = 60_000 });
        await page.Planned();
        await Expect(top.Locator(".own-lines")).ToContainTextAsync("Lap margin with them");
        await page.Kept("Saved");
        var moved = await place.InputValueAsync();
        await page.ReloadAsync();
        await page.Planned();
        await top.Locator(".move-lines summary").ClickAsync();
        await Expect(place).ToHaveValueAsync(moved);

        await top.GetByRole(AriaRole.Button, new() { Name = "Give the lines back" }).ClickAsync();
        await Expect(top.Locator(".own-lines")).ToHaveCountAsync(0);
        await Expect(place).ToHaveValueAsync(before, new() { Timeout = 60_000 });
    }

    [Fact]
    public async Task Lines_that_leave_a_section_too_large_say_so_beside_the_drawing()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        await page.Planned();
        var top = page.Locator("section.drawn").Last;
        await top.Locator(".move-lines summary").ClickAsync();
        await top.Locator(".move-lines input").First.FillAsync("3 in");
        await page.Keyboard.PressAsync("Enter");
        await Expect(top.Locator(".reason")).ToContainTextAsync("larger than", new() { Timeout = 60_000 });
    }

    [Fact]
    public async Task A_line_is_moved_by_the_keyboard_alone_and_what_cannot_be_read_is_told_beside_it()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        await page.Planned();
        var top = page.Locator("section.drawn").Last;
        await top.Locator(".move-lines summary").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        var place = top.Locator(".move-lines input").First;
        await place.FillAsync("far");
        await page.Keyboard.PressAsync("Tab");
        await Expect(top.Locator(".wrong")).ToBeVisibleAsync();
        await place.FillAsync("20 in");
        await page.Keyboard.PressAsync("Enter");
        await Expect(top.Locator(".own-lines")).ToBeVisibleAsync();
        await Expect(place).ToHaveValueAsync("1' 8\"", new() { Timeout = 60_000 });
        await page.Planned();
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));
    }

    [Fact]
    public async Task The_chance_of_a_line_and_what_would_make_it_work_are_worked_out_when_asked_for()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/work");
        await page.Planned();
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the chance of a line" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = "A line anywhere" })).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await page.Locator("details", new() { HasText = "Pace" }).First.EvaluateAsync("d => d.open = true");
        await page.Field("Reload, each section").FillAsync("150 s");
        await Expect(page.Verdict()).ToContainTextAsync("too late", new() { Timeout = 60_000 });
        await Expect(page.Locator(".parts caption")).ToContainTextAsync("What eats the margin");
        await Expect(page.Locator("ol.remedies li").First).ToBeVisibleAsync(new() { Timeout = 300_000 });
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"));
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));
    }

    private static async Task DragByThumb(IBrowserContext window, IPage page, float x, float y, float by)
    {
        var touch = await window.NewCDPSessionAsync(page);
        Task Touch(string kind, params object[] points) => touch.SendAsync("Input.dispatchTouchEvent", new() { ["type"] = kind, ["touchPoints"] = points });
        await Touch("touchStart", new { x, y });
        // Far enough, up and down, to scroll a page that is not held; then to where the line is wanted.
        var scrolled = await page.EvaluateAsync<double>("scrollY");
        foreach (var far in (float[])[20, 60, -60, 60, by])
        {
            await Touch("touchMove", new { x = x + by, y = y + far });
            await page.WaitForTimeoutAsync(50);
        }
        Assert.Equal(scrolled, await page.EvaluateAsync<double>("scrollY"));
        await Touch("touchEnd");
    }

    private static ILocator Worst(IPage page) => page.Locator(".figure", new() { HasText = "Worst section age" }).Locator(".figure-value");

    [GeneratedRegex("wets section 1", RegexOptions.None, 30_000)]
    private static partial Regex WetsTheFirst();
}
