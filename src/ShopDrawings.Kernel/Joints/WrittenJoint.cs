using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>What a joint adds to the assembly: itself and the holes of both panels.</summary>
internal sealed record WrittenJoint(Joint Joint, ImmutableArray<Bore> Clearances, ImmutableArray<Bore> Pilots);
