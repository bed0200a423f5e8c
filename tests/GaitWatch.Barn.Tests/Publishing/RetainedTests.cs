using System.Text;

namespace GaitWatch.Barn.Tests.Publishing;

/// <summary>What must be sent so that the broker keeps what the store has.</summary>
public class RetainedTests
{
    private readonly Retained _retained = new();

    private static Dictionary<string, byte[]> Wanted(params (string Topic, string Payload)[] messages) =>
        messages.ToDictionary(message => message.Topic, message => Encoding.UTF8.GetBytes(message.Payload));

    private string Missing(params (string Topic, string Payload)[] wanted) =>
        string.Join(' ', _retained.Missing(Wanted(wanted)).Select(one => $"{one.Topic}={Encoding.UTF8.GetString(one.Payload)}"));

    private void Holds(string topic, string payload, long since = 0) => _retained.Holds(topic, Encoding.UTF8.GetBytes(payload), since);

    [Fact]
    public void Of_a_broker_that_has_told_nothing_everything_is_sent() => Assert.Equal("a=1 b=2", Missing(("b", "2"), ("a", "1")));

    [Fact]
    public void What_stands_already_is_not_sent_again()
    {
        Holds("a", "1");
        Assert.Equal("b=2", Missing(("a", "1"), ("b", "2")));
    }

    [Fact]
    public void What_stands_and_differs_is_sent()
    {
        Holds("a", "0");
        Assert.Equal("a=1", Missing(("a", "1")));
    }

    [Fact]
    public void What_stands_and_is_not_wanted_is_cleared_once()
    {
        Holds("gone", "9");
        Assert.Equal("gone=", Missing());
        Holds("gone", "");
        Assert.Equal("", Missing());
    }

    [Fact]
    public void What_somebody_may_have_missed_is_sent_once_more_and_a_clearing_too()
    {
        Holds("a", "1", since: 10);
        Holds("b", "2", since: 20);
        Holds("gone", "", since: 30);
        Assert.True(_retained.Doubt(since: 20));
        Assert.Equal("b=2 gone=", Missing(("a", "1"), ("b", "2")));
        Holds("b", "2", since: 40);
        Holds("gone", "", since: 40);
        Assert.Equal("", Missing(("a", "1"), ("b", "2")));
        Assert.False(_retained.Doubt(since: 41));
    }

    [Fact]
    public void A_new_connection_begins_with_nothing_known()
    {
        Holds("a", "1");
        _retained.Forget();
        Assert.Equal("a=1", Missing(("a", "1")));
    }
}
