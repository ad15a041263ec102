using System.Net.Sockets;
using Lapwise.Server;

var settings = ServerSettings.FromEnvironment();
await using var app = LapwiseServer.Build(settings, TimeProvider.System);
try
{
    await LapwiseServer.Start(app, CancellationToken.None);
}
catch (IOException e) when (e.InnerException is SocketException or Microsoft.AspNetCore.Connections.AddressInUseException)
{
    Console.Error.WriteLine($"Port {settings.Port} is in use by another program. Set LAPWISE_PORT to another number.");
    Console.Error.WriteLine($"Otro programa usa el puerto {settings.Port}. Ponga otro número en LAPWISE_PORT.");
    return 1;
}

Console.WriteLine();
Console.WriteLine($"  Lapwise is ready:  {LapwiseServer.AddressOf(app)}");
Console.WriteLine($"  Lapwise está listo:  {LapwiseServer.AddressOf(app)}");
Console.WriteLine($"  Data / datos: {settings.DatabasePath}   (Ctrl+C)");
Console.WriteLine();
await app.WaitForShutdownAsync();
return 0;
