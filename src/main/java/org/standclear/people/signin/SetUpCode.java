package org.standclear.people.signin;

import java.security.SecureRandom;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Prints the one-time set-up code when the application starts without an administrator. */
@Component
class SetUpCode {

    private static final Logger LOG = LoggerFactory.getLogger(SetUpCode.class);

    /** Without letters and digits that are read for each other. */
    private static final String SIGNS = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";

    private static final int GROUPS = 5;
    private static final int GROUP = 4;

    private final SetUp setUp;

    SetUpCode(SetUp setUp) {
        this.setUp = setUp;
    }

    @EventListener(ApplicationReadyEvent.class)
    void print() {
        if (setUp.isNeeded()) {
            String code = next(new SecureRandom());
            setUp.accept(code);
            LOG.warn("This lab has no administrator yet. Open /setup and give this code, once: {}", code);
        }
    }

    /** 32 signs in 20 places: 100 bits. */
    static String next(SecureRandom random) {
        StringBuilder code = new StringBuilder();
        for (int i = 0; i < GROUPS * GROUP; i++) {
            if (i > 0 && i % GROUP == 0) {
                code.append('-');
            }
            code.append(SIGNS.charAt(random.nextInt(SIGNS.length())));
        }
        return code.toString();
    }
}
