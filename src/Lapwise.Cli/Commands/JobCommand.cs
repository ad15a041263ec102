using Lapwise.Core;
using Lapwise.Core.Bases;
using Lapwise.Core.Explain;

namespace Lapwise.Cli.Commands;

/// <summary>What commands on a job document share: read it, work it, answer, print.</summary>
internal static class JobCommand
{
    public static Command Of(string name, IReadOnlyList<Phase> answers, Phrase summary, Phrase more, Func<WholeJob, Voice, Request, Terminal, Outcome> answer) =>
        WithProducts(name, answers, summary, more, (whole, input, request, terminal) => answer(whole, input.Voice, request, terminal));

    /// <summary>The same for a command that asks about the products at hand too.</summary>
    public static Command WithProducts(string name, IReadOnlyList<Phase> answers, Phrase summary, Phrase more, Func<WholeJob, JobInput, Request, Terminal, Outcome> answer) =>
        new(name, ["JOB"], answers, summary, more, (request, terminal) =>
        {
            if (JobInput.Read(request, terminal) is not { } input || input.Work(terminal) is not { } whole) return Outcome.BadInput;
            var outcome = answer(whole, input, request, terminal);
            if (request.Explain && !request.Json && outcome is not Outcome.BadInput) terminal.Bases(JobBases.Of(whole).Where(b => answers.Contains(b.Phase)), input.Voice);
            return outcome;
        });
}
