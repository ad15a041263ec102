using System.Net;
using System.Text.Json.Serialization;
using Lapwise.Core.Answers;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.OnSite;
using Lapwise.Core.Quick;
using Lapwise.Server.Features.Days;
using Lapwise.Server.Features.InAndOut;
using Lapwise.Server.Features.Jobs;
using Lapwise.Server.Features.Materials;
using Lapwise.Server.Features.Measure;
using Lapwise.Server.Features.OnSite;
using Lapwise.Server.Features.Phones;
using Lapwise.Server.Features.Photos;
using Lapwise.Server.Features.Money;
using Lapwise.Server.Features.Products;
using Lapwise.Server.Features.Quick;
using Lapwise.Server.Features.Sheet;
using Lapwise.Server.Features.Timeline;
using Lapwise.Server.Features.Shelf;
using Lapwise.Server.Features.Work;
using Lapwise.Server.Http;
using Lapwise.Server.Phones;
using Lapwise.Store;
using Lapwise.Wire;

namespace Lapwise.Server;

/// <summary>The whole server: the store, the API, and the page's files.</summary>
public static class LapwiseServer
{
    /// <summary>Largest body of a request; a job document is some 20 kB.</summary>
    public const int MostRequestBytes = 5 * 1024 * 1024;

    public static WebApplication Build(ServerSettings settings, TimeProvider time)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(LapwiseServer).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        var book = new PhoneBook(Path.Combine(settings.PhonesFolder, "phones.json"), time);
        var code = new PairingCode(time);
        var door = new PhoneDoor(settings, book, code, time);
        if (settings.LetPhonesIn) book.IsOpen = true;
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            // This machine; phones come in by a door of their own, which is closed until somebody here opens it.
            kestrel.Listen(IPAddress.Loopback, settings.Port);
            kestrel.Limits.MaxRequestBodySize = MostRequestBytes;
            kestrel.AddServerHeader = false;
            door.AddTo(kestrel);
        });
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning);

        builder.Services.AddSingleton(time);
        builder.Services.AddSingleton(settings);
        builder.Services.AddSingleton(new PhotoFiles(Path.Combine(settings.DataFolder, "photos")));
        builder.Services.AddSingleton(new GivenPapers(Path.Combine(settings.DataFolder, "papers")));
        builder.Services.AddSingleton(book);
        builder.Services.AddSingleton(code);
        builder.Services.AddSingleton(door);
        builder.Services.AddSingleton<Gate>();
        builder.Services.AddShopOnSqlite(settings.DatabasePath);
        builder.Services.AddSingleton<FirstStart>();
        builder.Services.AddSingleton<StoredWholeJob>();
        builder.Services.AddSingleton<ComingPurchase>();
        builder.Services.AddSingleton<StoredWholePrice>();
        builder.Services.AddSingleton<TakingInShop>();
        builder.Services.AddSingleton<WorkedJobs>();
        builder.Services.AddSingleton<DaysInputs>();
        builder.Services.AddSingleton<DaysDesk>();
        builder.Services.AddSingleton(new FeedKey(Path.Combine(settings.PhonesFolder, "calendar.key")));
        builder.Services.AddProblemDetails();
        builder.Services.AddOpenApi(options => options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info.Title = "Lapwise";
            document.Info.Version = ProgramVersion.Own;
            return Task.CompletedTask;
        }));
        builder.Services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
            json.SerializerOptions.TypeInfoResolverChain.Insert(0, JobJson.Default);
            json.SerializerOptions.TypeInfoResolverChain.Insert(1, AnswerJson.Default);
            json.SerializerOptions.TypeInfoResolverChain.Insert(2, WireJson.Default);
            json.SerializerOptions.TypeInfoResolverChain.Insert(3, RunJson.Default);
            json.SerializerOptions.TypeInfoResolverChain.Insert(4, QuickJson.Default);
            json.SerializerOptions.TypeInfoResolverChain.Insert(5, QuoteJson.Default);
            json.SerializerOptions.TypeInfoResolverChain.Insert(6, DaysJson.Default);
        });

        var app = builder.Build();
        app.UseExceptionHandler();
        app.UseStatusCodePages();
        app.Use(Safeguards.OnEveryAnswer);
        app.Use(app.Services.GetRequiredService<Gate>().Pass);
        app.Use(app.Services.GetRequiredService<FirstStart>().BeforeFirstAnswer);

        app.MapOpenApi("/api/openapi.json");
        var api = app.MapGroup("/api");
        ListJobs.Map(api);
        CreateJob.Map(api);
        ReadJob.Map(api);
        SaveJob.Map(api);
        RemoveJob.Map(api);
        ListProducts.Map(api);
        ReadProduct.Map(api);
        SaveProduct.Map(api);
        RemoveProduct.Map(api);
        TakeOffOfJob.Map(api);
        MaterialsOfJob.Map(api);
        PlanOfJob.Map(api);
        PrintSheet.Map(api);
        PdfSheet.Map(api);
        DaysFile.Map(api);
        EnterDays.Map(api);
        SearchDays.Map(api);
        SettleDays.Map(api);
        FeedOfDays.Map(api);
        ReadShelf.Map(api);
        AppendToShelf.Map(api);
        SaveKeeps.Map(api);
        PurchaseForJobs.Map(api);
        ReadRates.Map(api);
        SaveRates.Map(api);
        PriceOfJob.Map(api);
        IssueQuote.Map(api);
        ListQuotes.Map(api);
        ReadQuote.Map(api);
        QuotePapers.Map(api);
        JobPapers.Map(api);
        ChangePapers.Map(api);
        Exporting.Map(api);
        Importing.Map(api);
        QuickSums.Map(api);
        ListRuns.Map(api);
        RecordPapers.Map(api);
        ReadMarks.Map(api);
        AppendMarks.Map(api);
        PhonesOfShop.Map(api);
        SavePhoto.Map(api);
        ReadPhoto.Map(api);
        api.MapFallback(() => Problems.NotFound());

        app.MapStaticAssets();
        app.MapFallbackToFile("index.html");
        return app;
    }

    /// <summary>Opens the database and listens.</summary>
    public static async Task Start(WebApplication app, CancellationToken cancel)
    {
        await app.Services.OpenShop(cancel);
        await SweepPhotos(app.Services, cancel);
        await app.StartAsync(cancel);
    }

    private static async Task SweepPhotos(IServiceProvider services, CancellationToken cancel)
    {
        var jobs = await services.GetRequiredService<JobShelf>().All(cancel);
        var referredTo = jobs.SelectMany(j => j.Tops).SelectMany(t => t.Photos ?? []).Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        services.GetRequiredService<PhotoFiles>().Sweep(referredTo, services.GetRequiredService<TimeProvider>().GetUtcNow());
    }

    /// <summary>The address on this machine itself.</summary>
    public static string AddressOf(WebApplication app) => app.Urls.First(u => u.StartsWith("http://127.0.0.1:", StringComparison.Ordinal));
}
