using NodaTime;
using static System.Math;

namespace WorkWindows.Engine.Daylight;

/// <summary>
/// The arc of the sun above an altitude around one noon, in minutes after 00:00 UTC of the date whose noon by the sun
/// it is. A sun that stays below has an arc of no length, one that stays above an arc of a whole day.
/// </summary>
internal readonly record struct SolarDay(double RisesMin, double SetsMin, bool Rises, bool Sets)
{
    private const int Passes = 3;
    private const double MinutesPerDay = 1440;
    private const double DaysPerCentury = 36525;

    // 1 January 2000, 12:00 UTC.
    private const double Epoch2000UnixDays = 10957.5;

    public static SolarDay Of(LocalDate date, double latitudeDeg, double longitudeDeg, double zenithDeg) =>
        Of(UnixDays(date), latitudeDeg, longitudeDeg, zenithDeg);

    public static SolarDay Of(int unixDays, double latitudeDeg, double longitudeDeg, double zenithDeg)
    {
        var (risesMin, rises) = Event(unixDays, latitudeDeg, longitudeDeg, zenithDeg, side: -1);
        var (setsMin, sets) = Event(unixDays, latitudeDeg, longitudeDeg, zenithDeg, side: 1);
        return new(risesMin, setsMin, rises, sets);
    }

    public static int UnixDays(LocalDate date) => Period.DaysBetween(NodaConstants.UnixEpoch.InUtc().Date, date);

    private static (double Minutes, bool Happens) Event(
        int unixDays, double latitudeDeg, double longitudeDeg, double zenithDeg, int side)
    {
        var latitude = latitudeDeg * SunPosition.RadiansPerDegree;
        var cosZenith = Cos(zenithDeg * SunPosition.RadiansPerDegree);
        var minutes = 720 - 4 * longitudeDeg;
        var happens = false;
        for (var pass = 0; pass < Passes; pass++)
        {
            var sun = SunPosition.At((unixDays + minutes / MinutesPerDay - Epoch2000UnixDays) / DaysPerCentury);
            var declination = sun.DeclinationDeg * SunPosition.RadiansPerDegree;
            var cosHourAngle = cosZenith / (Cos(latitude) * Cos(declination)) - Tan(latitude) * Tan(declination);
            happens = Abs(cosHourAngle) <= 1;
            var hourAngleDeg = Acos(Clamp(cosHourAngle, -1, 1)) / SunPosition.RadiansPerDegree;
            minutes = 720 - 4 * longitudeDeg - sun.EquationOfTimeMin + side * 4 * hourAngleDeg;
        }
        return (minutes, happens);
    }
}
