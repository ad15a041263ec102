namespace Lapwise.Core.Work.Order;

/// <summary>
/// The same question asked in different ways by turns: depth first along the best order known, depth first with different
/// sections to come first, and a beam. Which of them is quick cannot be told ahead, and the difference is up to a hundredfold.
/// The first answer holds; counted steps, so every machine takes the same turns. The beam's first two tries go to their end,
/// save where there are too many sections for that.
/// </summary>
internal sealed class SoloTurns : IDecision
{
    private const long Turn = 2_000;
    private const long TurnOfFollowing = 12_000;
    private const long TurnOfBeam = 500;

    private readonly SoloDecision[] _byDepth;
    private readonly SoloBeam? _beam;
    private readonly bool _isBeamQuick;
    private int _at;                          // the last turn is the beam's
    private long _leftOfTurn;

    /// <param name="known">An order to follow as far as it can be; null: none.</param>
    /// <param name="beam">Null: depth first alone.</param>
    public SoloTurns(SoloModel model, long limit, int mostVectors, SoloOrder? known, SoloBeam? beam)
    {
        var vectors = mostVectors / (model.Mirrors.Count + (known is null ? 0 : 1));
        var apart = model.Mirrors.Select(m => new SoloDecision(model, limit, vectors, m));
        _byDepth = known is null ? [.. apart] : [SoloDecision.Following(known, model, limit, vectors), .. apart];
        _beam = beam;
        _isBeamQuick = model.Count <= SectionSet.MostSections;
        _leftOfTurn = LengthOfTurn;
    }

    public long Steps => _byDepth.Sum(d => d.Steps) + (_beam?.Steps ?? 0);

    /// <summary>Valid after <see cref="Verdict.Found"/>.</summary>
    public SoloOrder Found => BeamOnTurn?.Found ?? _byDepth[_at].Found;

    public Verdict Run(long steps)
    {
        while (steps > 0)
        {
            var before = Steps;
            var verdict = Go(IsFirstTryOfBeam ? steps : Math.Min(steps, _leftOfTurn));
            if (verdict != Verdict.OutOfSteps) return verdict;
            var used = Math.Max(1, Steps - before);
            steps -= used;
            _leftOfTurn -= used;
            if (BeamOnTurn is { IsOver: true } || (_leftOfTurn <= 0 && !IsFirstTryOfBeam)) NextTurn();
        }

        return Verdict.OutOfSteps;
    }

    private SoloBeam? BeamOnTurn => _at == _byDepth.Length ? _beam : null;

    private bool IsFirstTryOfBeam => _isBeamQuick && BeamOnTurn is { HasTried: false };

    private Verdict Go(long steps) =>
        BeamOnTurn is not { } beam ? _byDepth[_at].Run(steps)
        : beam.Run(steps) ? Verdict.Found
        : Verdict.OutOfSteps;

    private void NextTurn()
    {
        _at = (_at + 1) % (_byDepth.Length + (_beam is { IsOver: false } ? 1 : 0));
        _leftOfTurn = LengthOfTurn;
    }

    private long LengthOfTurn => BeamOnTurn is not null ? TurnOfBeam : _byDepth[_at].Follows ? TurnOfFollowing : Turn;
}
