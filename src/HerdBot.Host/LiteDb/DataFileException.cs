namespace HerdBot.Host.LiteDb;

/// <summary>The data file can't be used as it is. The message is a sentence for whoever runs the bot.</summary>
public sealed class DataFileException(string message, Exception? inner = null) : Exception(message, inner);
