using System.Globalization;
using ShopDrawings.Benchmarks;

// usage: ShopDrawings.Benchmarks [dxf [COUNT] | sheets [PROJECT.yaml]]
// How fast DXF is written (a million entities), or all sheets of a project (the seedling cabinet) are drawn.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
switch (args)
{
    case [] or ["dxf"] or ["dxf", _]:
        using (var dxf = new DxfBenchmark()) dxf.Run(args is [_, var count] ? int.Parse(count, CultureInfo.InvariantCulture) : 1_000_000);
        break;
    case ["sheets"] or ["sheets", _]:
        SheetBenchmark.Run(args is [_, var project] ? project : "fixtures/seedling-cabinet.yaml");
        break;
    default:
        Console.Error.WriteLine("usage: ShopDrawings.Benchmarks [dxf [COUNT] | sheets [PROJECT.yaml]]");
        return 2;
}

return 0;
