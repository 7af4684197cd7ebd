using System.Collections.Immutable;
using ShopDrawings.Drafting;

namespace ShopDrawings.Dxf;

/// <summary>The layers of a file: how they are called and how they look.</summary>
internal sealed class LayerTable
{
    private readonly Dictionary<Layer, string> names = [];
    private Layer? lastLayer;
    private string lastName = "";

    /// <summary>Names the layers of a drawing and gives each the pen of its role.</summary>
    /// <exception cref="ArgumentException">A pen's colour is not 1 to 255.</exception>
    public LayerTable(ImmutableArray<Layer> layers, Style style)
    {
        var fitted = LayerNames.Fit([.. layers.Select(l => l.Name)]);
        for (var i = 0; i < layers.Length; i++)
        {
            // Readers take colour 0 and negative ones for a layer that is off, or refuse the file.
            if (style.For(layers[i].Role).ColourIndex is < 1 or > 255)
                throw new ArgumentException($"The colour of the pen for {layers[i].Role} must be 1 to 255.", nameof(style));
            names.Add(layers[i], fitted[i]);
        }

        Pens = [.. layers.Select((layer, i) => (fitted[i], style.For(layer.Role)))];
    }

    /// <summary>The layers in the drawing's order, without layer 0.</summary>
    public ImmutableArray<(string Name, Pen Pen)> Pens { get; }

    /// <summary>What a layer is called in the file.</summary>
    public string NameOf(Layer layer)
    {
        // Layers are compared by all their texts; entities come in runs of one layer.
        if (ReferenceEquals(layer, lastLayer)) return lastName;
        (lastLayer, lastName) = (layer, names[layer]);
        return lastName;
    }
}
