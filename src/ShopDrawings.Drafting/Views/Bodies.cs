using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What is looked at in all views of an assembly: its placed panels, and the blocks its bought parts take.</summary>
internal sealed class Bodies
{
    /// <summary>The bodies of an assembly.</summary>
    public Bodies(Assembly assembly)
    {
        Panels = [.. assembly.Panels.Where(p => p.Placement is not null).Select(p => (p, Body.Of(p)))];
        var byId = Panels.ToDictionary(p => p.Panel.Id, p => p.Panel, StringComparer.Ordinal);
        Hardware =
        [
            .. from piece in assembly.Hardware
               where piece.Mounts.Length > 0 && byId.ContainsKey(piece.Mounts[0].Panel)
               let panel = byId[piece.Mounts[0].Panel]
               from volume in piece.Volumes
               select (panel, Body.Block(panel.Placement!.ToAssembly(volume))),
        ];
    }

    /// <summary>The placed panels in building order.</summary>
    public ImmutableArray<(Panel Panel, Body Body)> Panels { get; }

    /// <summary>The blocks of bought parts, with the panel each is fixed to first.</summary>
    public ImmutableArray<(Panel FixedTo, Body Body)> Hardware { get; }
}
