namespace ShopDrawings.Dxf;

/// <summary>
/// The handles of what every file holds: fixed, so that the same drawing gives the same bytes. Whatever a drawing adds counts upwards
/// from <see cref="FirstFree"/> in the order of writing.
/// </summary>
internal static class SkeletonHandle
{
    public const long None = 0;

    public const long RootDictionary = 0x1, GroupDictionary = 0x2, LayoutDictionary = 0x3, PlotSettingsDictionary = 0x4;
    public const long PlotStyleDictionary = 0x5, NormalPlotStyle = 0x6, ModelLayout = 0x7, PaperLayout = 0x8;

    public const long ViewportTable = 0x10, LinetypeTable = 0x11, LayerTable = 0x12, StyleTable = 0x13, ViewTable = 0x14;
    public const long UcsTable = 0x15, AppIdTable = 0x16, DimensionStyleTable = 0x17, BlockRecordTable = 0x18;

    public const long ActiveViewport = 0x20, StandardStyle = 0x21, AppId = 0x22, StandardDimensionStyle = 0x23;
    public const long ByBlock = 0x24, ByLayer = 0x25, Continuous = 0x26, Dashed = 0x27, Chain = 0x28, LayerZero = 0x29, DoubleDotChain = 0x2A;

    public const long ModelSpaceRecord = 0x30, ModelSpaceBlock = 0x31, ModelSpaceEnd = 0x32;
    public const long PaperSpaceRecord = 0x33, PaperSpaceBlock = 0x34, PaperSpaceEnd = 0x35;

    public const long FirstFree = 0x40;
}
