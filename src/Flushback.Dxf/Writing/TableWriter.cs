namespace Flushback.Dxf.Writing;

/// <summary>Opens the symbol tables of the TABLES section.</summary>
internal static class TableWriter
{
    /// <summary>Writes the head of a table and returns its handle (<c>0</c> where tables have none).</summary>
    public static string Open(TagWriter tags, Dialect dialect, HandleSource? handles, string name, int entries)
    {
        tags.Text(0, "TABLE").Text(2, name);
        string handle = "0";
        if (dialect.HasMarkers && handles is not null)
        {
            handle = handles.Next();
            tags.Text(5, handle);
            if (dialect.HasOwners)
            {
                tags.Text(330, "0");
            }

            tags.Text(100, "AcDbSymbolTable");
        }

        tags.Whole(70, entries);
        return handle;
    }
}
