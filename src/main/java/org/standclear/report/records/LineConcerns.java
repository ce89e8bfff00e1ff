package org.standclear.report.records;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.Id;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.Concern.About;

/** Whom and what a signed line of a week is about, so that a legal hold on it keeps the remark beside it. */
@Repository
class LineConcerns {

    /** A release has the list it was signed on, a booking has one for each round. */
    private static final String SHEETS = """
            select id from signoff_sheets where id = :id
            union select id from signoff_sheets where booking_id = :id
            union select sheet_id from signoff_releases where id = :id""";

    private static final String ON_SHEET = """
            select operator_id from signoff_sheets where id = :id
            union select attendant_id from signoff_sheets where id = :id
            union select signer from signoff_signatures where sheet_id = :id
            union select operator_id from signoff_releases where sheet_id = :id
            union select attendant_id from signoff_releases where sheet_id = :id
            union select releaser_id from signoff_releases where sheet_id = :id""";

    private final JdbcClient jdbc;

    LineConcerns(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of the line with that id; a line about a cell is about nobody. */
    Set<Concern> of(UUID reading) {
        Set<Concern> concerns = new HashSet<>();
        for (String subject : jdbc.sql("select subject from report_exception_readings where id = :id")
                .param("id", reading)
                .query(String.class)
                .list()) {
            UUID id = Id.parse(subject);
            List<UUID> incidents = incidents(id);
            incidents.forEach(incident -> concerns.add(new Concern(About.INCIDENT, incident)));
            Set<UUID> runs = new HashSet<>(ids("""
                    select id from runs where id = :id union select id from runs where booking_id = :id
                    union select r.id from runs r join signoff_releases s on s.booking_id = r.booking_id where s.id = :id
                    union select r.id from runs r join signoff_sheets l on l.booking_id = r.booking_id where l.id = :id
                    union select r.id from runs r join signoff_paper_cards p on p.booking_id = r.booking_id
                        where p.id = :id""", id));
            incidents.forEach(incident ->
                    runs.addAll(ids("select run_id from incidents where id = :id and run_id is not null", incident)));
            runs.forEach(run -> concerns.add(new Concern(About.RUN, run)));
            people(id, incidents, runs).forEach(person -> concerns.add(Concern.person(person)));
        }
        return concerns;
    }

    private List<UUID> incidents(UUID subject) {
        return ids(
                "select id from incidents where id = :id union select incident_id from incident_actions where id = :id",
                subject);
    }

    private Set<UUID> people(UUID subject, List<UUID> incidents, Set<UUID> runs) {
        Set<UUID> people = new HashSet<>(ids("""
                select operator_id from bookings where id = :id
                union select attendant_id from bookings where id = :id and attendant_id is not null
                union select operator_id from signoff_paper_cards where id = :id
                union select attendant_id from signoff_paper_cards where id = :id
                union select releaser_id from signoff_paper_cards where id = :id
                union select given_by from signoff_waivers where booking_id = :id
                union select owner from incident_actions where id = :id""", subject));
        ids(SHEETS, subject).forEach(sheet -> people.addAll(ids(ON_SHEET, sheet)));
        incidents.forEach(incident -> people.addAll(ids("""
                select person_id from incident_people where incident_id = :id
                union select reporter from incidents where id = :id and reporter is not null""", incident)));
        runs.forEach(run -> people.addAll(ids("select person_id from run_people where run_id = :id", run)));
        return people;
    }

    private List<UUID> ids(String sql, UUID id) {
        return jdbc.sql(sql).param("id", id).query(UUID.class).list();
    }
}
