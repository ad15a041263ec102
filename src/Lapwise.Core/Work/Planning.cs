using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Pouring;

namespace Lapwise.Core.Work;

/// <summary>Which sections, in which order, and when to mix?</summary>
public static class Planning
{
    /// <summary>
    /// One plan for each coat. Plans that do not work are given too, with the reasons; deterministic, in counted steps.
    /// </summary>
    public static JobWork Plan(Job job, MeasuredJob measured, JobConditions conditions) =>
        Slices.AtOnce(PlanAsync(job, measured, conditions, Effort.AtOnce));

    /// <summary>The same in slices, with a pause between them.</summary>
    /// <param name="ways">Kept from an earlier plan of the same measured tops; null: they are cut anew.</param>
    /// <exception cref="OperationCanceledException">The pause stopped it.</exception>
    public static async ValueTask<JobWork> PlanAsync(Job job, MeasuredJob measured, JobConditions conditions, Effort effort, TopWays? ways = null)
    {
        var coats = new List<CoatWork>();
        ways ??= new TopWays();
        if (measured.Tops.Count > 0 && job.Crew.Count > 0)
            foreach (var coat in conditions.Coats)
                coats.Add(await PlanCoatAsync(job, measured.Under(coat.Coat), coat, ways, effort));
        return new JobWork(coats);
    }

    private static async ValueTask<CoatWork> PlanCoatAsync(Job job, MeasuredJob measured, CoatConditions conditions, TopWays ways, Effort effort)
    {
        var product = conditions.Coat.Product;
        var broken = product.BreakAllowed ? [] : measured.Tops.Where(t => t.Top.Breaks.Count > 0).ToList();
        if (broken.Count > 0) measured = measured with { Tops = [.. measured.Tops.Select(t => t with { Top = t.Top with { Breaks = [] } })] };
        var aims = product.WholeTopAtOnce || product.Method is ApplicationMethod.Poured ? job.Aims : SectionCount.Bounded(job.Aims, measured);
        var work = product.Method is ApplicationMethod.Poured
            ? new PourPlanning(job, conditions).Plan(measured)
            : await new HandsChoice(job with { Aims = aims }, conditions, ways, effort).PlanAsync(measured);
        if (aims != job.Aims) work = work with { Reasons = [.. work.Reasons, SectionCount.MadeLarger(job.Aims, aims, work.Sections.Count)] };
        return broken.Count == 0 ? work : work with { Reasons = [.. work.Reasons, BreakNotAllowed(product, broken)] };
    }

    private static Reason BreakNotAllowed(Product product, IReadOnlyList<MeasuredTop> broken)
    {
        var tops = string.Join(", ", broken.Select(t => t.Top.Name));
        return new Reason("BreakNotAllowed", Limit.Note,
            v => v.Say($"{product.Name} allows no break: the planned joints of {tops} are passed over in this coat, and the top is done through.",
                $"{product.Name} no admite juntas: en esta capa no se hacen las juntas previstas de {tops}, y la cubierta se hace de corrido."),
            v => v.Say("Have hands and material ready for the whole top, or choose a product that allows a break there.",
                "Tenga manos y material listos para toda la cubierta, o elija un producto que admita una junta ahí."));
    }
}
