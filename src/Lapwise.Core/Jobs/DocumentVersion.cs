using Lapwise.Core.Explain;

namespace Lapwise.Core.Jobs;

/// <summary>Which versions of a document can be read.</summary>
internal static class DocumentVersion
{
    /// <summary>Null where the version can be read.</summary>
    public static Fault? Refuse(string path, int version, int current)
    {
        if (version == current) return null;
        if (version < current)
        {
            return new Fault(path, "VersionUnknown",
                v => v.Say($"There is no version {version} of this document; the oldest is 1.", $"No existe la versión {version} de este documento; la más antigua es la 1."),
                v => v.Say($"Write lapwise: {current}.", $"Escriba lapwise: {current}."));
        }

        return new Fault(path, "MadeByNewerVersion",
            v => v.Say($"This document is version {version}, made by a newer version of the program; this one reads up to version {current}.", $"Este documento es de la versión {version}, hecha por una versión más nueva del programa; esta lee hasta la versión {current}."),
            v => v.Say("Update the program and open it again; the document is unchanged.", "Actualice el programa y ábralo de nuevo; el documento no ha cambiado."));
    }
}
