package org.standclear.testing;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.AppenderBase;
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
        Counter counter = new Counter(Thread.currentThread());
        counter.start();
        logger.addAppender(counter);
        logger.setLevel(Level.DEBUG);
        logger.setAdditive(false);
        try {
            act.run();
        } finally {
            logger.setLevel(null);
            logger.setAdditive(true);
            logger.detachAppender(counter);
        }
        return counter.statements;
    }

    /** Asks at once whose event it is: an event looks up its thread when first asked, which afterwards is the test's own. */
    private static final class Counter extends AppenderBase<ILoggingEvent> {

        private final Thread counted;
        private int statements;

        Counter(Thread counted) {
            this.counted = counted;
        }

        @Override
        protected void append(ILoggingEvent event) {
            if (Thread.currentThread() == counted
                    && event.getFormattedMessage().startsWith("Executing prepared SQL statement")) {
                statements++;
            }
        }
    }
}
