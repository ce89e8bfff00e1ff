package org.standclear.simulation;

import java.sql.Connection;
import java.sql.SQLException;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;

/**
 * Lets the process die at a chosen statement: from then on nothing reaches the database any more, and what was not
 * committed is rolled back, as a database does when a client is gone.
 */
@TestConfiguration(proxyBeanMethods = false)
class MortalDatabase {

    /** The one that dies; static, since it wraps the data source before other beans are made. */
    @Bean
    static Mortality mortality() {
        return new Mortality();
    }

    /** No exception: nothing in the application catches it, as nothing catches the end of a process. */
    static final class ProcessDied extends Error {

        private static final long serialVersionUID = 1L;

        ProcessDied() {
            super("the process died", null, false, false);
        }
    }

    /** Where in an act the process dies. */
    static final class Mortality implements WatchedDatabase.Watch {

        private static final int NEVER = Integer.MAX_VALUE;

        private int statementsLeft = NEVER;
        private boolean atCommit;
        private boolean committedFirst;
        private boolean dead;

        /** Dies before the statement of that number, counted from 1. */
        void dieBeforeStatement(int number) {
            statementsLeft = number;
        }

        /** Dies as the transaction commits: before anything is kept, or just after everything is. */
        void dieAtCommit(boolean afterwards) {
            atCommit = true;
            committedFirst = afterwards;
        }

        /** Starts again; says whether it had died. */
        boolean rise() {
            boolean was = dead;
            dead = false;
            atCommit = false;
            statementsLeft = NEVER;
            return was;
        }

        @Override
        public void connection(Connection real) throws SQLException {
            if (dead) {
                real.close();
                throw new ProcessDied();
            }
        }

        @Override
        public void statement(Connection real) throws SQLException {
            if (dead || statementsLeft != NEVER && --statementsLeft <= 0) {
                die(real);
            }
        }

        @Override
        public void commit(Connection real) throws SQLException {
            if (dead) {
                die(real);
            }
            if (atCommit) {
                if (committedFirst) {
                    real.commit();
                }
                die(real);
            }
            real.commit();
        }

        @Override
        public boolean isGone() {
            return dead;
        }

        private void die(Connection real) throws SQLException {
            dead = true;
            if (!real.getAutoCommit()) {
                real.rollback();
            }
            throw new ProcessDied();
        }
    }
}
