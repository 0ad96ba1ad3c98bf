using Hangfire;
using Hangfire.Common;
using Hangfire.States;
using NodaTime;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tests.Weather;

/// <summary>For handlers that only note what is to be looked at.</summary>
internal sealed class NoJobs : IBackgroundJobClient
{
    public static PromptLook Look(WorkWindowsDb db, IClock clock) =>
        new(db, new NoJobs(), new CurrentOrganization(), clock);

    public string Create(Job job, IState state) => throw new NotSupportedException("A handler begins no look.");

    public bool ChangeState(string jobId, IState state, string expectedState) => throw new NotSupportedException();
}
