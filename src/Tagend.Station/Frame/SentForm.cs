using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;
using Tagend.Problems;

namespace Tagend.Station.Frame;

/// <summary>What was sent is no form that a page of the station sends.</summary>
internal sealed class FormException : BadHttpRequestException
{
    public FormException(string sentence, int status)
        : base(sentence, status)
    {
    }

    public FormException(string sentence, int status, Exception cause)
        : base(sentence, status, cause)
    {
    }
}

/// <summary>A request's form, for whoever reads it: whatever is wrong with how it was sent ends as one exception, and is no fault of the program.</summary>
internal sealed class SentForm(HttpRequest request) : IFormFeature
{
    /// <summary>What is said where no more is known.</summary>
    public const string Unreadable = "The browser's request cannot be read: reload the page.";

    private const string TooMuch = "This is more than a page can send at once: save it as a file, and choose that.";

    private readonly FormFeature _form = new(request);

    /// <inheritdoc/>
    public bool HasFormContentType => _form.HasFormContentType;

    /// <inheritdoc/>
    public IFormCollection? Form
    {
        get => _form.Form;
        set => _form.Form = value;
    }

    /// <summary>Our pages are in UTF-8, and so are their forms (HTML, 4.10.21.8); a form in anything else would be read wrongly.</summary>
    private bool IsOurs => HasFormContentType && MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && (StringSegment.IsNullOrEmpty(type.Charset) || HeaderUtilities.RemoveQuotes(type.Charset).Equals("utf-8", StringComparison.OrdinalIgnoreCase));

    public static Task Read(HttpContext context, RequestDelegate next)
    {
        context.Features.Set<IFormFeature>(new SentForm(context.Request));
        return next(context);
    }

    /// <inheritdoc/>
    public IFormCollection ReadForm() => ReadFormAsync(CancellationToken.None).GetAwaiter().GetResult();

    /// <inheritdoc/>
    /// <exception cref="FormException">It was not sent as a page sends it, or is larger than a page's.</exception>
    public async Task<IFormCollection> ReadFormAsync(CancellationToken cancellationToken)
    {
        if (!IsOurs)
        {
            throw new FormException(Unreadable, StatusCodes.Status415UnsupportedMediaType);
        }

        try
        {
            return await _form.ReadFormAsync(cancellationToken);
        }
        catch (InvalidDataException e) when (request.ContentLength is null or > FormReader.DefaultValueLengthLimit)
        {
            throw new FormException(TooMuch, StatusCodes.Status413PayloadTooLarge, e);
        }
        catch (Exception e) when (e is not (BadHttpRequestException or OperationCanceledException) && !SystemReason.IsOfSystem(e))
        {
            throw new FormException(Unreadable, StatusCodes.Status400BadRequest, e);
        }
    }
}
