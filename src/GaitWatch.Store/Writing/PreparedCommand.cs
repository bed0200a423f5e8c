using System.Data.Common;

namespace GaitWatch.Store;

/// <summary>One statement kept ready: prepared once, given values by position many times.</summary>
internal sealed class PreparedCommand : IDisposable
{
    private readonly DbCommand _command;

    /// <param name="connection">An open connection.</param>
    /// <param name="sql">The statement, with parameters @0, @1, ….</param>
    /// <param name="parameters">How many parameters it has.</param>
    public PreparedCommand(DbConnection connection, string sql, int parameters)
    {
        _command = connection.CreateCommand();
#pragma warning disable CA2100 // The statements are constants of this project; values go in as parameters.
        _command.CommandText = sql;
#pragma warning restore CA2100
        for (var i = 0; i < parameters; i++)
        {
            var parameter = _command.CreateParameter();
            parameter.ParameterName = "@" + i;
            _command.Parameters.Add(parameter);
        }
    }

    public DbTransaction? Transaction
    {
        set => _command.Transaction = value;
    }

    /// <summary>Runs it and tells how many rows changed.</summary>
    public int Execute(params ReadOnlySpan<object?> values)
    {
        Bind(values);
        return _command.ExecuteNonQuery();
    }

    /// <summary>Runs it as a query.</summary>
    public DbDataReader Query(params ReadOnlySpan<object?> values)
    {
        Bind(values);
        return _command.ExecuteReader();
    }

    public void Dispose() => _command.Dispose();

    private void Bind(ReadOnlySpan<object?> values)
    {
        for (var i = 0; i < values.Length; i++)
            _command.Parameters[i].Value = values[i] ?? DBNull.Value;
    }
}
