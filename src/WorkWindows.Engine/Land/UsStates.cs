using System.Collections.Frozen;

namespace WorkWindows.Engine.Land;

/// <summary>The two-digit codes that open the county codes of each state.</summary>
/// <remarks>Source: ANSI INCITS 38 (formerly FIPS 5-2), as published by the US Census Bureau.</remarks>
public static class UsStates
{
    public static readonly FrozenDictionary<string, string> FipsByPostalCode =
        ("AL01 AK02 AZ04 AR05 CA06 CO08 CT09 DE10 DC11 FL12 GA13 HI15 ID16 IL17 IN18 IA19 KS20 KY21 LA22 ME23 MD24 "
            + "MA25 MI26 MN27 MS28 MO29 MT30 NE31 NV32 NH33 NJ34 NM35 NY36 NC37 ND38 OH39 OK40 OR41 PA42 RI44 SC45 "
            + "SD46 TN47 TX48 UT49 VT50 VA51 WA53 WV54 WI55 WY56")
        .Split(' ').ToFrozenDictionary(entry => entry[..2], entry => entry[2..]);
}
