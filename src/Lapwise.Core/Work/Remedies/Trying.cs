using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work.Remedies;

/// <summary>A plan that wants a remedy, and ways to plan it again with something changed.</summary>
internal sealed record Trying(Attempt Now, Effort Effort, TopWays Ways)
{
    public Job Job => Now.Job;
    public Coat Coat => Now.Job.System[0];
    public Product Product => Coat.Product;

    public ValueTask<Attempt?> PlanAsync(Job job) => Attempt.OfAsync(job, Now.Measured, job.System[0], Effort, Ways);

    public ValueTask<Attempt?> PlanAsync(MeasuredJob measured) => Attempt.OfAsync(Job, measured, Coat, Effort, Ways);

    public ValueTask<Attempt?> PlanAsync(Coat coat) => Attempt.OfAsync(Job, Now.Measured, coat, Effort, Ways);

    /// <summary>The first that keeps the target, else the best of those that help; null: none helps.</summary>
    /// <param name="goesOnPastWorse">False: each choice goes farther the same way, so where one helps no more the rest are not tried.</param>
    public async ValueTask<(T Choice, Attempt Tried)?> FirstGoodAsync<T>(IEnumerable<T> choices, Func<T, ValueTask<Attempt?>> plan, bool goesOnPastWorse = true)
    {
        (T Choice, Attempt Tried)? best = null;
        foreach (var choice in choices)
        {
            if (await plan(choice) is { } tried && tried.IsBetterThan(best?.Tried ?? Now)) best = (choice, tried);
            else if (goesOnPastWorse) continue;
            else break;
            if (best is { Tried.KeepsTarget: true }) break;
        }

        return best;
    }

    /// <summary>A remedy with what it changes in the plan.</summary>
    public Remedy Made(RemedyKind kind, Attempt tried, Phrase text)
    {
        var (before, after) = (Now.Work, tried.Work);
        return new Remedy(kind, text, v => string.Join("; ", new[]
        {
            Changed(v.Say("sections", "secciones"), before.Sections.Count, after.Sections.Count),
            Changed(v.Say("batches", "mezclas"), before.Batches.Count, after.Batches.Count),
            Changed(v.Say("people rolling", "personas que aplican"), Rollers(before), Rollers(after)),
        }.OfType<string>().DefaultIfEmpty(v.Say("as many sections and batches as before", "tantas secciones y mezclas como antes"))), tried);
    }

    public static Remedy Untold(RemedyKind kind, Phrase text, Phrase why) => new(kind, text, why, null);

    private static int Rollers(CoatWork work) => work.Sections.Select(s => s.Person).Distinct().Count();

    private static string? Changed(string what, int before, int after) => before == after ? null : $"{what} {before} → {after}";
}
