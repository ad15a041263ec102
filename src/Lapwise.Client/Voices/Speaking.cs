using Lapwise.Core.Explain;
using Microsoft.AspNetCore.Components;

namespace Lapwise.Client.Voices;

/// <summary>A part of the page that says something.</summary>
public abstract class Speaking : ComponentBase
{
    [CascadingParameter] public Voice Voice { get; set; } = Voice.Default;

    protected string Say(string en, string es) => Voice.Say(en, es);

    /// <summary>Words that begin a line.</summary>
    protected static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
