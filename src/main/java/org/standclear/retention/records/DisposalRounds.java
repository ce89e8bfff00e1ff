package org.standclear.retention.records;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Configuration;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.scheduling.annotation.Scheduled;
import org.standclear.platform.lab.Labs;
import org.standclear.retention.Disposals;

/** Carries approved lists out by themselves, on every instance, a little at a time; tests do it on their own. */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
@ConditionalOnProperty(name = "standclear.disposals.by-themselves", havingValue = "true", matchIfMissing = true)
class DisposalRounds {

    /** So many in one transaction, and so many transactions in one round, so that the pages have room. */
    private static final int BATCH = 50;

    private static final int BATCHES = 20;

    private final Disposals disposals;
    private final Labs labs;

    DisposalRounds(Disposals disposals, Labs labs) {
        this.disposals = disposals;
        this.labs = labs;
    }

    @Scheduled(initialDelayString = "PT40S", fixedDelayString = "PT10S")
    void run() {
        labs.forEachEvenClosed(lab -> carryOut());
    }

    private void carryOut() {
        int batches = 0;
        while (batches < BATCHES && disposals.carryOut(BATCH) > 0) {
            batches++;
        }
    }
}
