namespace Lapwise.Core.Work.Order;

/// <summary>
/// The same question asked with different sections to come first, by turns: which of them is quick cannot be told ahead,
/// and the difference is up to a hundredfold. The first answer holds; counted steps, so every machine takes the same turns.
/// </summary>
internal sealed class SoloPair : IDecision
{
    private const long Turn = 2_000;

    private readonly SoloDecision[] _by;
    private int _at;
    private long _leftOfTurn = Turn;

    public SoloPair(SoloModel model, long limit, int mostVectors) =>
        _by = [.. model.Mirrors.Select(m => new SoloDecision(model, limit, mostVectors / model.Mirrors.Count, m))];

    public long Steps => _by.Sum(d => d.Steps);

    /// <summary>Valid after <see cref="Verdict.Found"/>.</summary>
    public SoloOrder Found => _by[_at].Found;

    public Verdict Run(long steps)
    {
        while (steps > 0)
        {
            var before = _by[_at].Steps;
            var verdict = _by[_at].Run(Math.Min(steps, _leftOfTurn));
            if (verdict != Verdict.OutOfSteps) return verdict;
            var used = Math.Max(1, _by[_at].Steps - before);
            steps -= used;
            _leftOfTurn -= used;
            if (_leftOfTurn > 0) continue;
            _at = (_at + 1) % _by.Length;
            _leftOfTurn = Turn;
        }

        return Verdict.OutOfSteps;
    }
}
