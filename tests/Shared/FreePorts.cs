using System.Net;
using System.Net.Sockets;

namespace Lapwise.Shared;

/// <summary>Ports for the doors of a server under test that must be known before it listens.</summary>
internal static class FreePorts
{
    // Below what the system hands out by itself (Linux from 32768, elsewhere from 49152): a port of those may go to any
    // connection or listener beside before the server takes it.
    private const int Lowest = 20_000, Highest = 32_000;

    private static int next = Random.Shared.Next(Lowest, Highest);

    /// <summary>The first of so many ports in a row that nobody listens on; no two calls share one.</summary>
    public static int InARow(int count)
    {
        while (true)
        {
            var first = Lowest + (Interlocked.Add(ref next, count) - count - Lowest) % (Highest - Lowest);
            if (Enumerable.Range(first, count).All(IsFree)) return first;
        }
    }

    private static bool IsFree(int port)
    {
        using var listener = new TcpListener(IPAddress.IPv6Any, port);
        listener.Server.DualMode = true;
        try
        {
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
