package org.standclear.platform.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.platform.ids.LabId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A lab that was changed is shown as it is now, whoever read it while it was being changed. */
class LabsIT {

    abstract static class Cases {

        @Autowired
        Labs labs;

        @Autowired
        TransactionTemplate transaction;

        private static Lab lab(LabId id, String number) {
            return new Lab(id, "College", "114", "Robot lab", ZoneOffset.UTC, number, "Hemi", "By the door");
        }

        @Test
        void whatOthersReadBeforeTheCommitIsForgottenWithIt() {
            LabId id = LabId.next();
            labs.add(lab(id, "551"));

            transaction.executeWithoutResult(status -> {
                labs.change(lab(id, "552"));
                assertThat(elsewhere(() -> numberOf(id))).isEqualTo("551");
            });

            assertThat(numberOf(id)).isEqualTo("552");
        }

        @Test
        void whatItsOwnTransactionReadIsForgottenWhenItIsRolledBack() {
            LabId id = LabId.next();
            labs.add(lab(id, "551"));

            transaction.executeWithoutResult(status -> {
                labs.change(lab(id, "552"));
                assertThat(numberOf(id)).isEqualTo("552");
                status.setRollbackOnly();
            });

            assertThat(numberOf(id)).isEqualTo("551");
        }

        private String numberOf(LabId id) {
            return LabScope.in(id, labs::theLab).emergencyNumber();
        }

        private static String elsewhere(Supplier<String> work) {
            return CompletableFuture.supplyAsync(work).join();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
