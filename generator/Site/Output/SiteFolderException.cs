namespace Swapwright.Site.Output;

/// <summary>The site cannot be written where it was asked to go; the message says why, for the command's user.</summary>
public sealed class SiteFolderException(string message, Exception? inner = null) : Exception(message, inner);
