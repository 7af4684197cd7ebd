namespace ShopDrawings.Cutting;

/// <summary>Counts over a whole plan.</summary>
/// <param name="Sheets">Sheets used, own offcuts included.</param>
/// <param name="Cuts">Cuts, trims included; 0 for a router.</param>
/// <param name="FenceSettings">How often the fence is set, where the steps are taken in the order of <see cref="CutSequence"/>.</param>
/// <param name="MatchedGroups">Groups of matching parts of which every pair of equal sides comes off one setting.</param>
/// <param name="UnmatchedGroups">Groups of which not.</param>
/// <param name="LargestOffcut">The largest rectangle left; null where none is worth keeping.</param>
/// <param name="Yield">The share of all sheets' area that becomes parts, from 0 to 1.</param>
public sealed record PlanStatistics(int Sheets, int Cuts, int FenceSettings, int MatchedGroups, int UnmatchedGroups, Offcut? LargestOffcut, double Yield);
