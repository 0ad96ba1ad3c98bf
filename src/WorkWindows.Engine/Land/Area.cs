using System.Collections.Immutable;

namespace WorkWindows.Engine.Land;

/// <summary>A place on the ground, degrees north and east (WGS 84).</summary>
public readonly record struct Place(double LatitudeDeg, double LongitudeDeg);

/// <summary>
/// A piece of country by its corners, in order, the last joined to the first. It does not cross 180°.
/// </summary>
public sealed record Area(ImmutableArray<Place> Corners)
{
    /// <summary>Whether a place lies inside; one exactly on the border may fall either way.</summary>
    /// <remarks>Edges are straight in degrees, off a great circle by at most some hundred metres over 100 km.</remarks>
    public bool Contains(Place place)
    {
        var inside = false;
        for (int i = 0, before = Corners.Length - 1; i < Corners.Length; before = i++)
        {
            var (a, b) = (Corners[i], Corners[before]);
            if (a.LatitudeDeg > place.LatitudeDeg != b.LatitudeDeg > place.LatitudeDeg
                && place.LongitudeDeg < a.LongitudeDeg + (b.LongitudeDeg - a.LongitudeDeg)
                    * (place.LatitudeDeg - a.LatitudeDeg) / (b.LatitudeDeg - a.LatitudeDeg))
            {
                inside = !inside;
            }
        }
        return inside;
    }

    public bool Equals(Area? other) => other is not null && Corners.SequenceEqual(other.Corners);

    public override int GetHashCode() => Corners.Length;
}
