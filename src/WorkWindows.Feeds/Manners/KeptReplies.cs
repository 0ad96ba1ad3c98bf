using Microsoft.Extensions.Options;

namespace WorkWindows.Feeds.Manners;

/// <summary>Replies in memory by address, up to a total size; the oldest go first.</summary>
internal sealed class KeptReplies(IOptions<FeedOptions> options)
{
    private readonly long _mostBytes = options.Value.KeptRepliesMb * 1024L * 1024;
    private readonly OrderedDictionary<string, KeptReply> _replies = [];
    private readonly Lock _lock = new();
    private long _bytes;

    public KeptReply? Find(string key)
    {
        lock (_lock)
            return _replies.GetValueOrDefault(key);
    }

    public void Keep(string key, KeptReply reply)
    {
        lock (_lock)
        {
            Drop(key);
            if (reply.Body.Length > _mostBytes)
                return;
            _replies.Add(key, reply);
            _bytes += reply.Body.Length;
            while (_bytes > _mostBytes)
                Drop(_replies.GetAt(0).Key);
        }
    }

    private void Drop(string key)
    {
        if (_replies.Remove(key, out var dropped))
            _bytes -= dropped.Body.Length;
    }
}
