using System.Runtime.InteropServices;

namespace ShopDrawings.Cli;

/// <summary>Swaps two folders in one step where the system can.</summary>
internal static partial class ExchangeRename
{
    private const int CurrentFolder = -100;
    private const uint Exchange = 2;

    /// <summary>Swaps the names of two folders.</summary>
    /// <returns>Whether it was done; where the system or the file system cannot, nothing is changed.</returns>
    public static bool Try(string a, string b)
    {
        if (!OperatingSystem.IsLinux()) return false;
        try
        {
            return RenameAt2(CurrentFolder, a, CurrentFolder, b, Exchange) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            return false;
        }
    }

    [LibraryImport("libc", EntryPoint = "renameat2", StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int RenameAt2(int oldFolder, string oldPath, int newFolder, string newPath, uint flags);
}
