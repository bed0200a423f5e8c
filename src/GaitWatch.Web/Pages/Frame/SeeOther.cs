using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>303: the answer to the form is another page, so that loading it again does not send the form again.</summary>
/// <param name="address">Where to go on.</param>
internal sealed class SeeOther(string address) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
        httpContext.Response.Headers.Location = address;
        return Task.CompletedTask;
    }
}
