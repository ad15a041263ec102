using System.Text.Json;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>Measuring by thumb: large keys, the drawing, back and forth.</summary>
public sealed class MeasuringTests(PublishedServer server)
{
    [Fact]
    public async Task Every_step_is_undone_and_redone_by_button_and_by_key_and_typing_in_one_field_is_one_step()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        var (undo, redo) = (page.GetByRole(AriaRole.Button, new() { Name = "Undo" }), page.GetByRole(AriaRole.Button, new() { Name = "Redo" }));
        var length = page.Field("Whole back, side A");
        var before = await length.InputValueAsync();
        await Expect(undo).ToBeDisabledAsync();

        await length.FillAsync("");
        await length.PressSequentiallyAsync("12' 6\"");
        await page.Locator("label[for='edge-0-F-Open']").ClickAsync();
        await page.Field("Depth of the back run").FillAsync("26 in");

        await undo.ClickAsync();
        await Expect(page.Field("Depth of the back run")).ToHaveValueAsync("25 1/2 in");
        await undo.ClickAsync();
        await Expect(page.Locator("#edge-0-F-Open")).Not.ToBeCheckedAsync();
        await Expect(length).ToHaveValueAsync("12' 6\"");
        await length.FocusAsync();
        await page.Keyboard.PressAsync("Control+z");
        await Expect(length).ToHaveValueAsync(before);
        await Expect(undo).ToBeDisabledAsync();

        await page.Keyboard.PressAsync("Control+Shift+z");
        await Expect(length).ToHaveValueAsync("12' 6\"");
        await page.Keyboard.PressAsync("Control+y");
        await Expect(page.Locator("#edge-0-F-Open")).ToBeCheckedAsync();
        await redo.ClickAsync();
        await Expect(page.Field("Depth of the back run")).ToHaveValueAsync("26 in");
        await Expect(redo).ToBeDisabledAsync();
        await page.Kept("Saved");
    }

    [Fact]
    public async Task A_hundred_steps_are_taken_back()
    {
        await using var window = await server.Window();
        var id = await server.CopyOfDemo();
        var before = await Stored(id);
        var page = await window.Open($"/jobs/{id}/measure");
        for (var i = 0; i < 50; i++)
        {
            await page.Locator("label[for='edge-0-F-Open']").ClickAsync();
            await page.Locator("label[for='edge-0-F-Wall']").ClickAsync();
        }
        await page.Field("Whole back, side A").FillAsync("9 ft");
        for (var i = 0; i < 101; i++) await page.Keyboard.PressAsync("Control+z");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeDisabledAsync();
        await page.Kept("Saved");
        Assert.Equal(before, await Stored(id));
    }

    [Fact]
    public async Task Steps_are_taken_back_after_a_reload_and_in_the_next_tab_too()
    {
        await using var window = await server.Window(390, 844);
        var address = $"/jobs/{await server.CopyOfDemo()}/measure";
        var page = await window.Open(address);
        await page.Field("Thickness").FillAsync("2 in");
        await page.Locator("label[for='edge-0-F-Open']").ClickAsync();
        await page.Field("Thickness").FillAsync("3 in");
        await page.Keyboard.PressAsync("Control+z");
        await Expect(page.Field("Thickness")).ToHaveValueAsync("2 in");
        await page.Kept("Saved");
        await page.ReloadAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Redo" })).ToBeEnabledAsync(new() { Timeout = Pages.FirstStartMs });
        await page.GetByRole(AriaRole.Button, new() { Name = "Redo" }).ClickAsync();
        await Expect(page.Field("Thickness")).ToHaveValueAsync("3 in");
        await page.Kept("Saved");
        await page.CloseAsync();

        page = await window.Open(address);
        var undo = page.GetByRole(AriaRole.Button, new() { Name = "Undo" });
        await Expect(undo).ToBeEnabledAsync(new() { Timeout = Pages.FirstStartMs });
        await undo.ClickAsync();
        await undo.ClickAsync();
        await Expect(page.Locator("#edge-0-F-Open")).Not.ToBeCheckedAsync();
        await undo.ClickAsync();
        await Expect(page.Field("Thickness")).ToHaveValueAsync("1 1/2 in");
        await Expect(undo).ToBeDisabledAsync();
    }

    /// <summary>What is gone is gone from the page, whichever way it went; nothing that showed it may ask for it again.</summary>
    [Fact]
    public async Task A_top_or_a_cutout_that_is_gone_leaves_nothing_behind_that_looks_for_it()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{id}/measure");
        var errors = page.Errors();
        var (tops, cutouts, undo) = (page.Locator(".tab:not(.is-add)"), page.Locator(".cutout"), Button("Undo"));
        await Expect(tops).ToHaveCountAsync(2);
        await Expect(cutouts).ToHaveCountAsync(1);

        await Button("+ Cutout").ClickAsync();
        await Expect(cutouts).ToHaveCountAsync(2);
        await undo.ClickAsync();
        await Expect(cutouts).ToHaveCountAsync(1);
        await Button("Redo").ClickAsync();
        await Expect(cutouts).ToHaveCountAsync(2);
        await Button("Take out \"Cutout 2\"").ClickAsync();
        await Expect(cutouts).ToHaveCountAsync(1);
        await cutouts.GetByRole(AriaRole.Button).ClickAsync();
        await Expect(cutouts).ToHaveCountAsync(0);

        await Button("+ Top").ClickAsync();
        await Expect(tops).ToHaveCountAsync(3);
        await page.Locator("label[for='shape-2-Walk']").ClickAsync();
        await Expect(page.Field("Side D")).ToBeVisibleAsync();
        await undo.ClickAsync();
        await undo.ClickAsync();
        await Expect(tops).ToHaveCountAsync(2);

        // Another device takes out the top that is on show here.
        await tops.Nth(1).ClickAsync();
        await page.Kept("Saved");
        await using var elsewhere = await server.Window(390, 844);
        var other = await elsewhere.Open($"/jobs/{id}/measure");
        var errorsThere = other.Errors();
        await other.Locator(".tab:not(.is-add)").Nth(1).ClickAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "Take out the top" }).ClickAsync();
        await other.Kept("Saved");
        await page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))");
        await Expect(tops).ToHaveCountAsync(1);

        await Button("Take out the top").ClickAsync();
        await Expect(page.Locator("#add-top")).ToBeVisibleAsync();
        await page.Locator("#add-top").ClickAsync();
        await page.Field("Length, side A").FillAsync("8 ft");
        await undo.ClickAsync();
        await undo.ClickAsync();
        await Expect(page.Locator("#add-top")).ToBeVisibleAsync();
        await Expect(page.Locator("#blazor-error-ui")).ToBeHiddenAsync();
        Assert.Empty(errors);
        Assert.Empty(errorsThere);

        ILocator Button(string name) => page.GetByRole(AriaRole.Button, new() { Name = name });
    }

    [Fact]
    public async Task Lengths_are_typed_on_large_keys_and_the_drawing_follows()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await page.GetByLabel("Large keys for lengths").CheckAsync();
        var length = page.Field("Whole back, side A");
        await length.ClickAsync();
        await length.SelectTextAsync();
        await Expect(length).ToHaveAttributeAsync("inputmode", "none");
        foreach (var key in new[] { "1", "2", "ft ′", "6", "1/2", "in ″" }) await Key(page, key).ClickAsync();
        await Expect(length).ToHaveValueAsync("12' 6 1/2\"");
        await Expect(length).ToBeFocusedAsync();
        await Expect(page.Locator(".lw-drawing")).ToContainTextAsync("A · 12' 6 1/2\"");
        await Key(page, "⌫").ClickAsync();
        await Expect(length).ToHaveValueAsync("12' 6 1/2");

        var small = await page.EvaluateAsync<string[]>("[...document.querySelectorAll('.pad button')].map(b => [b.innerText, b.getBoundingClientRect()]).filter(([, r]) => r.width < 64 || r.height < 64 || r.left < 0 || r.right > innerWidth).map(([t]) => t)");
        Assert.Empty(small);
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));

        await Key(page, "Next →").ClickAsync();
        await Expect(page.Field("Depth of the back run")).ToBeFocusedAsync();
        // The system's keyboard still works beside it.
        await page.Keyboard.TypeAsync("27 in");
        await Expect(page.Field("Depth of the back run")).ToHaveValueAsync("27 in");
        await page.Field("Name of the top").ClickAsync();
        await Expect(page.Locator(".pad")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task The_drawing_grows_with_each_side_and_stays_while_a_field_cannot_be_read()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "New job", Exact = true }).ClickAsync();
        await page.Locator("#add-top").ClickAsync();
        await page.Locator("label[for='shape-0-Walk']").ClickAsync();
        var (drawing, stamp) = (page.Locator(".bench .lw-drawing"), page.Locator(".stamp"));
        await Expect(page.Locator(".drawing.is-empty")).ToContainTextAsync("begins with the first length");
        await page.Field("Side A").FillAsync("96 in");
        await Expect(drawing).ToContainTextAsync("A · 8' 0\"");
        await page.Field("Side B").FillAsync("25 in");
        await Expect(drawing).ToContainTextAsync("So far: sides A, B.");
        await Expect(drawing).ToContainTextAsync("still open");
        await page.Field("Side C").FillAsync("94 in");
        await page.Field("Side D").FillAsync("25 in");
        // The labels are the tape's; what they are drawn as stands with the check.
        await Expect(drawing).ToContainTextAsync("A ? · 8' 0\"");
        await Expect(drawing).ToContainTextAsync("Drawn so that it closes: A 7'");
        await Expect(stamp).ToHaveCountAsync(0);

        await page.Field("Side B").FillAsync("banana");
        await Expect(stamp).ToBeVisibleAsync();
        await Expect(drawing).ToContainTextAsync("B · 2' 1\"");
        await page.Field("Side B").FillAsync("25 in");
        await Expect(stamp).ToHaveCountAsync(0);
        // Sides that come to no outline are shown as they were typed.
        await page.Field("Side C").FillAsync("50 in");
        await Expect(drawing).ToContainTextAsync("So far: sides A, B, C, D.");
        await page.Locator("label[for='shape-0-L']").ClickAsync();
        await page.Field("Whole back, side A").FillAsync("11 ft");
        await Expect(drawing).ToContainTextAsync("So far: side A.");
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));
    }

    [Fact]
    public async Task The_large_keys_leave_the_field_in_sight_and_are_put_away_by_a_key_of_their_own_and_by_a_tap_beside()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await page.GetByLabel("Large keys for lengths").CheckAsync();
        var (pad, depth) = (page.Locator(".pad"), page.Field("Depth of the back run"));
        // As high as phones of 568 to 844 px leave it to the page, then on their side.
        foreach (var (width, height) in new[] { (390, 844), (390, 740), (390, 664), (390, 568), (844, 390), (568, 320) })
        {
            await page.SetViewportSizeAsync(width, height);
            await page.Field("Name of the top").ClickAsync();
            await Expect(pad).ToBeHiddenAsync();
            await depth.ClickAsync();
            await Expect(pad).ToBeVisibleAsync();
            foreach (var (field, label) in new[] { (depth, "Depth of the back run"), (page.Field("Right leg, side B"), "Right leg, side B") })
            {
                await Expect(field).ToBeFocusedAsync();
                Assert.True(await page.EvaluateAsync<bool>("""
                    label => {
                      const field = document.activeElement, words = [...document.querySelectorAll('label')].find(l => l.textContent === label);
                      const isSeen = (what, { left, top, width, height } = what.getBoundingClientRect()) => what.contains(document.elementFromPoint(left + 20, top + height / 2));
                      return isSeen(field) && isSeen(words);
                    }
                    """, label), $"{label} is covered at {width} × {height} px");
                await Key(page, "Next →").ClickAsync();
            }
        }

        await Key(page, "Done").ClickAsync();
        await Expect(pad).ToBeHiddenAsync();
        await Expect(page.Locator(":focus")).ToHaveCountAsync(0);
        await depth.ClickAsync();
        await Expect(pad).ToBeVisibleAsync();
        await page.GetByText("Open: coated, and you can stand there.").ClickAsync();
        await Expect(pad).ToBeHiddenAsync();
        await depth.ClickAsync();
        await page.Keyboard.PressAsync("Escape");
        await Expect(pad).ToBeHiddenAsync();
        await depth.ClickAsync();
        await Expect(pad).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_field_stays_where_it_is_while_what_is_wrong_appears_and_goes_above_it()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await page.Settled();
        var (thickness, faults) = (page.Locator("#at-tops-0--thickness"), page.GetByRole(AriaRole.Group, new() { Name = "To put right" }));
        await thickness.FocusAsync();
        await page.Keyboard.PressAsync("End");
        var before = (await thickness.BoundingBoxAsync())!.Y;

        await page.Keyboard.TypeAsync("x");
        await Expect(faults).ToBeVisibleAsync();
        Assert.InRange((await faults.BoundingBoxAsync())!.Y, float.MinValue, before);
        Assert.Equal(before, (await thickness.BoundingBoxAsync())!.Y, 1.5f);
        await page.Keyboard.PressAsync("Backspace");
        await Expect(faults).ToHaveCountAsync(0);
        Assert.Equal(before, (await thickness.BoundingBoxAsync())!.Y, 1.5f);
    }

    [Fact]
    public async Task Metric_keys_are_of_millimetres()
    {
        await using var window = await server.Window(390, 844, "es-MX");
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await page.Locator("label[for='bare-Metric']").ClickAsync();
        await page.GetByLabel("Teclas grandes").CheckAsync();
        var length = page.Field("Todo el fondo, lado A");
        await length.ClickAsync();
        await length.SelectTextAsync();
        foreach (var key in new[] { "3", "5", "1", "0", "mm" }) await Key(page, key).ClickAsync();
        await Expect(length).ToHaveValueAsync("3510 mm");
        await Expect(page.Locator(".is-fraction")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_side_tapped_in_the_drawing_leads_to_what_is_said_of_it()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        var side = page.Locator("polyline[data-side='F']");
        var box = (await side.BoundingBoxAsync())!;
        await page.Mouse.ClickAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await Expect(page.Locator("#edge-0-F-Wall")).ToBeFocusedAsync();
        await page.Locator("label[for='edge-0-F-Waterfall']").ClickAsync();
        await Expect(page.Locator(".lw-drawing").First).ToContainTextAsync("waterfall");
    }

    [Fact]
    public async Task A_corner_is_dragged_by_a_finger_by_a_mouse_and_by_keys_and_the_lengths_follow()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        var (length, leg, depth) = (page.Field("Whole back, side A"), page.Field("Its depth, side C"), page.Field("Right leg, side B"));
        Assert.Equal(("11' 0\"", "25 1/2 in", "8' 0\""), (await length.InputValueAsync(), await leg.InputValueAsync(), await depth.InputValueAsync()));
        await page.GetByRole(AriaRole.Button, new() { Name = "Move corners" }).ClickAsync();
        var corner = page.GetByRole(AriaRole.Button, new() { Name = "Corner C", Exact = true });
        await corner.ScrollIntoViewIfNeededAsync();
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));

        // A finger, along the back run: the sides that meet there follow; the page does not scroll under it.
        var (x, y) = await Middle(corner);
        var scrolled = await page.EvaluateAsync<double>("scrollY");
        var wire = await window.NewCDPSessionAsync(page);
        await Touch("touchStart", x, y);
        for (var i = 1; i <= 5; i++) await Touch("touchMove", x - (6 * i), y);
        await Expect(page.Locator("#corner-hint")).ToContainTextAsync("Corner C: B 8' 0\" · C ");
        await Expect(length).ToHaveValueAsync("11' 0\"");
        Assert.Equal(scrolled, await page.EvaluateAsync<double>("scrollY"));
        await wire.SendAsync("Input.dispatchTouchEvent", new() { ["type"] = "touchEnd", ["touchPoints"] = Array.Empty<object>() });
        await Expect(length).Not.ToHaveValueAsync("11' 0\"");
        Assert.Matches("""^9' \d+( [13]/[24])?"$""", await length.InputValueAsync());
        Assert.Matches("""^1\d( [13]/[24])?"$""", await leg.InputValueAsync());
        await Expect(depth).ToHaveValueAsync("8' 0\"");
        await Expect(page.Locator(".lw-drawing").First).ToContainTextAsync("A · " + await length.InputValueAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(length).ToHaveValueAsync("11' 0\"");
        await Expect(leg).ToHaveValueAsync("25 1/2 in");
        // The drawing follows in a turn of its own.
        await Expect(page.Locator(".lw-drawing").First).ToContainTextAsync("A · 11' 0\"");

        // A mouse, square to it; Escape leaves the corner where it was.
        (x, y) = await Middle(corner);
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x, y - 40, new() { Steps = 4 });
        await Expect(page.Locator("#corner-hint")).Not.ToContainTextAsync("B 8' 0\"");
        await page.Keyboard.PressAsync("Escape");
        await page.Mouse.UpAsync();
        await Expect(depth).ToHaveValueAsync("8' 0\"");
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x, y - 40, new() { Steps = 4 });
        await page.Mouse.UpAsync();
        await Expect(depth).Not.ToHaveValueAsync("8' 0\"");
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(depth).ToHaveValueAsync("8' 0\"");
        await Expect(page.Locator(".lw-drawing").First).ToContainTextAsync("B · 8' 0\"");

        // Keys: a quarter of an inch a press, a sixteenth with Shift; the presses are one step to take back.
        await corner.FocusAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(depth).ToHaveValueAsync("8' 1/4\"");
        await page.Keyboard.PressAsync("Shift+ArrowDown");
        await Expect(depth).ToHaveValueAsync("8' 5/16\"");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(length).ToHaveValueAsync("11' 1/4\"");
        // A key held down presses faster than the page is drawn: each press goes on from the one before.
        await corner.EvaluateAsync("c => { for (let i = 0; i < 4; i++) c.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true, cancelable: true })); }");
        await Expect(length).ToHaveValueAsync("11' 1 1/4\"");
        await Expect(corner).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Control+z");
        await Expect(length).ToHaveValueAsync("11' 0\"");
        await Expect(depth).ToHaveValueAsync("8' 0\"");

        Task Touch(string type, double atX, double atY) => wire.SendAsync("Input.dispatchTouchEvent", new() { ["type"] = type, ["touchPoints"] = new[] { new Dictionary<string, object> { ["x"] = atX, ["y"] = atY } } });

        static async Task<(float X, float Y)> Middle(ILocator what)
        {
            var box = (await what.BoundingBoxAsync())!;
            return (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        }
    }

    /// <summary>
    /// Nothing on the device, an L-shaped counter of four tape lengths, a clear, a room: every tap and key counted.
    /// What is not typed are the defaults named below.
    /// </summary>
    [Fact]
    public async Task A_stranger_is_at_a_first_plan_of_an_L_shaped_kitchen_within_sixty_taps_and_keys()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/");
        var count = 0;
        await Tap(page.GetByRole(AriaRole.Button, new() { Name = "New job", Exact = true }));
        await Tap(page.GetByRole(AriaRole.Button, new() { Name = "Add the first top" }));
        await Tap(page.Locator("label[for='shape-0-L']"));
        await Tap(page.Field("Whole back, side A"));
        await Type("132");
        await Tap(page.Field("Depth of the back run"));
        await Type("25 1/2");
        await Tap(page.Field("Right leg, side B"));
        await Type("96");
        await Tap(page.Field("Its depth, side C"));
        await Type("25 1/2");
        await Tap(page.Locator("label[for='edge-0-D-Open']"));
        await Tap(page.Locator("label[for='edge-0-E-Open']"));
        await Tap(page.Locator("a.next"));
        await Tap(page.GetByRole(AriaRole.Button, new() { Name = "Fast clear" }));
        await Tap(page.Locator("a.next"));
        foreach (var (field, typed) in new[] { ("Air", "71"), ("Relative humidity", "48"), ("Surface of the top", "70"), ("Material in its cans", "70") })
        {
            await Tap(page.Field(field));
            await Type(typed);
        }
        await Tap(page.Locator("a.next"));
        await page.Planned();
        TestContext.Current.SendDiagnosticMessage("from nothing to a plan: {0} taps and keys", count);
        Assert.InRange(count, 1, 60);
        await Expect(page.Locator("section.verdict.is-good .answer")).ToContainTextAsync("in hand");

        // The defaults: walls behind and beside, an open front with an eased edge, a top of 1 1/2 in, one pair of hands at
        // the usual pace. Nothing else stands in the job that was not typed.
        await page.Kept("Saved");
        var job = JsonDocument.Parse(await server.Http.GetStringAsync($"/api/jobs/{new Uri(page.Url).Segments[2].TrimEnd('/')}", TestContext.Current.CancellationToken)).RootElement;
        var top = Assert.Single(job.GetProperty("tops").EnumerateArray());
        Assert.Equal("1 1/2 in", top.GetProperty("thickness").GetString());
        Assert.Equal("A wall, B wall, C open, D open, E open, F wall", string.Join(", ", top.GetProperty("edges").EnumerateObject().Select(e => $"{e.Name} {(e.Value.TryGetProperty("kind", out var kind) ? kind.GetString() : "wall")}")));
        Assert.All(new[] { "C", "D", "E" }, side => Assert.Equal("""{"shape":"eased","radius":"1/8 in"}""", JsonSerializer.Serialize(top.GetProperty("edges").GetProperty(side).GetProperty("profile"))));
        Assert.Equal("Me", Assert.Single(job.GetProperty("crew").EnumerateArray()).GetProperty("name").GetString());
        Assert.All(new[] { "aims", "tools" }, member => Assert.False(job.TryGetProperty(member, out var held) && held.ValueKind != JsonValueKind.Null));

        async Task Tap(ILocator what)
        {
            count++;
            await what.ClickAsync();
        }

        async Task Type(string text)
        {
            count += text.Length;
            await page.Keyboard.TypeAsync(text);
        }
    }

    private static ILocator Key(IPage page, string shows) => page.Locator(".pad").GetByText(shows, new() { Exact = true });

    private async Task<string> Stored(string id) =>
        JsonDocument.Parse(await server.Http.GetStringAsync("/api/jobs/" + id, TestContext.Current.CancellationToken)).RootElement.GetProperty("tops").GetRawText();
}
