using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>A shop with more jobs than can be looked over.</summary>
public sealed class ManyJobsTests(PublishedServer server)
{
    [Fact]
    public async Task A_job_among_many_is_found_by_words_of_its_name()
    {
        for (var i = 0; i < 13; i++) await server.CopyOfDemo(name: i == 7 ? "Ferry office, Quillmere" : null);
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/");
        var rows = page.Locator(".jobs li");
        await Expect(rows.Nth(12)).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await page.Field("Find a job by its name").FillAsync("quillmere ferry");
        await Expect(rows).ToHaveCountAsync(1);
        await Expect(rows).ToContainTextAsync("Ferry office, Quillmere");
        await Expect(page.GetByText("1 found.")).ToBeVisibleAsync();
        Assert.Equal(0, await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth"));
        await page.Field("Find a job by its name").FillAsync("nobody's");
        await Expect(page.GetByText("None has these words in its name.")).ToBeVisibleAsync();

        await page.GotoAsync("/days");
        await page.Field("Find a job by its name").FillAsync("quillmere");
        await Expect(page.Locator("input[id^=out-]")).ToHaveCountAsync(1, new() { Timeout = Pages.FirstStartMs });
    }
}
