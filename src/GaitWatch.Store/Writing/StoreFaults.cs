using Microsoft.Data.Sqlite;

namespace GaitWatch.Store;

/// <summary>Turns the database's codes into sentences that say what to do.</summary>
internal static class StoreFaults
{
    // Primary result codes, https://www.sqlite.org/rescode.html
    private const int Busy = 5;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;

    public static Exception Translate(Exception exception) => exception is not SqliteException sqlite
        ? exception
        : sqlite.SqliteErrorCode switch
        {
            Full => new StoreUnavailableException("The disk of the data directory is full: free some space; nothing acknowledged is lost.", sqlite),
            InputOutput => new StoreUnavailableException("The disk of the data directory does not take writes (input/output error): check the disk and its free space.", sqlite),
            ReadOnly => new StoreUnavailableException("The store cannot be written: check the rights of the data directory and its files.", sqlite),
            Busy => new StoreUnavailableException("The store is held by another program: end it, then try again.", sqlite),
            CannotOpen => new StoreUnavailableException("The store cannot be opened: check that the data directory exists and may be written.", sqlite),
            Corrupt or NotADatabase => new StoreUnavailableException("The store file is damaged or no store: put a backup in its place.", sqlite),
            _ => new StoreUnavailableException($"The store failed: {sqlite.Message}", sqlite),
        };
}
