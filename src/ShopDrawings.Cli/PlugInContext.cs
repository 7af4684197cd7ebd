using System.Reflection;
using System.Runtime.Loader;

namespace ShopDrawings.Cli;

/// <summary>
/// Loads one assembly of somebody else's with its dependencies from its own folder, as its <c>.deps.json</c> says. What is ours it shares with this
/// program, so that the types of the interfaces are the same ones.
/// </summary>
internal sealed class PlugInContext(string path) : AssemblyLoadContext(Path.GetFileName(path))
{
    // Ours, and the package whose types stand in our public surface.
    private static readonly HashSet<string> Shared = [.. Ours(typeof(Shop).Assembly.GetName()).Append("UnitsNet")];

    private readonly AssemblyDependencyResolver resolver = new(path);

    /// <summary>File name of the plug-in that an object comes from, or nothing where it is one of our own.</summary>
    public static string? FileOf(object exporter) => (GetLoadContext(exporter.GetType().Assembly) as PlugInContext)?.Name;

    /// <summary>Whether a name is that of an assembly a plug-in has to bring along: neither ours nor the runtime's.</summary>
    public static bool IsTheirs(string? assembly) =>
        assembly is not null && new AssemblyName(assembly).Name! is var name && !Shared.Contains(name) && name is not ("mscorlib" or "netstandard") && !name.StartsWith("System.", StringComparison.Ordinal);

    /// <summary>Loads the plug-in itself.</summary>
    public Assembly Load() => LoadFromAssemblyPath(path);

    /// <inheritdoc/>
    protected override Assembly? Load(AssemblyName assemblyName)
    {
        if (Shared.Contains(assemblyName.Name!)) return Default.LoadFromAssemblyName(assemblyName);
        return resolver.ResolveAssemblyToPath(assemblyName) is { } found ? LoadFromAssemblyPath(found) : null;
    }

    /// <inheritdoc/>
    protected override nint LoadUnmanagedDll(string unmanagedDllName) =>
        resolver.ResolveUnmanagedDllToPath(unmanagedDllName) is { } found ? LoadUnmanagedDllFromPath(found) : 0;

    private static IEnumerable<string> Ours(AssemblyName name) =>
        Default.LoadFromAssemblyName(name).GetReferencedAssemblies().Where(r => r.Name!.StartsWith("ShopDrawings", StringComparison.Ordinal)).SelectMany(Ours).Prepend(name.Name!);
}
