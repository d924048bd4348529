using Flushback.Mechanism.Bench;

namespace Flushback.Reports.Sheets;

/// <summary>Numbers the contacts of a report through all its stops, so that a number means one contact everywhere.</summary>
public static class ContactNumbers
{
    /// <summary>Number of the first contact of a stop; the first of the whole report is 1.</summary>
    public static int FirstAt(BenchReport report, Stop stop) =>
        1 + report.Stops.TakeWhile(reading => reading.Stop != stop).Sum(reading => reading.Contacts.Length);
}
