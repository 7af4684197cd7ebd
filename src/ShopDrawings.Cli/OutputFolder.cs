using System.Text;

namespace ShopDrawings.Cli;

/// <summary>
/// A folder of results that is replaced as a whole. The new one is built beside it under a hidden name and takes its place in one step; until
/// then the old one stays as it is. A manifest in it lists what this program wrote: a folder with other content and no manifest is refused,
/// and files in it that are not ours are carried over.
/// </summary>
internal sealed class OutputFolder : IDisposable
{
    /// <summary>Name of the manifest.</summary>
    public const string Manifest = ".shopdrawings-manifest";

    private const string Heading = "Written by ShopDrawings; the files listed here are replaced by the next run.";
    private const string Unfinished = "unfinished";

    private readonly string folder;
    private readonly string staging;
    private readonly string retired;
    private FileStream? claim;

    private OutputFolder(string folder)
    {
        this.folder = folder;
        var (parent, name) = (Path.GetDirectoryName(folder)!, Path.GetFileName(folder));
        staging = Path.Combine(parent, $".{name}.new");
        retired = Path.Combine(parent, $".{name}.old");
    }

    /// <summary>A folder that may be written, claimed until it is disposed of.</summary>
    /// <exception cref="WrongCallException">It is a file, the working folder or one above it, or holds files that are not ours.</exception>
    /// <exception cref="IOException">Another run is writing it, or the place cannot be written.</exception>
    public static OutputFolder At(string path)
    {
        if (string.IsNullOrWhiteSpace(path)) throw new WrongCallException("the output folder has no name");
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        if (Directory.Exists(full) && Directory.ResolveLinkTarget(full, true) is { } target) full = Path.TrimEndingDirectorySeparator(target.FullName);
        if (File.Exists(full)) throw new WrongCallException($"“{path}” is a file; name a folder");
        var working = Path.TrimEndingDirectorySeparator(Directory.GetCurrentDirectory());
        if (Path.GetDirectoryName(full) is null || working == full || working.StartsWith(full + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            throw new WrongCallException($"“{path}” is the working folder or above it and cannot be replaced; name a folder below it");
        var result = new OutputFolder(full);
        try
        {
            result.Claim();
            result.Recover();
            if (Directory.Exists(full) && Directory.EnumerateFileSystemEntries(full).Any() && !IsOurs(full))
                throw new WrongCallException($"“{path}” holds files this program did not write; name another folder, or empty it");
            return result;
        }
        catch
        {
            result.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => claim?.Dispose();

    /// <summary>Writes all files and puts them in the folder's place.</summary>
    /// <exception cref="WrongCallException">A file that is not ours stands where one of ours must go.</exception>
    /// <exception cref="OperationCanceledException">The user stopped it; nothing was changed.</exception>
    public void Publish(IReadOnlyList<Output> files, CancellationToken stop)
    {
        var foreign = Foreign();
        var ours = files.Select(f => f.Path).ToHashSet(StringComparer.OrdinalIgnoreCase);
        if (foreign.FirstOrDefault(f => ours.Contains(f) || ours.Any(o => o.StartsWith(f + "/", StringComparison.OrdinalIgnoreCase))) is { } inTheWay)
            throw new WrongCallException($"“{inTheWay}” in the output folder is not ours and stands where a result must go; move it away");
        Directory.CreateDirectory(Path.GetDirectoryName(folder)!);
        if (claim is null) Claim();
        if (Directory.Exists(staging)) Directory.Delete(staging, true);
        try
        {
            Directory.CreateDirectory(staging);
            WriteManifest([Unfinished]);
            foreach (var file in files)
            {
                stop.ThrowIfCancellationRequested();
                var path = Path.Combine(staging, file.Path);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
                file.Write(stream);
            }

            foreach (var file in foreign) CarryOver(file);
            WriteManifest(files.Select(f => f.Path).Order(StringComparer.Ordinal));
            stop.ThrowIfCancellationRequested();
            Swap();
        }
        catch
        {
            if (Directory.Exists(staging)) Directory.Delete(staging, true);
            throw;
        }
    }

    // One run at a time: a second one would write into the first one's staging folder.
    private void Claim()
    {
        var parent = Path.GetDirectoryName(folder)!;
        if (!Directory.Exists(parent)) return;
        var path = Path.Combine(parent, $".{Path.GetFileName(folder)}.lock");
        try
        {
            claim = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
        }
        catch (IOException) when (File.Exists(path))
        {
            throw new IOException($"another run is writing “{folder}” now; wait for it, or name another folder");
        }
    }

    // A run that was cut off between two renames left the folder's place empty.
    private void Recover()
    {
        if (Directory.Exists(staging) && !IsOurs(staging)) throw new WrongCallException($"“{staging}” is in the way; it is not ours, so move it away");
        if (!Directory.Exists(retired)) return;
        if (!IsOurs(retired)) throw new WrongCallException($"“{retired}” is in the way; it is not ours, so move it away");
        if (Directory.Exists(folder)) Directory.Delete(retired, true);
        else if (Directory.Exists(staging) && !ManifestOf(staging).Contains(Unfinished))
        {
            Directory.Move(staging, folder);
            Directory.Delete(retired, true);
        }
        else Directory.Move(retired, folder);
    }

    private void Swap()
    {
        if (!Directory.Exists(folder))
        {
            Directory.Move(staging, folder);
            return;
        }

        if (ExchangeRename.Try(staging, folder))
        {
            Discard(staging);
            return;
        }

        Directory.Move(folder, retired);
        try
        {
            Directory.Move(staging, folder);
        }
        catch
        {
            Directory.Move(retired, folder);
            throw;
        }

        Discard(retired);
    }

    // The result is in its place; what cannot be cleared away now, the next run clears.
    private static void Discard(string path)
    {
        try
        {
            Directory.Delete(path, true);
        }
        catch (IOException)
        {
        }
        catch (UnauthorizedAccessException)
        {
        }
    }

    // Everything in the folder that the manifest does not list: files and links by their path, and folders with nothing in them.
    private List<string> Foreign()
    {
        if (!Directory.Exists(folder)) return [];
        var ours = ManifestOf(folder).Append(Manifest).ToHashSet(StringComparer.Ordinal);
        var foreign = new List<string>();
        void Look(DirectoryInfo directory, string prefix)
        {
            foreach (var entry in directory.EnumerateFileSystemInfos().OrderBy(e => e.Name, StringComparer.Ordinal))
            {
                var path = prefix + entry.Name;
                if (entry is DirectoryInfo { LinkTarget: null } below)
                {
                    if (!below.EnumerateFileSystemInfos().Any()) foreign.Add(path);
                    else Look(below, path + "/");
                }
                else if (!ours.Contains(path))
                {
                    foreign.Add(path);
                }
            }
        }

        Look(new DirectoryInfo(folder), "");
        return foreign;
    }

    private void CarryOver(string path)
    {
        var (from, to) = (Path.Combine(folder, path), Path.Combine(staging, path));
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        if (new FileInfo(from).LinkTarget is { } target) File.CreateSymbolicLink(to, target);
        else if (Directory.Exists(from)) Directory.CreateDirectory(to);
        else
        {
            File.Copy(from, to);
            File.SetLastWriteTimeUtc(to, File.GetLastWriteTimeUtc(from));
        }
    }

    private void WriteManifest(IEnumerable<string> lines) =>
        File.WriteAllText(Path.Combine(staging, Manifest), string.Concat(lines.Prepend(Heading).Select(l => l + "\n")), new UTF8Encoding(false));

    private static bool IsOurs(string path)
    {
        var manifest = Path.Combine(path, Manifest);
        return File.Exists(manifest) && File.ReadLines(manifest).FirstOrDefault() == Heading;
    }

    private static List<string> ManifestOf(string path) => IsOurs(path) ? [.. File.ReadLines(Path.Combine(path, Manifest)).Skip(1)] : [];
}
