namespace WorkWindows.Feeds.Portfolio;

/// <summary>Reads a GeoJSON file of parcels; its form is described in docs/files.md.</summary>
public static class ParcelFile
{
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static ParcelImport Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var faults = new FaultCollector();
        var text = Utf8Text.Read(stream, faults);
        if (faults.Any)
            return new([], faults.ToReport());
        var features = GeoJsonFeatures.Read(text.Span, faults);
        var rows = features
            .Select((feature, index) => ParcelReader.Read(feature, index + 1, faults))
            .OfType<ParcelRow>()
            .ToList();
        ReportRepeatedParcels(rows, faults);
        ReportDisagreement(rows, "propertyName", row => row.PropertyName, faults);
        ReportDisagreement(rows, "landowner", row => row.Landowner, faults);
        ReportDisagreement(rows, "landownerEmail", row => row.LandownerEmail, faults);
        return new([.. rows], faults.ToReport());
    }

    private static void ReportRepeatedParcels(IEnumerable<ParcelRow> rows, FaultCollector faults)
    {
        foreach (var parcel in rows.GroupBy(row => row.Parcel))
        {
            foreach (var repeated in parcel.Skip(1))
            {
                faults.Add(repeated.Line, "parcel", repeated.Parcel,
                    $"a key of its own: the parcel on line {parcel.First().Line} has it already", repeated.Parcel);
            }
        }
    }

    /// <summary>What is of the property may stand with any of its parcels, but must not differ.</summary>
    private static void ReportDisagreement(
        IEnumerable<ParcelRow> rows, string field, Func<ParcelRow, string?> valueOf, FaultCollector faults)
    {
        foreach (var property in rows.Where(row => valueOf(row) is not null).GroupBy(row => row.Property))
        {
            var first = property.First();
            foreach (var other in property.Where(row => valueOf(row) != valueOf(first)))
            {
                faults.Add(other.Line, field, valueOf(other)!,
                    $"'{valueOf(first)}', as property {property.Key} has it on line {first.Line}", other.Parcel);
            }
        }
    }
}
