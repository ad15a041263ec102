namespace Lapwise.Cli.Tests.Commands;

public sealed class SheetCommandTests : IDisposable
{
    private static readonly string Vanity = Shell.Sample("vanity.job.yaml");
    private readonly string folder = Directory.CreateTempSubdirectory("lapwise-sheet").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_sheet_is_a_PDF_and_the_same_job_gives_the_same_bytes()
    {
        var (one, two) = (Path.Combine(folder, "one.pdf"), Path.Combine(folder, "two.pdf"));
        var shell = Shell.Run("sheet", Vanity, "--out", one);
        Assert.Equal(Outcome.Done, shell.Outcome);
        Assert.StartsWith("Hoja de trabajo:", shell.Out);
        Assert.Equal("%PDF-"u8, File.ReadAllBytes(one).AsSpan(0, 5));

        Shell.Run("sheet", Vanity, "--out", two);
        Assert.Equal(File.ReadAllBytes(one), File.ReadAllBytes(two));
    }

    [Fact]
    public void A_page_is_made_where_one_is_asked_for()
    {
        var page = Path.Combine(folder, "sheet.html");
        var answer = Shell.Run("sheet", Vanity, "--out", page, "--json").Json;
        Assert.Equal(new FileInfo(page).Length, (long)answer["bytes"]!);
        Assert.StartsWith("<!doctype html>", File.ReadAllText(page), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_plan_that_does_not_work_has_a_sheet_and_ends_with_1()
    {
        var sheet = Path.Combine(folder, "damp.pdf");
        var damp = File.ReadAllText(Vanity).Replace("humidity: 55 %", "humidity: 95 %");
        var shell = Shell.RunWith(damp, "sheet", "-", "--products", Shell.Sample("products"), "--out", sheet);
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.True(File.Exists(sheet));
        Assert.Contains("✗", shell.Out);
    }

    [Fact]
    public void A_place_that_cannot_be_written_is_said()
    {
        var shell = Shell.Run("sheet", Vanity, "--out", Path.Combine(folder, "nowhere", "sheet.pdf"));
        Assert.Equal(Outcome.BadInput, shell.Outcome);
        Assert.StartsWith("--out: ", Assert.Single(shell.Faults));
    }
}
