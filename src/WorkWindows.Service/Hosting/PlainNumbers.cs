using System.Globalization;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.AspNetCore.Mvc.ModelBinding.Binders;

namespace WorkWindows.Service.Hosting;

/// <summary>
/// Numbers of forms have a decimal point and nothing between thousands: '1,5', written where a comma is the decimal
/// sign, would else be read as 15.
/// </summary>
internal sealed class PlainNumbers : IModelBinderProvider
{
    public IModelBinder? GetBinder(ModelBinderProviderContext context)
    {
        var logs = context.Services.GetRequiredService<ILoggerFactory>();
        return context.Metadata.UnderlyingOrModelType switch
        {
            var type when type == typeof(decimal) => new DecimalModelBinder(NumberStyles.Float, logs),
            var type when type == typeof(double) => new DoubleModelBinder(NumberStyles.Float, logs),
            _ => null,
        };
    }
}
