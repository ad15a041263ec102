using System.Globalization;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>From the price to the quote that is given out, on the page a customer's kitchen is priced on.</summary>
public sealed class MoneyTests(PublishedServer server)
{
    [Fact]
    public async Task A_price_is_set_its_payments_agreed_and_a_quote_given_out_that_stays_as_it_was()
    {
        await server.ForgetRates();
        var id = await server.CopyOfDemo();
        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{id}/money");
        var total = page.Locator("data[data-is='total']");
        await Expect(total).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        var before = await Value(total);

        await page.Field("Wage of an hour").FillAsync("48");
        await Expect(page.GetByText("With the shop's rates")).ToBeVisibleAsync();
        Assert.True(await Value(total) > before);

        await page.GetByText("Payments, and how long a quote holds").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Set the payments yourself" }).ClickAsync();
        var shares = page.Field("Share of the price");
        await shares.First.FillAsync("50 %");
        await Expect(page.GetByText("Make them come to 100 %.").First).ToBeVisibleAsync();
        await shares.Last.FillAsync("50 %");
        await Expect(page.GetByText("Make them come to 100 %.")).ToHaveCountAsync(0);
        await page.Field("A quote holds, days").FillAsync("14");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep as the shop's rates" }).ClickAsync();
        await Expect(page.GetByText("With the shop's rates")).ToHaveCountAsync(0);

        var give = page.GetByRole(AriaRole.Button, new() { Name = "Give out a quote at this price" });
        await Expect(give).ToBeEnabledAsync(new() { Timeout = Pages.FirstStartMs });
        var charged = await Value(total);
        await give.ClickAsync();
        var quotes = page.Locator("section[aria-labelledby=quotes] li");
        await Expect(quotes).ToHaveCountAsync(1);

        // The rates move on; the quote does not.
        await page.Field("Margin").FillAsync("45 %");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep as the shop's rates" }).ClickAsync();
        await Expect(page.GetByText("With the shop's rates")).ToHaveCountAsync(0);
        var link = quotes.First.Locator("a.paper").Last;
        var paper = await window.NewPageAsync();
        await paper.GotoAsync("/" + await link.GetAttributeAsync("href"));
        await Expect(paper.Locator("body")).ToContainTextAsync(charged.ToString("N2", CultureInfo.InvariantCulture));
        await Expect(paper.Locator("body")).ToContainTextAsync("with the order");
        await Expect(paper.Locator("body")).ToContainTextAsync(Math.Round((decimal)charged / 2, 2, MidpointRounding.ToZero).ToString("N2", CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task A_signed_board_shows_the_colours_of_the_job_until_a_coat_gets_another()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{id}/money");
        var open = page.Locator("section[aria-labelledby=agreed] .reasons");
        await Expect(open).ToContainTextAsync("The sample board in warm grey is not signed", new() { Timeout = Pages.FirstStartMs });
        await page.Field("Sample board signed on").FillAsync("2026-11-28");
        await Expect(page.Field("The board shows")).ToHaveValueAsync("warm grey");
        await Expect(open).Not.ToContainTextAsync("sample board", new() { Timeout = Pages.FirstStartMs });

        await page.Field("The board shows").FillAsync("black, satin");
        await Expect(open).ToContainTextAsync("shows black, satin, but coat 1 is warm grey", new() { Timeout = Pages.FirstStartMs });
        await page.Kept("Saved");
        var purchase = System.Text.Json.Nodes.JsonNode.Parse(await server.Http.GetStringAsync("/api/purchase?job=" + id, TestContext.Current.CancellationToken))!;
        Assert.Equal("BoardShowsOther", (string?)Assert.Single(purchase["heldBack"]!.AsArray())!["reason"]!["code"]);
    }

    [Fact]
    public async Task An_option_can_have_every_edge_that_a_top_can()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{id}/money");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add an option" }).ClickAsync(new() { Timeout = Pages.FirstStartMs });
        await Expect(page.Locator("#option-edge-0 option")).ToHaveCountAsync(1 + Enum.GetValues<Lapwise.Core.Jobs.ProfileShape>().Length);
        await page.Field("Edge").SelectOptionAsync("RoundOver");
        await page.Field("Radius").FillAsync("1/2 in");
        await Expect(page.Locator("section[aria-labelledby=charged]")).ToContainTextAsync("Option 1", new() { Timeout = Pages.FirstStartMs });
    }

    [Fact]
    public async Task Each_paper_answers_as_a_page_and_as_a_pdf()
    {
        await using var window = await server.Window();
        var page = await window.Open("/jobs/demo/money");
        foreach (var what in new[] { "packet", "tickets", "packing", "days", "care" })
        {
            var links = page.Locator($"a.paper[href*='/papers/{what}']");
            await Expect(links).ToHaveCountAsync(2, new() { Timeout = Pages.FirstStartMs });
            foreach (var (link, type) in new[] { (links.First, "application/pdf"), (links.Last, "text/html") })
            {
                var answer = await window.APIRequest.GetAsync(server.Address + "/" + await link.GetAttributeAsync("href"));
                Assert.Equal(200, answer.Status);
                Assert.StartsWith(type, answer.Headers["content-type"], StringComparison.Ordinal);
            }
        }
    }

    /// <summary>Price, what-if, payments, options and the agreement all open: nothing is cut off, and a reader that speaks is told all.</summary>
    [Theory]
    [InlineData(390, "en-US", "Wage of an hour", "Payments, and how long a quote holds", "Set the payments yourself", "Add an option")]
    [InlineData(390, "es-MX", "Salario por hora", "Pagos, y cuánto vale un presupuesto", "Fijar los pagos", "Añadir una opción")]
    [InlineData(1440, "en-US", "Wage of an hour", "Payments, and how long a quote holds", "Set the payments yourself", "Add an option")]
    [InlineData(1440, "es-MX", "Salario por hora", "Pagos, y cuánto vale un presupuesto", "Fijar los pagos", "Añadir una opción")]
    public async Task All_of_the_money_fits_its_window_and_can_be_read_out(int width, string locale, string wage, string payments, string set, string option)
    {
        await server.ForgetRates();
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(width, 900, locale);
        var page = await window.Open($"/jobs/{id}/money");
        var total = page.Locator("data[data-is='total']");
        await Expect(total).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        var before = await Value(total);
        await page.Field(wage).FillAsync("48");
        await Expect(page.Locator("main")).ToContainTextAsync(locale == "en-US" ? "With the shop's rates" : "Con las tarifas del taller");
        Assert.True(await Value(total) > before);
        await page.GetByText(payments).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = set }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = option }).ClickAsync();

        // Faded while it is worked out anew.
        await page.Settled();

        // The large sum keeps its currency beside it.
        var sum = await page.Locator(".verdict .figure.is-main .figure-value").First.BoundingBoxAsync();
        Assert.InRange(sum!.Height, 1, 60);
        Assert.Equal(0, await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth"));
        Assert.Empty((await page.RunAxe()).Violations.SelectMany(v => v.Nodes.Select(n => $"{v.Id}: {n.Html} {n.Any.FirstOrDefault()?.Message}")));
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1440)]
    public async Task A_sum_of_many_millions_stays_on_one_line_with_its_currency(int width)
    {
        await server.ForgetRates();
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(width, 900);
        var page = await window.Open($"/jobs/{id}/money");
        var total = page.Locator("data[data-is='total']");
        await Expect(total).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await page.Field("Wage of an hour").FillAsync("3000000");
        await Expect(page.Locator("main")).ToContainTextAsync("With the shop's rates");
        Assert.True(await Value(total) > 10_000_000);

        // Less than one and a half lines of its own letters.
        var broken = await page.Locator(".verdict .figure-value").EvaluateAllAsync<string[]>("all => all.filter(v => v.getBoundingClientRect().height > 2.4 * parseFloat(getComputedStyle(v).fontSize) || v.scrollWidth > v.clientWidth).map(v => v.textContent)");
        Assert.Empty(broken);
    }

    private static async Task<double> Value(ILocator data) => double.Parse((await data.GetAttributeAsync("value"))!, CultureInfo.InvariantCulture);
}
