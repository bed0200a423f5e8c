using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace GaitWatch.Web;

/// <summary>Adds the API and the pages to a host. They take <see cref="BarnStore"/> and, for replays, <see cref="IRecordedInputs"/> from its services.</summary>
public static class WebComposition
{
    /// <summary>Registers what the API and the pages need.</summary>
    /// <param name="services">The host's services.</param>
    /// <param name="options">Settings; the defaults when null.</param>
    public static IServiceCollection AddWeb(this IServiceCollection services, WebOptions? options = null)
    {
        services.AddSingleton(options ?? new WebOptions());
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton<WriteDesk>();
        services.AddSingleton<ShareLinks>();
        services.AddSingleton<FoldWatch>();
        services.AddSingleton<RecordingIntake>();
        services.AddWriteRoute<CloseAlert>();
        services.AddWriteRoute<RegisterCow>();
        services.AddWriteRoute<ImportHerd>();
        services.AddWriteRoute<PlanVisit>();
        services.AddWriteRoute<CancelVisit>();
        services.AddWriteRoute<DecideOnList>();
        services.AddWriteRoute<TakeBackOnList>();
        services.AddWriteRoute<TickOnList>();
        services.AddWriteRoute<UntickOnList>();
        services.AddWriteRoute<MoveOnList>();
        services.AddWriteRoute<RecordFinding>();
        services.AddWriteRoute<CorrectFinding>();
        services.AddWriteRoute<WithdrawFinding>();
        services.AddWriteRoute<DoFollowUp>();
        services.AddWriteRoute<RecordCalibration>();

        services.ConfigureHttpJsonOptions(json =>
        {
            ContractJson.Apply(json.SerializerOptions);
            json.SerializerOptions.Converters.Add(new WireNumbers());
        });
        services.AddProblemDetails();
        services.AddExceptionHandler<StoreTrouble>();
        services.AddApiDocument();
        services.AddRazorComponents();
        return services;
    }

    /// <summary>Maps every route of the API and every page.</summary>
    /// <param name="app">The host's application.</param>
    public static WebApplication MapWeb(this WebApplication app)
    {
        app.UseMiddleware<SecurityHeaders>();
        app.UseLanguages();
        app.UseUnits();
        app.UseMiddleware<ShareOnly>();
        app.UseExceptionHandler();
        app.UseStatusCodePages(UnservedRequests.AnswerAsync);
        app.UseMiddleware<SameOrigin>();

        app.MapFlags();
        app.MapAlerts();
        app.MapCows();
        app.MapPassages();
        app.MapVisits();
        app.MapTrimList();
        app.MapFindings();
        app.MapFollowUps();
        app.MapStatistics();
        app.MapExports();
        app.MapPlatforms();
        app.MapIngest();
        app.MapRecordings();
        app.MapSeries();
        app.MapHealth();
        app.MapOpenApi();
        app.MapAssets();
        app.MapPages();
        app.MapChoices();
        app.MapChute();
        app.MapShare();
        return app;
    }

    private static void AddWriteRoute<T>(this IServiceCollection services)
        where T : WriteRoute
    {
        services.AddSingleton<T>();
        services.AddSingleton<WriteRoute>(provider => provider.GetRequiredService<T>());
    }
}
