using System.Runtime.InteropServices.JavaScript;

namespace Lapwise.Client.Jobs;

/// <summary>
/// The end of one of the browser's tasks and the beginning of the next: it draws and takes taps, and comes back at once. A
/// timer would be held back for some milliseconds each time, and so would what waits for a promise of the browser's own.
/// </summary>
internal static partial class GivingWay
{
    private static readonly Queue<TaskCompletionSource> Waiting = new();

    static GivingWay() => OnTurn(() => Waiting.Dequeue().SetResult());

    /// <summary>Completes in a task of the browser's own, in the order of asking.</summary>
    public static Task Now()
    {
        var turn = new TaskCompletionSource();
        Waiting.Enqueue(turn);
        AskForTurn();
        return turn.Task;
    }

    [JSImport("globalThis.lapwise.onTurn")]
    private static partial void OnTurn([JSMarshalAs<JSType.Function>] Action goOn);

    [JSImport("globalThis.lapwise.askForTurn")]
    private static partial void AskForTurn();
}
