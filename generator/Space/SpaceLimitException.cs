namespace Swapwright.Space;

/// <summary>The diagrams of a store outgrew the limit they were given: the conditions are too entangled to be proved.</summary>
public sealed class SpaceLimitException(string message) : Exception(message);
