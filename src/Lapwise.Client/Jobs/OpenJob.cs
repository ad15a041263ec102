using Lapwise.Client.Keeping;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Jobs;

/// <summary>One job open in the page: the document as typed, what the core makes of it, and where it is kept.</summary>
internal sealed class OpenJob : IDisposable
{
    private readonly KeptJob kept;
    private string? typedInto;

    public OpenJob(KeptJob kept, Coatings coatings, EditKeeping edits)
    {
        Edits = new Edits(kept.Id, edits);
        Edits.Changed += () => Changed?.Invoke();
        this.kept = kept;
        Workings = new Workings(() => Document, () => coatings.All);
        Workings.Changed += () => Changed?.Invoke();
        kept.Changed += () => Changed?.Invoke();
        kept.DocumentChanged += Workings.Refresh;
        Workings.Refresh();
    }

    public string Id => kept.Id;
    public JobDocument Document => kept.Document;
    public Workings Workings { get; }
    public Kept Kept => kept.Kept;
    /// <summary>How the job is kept, and what others made of it.</summary>
    public KeptJob Keeping => kept;

    public event Action? Changed;

    /// <summary>What was changed here, to take back.</summary>
    public Edits Edits { get; }

    public void Change(Func<JobDocument, JobDocument> change)
    {
        var before = Document;
        var after = change(before);
        Edits.Note(before, after, typedInto);
        typedInto = null;
        Take(after);
    }

    /// <summary>The change that comes next is typed into this field.</summary>
    public void TypesInto(string field) => typedInto = field;

    public void Undo()
    {
        if (Edits.Undo(Document) is { } before) Take(before);
    }

    public void Redo()
    {
        if (Edits.Redo(Document) is { } after) Take(after);
    }

    private void Take(JobDocument document)
    {
        kept.Change(document);
        Workings.Refresh();
        Changed?.Invoke();
    }

    /// <summary>Sends what is only here, and takes in what is newer elsewhere.</summary>
    public Task Meet() => kept.Meet();

    public IEnumerable<Fault> FaultsAt(string path) => Workings.Faults.Where(f => f.Path == path);

    public IEnumerable<Fault> FaultsUnder(string path) =>
        Workings.Faults.Where(f => f.Path == path || f.Path.StartsWith(path + ".", StringComparison.Ordinal) || f.Path.StartsWith(path + "[", StringComparison.Ordinal));

    public void Dispose()
    {
        kept.Dispose();
        Workings.Dispose();
    }

    public static string NewId() => Guid.CreateVersion7().ToString("N");
}
