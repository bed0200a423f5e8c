using System.Net;

namespace GaitWatch.Simulator.Tests;

public class HttpTransportTests
{
    private static readonly DateTimeOffset s_at = new(2026, 3, 2, 5, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task A_write_goes_to_its_route_with_its_method_type_and_body()
    {
        var service = new Service(HttpStatusCode.OK, "");
        using var client = new HttpClient(service) { BaseAddress = new("http://service.test:8080") };
        var transport = new HttpTransport(client);
        await transport.SendAsync(RegisterWrites.Import(s_at, []), default);
        await transport.SendAsync(new BarnMessage(s_at, "t", default), default);
        Assert.Equal(1, transport.Sent);
        Assert.Equal("POST http://service.test:8080/api/herd text/csv; charset=utf-8 cow,eid,pen,parity,calvedOn,driedOffOn,dueOn,leftOn,from\n", Assert.Single(service.Requests));
    }

    [Fact]
    public async Task A_refusal_names_route_status_and_answer()
    {
        using var client = new HttpClient(new Service(HttpStatusCode.UnprocessableContent, "parity is -1")) { BaseAddress = new("http://service.test") };
        var failure = await Assert.ThrowsAsync<InvalidOperationException>(() => new HttpTransport(client).SendAsync(RegisterWrites.Import(s_at, []), default).AsTask());
        Assert.Equal("POST /api/herd was answered 422: parity is -1", failure.Message);
    }

    private sealed class Service(HttpStatusCode status, string answer) : HttpMessageHandler
    {
        public List<string> Requests { get; } = [];

        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            Requests.Add($"{request.Method} {request.RequestUri} {request.Content!.Headers.ContentType} {await request.Content.ReadAsStringAsync(cancellationToken)}");
            return new(status) { Content = new StringContent(answer) };
        }
    }
}
