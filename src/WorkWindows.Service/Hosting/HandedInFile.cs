using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.HttpResults;

namespace WorkWindows.Service.Hosting;

/// <summary>A file in a request: the body itself, or the one file of a multipart form.</summary>
internal static class HandedInFile
{
    /// <summary>What a client may call a file whose kind it does not know; curl calls every body a form.</summary>
    public static readonly string[] AnyType =
        ["application/octet-stream", "application/x-www-form-urlencoded", "multipart/form-data"];

    private const int BytesPerMegabyte = 1024 * 1024;

    /// <summary>What a form may add to its file.</summary>
    private const int FormBytes = 64 * 1024;

    /// <summary>Reads the file whole, because the readers of files do not wait for the network.</summary>
    /// <returns>The content, or what to answer instead.</returns>
    public static async Task<(MemoryStream? Content, ProblemHttpResult? Problem)> ReadAsync(
        HttpRequest request, int limitMegabytes, CancellationToken cancellation)
    {
        var limit = limitMegabytes * BytesPerMegabyte;
        if (request.ContentLength > limit + FormBytes)
            return (null, TooLarge(limitMegabytes));
        // The limit here is the one that counts, and it tells what it is.
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } server)
            server.MaxRequestBodySize = limit + FormBytes;
        var source = request.Body;
        if (request.ContentType?.StartsWith("multipart/", StringComparison.OrdinalIgnoreCase) == true)
        {
            var files = (await request.ReadFormAsync(cancellation)).Files;
            if (files.Count != 1)
            {
                return (null, TypedResults.Problem(
                    $"The form has {files.Count} files.", statusCode: StatusCodes.Status400BadRequest,
                    title: "Send one file, in a form or as the body itself."));
            }
            source = files[0].OpenReadStream();
        }

        var content = new MemoryStream();
        var buffer = new byte[81_920];
        for (int read; (read = await source.ReadAsync(buffer, cancellation)) > 0;)
        {
            if (content.Length + read > limit)
                return (null, TooLarge(limitMegabytes));
            content.Write(buffer, 0, read);
        }
        content.Position = 0;
        return (content, null);
    }

    private static ProblemHttpResult TooLarge(int limitMegabytes) => TypedResults.Problem(
        $"The limit is {limitMegabytes} MB. Nothing was stored. Split the file and send its parts one by one.",
        statusCode: StatusCodes.Status413PayloadTooLarge, title: "The file is too large.");
}
