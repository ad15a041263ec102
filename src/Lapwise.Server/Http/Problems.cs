using Lapwise.Core.Explain;
using Lapwise.Wire;

namespace Lapwise.Server.Http;

/// <summary>Refusals by RFC 9457. Each type ends in a name that a program can hold on to.</summary>
internal static class Problems
{
    public static IResult NotFound() =>
        Say("not-found", StatusCodes.Status404NotFound, "There is nothing here", "Nothing is stored under this address.");

    public static IResult BadId(string id) =>
        Say("bad-id", StatusCodes.Status400BadRequest, "The id cannot be used", $"\"{id}\": use up to 64 letters, digits, - and _.");

    public static IResult Photo(int status, string detail) => Say("photo", status, "The photo is not kept", detail);

    public static IResult VersionMissing() =>
        Say("version-missing", StatusCodes.Status428PreconditionRequired, "The version is missing",
            "Say which version the change was made from: If-Match with the ETag of what was read, or If-None-Match: * for something new.");

    /// <summary>Somebody saved in between; <paramref name="version"/> is what stands in the store.</summary>
    public static IResult Clash(long version) =>
        Results.Problem(
            type: TypeOf("clash"),
            statusCode: StatusCodes.Status412PreconditionFailed,
            title: "It was changed in between",
            detail: "Nothing was overwritten. Read it again, and save from the version that stands.",
            extensions: new Dictionary<string, object?>(StringComparer.Ordinal) { ["version"] = version });

    /// <summary>A document that could not be used, each fault at its path.</summary>
    public static IResult Faults(int status, IReadOnlyList<Fault> faults, Voice voice) =>
        Results.Problem(
            type: TypeOf("faults"),
            statusCode: status,
            title: voice.Say("What was entered cannot be used", "Lo anotado no se puede usar"),
            detail: faults[0].Say(voice),
            extensions: new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                ["faults"] = faults.Select(f => new FaultLine(f.Path, f.Code, (f.Line is { } line ? voice.Say($"Line {line}: ", $"Línea {line}: ") : "") + f.Text(voice), f.Cure(voice))).ToList(),
            });

    private static IResult Say(string name, int status, string title, string detail) =>
        Results.Problem(type: TypeOf(name), statusCode: status, title: title, detail: detail);

    private static string TypeOf(string name) => "urn:lapwise:problem:" + name;
}
