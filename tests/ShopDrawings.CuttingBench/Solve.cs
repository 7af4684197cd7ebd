using ShopDrawings.Cutting;

namespace ShopDrawings.CuttingBench;

/// <summary>Solves one problem and says how long it took, in seconds.</summary>
public delegate (CuttingOutcome Outcome, double Seconds) Solve(CuttingProblem problem);
