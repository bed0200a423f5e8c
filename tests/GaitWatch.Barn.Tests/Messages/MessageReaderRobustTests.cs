using System.Text;
using CsCheck;
using GaitWatch.Store;

namespace GaitWatch.Barn.Tests.Messages;

/// <summary>Whatever comes in, an answer comes out.</summary>
public class MessageReaderRobustTests
{
    private static readonly string[] Good =
    [
        """{"v":1,"seq":7,"t0":"2026-03-02T05:14:07.250Z","hz":200,"cells":{"l0":[0.4],"l1":[0.1],"r0":[0.1],"r1":[0.2]}}""",
        """{"v":1,"t":"2026-03-02T05:14:06.900Z","eid":"982000123456789"}""",
        """{"v":1,"id":"px-1","eid":null,"startedAt":"2026-03-02T05:14:06Z","endedAt":"2026-03-02T05:14:09Z","loadKg":{"lf":168,"rf":166,"lh":139,"rh":141}}""",
        """{"v":1,"online":true,"t":"2026-03-02T05:00:00Z","firmware":"2.1.0"}""",
    ];

    private static readonly string[] Kinds = ["frames", "tag", "passage", "status"];

    private readonly MessageReader _reader = new(Some.Options);

    [Fact]
    public void Random_bytes_are_refused_with_a_reason_and_a_sentence() =>
        Gen.Select(Gen.Int[0, 3], Gen.Byte.Array[0, 200]).Sample((kind, payload) =>
        {
            var rejected = Assert.IsType<RejectedInput>(Read(kind, payload));
            Assert.False(string.IsNullOrEmpty(rejected.Reason));
            Assert.EndsWith(".", rejected.Detail, StringComparison.Ordinal);
        });

    [Fact]
    public void A_good_message_with_bytes_changed_never_throws() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Select(Gen.Int[0, 200], Gen.Byte).Array[1, 4]).Sample((kind, payload, changes) =>
        {
            var bytes = Encoding.UTF8.GetBytes(Good[payload]);
            foreach (var (at, value) in changes)
                bytes[at % bytes.Length] = value;
            Assert.NotNull(Read(kind, bytes));
        });

    [Fact]
    public void A_good_message_cut_anywhere_is_refused()
    {
        for (var kind = 0; kind < Good.Length; kind++)
        {
            for (var length = 0; length < Good[kind].Length; length++)
                Assert.IsType<RejectedInput>(Read(kind, Encoding.UTF8.GetBytes(Good[kind][..length])));
        }
    }

    private Input Read(int kind, byte[] payload) => _reader.Read($"gaitwatch/home/parlour-exit/{Kinds[kind]}", payload, Some.Now, live: true);
}
