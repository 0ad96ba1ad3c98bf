namespace WorkWindows.Service.Storage;

/// <summary>The service cannot run on this machine as it is set up; the message says what to change.</summary>
public sealed class SetupException(string message, Exception? cause = null) : Exception(message, cause);
