package org.standclear.simulation;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/** Lets somebody look at, and step into, every statement and commit that the application sends to the database. */
final class WatchedDatabase extends DelegatingDataSource {

    private final Watch watch;

    private WatchedDatabase(DataSource target, Watch watch) {
        super(target);
        this.watch = watch;
    }

    /** Who looks; each wraps the application's data source before other beans are made. */
    interface Watch extends BeanPostProcessor {

        /** A connection is taken from the pool. */
        void connection(Connection real) throws SQLException;

        /** A statement is about to be sent. */
        void statement(Connection real) throws SQLException;

        /** The transaction is to be committed; commits it or does not. */
        void commit(Connection real) throws SQLException;

        /** Whether the process that asks is gone: the database has undone all of its transaction then. */
        default boolean isGone() {
            return false;
        }

        @Override
        default Object postProcessAfterInitialization(Object bean, String name) {
            return bean instanceof DataSource source ? new WatchedDatabase(source, this) : bean;
        }
    }

    @Override
    public Connection getConnection() throws SQLException {
        Connection real = super.getConnection();
        watch.connection(real);
        return proxy(Connection.class, (self, method, args) -> ofConnection(real, method, args));
    }

    private @Nullable Object ofConnection(Connection real, Method method, Object[] args) throws Throwable {
        if (method.getName().equals("commit")) {
            watch.commit(real);
            return null;
        }
        boolean undoesPart = method.getName().equals("rollback") && method.getParameterCount() == 1;
        if (undoesPart && watch.isGone()) {
            return null;
        }
        Object result = call(real, method, args);
        return result instanceof Statement statement
                ? proxy(method.getReturnType(), (self, of, with) -> ofStatement(real, statement, of, with))
                : result;
    }

    private @Nullable Object ofStatement(Connection real, Statement statement, Method method, Object[] args)
            throws Throwable {
        if (method.getName().startsWith("execute")) {
            watch.statement(real);
        }
        return call(statement, method, args);
    }

    private static @Nullable Object call(Object on, Method method, Object[] args) throws Throwable {
        try {
            return method.invoke(on, args);
        } catch (InvocationTargetException thrown) {
            throw thrown.getCause();
        }
    }

    private static <T> T proxy(Class<T> type, InvocationHandler handler) {
        return type.cast(
                Proxy.newProxyInstance(WatchedDatabase.class.getClassLoader(), new Class<?>[] {type}, handler));
    }
}
