package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.message.Messages.Wishes;
import org.standclear.people.CourseRegister;
import org.standclear.people.People;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.Person;
import org.standclear.people.RosterImports;
import org.standclear.people.RosterImports.Read;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.Disposable;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Each kind of record at the end of its time: what goes, what stays, and that the record still verifies. */
class DisposedKindsIT {

    abstract static class Cases extends RetentionCases {

        @Test
        void everyKindHasOneRoom() {
            assertThat(application.getBeansOfType(Disposable.class).values())
                    .extracting(Disposable::kind)
                    .containsExactlyInAnyOrder(RecordKind.values());
        }

        @Test
        void putsAPseudonymInThePlaceOfANameAndKeepsTheRuns() {
            running();
            Person noor = scene().noor;
            closeAccount(noor);
            disposedAfter(RecordKind.ACCOUNTS, noor.id().value());

            Person left = application.getBean(People.class).find(noor.id()).orElseThrow();
            assertThat(left.printedName()).matches("Person [0-9A-F]{8} \\(left\\)");
            assertThat(left.login()).startsWith("left-").doesNotContain("noor");
            assertThat(count("run_people", "person_id", noor.id().value())).isPositive();
            assertThat(count("bookings", "operator_id", noor.id().value())).isPositive();
            assertThat(register.activate(noor.id(), "came back", marit.id())).isInstanceOf(Outcome.Refused.class);
            assertThat(jdbc.sql("select statement, statement_sha256 from signoff_signatures where signer = :id")
                            .param("id", noor.id().value())
                            .query((row, number) ->
                                    Sha256.of(row.getString("statement")).equals(row.getString("statement_sha256")))
                            .list())
                    .isNotEmpty()
                    .allMatch(fits -> fits);
        }

        @Test
        void deletesAddressesOfWhoLeftOnly() {
            messages.wish(scene().mateo.id(), Wishes.plain("mateo@college.example"));
            messages.wish(scene().adaeze.id(), Wishes.plain("adaeze@college.example"));
            closeAccount(scene().mateo);
            disposedAfter(RecordKind.ADDRESSES, scene().mateo.id().value());
            assertThat(messages.wishesOf(scene().mateo.id())).isEmpty();
            assertThat(messages.wishesOf(scene().adaeze.id())).isPresent();
        }

        @Test
        void keepsAMessageWhoseMailHasNotLeft() {
            UUID id = told(scene().noor, "waits");
            jdbc.sql("update messages set mail_state = 'WAITING' where id = :id")
                    .param("id", id)
                    .update();
            keepOnly(RecordKind.MESSAGES, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.MESSAGES, id)).isFalse();
            assertThat(dueOf(RecordKind.MESSAGES).keptBack()).containsKey("its e-mail has not left yet");
            jdbc.sql("update messages set mail_state = 'TOO_LATE' where id = :id")
                    .param("id", id)
                    .update();
        }

        @Test
        void deletesThePleaAndKeepsTheBooking() {
            UUID booking = scene().booking.value();
            jdbc.sql("insert into booking_pleas (booking_id, words, sent_at) values (:id, 'the bus', :at)")
                    .param("id", booking)
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();
            disposedAfter(RecordKind.EXCUSES, booking);
            assertThat(count("booking_pleas", "booking_id", booking)).isZero();
            assertThat(count("bookings", "id", booking)).isEqualTo(1);
        }

        @Test
        void deletesTheDutyPlanOfLongAgo() {
            UUID period = first(
                    "select id from duty_periods where person_id = :id",
                    scene().adaeze.id());
            disposedAfter(RecordKind.DUTY_PERIODS, period);
            assertThat(count("duty_periods", "id", period)).isZero();
        }

        private UUID first(String sql, PersonId person) {
            return jdbc.sql(sql + " order by id fetch first row only")
                    .param("id", person.value())
                    .query(UUID.class)
                    .single();
        }

        @Test
        void takesTheReasonsOutOfAuthorisationsAndKeepsThem() {
            UUID granted = first(
                    "select id from authorisations where person_id = :id",
                    scene().noor.id());
            disposedAfter(RecordKind.AUTHORISATIONS, granted);
            assertThat(jdbc.sql("select reason from authorisations where id = :id")
                            .param("id", granted)
                            .query(String.class)
                            .single())
                    .startsWith("taken out");
        }

        @Test
        void deletesTheLinesOfARosterThatCanNotBeAppliedAfterwards() {
            application.getBean(CourseRegister.class).addCourse("KEEP 1", "Keeping", marit.id());
            String file = "login,name,course,section\nwrenlong,Wren Saltmarsh,KEEP 1,01\n";
            RosterImports rosters = application.getBean(RosterImports.class);
            Read read = rosters.read(file.getBytes(java.nio.charset.StandardCharsets.UTF_8), "autumn.csv", marit.id());
            UUID roster = is(Read.Kept.class, read).id();
            disposedAfter(RecordKind.ROSTERS, roster);
            assertThat(count("roster_rows", "import_id", roster)).isZero();
            assertThat(rosters.preview(roster).orElseThrow().fileName()).isEqualTo("autumn.csv");
            assertThat(rosters.apply(roster, true, "", marit.id())).isPresent();
        }

        @Test
        void deletesLooksOfLongAgo() {
            AccessLog looks = application.getBean(AccessLog.class);
            looks.looked(
                    ines.id(),
                    Sight.ACCOUNT,
                    scene().noor.id().toString(),
                    List.of(scene().noor.id()));
            UUID look = looks.at(scene().noor.id(), 5).stream()
                    .filter(one -> one.viewer().equals(ines.id()))
                    .findFirst()
                    .orElseThrow()
                    .id();
            disposedAfter(RecordKind.LOOKS, look);
            assertThat(count("platform_looks", "id", look)).isZero();
        }

        /** So that no row is left that refers to something that is gone. */
        @Test
        void nothingRefersToTheRowsThatAreDeleted() {
            List<String> referring = jdbc.sql("""
                    select lower(f.table_name) from information_schema.referential_constraints r
                    join information_schema.table_constraints f on f.constraint_name = r.constraint_name
                        and f.constraint_schema = r.constraint_schema
                    join information_schema.table_constraints p on p.constraint_name = r.unique_constraint_name
                        and p.constraint_schema = r.unique_constraint_schema
                    where lower(p.table_name) in ('messages', 'message_settings', 'booking_pleas', 'duty_periods',
                        'roster_rows', 'platform_looks', 'incident_medical_notes', 'incident_medical_views', 'incident_photos', 'personal_tokens',
                        'accommodations')""").query(String.class).list();
            assertThat(referring).isEmpty();
            assertThat(scene().lab.person("Leilani Driftmark", Role.STUDENT).active())
                    .isTrue();
        }
    }

    @Nested
    @OnH2
    @Keeping
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    @Keeping
    class OnPostgresEngine extends Cases {}
}
