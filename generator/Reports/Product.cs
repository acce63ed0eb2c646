namespace Swapwright.Reports;

/// <summary>The program's own name and version, as its reports give them.</summary>
public static class Product
{
    public const string Name = "swapwright";

    public static string Version { get; } = typeof(Product).Assembly.GetName().Version?.ToString(3) ?? "0.0.0";

}
