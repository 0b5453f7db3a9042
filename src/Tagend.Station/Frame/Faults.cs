using Tagend.Problems;

namespace Tagend.Station.Frame;

/// <summary>What a page shows in place of what was asked for.</summary>
/// <param name="Sentence">What is wrong, and what to do.</param>
public sealed record Trouble(string Sentence);

/// <summary>Where everything ends that no screen has caught: a sentence, never a stack.</summary>
internal static class Faults
{
    public static async Task Catch(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (TagendException e) when (!context.Response.HasStarted)
        {
            await Say(context, StatusOf(e.Blame), e.Message);
        }
        catch (FormException e) when (!context.Response.HasStarted)
        {
            await Say(context, e.StatusCode, e.Message);
        }
        catch (BadHttpRequestException e) when (!context.Response.HasStarted)
        {
            await Say(context, e.StatusCode, e.StatusCode == StatusCodes.Status413PayloadTooLarge
                ? "This file is larger than any the station takes."
                : SentForm.Unreadable);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Whoever asked went away.
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException && !context.Response.HasStarted)
        {
            await Say(
                context,
                StatusCodes.Status500InternalServerError,
                $"A file in the shop's folder cannot be read or written ({SystemReason.Of(e)}); what was saved before is whole. See that the disk has space and that the folder is yours, then reload the page.");
        }
        catch (Exception e) when (!context.Response.HasStarted)
        {
            await Say(
                context,
                StatusCodes.Status500InternalServerError,
                $"This is a fault of the program, not of yours ({e.GetType().Name}); what was saved before is whole. Reload the page.");
        }
    }

    private static int StatusOf(Blame blame) => blame switch
    {
        Blame.UnknownName or Blame.Missing => StatusCodes.Status404NotFound,
        Blame.WrongValue => StatusCodes.Status422UnprocessableEntity,
        Blame.Changed => StatusCodes.Status409Conflict,
        _ => StatusCodes.Status500InternalServerError,
    };

    /// <summary>A page that says what is wrong.</summary>
    public static IResult Page(int status, string sentence)
    {
        var page = TroublePage.Create(new Trouble(sentence));
        page.StatusCode = status;
        return page;
    }

    /// <summary>A page, or where a part of a page was asked for, a notice in the page that is there.</summary>
    private static Task Say(HttpContext context, int status, string sentence)
    {
        if (context.Request.Headers.ContainsKey("HX-Request"))
        {
            context.Response.Headers["HX-Retarget"] = "#notice";
            context.Response.Headers["HX-Reswap"] = "innerHTML";
            var notice = TroubleNotice.Create(new Trouble(sentence));
            notice.StatusCode = status;
            return ((IResult)notice).ExecuteAsync(context);
        }

        return Page(status, sentence).ExecuteAsync(context);
    }
}
