using System.Globalization;

// Tagend.WebFloor PORT: the station's floor, a bare web server ahead of time that answers one short page and does nothing else.
var builder = WebApplication.CreateSlimBuilder();
builder.Logging.ClearProviders();
builder.WebHost.ConfigureKestrel(kestrel => kestrel.ListenLocalhost(int.Parse(args[0], CultureInfo.InvariantCulture)));
using var app = builder.Build();
app.MapGet("/orders", () => TypedResults.Text("<!doctype html><title>Floor</title><p>Floor</p>", "text/html; charset=utf-8"));
app.Run();
