using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Client.Fields;

/// <summary>What a time rests on, in words.</summary>
internal static class Origins
{
    public static string Words(Origin origin, Voice voice) => origin switch
    {
        Origin.DataSheet => voice.Say("from the data sheet", "de la ficha técnica"),
        Origin.TestBoard => voice.Say("from your test board", "de su placa de prueba"),
        _ => voice.Say("a guess: try a test board", "una estimación: haga una placa de prueba"),
    };
}
