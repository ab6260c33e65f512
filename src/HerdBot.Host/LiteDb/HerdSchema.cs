using LiteDB;
using LiteDB.Engine;

namespace HerdBot.Host.LiteDb;

/// <summary>Which shape the documents have. A file tells its own, as a row for each schema it has ever had.</summary>
internal static class HerdSchema
{
    public const string Collection = "meta";

    public const int Current = 1;

    public static void Stamp(LiteEngine engine, int schema = Current) =>
        engine.Insert(Collection, [new BsonDocument { ["_id"] = schema }], BsonAutoId.Int32);

    /// <exception cref="DataFileException">Not HerdBot's, or of a newer one.</exception>
    public static void Check(string path, IEnumerable<BsonDocument> rows)
    {
        var schema = rows.Max(row => (int?)row["_id"].AsInt32);
        if (schema is null)
        {
            throw new DataFileException($"The data file {path} is a LiteDB file, but not HerdBot's. Nothing was changed in it. Name another file.");
        }

        if (schema > Current)
        {
            throw new DataFileException($"The data file {path} was written by a newer HerdBot. Nothing was changed in it. Start that newer one.");
        }
    }
}
