package org.standclear.testing;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.JdbcTemplate;

/** How many statements an act asks, as the framework logs them; what rounds ask beside it is not counted. */
public final class StatementCount {

    private StatementCount() {}

    /** An act, a request by MockMvc for example, in the test's own thread. */
    @FunctionalInterface
    public interface Act {

        /** Does it. */
        void run() throws Exception;
    }

    /** Does the act, and counts. */
    public static int of(Act act) throws Exception {
        Logger logger = (Logger) LoggerFactory.getLogger(JdbcTemplate.class);
        ListAppender<ILoggingEvent> seen = new ListAppender<>();
        seen.start();
        logger.addAppender(seen);
        logger.setLevel(Level.DEBUG);
        logger.setAdditive(false);
        try {
            act.run();
        } finally {
            logger.setLevel(null);
            logger.setAdditive(true);
            logger.detachAppender(seen);
        }
        String here = Thread.currentThread().getName();
        return (int) seen.list.stream()
                .filter(event -> event.getThreadName().equals(here))
                .filter(event -> event.getFormattedMessage().startsWith("Executing prepared SQL statement"))
                .count();
    }
}
