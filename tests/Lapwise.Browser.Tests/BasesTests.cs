using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>No number without its basis: every figure, table and worked value of a page opens where it stands.</summary>
public sealed class BasesTests(PublishedServer server)
{
    /// <summary>
    /// Those that neither open themselves nor stand in a table, card or slip that does; a picture belongs to the card it
    /// stands in. With how many were looked at.
    /// </summary>
    private const string Bare = """
        () => {
          const home = e => {
            let at = e.parentElement?.closest("table, .figure, .ticket-slip, section");
            while (at?.matches(".pictured, .pictured table")) at = at.parentElement?.closest(".figure, .ticket-slip, section");
            return at;
          };
          const opens = e => { for (let at = e; at; at = at.matches("section") ? null : home(at)) if (at.querySelector(".basis")) return true; return false; };
          const all = [...document.querySelectorAll("main .figure, main table, main data")];
          const bare = all.filter(e => !opens(e.matches(".pictured table") ? home(e) : e)).map(e => `${location.pathname}: ${e.textContent.trim().replace(/\s+/g, " ").slice(0, 80)}`);
          return [String(all.length), ...bare];
        }
        """;

    [Fact]
    public async Task On_every_page_of_a_job_every_number_opens_to_what_it_rests_on()
    {
        await using var window = await server.Window();
        var page = await window.Open("/jobs/demo/measure");
        foreach (var step in new[] { "Measure", "Materials", "Conditions", "Order of work", "Supply", "Timeline" })
        {
            await page.Go(step);
            await page.Settled();
            await Expect(page.Locator("main.phase .basis").First).ToBeAttachedAsync(new() { Timeout = Pages.FirstStartMs });
            if (step == "Order of work")
            {
                await page.Planned();
                await page.GetByRole(AriaRole.Button, new() { Name = "Show the chance of a line" }).ClickAsync();
                await Expect(page.Locator("table caption", new() { HasText = "What can go wrong" })).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
            }

            await Opens(page, 4);
        }
    }

    [Fact]
    public async Task In_every_quick_sum_every_number_opens_to_what_it_rests_on()
    {
        await using var window = await server.Window();
        var page = await window.Open("/quick");
        foreach (var sum in SameNumbersTests.Sums)
        {
            await page.GotoAsync("/quick/" + SameNumbersTests.Escaped(sum));
            await Expect(page.Locator(".quick-answer data").First).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
            await Opens(page, 1);
        }
    }

    /// <summary>The rule catches a number that opens to nothing.</summary>
    [Fact]
    public async Task A_figure_without_its_basis_is_found()
    {
        await using var window = await server.Window();
        var page = await window.NewPageAsync();
        await page.SetContentAsync("""<main><section><div class="figure">12 min</div></section><section><div class="figure">3 L<details class="basis"></details></div><section class="pictured"><table><tr><td>4</td></tr></table></section></section></main>""");
        var found = await page.EvaluateAsync<string[]>(Bare);
        Assert.Equal("3", found[0]);
        Assert.Contains("12 min", Assert.Single(found[1..]));
    }

    private static async Task Opens(IPage page, int atLeast)
    {
        var found = await page.EvaluateAsync<string[]>(Bare);
        Assert.True(int.Parse(found[0], System.Globalization.CultureInfo.InvariantCulture) >= atLeast, $"only {found[0]} numbers on {page.Url}");
        Assert.Empty(found[1..]);
    }
}
