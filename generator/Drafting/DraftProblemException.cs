namespace Swapwright.Drafting;

/// <summary>A draft that cannot be written as asked; the message says why, for the command's user.</summary>
public sealed class DraftProblemException(string message) : Exception(message);
