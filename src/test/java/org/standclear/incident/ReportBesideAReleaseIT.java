package org.standclear.incident;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.Bookings;
import org.standclear.cell.CellState;
import org.standclear.incident.IncidentReports.Reported;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.platform.ids.IncidentId;
import org.standclear.testing.LockWaits;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A report beside somebody who signs or releases on the same cell: they lock the booking, then its cell, and so does it. */
class ReportBesideAReleaseIT {

    abstract static class Cases extends IncidentCases {

        @Autowired
        Bookings bookings;

        @Autowired
        MedicalNotes notes;

        @Autowired
        JdbcTemplate template;

        @Test
        void waitsForTheBookingWithoutTheCell() {
            running();
            CompletableFuture<Reported> told = new TransactionTemplate(transactions).execute(release -> {
                bookings.lock(scene().booking);
                CompletableFuture<Reported> report = CompletableFuture.supplyAsync(() -> contact());
                new LockWaits(template).awaitAnybody();
                cells.lock(scene().cell);
                return report;
            });
            assertThat(told)
                    .as("the report beside the release")
                    .succeedsWithin(20, TimeUnit.SECONDS)
                    .isInstanceOf(Reported.Kept.class);
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
        }

        /** It only refers to them: on PostgreSQL that waits for a lock that keeps others from referring, too. */
        @Test
        void tellsANearMissThoughSomebodyHasTheBookingAndTheCell() {
            running();
            new TransactionTemplate(transactions).executeWithoutResult(release -> {
                bookings.lock(scene().booking);
                cells.lock(scene().cell);
                assertThat(CompletableFuture.supplyAsync(() -> reported(IncidentClass.NEAR_MISS)))
                        .as("the report beside the release")
                        .succeedsWithin(20, TimeUnit.SECONDS);
            });
        }

        @Test
        void opensTheMedicalPartThoughSomebodyWritesInTheReport() {
            IncidentId told = reported(IncidentClass.FIRST_AID);
            new TransactionTemplate(transactions).executeWithoutResult(writing -> {
                done(reports.state(told, "I held the paper.", scene().noor.id()));
                assertThat(CompletableFuture.supplyAsync(() -> notes.open(told, ines.id())))
                        .as("a look beside the statement")
                        .succeedsWithin(20, TimeUnit.SECONDS);
            });
        }

        private Reported contact() {
            return send(IncidentClass.CONTACT, new Teller.Named(scene().hemi.id(), ReporterPart.SAW_IT));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
