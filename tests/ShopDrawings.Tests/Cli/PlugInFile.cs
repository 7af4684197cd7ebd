using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace ShopDrawings.Tests.Cli;

/// <summary>Assemblies to try plug-ins with.</summary>
internal static class PlugInFile
{
    /// <summary>The sample, as its own project builds it beside the tests.</summary>
    public static string Sample
    {
        get
        {
            var built = new DirectoryInfo(AppContext.BaseDirectory);
            return Path.Combine(OutsideProgram.RepositoryRoot, "tests", "ShopDrawings.SampleExporter", "bin", built.Parent!.Name, built.Name, "ShopDrawings.SampleExporter.dll");
        }
    }

    /// <summary>Writes an assembly with public classes that derive from another and give its constructor one text, if it takes one.</summary>
    /// <param name="path">Where it goes.</param>
    /// <param name="classes">Full name, base class and text of each.</param>
    public static string Write(string path, params (string Name, Type Base, string? Text)[] classes)
    {
        var assembly = new PersistedAssemblyBuilder(new AssemblyName(Path.GetFileNameWithoutExtension(path)), typeof(object).Assembly);
        var module = assembly.DefineDynamicModule("module");
        foreach (var (name, of, text) in classes)
        {
            var type = module.DefineType(name, TypeAttributes.Public | TypeAttributes.Class, of);
            var body = type.DefineConstructor(MethodAttributes.Public, CallingConventions.Standard, null).GetILGenerator();
            var constructor = of.GetConstructors(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic).Single();
            body.Emit(OpCodes.Ldarg_0);
            if (constructor.GetParameters().Length > 0 && text is null) body.Emit(OpCodes.Ldnull);
            if (constructor.GetParameters().Length > 0 && text is not null) body.Emit(OpCodes.Ldstr, text);
            body.Emit(OpCodes.Call, constructor);
            body.Emit(OpCodes.Ret);
            type.CreateType();
        }

        assembly.Save(path);
        return path;
    }

    /// <summary>Writes the sample anew, as if it had been built against version 99 of an assembly.</summary>
    public static string BuiltAgainst(string referenced, string path)
    {
        var bytes = File.ReadAllBytes(Sample);
        using var image = new PEReader(new MemoryStream(bytes));
        var metadata = image.GetMetadataReader();
        var row = metadata.AssemblyReferences.Single(r => metadata.GetString(metadata.GetAssemblyReference(r).Name) == referenced);
        // A row of the table begins with the major version, two bytes (ECMA-335, II.22.5).
        var at = image.PEHeaders.MetadataStartOffset + metadata.GetTableMetadataOffset(TableIndex.AssemblyRef) + (MetadataTokens.GetRowNumber(row) - 1) * metadata.GetTableRowSize(TableIndex.AssemblyRef);
        bytes[at] = 99;
        File.WriteAllBytes(path, bytes);
        return path;
    }
}
