using Tagend.Problems;
using Tagend.Workshop.Readings;

namespace Tagend.Station.Desk;

/// <summary>Reads what cameras and photos show, few at a time, so that ten phones take no more memory than two.</summary>
internal sealed class CameraDesk : IDisposable
{
    /// <summary>More cameras than a shop has: beyond, all begin anew, which costs each a frame.</summary>
    private const int MostCameras = 64;

    /// <summary>Photos take a hundred times a frame's memory.</summary>
    private readonly SemaphoreSlim _photos = new(1);

    private readonly SemaphoreSlim _frames = new(2);
    private readonly Dictionary<string, TagFrames> _cameras = [];

    /// <summary>The codes in a frame; none where nothing was read from it.</summary>
    /// <param name="camera">The browser that sent it.</param>
    /// <exception cref="TagendException">It cannot be read as a picture.</exception>
    public async Task<IReadOnlyList<TagScan>> ReadFrame(string camera, Stream frame, CancellationToken stop)
    {
        await _frames.WaitAsync(stop);
        try
        {
            var reader = Of(camera);
            lock (reader)
            {
                return reader.Read(frame);
            }
        }
        finally
        {
            _frames.Release();
        }
    }

    /// <summary>The codes in a photo; one without a reading where it has none.</summary>
    /// <exception cref="TagendException">It cannot be read as a picture.</exception>
    public async Task<IReadOnlyList<TagScan>> ReadPhoto(Stream photo, CancellationToken stop)
    {
        await _photos.WaitAsync(stop);
        try
        {
            return TagScan.OfPicture(photo, "the photo");
        }
        finally
        {
            _photos.Release();
        }
    }

    public void Dispose()
    {
        _photos.Dispose();
        _frames.Dispose();
    }

    private TagFrames Of(string camera)
    {
        lock (_cameras)
        {
            if (_cameras.TryGetValue(camera, out var known))
            {
                return known;
            }

            if (_cameras.Count >= MostCameras)
            {
                _cameras.Clear();
            }

            return _cameras[camera] = new TagFrames();
        }
    }
}
