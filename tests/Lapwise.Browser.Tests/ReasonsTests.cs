using System.Text.RegularExpressions;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>What the trade says against a job, and notes of it, is as open to doubt as any figure.</summary>
public sealed partial class ReasonsTests(PublishedServer server)
{
    [Theory]
    [InlineData("materials")]
    [InlineData("conditions")]
    [InlineData("work")]
    [InlineData("supply")]
    [InlineData("money")]
    public async Task A_sentence_with_numbers_opens_to_what_they_rest_on(string phase)
    {
        await using var window = await server.Window();
        var page = await window.Open("/jobs/demo/" + phase);
        await page.Settled();
        await Expect(page.Locator("ul.reasons").First).ToBeAttachedAsync(new() { Timeout = Pages.FirstStartMs });
        await page.EvaluateAsync("() => document.querySelectorAll('details:not(.basis)').forEach(d => d.open = true)");
        var saying = page.Locator("ul.reasons").Filter(new() { HasTextRegex = AnyDigit() });
        for (var i = 0; i < await saying.CountAsync(); i++)
        {
            var opener = saying.Nth(i).Locator("xpath=following-sibling::*[1][self::details]");
            await opener.Locator("summary").First.ClickAsync();
            await Expect(opener.Locator(".formula").First).ToBeAttachedAsync();
        }
    }

    [GeneratedRegex("[0-9]", RegexOptions.None, 30_000)]
    private static partial Regex AnyDigit();
}
