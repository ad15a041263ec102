using Lapwise.Client.Jobs;
using Lapwise.Client.Voices;
using Lapwise.Core.Jobs;
using Microsoft.AspNetCore.Components;

namespace Lapwise.Client.Fields;

/// <summary>A part of the page that shows or changes the open job.</summary>
public abstract class JobPart : Speaking
{
    [CascadingParameter] internal OpenJob Open { get; set; } = null!;

    internal JobDocument Document => Open.Document;
    internal Workings Workings => Open.Workings;

    internal void Change(Func<JobDocument, JobDocument> change) => Open.Change(change);
}
