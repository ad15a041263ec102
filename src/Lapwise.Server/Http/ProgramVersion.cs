namespace Lapwise.Server.Http;

/// <summary>The version of this program, as it is said in headers and documents.</summary>
internal static class ProgramVersion
{
    public static readonly string Own = typeof(ProgramVersion).Assembly.GetName().Version!.ToString(3);
}
