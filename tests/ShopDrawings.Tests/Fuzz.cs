namespace ShopDrawings.Tests;

/// <summary>How long tests with random input try: more where someone has the time, with FUZZ_FACTOR=50.</summary>
internal static class Fuzz
{
    /// <summary>The usual number of tries times the factor of the environment.</summary>
    public static int Iterations(int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable("FUZZ_FACTOR"), out var factor) ? usual * factor : usual;
}
