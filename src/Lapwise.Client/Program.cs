using Lapwise.Client.Frame;
using Lapwise.Client.Keeping;
using Lapwise.Client.Voices;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Microsoft.JSInterop;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSingleton(services => (IJSInProcessRuntime)services.GetRequiredService<IJSRuntime>());
builder.Services.AddSingleton(new HttpClient { BaseAddress = new Uri(builder.HostEnvironment.BaseAddress), Timeout = TimeSpan.FromSeconds(20) });
builder.Services.AddSingleton<Device>();
builder.Services.AddSingleton<Spoken>();
builder.Services.AddSingleton<Server>();
builder.Services.AddSingleton<Coatings>();
await builder.Build().RunAsync();
