package org.arcsay.store;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;
import org.arcsay.store.Database.Connector;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;

/** For one thread. Real connections whose n-th call to the database fails as an error of the disk would, once. */
final class FaultyConnector implements Connector {
    private static final Set<Class<?>> WRAPPED =
            Set.of(Connection.class, Statement.class, PreparedStatement.class, ResultSet.class);
    private static final Set<String> SPARED = Set.of("close", "wasNull", "hashCode", "toString", "equals");

    private final SQLiteErrorCode error;
    private int callsUntilFailure;

    FaultyConnector(SQLiteErrorCode error) {
        this.error = error;
        this.callsUntilFailure = Integer.MAX_VALUE;
    }

    /** From now on, the n-th call fails. */
    void failAt(int call) {
        callsUntilFailure = call;
    }

    /** Whether the failure has happened. */
    boolean failed() {
        return callsUntilFailure <= 0;
    }

    @Override
    public Connection connect(SQLiteConfig config, String url) throws SQLException {
        count();
        return (Connection) wrap(Connection.class, Connector.DRIVER.connect(config, url));
    }

    private void count() throws SQLException {
        callsUntilFailure--;
        if (callsUntilFailure == 0) {
            throw new SQLException("the disk failed", null, error.code);
        }
    }

    private Object wrap(Class<?> type, Object real) {
        return Proxy.newProxyInstance(type.getClassLoader(), new Class<?>[] {type}, (proxy, method, arguments) -> {
            if (!SPARED.contains(method.getName())) {
                count();
            }
            try {
                Object result = method.invoke(real, arguments);
                return result != null && WRAPPED.contains(method.getReturnType())
                        ? wrap(method.getReturnType(), result)
                        : result;
            } catch (InvocationTargetException e) {
                throw e.getCause();
            }
        });
    }
}
