using Microsoft.EntityFrameworkCore;

namespace Lapwise.Store;

/// <summary>
/// The shop's database: whole documents as JSON, with only what lists and saving need beside them.
/// Instants are integer UTC ticks, because not every engine orders its own date type.
/// </summary>
public sealed class ShopDatabase(DbContextOptions<ShopDatabase> options) : DbContext(options)
{
    internal DbSet<JobRow> Jobs => Set<JobRow>();
    internal DbSet<ProductRow> Products => Set<ProductRow>();
    internal DbSet<MarkRow> Marks => Set<MarkRow>();
    internal DbSet<RatesRow> Rates => Set<RatesRow>();
    internal DbSet<KeepRow> Keeps => Set<KeepRow>();
    internal DbSet<ShelfEntryRow> ShelfEntries => Set<ShelfEntryRow>();
    internal DbSet<DaysRow> Days => Set<DaysRow>();
    internal DbSet<SettledRow> Settled => Set<SettledRow>();
    internal DbSet<QuoteRow> Quotes => Set<QuoteRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        Shape<JobRow>(modelBuilder, "jobs");
        Shape<ProductRow>(modelBuilder, "products");
        var mark = modelBuilder.Entity<MarkRow>().ToTable("marks");
        mark.HasKey(r => r.Arrival);
        mark.Property(r => r.Arrival).HasColumnName("arrival").ValueGeneratedOnAdd();
        mark.Property(r => r.Job).HasColumnName("job").HasMaxLength(DocumentId.MostCharacters);
        mark.Property(r => r.Run).HasColumnName("run").HasMaxLength(DocumentId.MostCharacters);
        mark.Property(r => r.Id).HasColumnName("id").HasMaxLength(DocumentId.MostCharacters).IsRequired();
        mark.Property(r => r.Json).HasColumnName("json");
        mark.HasIndex(r => new { r.Run, r.Id }).IsUnique();
        mark.HasIndex(r => r.Job);
        Shape<RatesRow>(modelBuilder, "rates");
        Shape<KeepRow>(modelBuilder, "keeps");
        Shape<DaysRow>(modelBuilder, "days");
        Shape<SettledRow>(modelBuilder, "settled_days");

        var entry = modelBuilder.Entity<ShelfEntryRow>().ToTable("shelf_entries");
        entry.HasKey(r => r.Place);
        entry.Property(r => r.Place).HasColumnName("place");
        entry.Property(r => r.Id).HasColumnName("id").HasMaxLength(DocumentId.MostCharacters).IsRequired();
        entry.HasIndex(r => r.Id).IsUnique();
        entry.Property(r => r.WrittenAtTicks).HasColumnName("written_at_ticks");
        entry.Property(r => r.Json).HasColumnName("json");

        var quote = modelBuilder.Entity<QuoteRow>().ToTable("quotes");
        quote.HasKey(r => r.Id);
        quote.Property(r => r.Id).HasColumnName("id").HasMaxLength(DocumentId.MostCharacters);
        quote.Property(r => r.Number).HasColumnName("number");
        quote.HasIndex(r => r.Number).IsUnique();
        quote.Property(r => r.JobId).HasColumnName("job_id").HasMaxLength(DocumentId.MostCharacters);
        quote.HasIndex(r => r.JobId);
        quote.Property(r => r.IssuedAtTicks).HasColumnName("issued_at_ticks");
        quote.Property(r => r.Json).HasColumnName("json");
    }

    private static void Shape<TRow>(ModelBuilder model, string table) where TRow : DocumentRow
    {
        var row = model.Entity<TRow>().ToTable(table);
        row.HasKey(r => r.Id);
        row.Property(r => r.Id).HasColumnName("id").HasMaxLength(DocumentId.MostCharacters);
        row.Property(r => r.Name).HasColumnName("name");
        row.Property(r => r.Version).HasColumnName("version").IsConcurrencyToken();
        row.Property(r => r.ChangedAtTicks).HasColumnName("changed_at_ticks");
        row.Property(r => r.Json).HasColumnName("json");
    }
}

/// <summary>A stored document as its table holds it.</summary>
internal abstract class DocumentRow
{
    public string Id { get; set; } = "";
    public string Name { get; set; } = "";
    /// <summary>Counts every change from 1; a save names the version it was made from.</summary>
    public long Version { get; set; }
    public long ChangedAtTicks { get; set; }
    public string Json { get; set; } = "";
}

internal sealed class JobRow : DocumentRow;

internal sealed class ProductRow : DocumentRow;

/// <summary>A mark of a run: put in once and never changed.</summary>
internal sealed class MarkRow
{
    /// <summary>Counts the marks as they come in, from 1.</summary>
    public long Arrival { get; set; }
    public string Job { get; set; } = "";
    public string Run { get; set; } = "";
    public string Id { get; set; } = "";
    public string Json { get; set; } = "";
}

internal sealed class RatesRow : DocumentRow;

internal sealed class KeepRow : DocumentRow;
