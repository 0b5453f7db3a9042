using System.Text.Json;
using System.Text.Json.Serialization;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Station.Guard;

/// <summary>A device that was let in.</summary>
/// <param name="Seal">Of its cookie, which itself is kept nowhere.</param>
/// <param name="Name">What its browser says of it.</param>
public sealed record Device(string Seal, string Name, DateTimeOffset Since);

/// <summary>The devices that were let in, kept in a file.</summary>
internal sealed class DeviceList
{
    private readonly Lock _changing = new();
    private readonly string _path;
    private readonly StationSecret _secret;
    private IReadOnlyList<Device> _devices;

    private DeviceList(string path, StationSecret secret, IReadOnlyList<Device> devices) => (_path, _secret, _devices) = (path, secret, devices);

    public IReadOnlyList<Device> Devices => _devices;

    /// <summary>Reads the list in a folder.</summary>
    /// <exception cref="TagendException">It cannot be read.</exception>
    public static DeviceList In(string folder, StationSecret secret)
    {
        var path = Path.Combine(folder, "devices.json");
        try
        {
            return new DeviceList(path, secret, File.Exists(path) ? JsonSerializer.Deserialize(File.ReadAllBytes(path), DeviceJson.Default.IReadOnlyListDevice) ?? [] : []);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new TagendException($"{path}: cannot be read ({(e is JsonException ? "it is not as the station writes it" : SystemReason.Of(e))}); delete it, and let the devices in again", e);
        }
    }

    public bool Has(Session session)
    {
        var seal = SealOf(session);
        return _devices.Any(d => d.Seal == seal);
    }

    /// <exception cref="TagendException">The list cannot be written.</exception>
    public void LetIn(Session session, string name, DateTimeOffset since) =>
        Change(d => [.. d.Where(k => k.Seal != SealOf(session)), new Device(SealOf(session), name, since)]);

    /// <exception cref="TagendException">The list cannot be written.</exception>
    public void ShutOut(string seal) => Change(d => [.. d.Where(k => k.Seal != seal)]);

    private string SealOf(Session session) => _secret.Seal($"device {session.Id}");

    private void Change(Func<IReadOnlyList<Device>, IReadOnlyList<Device>> change)
    {
        lock (_changing)
        {
            var changed = change(_devices);
            var bytes = JsonSerializer.SerializeToUtf8Bytes(changed, DeviceJson.Default.IReadOnlyListDevice);
            AtomicFiles.Write([new NewFile(_path, stream => stream.Write(bytes))]);
            _devices = changed;
        }
    }
}

[JsonSerializable(typeof(IReadOnlyList<Device>))]
internal sealed partial class DeviceJson : JsonSerializerContext;
