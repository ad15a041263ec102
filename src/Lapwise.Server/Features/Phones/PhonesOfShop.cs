using System.Globalization;
using System.Text;
using Lapwise.Server.Http;
using Lapwise.Server.Phones;
using Lapwise.Wire;
using QRCoder;

namespace Lapwise.Server.Features.Phones;

/// <summary>
/// <c>/api/phones</c>: opens and closes the door for phones, shows a code, and takes devices off the list.
/// Only this computer is answered here; <see cref="Gate"/> sees to it.
/// </summary>
internal static class PhonesOfShop
{
    public static void Map(IEndpointRouteBuilder api)
    {
        var phones = api.MapGroup("/phones").WithTags("Phones");
        phones.MapGet("", (PhoneDoor door, PhoneBook book, PairingCode code) => Line(door, book, code))
            .WithName("ReadPhones").WithSummary("Whether phones are let in, and which.").Produces<PhonesLine>();
        phones.MapPut("/door", Open).WithName("OpenDoor").WithSummary("Lets phones on this network ask, once they are paired.").Produces<PhonesLine>().ProducesProblem(StatusCodes.Status409Conflict);
        phones.MapDelete("/door", Close).WithName("CloseDoor").WithSummary("Closes the door; paired devices stay on the list.").Produces<PhonesLine>();
        phones.MapPost("/code", Show).WithName("ShowCode").WithSummary("A new code that lets one device in.").Produces<PhonesLine>().ProducesProblem(StatusCodes.Status409Conflict);
        phones.MapDelete("/{id}", Remove).WithName("RemovePhone").WithSummary("Takes a device off the list; it is turned away from now on.").Produces<PhonesLine>().ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> Open(PhoneDoor door, PhoneBook book, PairingCode code, CancellationToken cancel) =>
        await door.Open(cancel)
            ? Results.Ok(Line(door, book, code))
            : Results.Problem(type: "urn:lapwise:problem:port", statusCode: StatusCodes.Status409Conflict, title: "The port is in use",
                detail: $"Another program uses port {door.Port.ToString(CultureInfo.InvariantCulture)}. Set LAPWISE_PHONE_PORT to another number and start again.");

    private static IResult Close(PhoneDoor door, PhoneBook book, PairingCode code)
    {
        door.Close();
        return Results.Ok(Line(door, book, code));
    }

    private static async Task<IResult> Show(PhoneDoor door, PhoneBook book, PairingCode code, CancellationToken cancel)
    {
        if (!door.IsOpen) return Results.Problem(type: "urn:lapwise:problem:door", statusCode: StatusCodes.Status409Conflict, title: "The door is closed");
        await door.ShowCode(cancel);
        return Results.Ok(Line(door, book, code));
    }

    private static IResult Remove(string id, PhoneDoor door, PhoneBook book, PairingCode code) =>
        book.Remove(id) ? Results.Ok(Line(door, book, code)) : Problems.NotFound();

    private static PhonesLine Line(PhoneDoor door, PhoneBook book, PairingCode code)
    {
        var host = LanNames.Now().ForPhones?.ToString();
        var page = host is null ? null : string.Create(CultureInfo.InvariantCulture, $"https://{host}:{door.Port}/pair");
        var certificate = host is null ? null : string.Create(CultureInfo.InvariantCulture, $"http://{host}:{door.CertificatePort}/");
        var shown = door.IsOpen ? code.Shown : null;
        return new PhonesLine(
            door.IsOpen, page, page is null ? null : Qr(page), certificate, certificate is null ? null : Qr(certificate),
            door.IsOpen ? door.Authority.Fingerprint : null,
            shown?.Code, (int)(shown?.Left.TotalSeconds ?? 0),
            [.. book.Phones.Select(p => new PhoneLine(p.Id, p.Name, p.Since, p.Seen))]);
    }

    /// <summary>The address as squares that a camera reads: the path of an SVG of <c>n</c> by <c>n</c>, as <c>n path</c>.</summary>
    private static string Qr(string address)
    {
        using var code = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.M);
        var squares = code.ModuleMatrix;
        var path = new StringBuilder().Append(CultureInfo.InvariantCulture, $"{squares.Count} ");
        for (var y = 0; y < squares.Count; y++)
        {
            for (var x = 0; x < squares[y].Length; x++)
            {
                if (squares[y][x]) path.Append(CultureInfo.InvariantCulture, $"M{x} {y}h1v1h-1z");
            }
        }

        return path.ToString();
    }
}
