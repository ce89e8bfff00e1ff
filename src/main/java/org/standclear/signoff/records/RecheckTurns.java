package org.standclear.signoff.records;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Configuration;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.scheduling.annotation.Scheduled;
import org.standclear.platform.lab.Labs;
import org.standclear.signoff.Rechecks;

/** Runs pending re-checks by themselves, soon after a cell's new version; tests that watch them run them on their own. */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
@ConditionalOnProperty(name = "standclear.rechecks.by-themselves", havingValue = "true", matchIfMissing = true)
class RecheckTurns {

    /** So many at a time, so that a large lab's re-checks leave room for the pages. */
    private static final int IN_ONE_GO = 20;

    private final Rechecks rechecks;
    private final Labs labs;

    RecheckTurns(Rechecks rechecks, Labs labs) {
        this.rechecks = rechecks;
        this.labs = labs;
    }

    @Scheduled(initialDelayString = "PT5S", fixedDelayString = "PT10S")
    void run() {
        labs.forEach(lab -> rechecks.runPending(IN_ONE_GO));
    }
}
