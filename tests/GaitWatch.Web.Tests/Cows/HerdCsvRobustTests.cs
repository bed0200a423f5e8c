using System.Text;
using CsCheck;
using GaitWatch.Herd;

namespace GaitWatch.Web.Tests;

/// <summary>Whatever a file holds, reading it ends, and what cannot be taken is named by a line that is there.</summary>
public sealed class HerdCsvRobustTests
{
    private static readonly Gen<string> Mess = Gen.String[Gen.Char["cow,eidpn;\t\"'\r\n4179820é \0-=@"], 0, 200];

    [Fact]
    public void Any_bytes_are_read_to_an_end() =>
        Gen.Byte.Array[0, 300].Sample(bytes => Check(bytes), iter: 2000);

    [Fact]
    public void Any_text_below_a_good_header_is_taken_or_named() =>
        Mess.Sample(text => Check(Encoding.UTF8.GetBytes("cow,eid,pen,parity,calvedOn\n" + text)), iter: 5000);

    private static void Check(byte[] file)
    {
        var content = HerdCsv.Read(file, new FarmCalendar(TimeZoneInfo.Utc), Some.Now);
        var lines = file.Count(b => b == '\n') + file.Count(b => b == '\r') + 1;
        Assert.All(content.Rejected, row => Assert.InRange(row.Line, 1, lines));
        Assert.All(content.Rejected, row => Assert.NotEmpty(row.Fault));
        Assert.Empty(content.Rows.Select(row => row.Line).Intersect(content.Rejected.Select(row => row.Line)));
        Assert.All(content.Rows, row => Assert.Empty(HerdRegisterFaults.Of(row.Registration)));
    }
}
