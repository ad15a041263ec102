using Lapwise.Client.Jobs;
using Lapwise.Client.Voices;
using Lapwise.Core.Jobs;
using Microsoft.AspNetCore.Components;

namespace Lapwise.Client.Fields;

/// <summary>
/// A part of the page that shows or changes the open job. It is drawn anew when it was used itself, and when what it is given
/// or what it shows of the job has become another: a key in one field does not draw the rest of the page.
/// What stands in a list of the job, a top or a cutout, it is given, and looks up as it stands by now where it is still there: it
/// is asked once more when that is gone, and draws itself before the page does while one types.
/// </summary>
public abstract class JobPart : Speaking
{
    private Dictionary<string, object?> given = [];
    private object? shown;
    private bool isTold;
    private bool isGivenTheSame;

    [CascadingParameter] internal OpenJob Open { get; set; } = null!;

    internal JobDocument Document => Open.Document;
    internal Workings Workings => Open.Workings;

    /// <summary>What of the job it shows, as something to hold against the next: all of it where it does not say.</summary>
    private protected virtual object? Shows => (Document, Workings.Stand);

    internal void Change(Func<JobDocument, JobDocument> change) => Open.Change(change);

    public override Task SetParametersAsync(ParameterView parameters)
    {
        var now = new Dictionary<string, object?>(StringComparer.Ordinal);
        foreach (var parameter in parameters)
            if (!IsWayBack(parameter.Value)) now[parameter.Name] = parameter.Value;
        isGivenTheSame = now.Count == given.Count && now.All(n => given.TryGetValue(n.Key, out var before) && Equals(n.Value, before));
        given = now;
        isTold = true;
        var going = base.SetParametersAsync(parameters);
        isTold = false;
        return going;
    }

    protected override bool ShouldRender()
    {
        var before = shown;
        shown = Shows;
        return !isTold || !isGivenTheSame || !Equals(shown, before);
    }

    /// <summary>What is called when the part is used; it is another object each time and shows nothing.</summary>
    private static bool IsWayBack(object? value) =>
        value is EventCallback or (Delegate and not RenderFragment) || (value?.GetType() is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(EventCallback<>));
}
