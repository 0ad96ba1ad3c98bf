using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace WorkWindows.Service.Storage;

/// <summary>What `dotnet ef` builds the model from; adding a migration needs no server.</summary>
internal sealed class DesignTimeDb : IDesignTimeDbContextFactory<WorkWindowsDb>
{
    public WorkWindowsDb CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<WorkWindowsDb>();
        DatabaseMigrator.UseDatabase(options, "Host=localhost;Database=workwindows");
        return new WorkWindowsDb(options.Options);
    }
}
