namespace Swapwright.Worksheets.Belts;

/// <summary>What the page decides about a drawing.</summary>
/// <param name="IdPrefix">
/// Makes the ids of the drawing unique on its page; anything but letters, digits, hyphens and underscores becomes a hyphen.
/// </param>
/// <param name="Title">Accessible name; null for one made from the loop.</param>
/// <param name="Description">Accessible description; null for one that reads out the loop.</param>
public sealed record BeltDrawingOptions(string IdPrefix, string? Title = null, string? Description = null);
