using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Safety.Incidents;

[Authorize(Policy = Access.Plan)]
public sealed class AllIncidentsModel(IncidentReader reader) : PageModel
{
    public IReadOnlyList<PlacedIncident> Incidents { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellation) => Incidents = await reader.AllAsync(cancellation);
}
