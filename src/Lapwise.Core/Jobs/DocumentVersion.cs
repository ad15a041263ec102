namespace Lapwise.Core.Jobs;

/// <summary>Which versions of a document can be read.</summary>
internal static class DocumentVersion
{
    public static bool CanRead(Fields fields, string path, int version, int current)
    {
        if (version == current) return true;
        if (version > current)
        {
            fields.Add(path, "MadeByNewerVersion",
                v => v.Say($"This document is version {version}, made by a newer version of the program; this one reads up to version {current}.", $"Este documento es de la versión {version}, hecha por una versión más nueva del programa; esta lee hasta la versión {current}."),
                v => v.Say("Update the program and open it again; the document is unchanged.", "Actualice el programa y ábralo de nuevo; el documento no ha cambiado."));
        }
        else
        {
            fields.Add(path, "VersionUnknown",
                v => v.Say($"There is no version {version} of this document; versions start at 1.", $"No existe la versión {version} de este documento; las versiones empiezan en 1."),
                v => v.Say($"Write lapwise: {current}.", $"Escriba lapwise: {current}."));
        }

        return false;
    }
}
