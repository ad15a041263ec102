using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>The main job in a real browser, against the published server.</summary>
public sealed class MainPathTests(PublishedServer server)
{
    [Fact]
    public async Task It_opens_with_the_sample_job_and_the_plan_is_there_without_a_button()
    {
        await using var window = await server.Window();
        var page = await window.Open("/");
        await page.Locator("a[href='jobs/demo']").ClickAsync();
        await page.Go("Order of work");
        await page.Planned();

        await Expect(page.Verdict()).ToContainTextAsync("in hand");
        await Expect(page.Locator(".drawn .lw-drawing")).ToHaveCountAsync(2);
        await Expect(page.GetByText("from the data sheet").First).ToBeVisibleAsync();
        await Expect(page.GetByText("Everything wetted first")).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Cautions" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Typing_a_length_changes_the_drawing_at_once_and_then_the_plan()
    {
        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await Expect(page.Locator(".lw-drawing")).ToContainTextAsync("A · 11' 0\"");
        await page.Field("Whole back, side A").FillAsync("12' 6\"");
        await Expect(page.Locator(".lw-drawing")).ToContainTextAsync("A · 12' 6\"");

        await page.Go("Materials");
        var need = page.Locator(".figure.is-main .figure-value").First;
        var before = await need.InnerTextAsync();
        await page.Go("Measure");
        await page.Field("Whole back, side A").FillAsync("15'");
        await page.Go("Materials");
        await Expect(need).Not.ToHaveTextAsync(before);
        await page.Go("Order of work");
        await page.Planned();
        await Expect(page.Locator(".lw-drawing").First).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData("sixty")]
    [InlineData("-5 in")]
    [InlineData("0")]
    [InlineData("900 m")]
    public async Task A_bad_length_is_told_beside_its_field_and_kept_as_typed_over_a_reload(string typed)
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await page.Field("Depth of the back run").FillAsync(typed);
        await Expect(Wrong(page)).ToBeVisibleAsync();
        await page.Kept("Saved");

        await page.ReloadAsync();
        await Expect(page.Field("Depth of the back run")).ToHaveValueAsync(typed, new() { Timeout = Pages.FirstStartMs });
        await Expect(Wrong(page)).ToBeVisibleAsync();
        await Expect(page.Field("Depth of the back run")).ToHaveAttributeAsync("aria-invalid", "true");

        await page.Go("Order of work");
        await page.Planned();
        await Expect(page.Locator("section.verdict.is-good")).ToHaveCountAsync(0);
        await Expect(page.Verdict()).ToContainTextAsync("Not yet");

        static ILocator Wrong(IPage page) => page.Locator(".field", new() { Has = page.Field("Depth of the back run") }).Locator(".wrong");
    }

    [Fact]
    public async Task A_room_that_is_too_damp_is_never_shown_as_one_to_coat_in()
    {
        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/conditions");
        await page.Field("Relative humidity").FillAsync("97 %");
        await Expect(page.Verdict().First).ToContainTextAsync("Not in this room");
        await page.Go("Order of work");
        await page.Planned();
        await Expect(page.Locator("section.verdict.is-good")).ToHaveCountAsync(0);
        await Expect(page.Locator(".reason.is-never, .reason.is-against").First).ToContainTextAsync("→");
    }

    [Fact]
    public async Task Language_and_units_switch_live_and_stay()
    {
        await using var window = await server.Window();
        var page = await window.Open("/jobs/demo/measure");
        await page.GetByRole(AriaRole.Button, new() { Name = "ES Español" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Medir" })).ToBeVisibleAsync();
        await Expect(page.Locator("html")).ToHaveAttributeAsync("lang", "es");
        await page.GetByRole(AriaRole.Button, new() { Name = "mm, métrico" }).ClickAsync();
        await Expect(page.Locator(".lw-drawing")).ToContainTextAsync("A · 3353 mm");
        // What was typed is not touched by it; how it was read stands beside it.
        await Expect(page.Locator(".field", new() { Has = page.Field("Todo el fondo, lado A") }).Locator(".hint")).ToHaveTextAsync("= 3353 mm");
        await Expect(page.Field("Todo el fondo, lado A")).ToHaveValueAsync("11' 0\"");

        await page.ReloadAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Medir" })).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task A_new_job_goes_from_nothing_to_a_plan(int width, int height)
    {
        await using var window = await server.Window(width, height);
        var page = await window.Open("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "New job", Exact = true }).ClickAsync();
        await page.Field("Name of the job").FillAsync("Desk by the window");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add the first top" }).ClickAsync();
        await page.Field("Length, side A").FillAsync("6 ft");
        await page.Field("Depth, side B").FillAsync("2' 6\"");
        await Expect(page.Locator(".lw-drawing")).ToBeVisibleAsync();

        await page.Locator("a.next").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Fast clear" }).ClickAsync();
        await page.Locator("a.next").ClickAsync();
        await page.Field("Air").FillAsync("71 °F");
        await page.Field("Relative humidity").FillAsync("48 %");
        await page.Field("Surface of the top").FillAsync("70 °F");
        await page.Field("Material in its cans").FillAsync("70 °F");
        await page.Locator("a.next").ClickAsync();
        await page.Planned();
        await Expect(page.Locator("section.verdict.is-good .answer")).ToContainTextAsync("in hand");
        await page.Locator("a.next").ClickAsync();
        await Expect(page.Locator(".ticket").First).ToBeVisibleAsync();
        await page.Kept("Saved");

        await page.GetByRole(AriaRole.Link, new() { Name = "Lapwise: list of jobs" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Desk by the window" }).First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_sheet_opens_from_the_plan_as_a_page_and_as_a_pdf()
    {
        await using var window = await server.Window();
        var page = await window.Open("/jobs/demo/work");
        await page.Planned();
        var print = await page.GetByRole(AriaRole.Link, new() { Name = "to print" }).GetAttributeAsync("href");
        var pdf = await page.GetByRole(AriaRole.Link, new() { Name = "as PDF" }).GetAttributeAsync("href");
        Assert.Contains("Larkhollow", await server.Http.GetStringAsync("/" + print, TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal("%PDF-"u8.ToArray(), (await server.Http.GetByteArrayAsync("/" + pdf, TestContext.Current.CancellationToken))[..5]);
    }

    [Fact]
    public async Task A_job_taken_out_of_the_list_can_be_put_back()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window();
        var page = await window.Open("/");
        var row = page.Locator("li", new() { Has = page.Locator($"a[href='jobs/{id}']") });
        await row.GetByRole(AriaRole.Button, new() { Name = "Take out" }).ClickAsync();
        await Expect(row).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it back" }).ClickAsync();
        await Expect(row).ToHaveCountAsync(1);
    }
}
