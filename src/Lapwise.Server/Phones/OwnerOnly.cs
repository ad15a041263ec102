namespace Lapwise.Server.Phones;

/// <summary>Files that nobody but this person may read. On Windows the person's own data folder is closed to others already.</summary>
internal static class OwnerOnly
{
    /// <summary>Replaces the file as a whole: a power cut leaves the old one or the new one.</summary>
    public static void Write(string path, byte[] content)
    {
        var folder = Path.GetDirectoryName(path)!;
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);

        var fresh = path + ".new";
        File.Delete(fresh);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using (var file = new FileStream(fresh, options))
        {
            file.Write(content);
            file.Flush(flushToDisk: true);
        }

        File.Move(fresh, path, overwrite: true);
    }
}
