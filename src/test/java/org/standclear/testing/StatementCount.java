package org.standclear.testing;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.AppenderBase;
import java.util.HashMap;
import java.util.Map;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.JdbcTemplate;

/** How many statements an act asks, as the framework logs them; what rounds ask beside it is not counted. */
public final class StatementCount {

    private static final String BEGINS = "Executing prepared SQL statement ";

    private static final int LOOKS = 3;

    private StatementCount() {}

    /** An act, a request by MockMvc for example, in the test's own thread. */
    @FunctionalInterface
    public interface Act {

        /** Does it. */
        void run() throws Exception;
    }

    /** Does the act, and counts. */
    public static int of(Act act) throws Exception {
        return each(act).values().stream().mapToInt(Integer::intValue).sum();
    }

    /**
     * What a page asks whenever it is looked at. A first look may be noted and asks more, and so does the one look of
     * several after which a thing that is kept for a moment is read anew: of looks right after each other the least counts.
     */
    public static int ofLooks(Act look) throws Exception {
        look.run();
        int least = of(look);
        for (int another = 1; another < LOOKS; another++) {
            least = Math.min(least, of(look));
        }
        return least;
    }

    /** Does the act, and says how often it asked each statement, whatever the values. */
    public static Map<String, Integer> each(Act act) throws Exception {
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
        return Map.copyOf(counter.statements);
    }

    /** Asks at once whose event it is: an event looks up its thread when first asked, which afterwards is the test's own. */
    private static final class Counter extends AppenderBase<ILoggingEvent> {

        private final Thread counted;
        private final Map<String, Integer> statements = new HashMap<>();

        Counter(Thread counted) {
            this.counted = counted;
        }

        @Override
        protected void append(ILoggingEvent event) {
            String message = event.getFormattedMessage();
            if (Thread.currentThread() == counted && message.startsWith(BEGINS)) {
                statements.merge(message.substring(BEGINS.length()).replaceAll("\\s+", " "), 1, Integer::sum);
            }
        }
    }
}
