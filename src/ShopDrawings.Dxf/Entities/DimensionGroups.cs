using System.Diagnostics;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>The numbers of a DIMENSION: from them CAD computes the measurement anew, and readers without it draw the block.</summary>
internal static class DimensionGroups
{
    /// <summary>The dimension text (group code 1) that suppresses the text.</summary>
    public const string NoText = " ";

    // Group code 70: the kind, and that the block belongs to this dimension alone, which R12 takes for granted; of an ordinate, that it is an x.
    private const int Rotated = 0, Aligned = 1, Diameter = 3, Radius = 4, AngularByThreePoints = 5, Ordinate = 6;
    private const int OwnBlock = 32, AlongX = 64;
    private const double MiddleCentre = 5;

    /// <summary>The table and the numbers of a dimension.</summary>
    public static (EntityType Type, double[] Numbers) Of(Dimension dimension, bool isR12)
    {
        var parts = DimensionGraphics.Of(dimension).ToList();
        var middle = Middle(parts.OfType<TextEntity>().Single());
        switch (dimension)
        {
            case LinearDimension d:
                var foot = d.Upright ? new Point2(d.Line.X, d.To.Y) : new Point2(d.To.X, d.Line.Y);
                return (EntityTypes.LinearDimension, [.. Common(foot, Rotated, d.Measured), d.From.X, d.From.Y, d.To.X, d.To.Y, d.Upright ? 90 : 0]);
            case AlignedDimension d:
                var across = (d.To - d.From).Left * (1 / d.Measured);
                return (EntityTypes.AlignedDimension, [.. Common(d.To + across * (d.Line - d.To).Dot(across), Aligned, d.Measured), d.From.X, d.From.Y, d.To.X, d.To.Y]);
            case RadiusDimension d:
                return (EntityTypes.RadiusDimension, [.. Common(d.Centre, Radius, d.Measured), d.OnArc.X, d.OnArc.Y, 0]);
            case DiameterDimension d:
                return (EntityTypes.DiameterDimension, [.. Common(d.Opposite, Diameter, d.Measured), d.OnCircle.X, d.OnCircle.Y, 0]);
            case AngularDimension d:
                return (EntityTypes.AngularDimension,
                    [.. Common(d.Middle, AngularByThreePoints, d.Measured * (Math.PI / 180)), d.From.X, d.From.Y, d.To.X, d.To.Y, d.Vertex.X, d.Vertex.Y]);
            case OrdinateDimension d:
                return (EntityTypes.OrdinateDimension, [.. Common(d.Origin, Ordinate + (d.Upright ? 0 : AlongX), d.Measured), d.Feature.X, d.Feature.Y, d.End.X, d.End.Y]);
            default:
                throw new UnreachableException(dimension.GetType().Name);
        }

        double[] Common(Point2 definition, int kind, double measured) =>
            [definition.X, definition.Y, middle.X, middle.Y, isR12 ? kind : kind + OwnBlock, MiddleCentre, measured];
    }

    private static Point2 Middle(TextEntity text)
    {
        var (sin, cos) = Math.SinCos(text.AngleDegrees * (Math.PI / 180));
        var along = new Point2(cos, sin);
        var shift = text.Anchor switch
        {
            Anchor.BaseLeft => 0.5,
            Anchor.BaseRight => -0.5,
            _ => 0,
        };
        var lift = text.Anchor == Anchor.Middle ? 0 : text.Height / 2;
        return text.Position + along * (shift * Lettering.Width(text.Text, text.Height)) + along.Left * lift;
    }
}
