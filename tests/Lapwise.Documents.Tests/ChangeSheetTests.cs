using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Shared;

namespace Lapwise.Documents.Tests;

/// <summary>What the customer signs when something is added, read back by poppler.</summary>
public sealed class ChangeSheetTests
{
    private static readonly DateOnly Day = new(2026, 11, 30);

    private static WholePrice Priced(params ChangeDocument[] changes)
    {
        var whole = Samples.Whole("l-kitchen");
        var job = Samples.Document("l-kitchen") with { Agreement = new AgreementDocument { Customer = "House on the hill", Changes = changes } };
        return WholePrice.Of(job, whole, Samples.Library, new RatesDocument { Tax = "8 %", GivenBy = "Two Hills Coating, 12 Mill Lane" }, []).Priced!;
    }

    [Theory, InlineData(true), InlineData(false)]
    public void A_change_stands_with_its_price_the_new_total_and_a_line_to_sign(bool us)
    {
        var voice = us ? new Voice(Language.English, UnitSystem.Us) : new Voice(Language.Spanish, UnitSystem.Metric);
        var priced = Priced(new ChangeDocument { What = "Backsplash", Price = "300", SignedOn = "2026-11-20" }, new ChangeDocument { What = "Window sill", Price = "120.50" });
        var read = new PdfRead(ChangeSheet.Pdf(priced, Day, voice));
        Assert.True(read.Says("Two Hills Coating, 12 Mill Lane") && read.Says("House on the hill") && read.Says("Backsplash") && read.Says("Window sill"));
        Assert.True(read.Says(voice.BareMoney(priced.Agreement.Changes[1].Price)));
        Assert.True(read.Says(voice.BareMoney(priced.WithChanges(2)!.Total)));
        Assert.True(read.Says(voice.Say("customer, date", "cliente, fecha")));
        Assert.Equal("yes", read.Info("Tagged"));
        Assert.Empty(read.Collisions(Paper.MarginPt));
        Assert.StartsWith("<!doctype html>", ChangeSheet.Html(priced, Day, voice));
    }

    [Fact]
    public void Where_all_are_signed_nothing_is_to_sign()
    {
        var voice = new Voice(Language.English, UnitSystem.Us);
        var read = new PdfRead(ChangeSheet.Pdf(Priced(new ChangeDocument { What = "Backsplash", Price = "300", SignedOn = "2026-11-20" }), Day, voice));
        Assert.True(read.Says("Every change is signed."));
        Assert.False(read.Says("customer, date"));
        Assert.True(new PdfRead(ChangeSheet.Pdf(Priced(), Day, voice)).Says("No change is noted for this job."));
    }
}
