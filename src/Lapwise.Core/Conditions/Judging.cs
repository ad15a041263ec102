using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions;

/// <summary>May I coat in this room today, and how long does the film stay open?</summary>
public static class Judging
{
    public static JobConditions Judge(Job job) => throw new NotSupportedException();
}
