namespace ShopDrawings.Kernel;

/// <summary>Carries sizes with their derivations between a panel's frame and the assembly. Only for placed panels. Lengths in mm.</summary>
internal static class PanelFrame
{
    /// <summary>The panel axis (0 length, 1 width, 2 thickness) that runs along an assembly axis, and where it points.</summary>
    public static (int PanelAxis, Direction Direction) AxisAlong(this Panel panel, int assemblyAxis)
    {
        var placement = panel.Placement!;
        if (placement.AlongLength.Axis() == assemblyAxis) return (0, placement.AlongLength);
        return placement.AlongWidth.Axis() == assemblyAxis ? (1, placement.AlongWidth) : (2, placement.Inwards);
    }

    /// <summary>Where the panel begins and ends along an assembly axis.</summary>
    public static (Size From, Size To) Extent(this Panel panel, int assemblyAxis)
    {
        var (panelAxis, direction) = panel.AxisAlong(assemblyAxis);
        var extent = panelAxis switch { 0 => panel.Length, 1 => panel.Width, _ => panel.Thickness };
        var origin = panel.Origin(assemblyAxis);
        return direction.IsPositive() ? (origin, origin + extent) : (origin - extent, origin);
    }

    /// <summary>A coordinate of the panel's frame as one of the assembly.</summary>
    public static Size ToAssembly(this Panel panel, int assemblyAxis, Size panelCoordinate)
    {
        var origin = panel.Origin(assemblyAxis);
        return panel.AxisAlong(assemblyAxis).Direction.IsPositive() ? origin + panelCoordinate : origin - panelCoordinate;
    }

    /// <summary>A coordinate of the assembly as one of the panel's frame.</summary>
    public static Size ToPanel(this Panel panel, int assemblyAxis, Size assemblyCoordinate)
    {
        var origin = panel.Origin(assemblyAxis);
        return panel.AxisAlong(assemblyAxis).Direction.IsPositive() ? assemblyCoordinate - origin : origin - assemblyCoordinate;
    }

    /// <summary>The position on one of the panel's faces of an assembly point, its coordinate across the face left out.</summary>
    public static Position OnFace(this Panel panel, SizePoint point)
    {
        var placement = panel.Placement!;
        var (x, y) = (placement.AlongLength.Axis(), placement.AlongWidth.Axis());
        return new Position(panel.ToPanel(x, point.Along(x)), panel.ToPanel(y, point.Along(y)));
    }

    /// <summary>The assembly point of a position on one of the panel's faces; its coordinate across the face is that of the panel's origin.</summary>
    public static SizePoint ToAssembly(this Panel panel, Position at)
    {
        Size Along(int axis)
        {
            var (panelAxis, _) = panel.AxisAlong(axis);
            return panelAxis == 2 ? panel.Origin(axis) : panel.ToAssembly(axis, panelAxis == 0 ? at.X : at.Y);
        }

        return new SizePoint(Along(0), Along(1), Along(2));
    }

    private static Size Origin(this Panel panel, int assemblyAxis) =>
        assemblyAxis switch { 0 => panel.Placement!.X, 1 => panel.Placement!.Y, _ => panel.Placement!.Z };
}

/// <summary>A point of the assembly, each coordinate with its derivation.</summary>
internal readonly record struct SizePoint(Size X, Size Y, Size Z)
{
    /// <summary>A coordinate: 0 x, 1 y, 2 z.</summary>
    public Size Along(int axis) => axis switch { 0 => X, 1 => Y, _ => Z };
}
