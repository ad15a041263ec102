using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Lapwise.Store;

/// <summary>The shop's database in one SQLite file.</summary>
public static class SqliteFile
{
    public static IServiceCollection AddShopOnSqlite(this IServiceCollection services, string path)
    {
        // A writer waits for another for up to this long instead of failing at once. Connections are not pooled: for an instant
        // the pool takes one that is being handed out for one left behind, and closes it or gives it to a second request too.
        var connection = new SqliteConnectionStringBuilder { DataSource = path, DefaultTimeout = 10, Pooling = false }.ToString();
        services.AddDbContextFactory<ShopDatabase>(options => options.UseSqlite(connection));
        services.AddSingleton<JobShelf>();
        services.AddSingleton<ProductShelf>();
        services.AddSingleton<MarkLog>();
        services.AddSingleton<RatesShelf>();
        services.AddSingleton<KeepShelf>();
        services.AddSingleton<ShelfLog>();
        services.AddSingleton<DaysShelf>();
        services.AddSingleton<SettledShelf>();
        services.AddSingleton<QuoteFolder>();
        return services;
    }

    /// <summary>Makes the file where there is none, brings an older one up to date, and lets readers go on while one writes (WAL).</summary>
    public static async Task OpenShop(this IServiceProvider services, CancellationToken cancel)
    {
        await using var database = await services.GetRequiredService<IDbContextFactory<ShopDatabase>>().CreateDbContextAsync(cancel);
        var path = new SqliteConnectionStringBuilder(database.Database.GetConnectionString()).DataSource;
        if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder) Directory.CreateDirectory(folder);
        await database.Database.MigrateAsync(cancel);
        await database.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = 'wal'", cancel);
    }
}
