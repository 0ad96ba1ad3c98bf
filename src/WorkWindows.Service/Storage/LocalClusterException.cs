namespace WorkWindows.Service.Storage;

/// <summary>The private cluster cannot run on this machine as it is; the message says what to change.</summary>
public sealed class LocalClusterException(string message) : Exception(message);
