package org.standclear.testing.reads;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Before a prepared query is asked, asks the database to carry it out and tell what it read. */
final class CountedConnection implements InvocationHandler {

    private final Connection connection;
    private final RowsRead reads;

    private CountedConnection(Connection connection, RowsRead reads) {
        this.connection = connection;
        this.reads = reads;
    }

    static Connection of(Connection connection, RowsRead reads) {
        return proxy(Connection.class, new CountedConnection(connection, reads));
    }

    private static <T> T proxy(Class<T> type, InvocationHandler handler) {
        return type.cast(Proxy.newProxyInstance(type.getClassLoader(), new Class<?>[] {type}, handler));
    }

    private static @Nullable Object call(Object target, Method method, Object @Nullable [] arguments) throws Throwable {
        try {
            return method.invoke(target, arguments);
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    @Override
    public @Nullable Object invoke(Object proxy, Method method, Object @Nullable [] arguments) throws Throwable {
        Object answer = call(connection, method, arguments);
        return answer instanceof PreparedStatement statement
                        && method.getName().equals("prepareStatement")
                        && arguments != null
                ? proxy(PreparedStatement.class, new Prepared(String.valueOf(arguments[0]), statement))
                : answer;
    }

    /** Keeps what was set, to set it once more. */
    private final class Prepared implements InvocationHandler {

        private record Value(Method method, Object[] arguments) {}

        private final String sql;
        private final PreparedStatement statement;
        private final List<Value> values = new ArrayList<>();

        Prepared(String sql, PreparedStatement statement) {
            this.sql = sql;
            this.statement = statement;
        }

        @Override
        public @Nullable Object invoke(Object proxy, Method method, Object @Nullable [] arguments) throws Throwable {
            if (method.getName().startsWith("set")
                    && arguments != null
                    && arguments.length >= 2
                    && arguments[0] instanceof Integer) {
                values.add(new Value(method, arguments));
            } else if (method.getName().startsWith("execute") && reads.counts(sql)) {
                reads.add(sql, Explained.rows(connection, sql, this::setAll));
            }
            return call(statement, method, arguments);
        }

        private void setAll(PreparedStatement other) throws SQLException {
            for (Value value : values) {
                try {
                    value.method().invoke(other, value.arguments());
                } catch (ReflectiveOperationException e) {
                    throw new SQLException(e);
                }
            }
        }
    }
}
