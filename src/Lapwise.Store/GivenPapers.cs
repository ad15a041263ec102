namespace Lapwise.Store;

/// <summary>
/// Tickets as they were given out, each paper under the mark that its tickets carry. What was kept first stays: a slip in
/// somebody's hand can always be had again as it was printed.
/// </summary>
public sealed class GivenPapers(string folder)
{
    /// <param name="jobId">An id of a stored job.</param>
    /// <param name="coat">From 0.</param>
    /// <param name="mark">Hex digits.</param>
    public async Task Keep(string jobId, int coat, string mark, ReadOnlyMemory<byte> pdf, CancellationToken cancel)
    {
        var path = PathOf(jobId, coat, mark);
        if (File.Exists(path)) return;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var fresh = path + "." + Guid.NewGuid().ToString("N");
        await File.WriteAllBytesAsync(fresh, pdf, cancel);
        File.Move(fresh, path, overwrite: true);
    }

    /// <summary>Path of the file, or null.</summary>
    public string? Find(string jobId, int coat, string mark) =>
        DocumentId.IsUsable(jobId) && mark.Length > 0 && mark.All(char.IsAsciiHexDigitLower) && PathOf(jobId, coat, mark) is var path && File.Exists(path) ? path : null;

    private string PathOf(string jobId, int coat, string mark) => Path.Combine(folder, jobId, $"{coat + 1}-{mark}.pdf");
}
