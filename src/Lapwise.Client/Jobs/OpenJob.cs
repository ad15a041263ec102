using Lapwise.Client.Keeping;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Jobs;

/// <summary>One job open in the page: the document as typed, what the core makes of it, and where it is kept.</summary>
internal sealed class OpenJob : IDisposable
{
    private readonly KeptJob kept;
    private readonly Turns turns = new();
    private string? typedInto;
    private int changes;
    private bool isDrawnLater;

    public OpenJob(KeptJob kept, Coatings coatings, ShopDays days, EditKeeping edits)
    {
        Edits = new Edits(kept.Id, edits);
        this.kept = kept;
        Workings = new Workings(() => Document, () => coatings.All, () => days.OfJob(Id));
        Workings.Changed += Tell;
        kept.DocumentChanged += LookAgain;
        Workings.Refresh();
    }

    public string Id => kept.Id;
    public JobDocument Document => kept.Document;
    public Workings Workings { get; }
    public Kept Kept => kept.Kept;
    /// <summary>How the job is kept, and what others made of it.</summary>
    public KeptJob Keeping => kept;

    /// <summary>The document or what it comes to; where it is kept and what can be taken back tell so themselves.</summary>
    public event Action? Changed;

    /// <summary>What was changed here, to take back.</summary>
    public Edits Edits { get; }

    public void Change(Func<JobDocument, JobDocument> change)
    {
        var before = Document;
        var after = change(before);
        Edits.Note(before, after, typedInto);
        var isTyped = typedInto is not null;
        typedInto = null;
        if (isTyped) _ = TakeTyped(after);
        else Take(after);
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
        LookAgain();
    }

    /// <summary>The document, or the coatings or days it is worked out with, are others.</summary>
    public void LookAgain()
    {
        changes++;
        isDrawnLater = false;
        Workings.Refresh();
        Tell();
    }

    /// <summary>
    /// What is typed stands in its field at once; what it comes to and the rest of the page take turns of their own, so that
    /// no key waits for them.
    /// </summary>
    private async Task TakeTyped(JobDocument document)
    {
        var mine = ++changes;
        isDrawnLater = true;
        kept.Change(document);
        await turns.Take();
        if (mine != changes) return;
        Workings.Refresh();
        await turns.Take();
        if (mine != changes) return;
        isDrawnLater = false;
        Tell();
    }

    /// <summary>What the document comes to as it stands, also where what was typed last still waits for its turn.</summary>
    public Workings WorkedOut()
    {
        if (isDrawnLater) Workings.Refresh();
        return Workings;
    }

    private void Tell()
    {
        if (!isDrawnLater) Changed?.Invoke();
    }

    /// <summary>Sends what is only here, and takes in what is newer elsewhere.</summary>
    public Task Meet() => kept.Meet();

    /// <summary>What pricing found wrong in what was agreed, told at its fields as all else is; empty while no price is asked for.</summary>
    public IReadOnlyList<Fault> PriceFaults { get; set; } = [];

    public IEnumerable<Fault> FaultsAt(string path) => Workings.Faults.Concat(PriceFaults).Where(f => f.Path == path);

    public IEnumerable<Fault> FaultsUnder(string path) =>
        Workings.Faults.Where(f => f.Path == path || f.Path.StartsWith(path + ".", StringComparison.Ordinal) || f.Path.StartsWith(path + "[", StringComparison.Ordinal));

    /// <summary>The faults as they stand now if one of them is at this place or below it, to hold against a later moment; else null.</summary>
    public object? FaultsThere(string path) => FaultsAt(path).Concat(FaultsUnder(path)).Any() ? (Workings.Faults, PriceFaults) : null;

    public void Dispose()
    {
        changes++;
        kept.Dispose();
        Edits.Dispose();
        Workings.Dispose();
    }

    public static string NewId() => Guid.CreateVersion7().ToString("N");
}
