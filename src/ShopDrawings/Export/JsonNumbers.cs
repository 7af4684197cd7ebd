using System.Text.Json;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>Writes lengths and points, to six decimals and never as minus zero.</summary>
internal static class JsonNumbers
{
    /// <summary>A named length in mm.</summary>
    public static void Mm(this Utf8JsonWriter json, string name, double value) => json.WriteNumber(name, Rounded(value));

    /// <summary>A named point in mm.</summary>
    public static void Mm(this Utf8JsonWriter json, string name, Point3 point) => Array(json, name, point.X, point.Y, point.Z);

    /// <summary>A named point in mm.</summary>
    public static void Mm(this Utf8JsonWriter json, string name, Point2 point) => Array(json, name, point.X, point.Y);

    /// <summary>The number as it is written.</summary>
    public static double Rounded(double value)
    {
        var rounded = Math.Round(value, 6);
        return rounded == 0 ? 0 : rounded;
    }

    private static void Array(Utf8JsonWriter json, string name, params ReadOnlySpan<double> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values) json.WriteNumberValue(Rounded(value));
        json.WriteEndArray();
    }
}
