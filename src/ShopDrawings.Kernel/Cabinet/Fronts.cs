namespace ShopDrawings.Kernel;

/// <summary>Puts handles and fittings on doors and drawer fronts.</summary>
internal static class Fronts
{
    /// <summary>Adds a part and what it needs in its panel.</summary>
    public static void Fit(AssemblyBuilder assembly, Fitting fitting)
    {
        assembly.Add(fitting.Placed);
        assembly.Write(fitting.Panel.Id, fitting.Features());
    }

    /// <summary>The quarter turns that lay a part's length level on a face that stands, or across the cabinet on one that lies.</summary>
    public static int Level(Panel panel) => panel.Placement!.AlongLength.Axis() == 0 ? 0 : 1;

    /// <summary>Puts a handle on the outside face of a door or a drawer front.</summary>
    /// <param name="assembly">Where the front is.</param>
    /// <param name="handle">The handle and its place.</param>
    /// <param name="frontId">The front.</param>
    /// <param name="opens">Where the edge that opens looks; at the middle of the front where nothing opens sideways.</param>
    /// <param name="isUpright">Whether the handle's length runs up.</param>
    public static void Handle(AssemblyBuilder assembly, HandleSpec handle, string frontId, Direction? opens, bool isUpright)
    {
        var front = assembly.Find(frontId)!;
        var (left, right) = front.Extent(0);
        var (low, high) = front.Extent(2);
        var x = opens switch
        {
            Direction.Right => right - handle.FromEdge,
            Direction.Left => left + handle.FromEdge,
            _ => left + (right - left) / 2,
        };
        var z = handle.FromTop is { } top ? high - top : handle.FromBottom is { } bottom ? low + bottom : low + (high - low) / 2;
        var level = Level(front);
        Fit(assembly, new Fitting($"{frontId}/handle", handle.Pattern, front, Surface.Outside, front.OnFace(new SizePoint(x, Size.Zero, z)), isUpright ? 1 - level : level));
    }
}
