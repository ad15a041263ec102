namespace Lapwise.Core.Work.Grouping;

/// <summary>
/// Puts whole pieces into the fewest batches that hold their volume and outlive their rolling. Every batch leaves the same
/// residue in its cup, so the fewest batches are the least loss. Exact in counted steps: best fit first, then a search that
/// fills one batch after another, the largest piece left first, and only in ways to which no further piece could be added.
/// </summary>
public sealed class BatchPacking
{
    private readonly PieceLoad _batch;
    private readonly PieceLoad[] _size;
    private readonly int[] _piece;
    private readonly int[] _batchOf;
    private long _stepsLeft;

    private BatchPacking(IReadOnlyList<PieceLoad> pieces, PieceLoad batch, long mostSteps)
    {
        _batch = batch;
        _piece = [.. Enumerable.Range(0, pieces.Count).OrderByDescending(i => Share(pieces[i])).ThenByDescending(i => pieces[i].VolumeUl).ThenBy(i => i)];
        _size = [.. _piece.Select(i => pieces[i])];
        _batchOf = new int[pieces.Count];
        _stepsLeft = mostSteps;
    }

    /// <param name="pieces">What each takes: nothing negative, and none more than a batch.</param>
    /// <param name="mostSteps">Placings tried before the answer is only bounded.</param>
    /// <exception cref="ArgumentException">A piece that fits no batch.</exception>
    public static Packing Pack(IReadOnlyList<PieceLoad> pieces, PieceLoad batch, long mostSteps = 2_000_000)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        if (pieces.Any(p => !p.FitsIn(batch) || p.VolumeUl < 0 || p.TimeMs < 0)) throw new ArgumentException("A piece fits no batch.", nameof(pieces));

        var bound = pieces.Count == 0 ? 0 : Math.Max(1, BatchBound.Of(pieces, batch));
        var packing = new BatchPacking(pieces, batch, mostSteps);
        var best = packing.BestFit();
        while (bound < best.Count && packing._stepsLeft > 0)
        {
            if (packing.Within(bound) is { } found) best = found;
            else if (packing._stepsLeft > 0) bound++;
        }

        return new Packing([.. best.Select(b => (IReadOnlyList<int>)[.. b.Order()]).OrderBy(b => b[0])], Math.Min(bound, best.Count));
    }

    /// <summary>How much of a batch a piece takes, by whichever runs out first.</summary>
    private double Share(PieceLoad p) => Math.Max((double)p.VolumeUl / Math.Max(1, _batch.VolumeUl), (double)p.TimeMs / Math.Max(1, _batch.TimeMs));

    /// <summary>Largest piece first, each into the batch that it leaves fullest.</summary>
    private List<List<int>> BestFit()
    {
        var (batches, rooms) = (new List<List<int>>(), new List<PieceLoad>());
        for (var i = 0; i < _size.Length; i++)
        {
            var into = Enumerable.Range(0, rooms.Count).Where(b => _size[i].FitsIn(rooms[b])).DefaultIfEmpty(-1).MinBy(b => b < 0 ? 0 : Share(rooms[b]));
            if (into < 0)
            {
                into = batches.Count;
                batches.Add([]);
                rooms.Add(_batch);
            }

            batches[into].Add(_piece[i]);
            rooms[into] -= _size[i];
        }

        return batches;
    }

    /// <summary>A grouping into so many batches; null where there is none, or where the steps ran out.</summary>
    private List<List<int>>? Within(int batches)
    {
        Array.Fill(_batchOf, -1);
        var all = _size.Aggregate(default(PieceLoad), (sum, p) => sum + p);
        var spare = new PieceLoad((batches * _batch.VolumeUl) - all.VolumeUl, (batches * _batch.TimeMs) - all.TimeMs);
        if (spare.VolumeUl < 0 || spare.TimeMs < 0 || !Open(0, batches, spare)) return null;
        return [.. Enumerable.Range(0, batches).Select(b => Enumerable.Range(0, _size.Length).Where(i => _batchOf[i] == b).Select(i => _piece[i]).ToList()).Where(b => b.Count > 0)];
    }

    /// <summary>Opens a batch with the largest piece left, which must go somewhere.</summary>
    private bool Open(int batch, int batches, PieceLoad spare)
    {
        var largest = Array.IndexOf(_batchOf, -1);
        if (largest < 0) return true;
        if (batch == batches) return false;
        _batchOf[largest] = batch;
        if (Fill(largest + 1, _batch - _size[largest], batch, batches, spare)) return true;
        _batchOf[largest] = -1;
        return false;
    }

    /// <summary>Adds pieces from an index on in every way, then closes the batch where no piece left would still go in.</summary>
    private bool Fill(int from, PieceLoad room, int batch, int batches, PieceLoad spare)
    {
        PieceLoad? tried = null;
        for (var i = from; i < _size.Length; i++)
        {
            // A piece the same as one that led nowhere leads nowhere too.
            if (_batchOf[i] >= 0 || !_size[i].FitsIn(room) || _size[i] == tried) continue;
            if (--_stepsLeft < 0) return false;
            _batchOf[i] = batch;
            if (Fill(i + 1, room - _size[i], batch, batches, spare)) return true;
            _batchOf[i] = -1;
            tried = _size[i];
        }

        if (!room.FitsIn(spare)) return false;
        for (var i = 0; i < _size.Length; i++)
            if (_batchOf[i] < 0 && _size[i].FitsIn(room)) return false;
        return Open(batch + 1, batches, spare - room);
    }
}
