package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.BulkMoves.Done;
import org.standclear.booking.BulkMoves.Which;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;

/** What tests of bulk moves share: a cell that goes down until Friday night, and people who can go to few others. */
abstract class BulkMoveCases extends BookingCases {

    static final Instant FRIDAY_NIGHT = Instant.parse("2026-03-13T20:00:00Z");

    @Autowired
    BulkMoves bulkMoves;

    @Autowired
    WaitingList waitingList;

    @Autowired
    PlatformTransactionManager transactions;

    /** May operate on these cells only, so that no other test's cell is a way out. */
    Person student(String name, CellId... cells) {
        Person student = lab().person(name, Role.STUDENT);
        for (CellId cell : cells) {
            for (Duty duty : Duty.values()) {
                lab().authorise(student.id(), duty, cell, MovableClock.START.plus(Duration.ofDays(90)));
            }
        }
        return student;
    }

    Which everybody() {
        return new Which(avocet, FRIDAY_NIGHT, false);
    }

    Done moveAll(String seen, Person by) {
        return Objects.requireNonNull(new TransactionTemplate(transactions)
                .execute(status -> bulkMoves.moveAll(everybody(), seen, by.id(), "cable chafed")));
    }
}
