using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;

namespace WorkWindows.Service.Tests.Review;

/// <summary>Counts the commands that are sent to one database.</summary>
internal sealed class AskedDatabase : IObserver<DiagnosticListener>, IObserver<KeyValuePair<string, object?>>, IDisposable
{
    private readonly string? _name;
    private readonly List<IDisposable> _subscriptions = [];
    private int _count;

    public AskedDatabase(string connection)
    {
        _name = new NpgsqlConnectionStringBuilder(connection).Database;
        _subscriptions.Add(DiagnosticListener.AllListeners.Subscribe(this));
    }

    public int TakeCount() => Interlocked.Exchange(ref _count, 0);

    public void OnNext(DiagnosticListener value)
    {
        if (value.Name == DbLoggerCategory.Name)
            _subscriptions.Add(value.Subscribe(this));
    }

    public void OnNext(KeyValuePair<string, object?> value)
    {
        if (value.Key == RelationalEventId.CommandExecuted.Name
            && value.Value is CommandExecutedEventData { Command.Connection.Database: var name } && name == _name)
        {
            Interlocked.Increment(ref _count);
        }
    }

    public void OnCompleted()
    {
    }

    public void OnError(Exception error)
    {
    }

    public void Dispose() => _subscriptions.ForEach(subscription => subscription.Dispose());
}
