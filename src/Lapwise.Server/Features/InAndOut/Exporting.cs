using System.Text.Json;
using Lapwise.Core.Jobs;
using Lapwise.Core.Shop;
using Lapwise.Files.Csv;
using Lapwise.Store;

namespace Lapwise.Server.Features.InAndOut;

/// <summary>
/// <c>GET /api/export</c>: everything the shop has, in one JSON document. <c>/api/shelf.csv</c> and <c>/api/prices.csv</c>: two
/// tables for a spreadsheet, no cell of which it would run.
/// </summary>
internal static class Exporting
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/export", Everything).WithName("Export").WithTags("In and out").WithSummary("Everything the shop has, in one JSON document.").Produces<ShopDocument>();
        api.MapGet("/shelf.csv", Shelf).WithName("ShelfCsv").WithTags("In and out").WithSummary("What stands on the shelf, as CSV.").Produces(StatusCodes.Status200OK, contentType: "text/csv");
        api.MapGet("/prices.csv", Prices).WithName("PricesCsv").WithTags("In and out").WithSummary("Prices of the kits, as CSV.").Produces(StatusCodes.Status200OK, contentType: "text/csv");
    }

    // The server writes only without holding a thread, so each document is written apart and put in raw.
    // Written as it is read, one document at a time: ten thousand jobs need no more memory than one.
    private static async Task Everything(HttpContext http, JobShelf jobs, ProductShelf products, ShelfLog log, KeepShelf keeps, RatesShelf rates, DaysShelf days, SettledShelf settled, QuoteFolder quotes, CancellationToken cancel)
    {
        http.Response.ContentType = "application/json; charset=utf-8";
        http.Response.Headers.ContentDisposition = "attachment; filename=lapwise.json";
        await using var json = new Utf8JsonWriter(http.Response.Body);
        json.WriteStartObject();
        json.WriteNumber("lapwise", ShopDocument.CurrentVersion);
        json.WriteStartArray("jobs");
        await foreach (var job in jobs.EachStored(cancel))
        {
            json.WriteRawValue(JsonSerializer.SerializeToUtf8Bytes(new KeptJobDocument { Id = job.Id, Job = job.Document }, ShopJson.Default.KeptJobDocument));
            if (json.BytesPending > 1 << 16) await json.FlushAsync(cancel);
        }

        json.WriteEndArray();
        json.WriteStartArray("products");
        await foreach (var product in products.EachStored(cancel)) json.WriteRawValue(JsonSerializer.SerializeToUtf8Bytes(product.Document, JobJson.Default.ProductDocument));
        json.WriteEndArray();
        json.WritePropertyName("shelf");
        json.WriteRawValue(JsonSerializer.SerializeToUtf8Bytes(new ShelfDocument { Entries = await log.All(cancel), Keep = (await keeps.Find(RatesShelf.Own, cancel))?.Document.Keep }, JobJson.Default.ShelfDocument));
        if ((await rates.Find(RatesShelf.Own, cancel))?.Document is { } charged)
        {
            json.WritePropertyName("rates");
            json.WriteRawValue(JsonSerializer.SerializeToUtf8Bytes(charged, JobJson.Default.RatesDocument));
        }

        if ((await days.Find(RatesShelf.Own, cancel))?.Document is { } planned)
        {
            json.WritePropertyName("days");
            json.WriteRawValue(JsonSerializer.SerializeToUtf8Bytes(planned, JobJson.Default.DaysDocument));
        }

        if ((await settled.Find(RatesShelf.Own, cancel))?.Document is { } held)
        {
            json.WritePropertyName("settled");
            json.WriteRawValue(JsonSerializer.SerializeToUtf8Bytes(held, JobJson.Default.SettledDaysDocument));
        }

        var hasQuotes = false;
        await foreach (var quote in quotes.Each(cancel))
        {
            if (!hasQuotes) json.WriteStartArray("quotes");
            hasQuotes = true;
            json.WriteRawValue(JsonSerializer.SerializeToUtf8Bytes(quote, ShopJson.Default.IssuedQuote));
            if (json.BytesPending > 1 << 16) await json.FlushAsync(cancel);
        }

        if (hasQuotes) json.WriteEndArray();
        json.WriteEndObject();
        await json.FlushAsync(cancel);
    }

    private static async Task<IResult> Shelf(ShelfLog log, ProductShelf products, CancellationToken cancel) =>
        Csv(ShelfCsv.Write(await Standing(log, products, cancel)), "shelf.csv");

    private static async Task<IResult> Prices(ProductShelf products, CancellationToken cancel) => Csv(PricesCsv.Write(await products.All(cancel)), "prices.csv");

    internal static async Task<Core.Jobs.Shelf> Standing(ShelfLog log, ProductShelf products, CancellationToken cancel) =>
        ShelfReading.Read(new ShelfDocument { Entries = await log.All(cancel) }, JobReading.ReadProducts(new JobDocument(), await products.All(cancel)), Core.Explain.UnitSystem.Metric).Shelf;

    // With a byte order mark: spreadsheets take UTF-8 for something else without it.
    private static IResult Csv(string text, string name) => Results.File([0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(text)], "text/csv; charset=utf-8", name);
}
