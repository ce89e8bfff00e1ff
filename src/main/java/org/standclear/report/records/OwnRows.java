package org.standclear.report.records;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.OwnRecords.Entry;
import org.standclear.report.OwnRecords.Section;

/** A person's lines in the tables of all features. */
@Repository
class OwnRows {

    /**
     * What grows with the years is cut to its latest rows before anything is joined, ordered as its index is, on H2 by
     * every column of it: none of the years that staff have signed in is read for a page of the last lines.
     */
    private static final List<Part> PARTS = List.of(
            new Part("Runs", """
                    select p.started_at as at, c.lab_id as lab, c.name || ', as ' || p.part || ', ' || r.passes || ' passes, ' || r.stops
                        || ' stops' as words
                    from (select person_id, started_at, run_id, part from run_people where person_id = :person
                        order by person_id desc, started_at desc, run_id desc fetch first :most rows only) p
                    join runs r on r.id = p.run_id join cells c on c.id = r.cell_id
                    order by p.started_at desc, p.run_id, p.part"""),
            new Part("Bookings", """
                    select b.starts_at as at, c.lab_id as lab, c.name || ', ' || lower(replace(b.state, '_', ' ')) || b.part as words
                    from ((select id, cell_id, starts_at, state, ', as operator' as part from bookings
                            where operator_id = :person order by operator_id desc, ends_at desc fetch first :most rows only)
                        union all (select id, cell_id, starts_at, state, ', as e-stop attendant' as part from bookings
                            where attendant_id = :person
                            order by attendant_id desc, ends_at desc fetch first :most rows only)) b
                    join cells c on c.id = b.cell_id order by b.starts_at desc, b.id"""),
            new Part("Signatures", """
                    select g.signed_at as at, c.lab_id as lab, s.list || ' list as ' || g.part || ', signed as ' || g.printed_name
                        || ', SHA-256 ' || g.statement_sha256 as words
                    from (select id, sheet_id, part, printed_name, signed_at, statement_sha256 from signoff_signatures
                        where signer = :person order by signer desc, signed_at desc fetch first :most rows only) g
                    join signoff_sheets s on s.id = g.sheet_id join cells c on c.id = s.cell_id order by g.signed_at desc, g.id"""),
            new Part("Paper cards", """
                    select p.written_at as at, c.lab_id as lab, c.name || ', as '
                        || case when p.operator_id = :person then 'operator'
                            when p.attendant_id = :person then 'e-stop attendant' else 'releaser' end
                        || ', program ' || p.program || ', ' || p.happened as words
                    from signoff_paper_cards p join cells c on c.id = p.cell_id
                    where :person in (p.operator_id, p.attendant_id, p.releaser_id) order by p.written_at desc, p.id"""),
            new Part("Incidents you reported with your name, or are named in", """
                    select i.reported_at as at, c.lab_id as lab, 'incident ' || i.number || ', ' || lower(replace(i.class, '_', ' ')) || ', '
                        || c.name || ', ' || lower(replace(i.state, '_', ' '))
                        || case when i.reporter = :person then ', reported by you: ' || i.sentence
                            else ', named as ' || (select p.part from incident_people p
                                where p.incident_id = i.id and p.person_id = :person) end as words
                    from incidents i join cells c on c.id = i.cell_id
                    where i.reporter = :person or exists (select 1 from incident_people p
                        where p.incident_id = i.id and p.person_id = :person)
                    order by i.reported_at desc, i.id"""),
            new Part("Waivers for your runs", """
                    select w.given_at as at, c.lab_id as lab, c.name || ', ' || w.checks || ': ' || w.reason
                        || case when w.used_at is null then ', not used' else ', used' end as words
                    from signoff_waivers w join bookings b on b.id = w.booking_id join cells c on c.id = b.cell_id
                    where b.operator_id = :person order by w.given_at desc, w.id"""),
            new Part("Make-ups", """
                    select m.granted_at as at, m.lab_id as lab, case when m.withdrawn_at is not null then 'withdrawn'
                        when m.used_by is not null then 'used' else 'granted' end || ' by the lab' as words
                    from booking_make_ups m where m.person_id = :person order by m.granted_at desc, m.id"""),
            new Part("Excuses for bookings that were lost", """
                    select coalesce(p.sent_at, e.excused_at) as at, c.lab_id as lab, c.name || case when p.words is null then ''
                        else ', you wrote: ' || p.words end
                        || case when e.excused_at is null then ', not excused' else ', excused' end as words
                    from bookings b join cells c on c.id = b.cell_id
                    left join booking_pleas p on p.booking_id = b.id left join booking_excuses e on e.booking_id = b.id
                    where b.operator_id = :person and (p.booking_id is not null or e.booking_id is not null)
                    order by coalesce(p.sent_at, e.excused_at) desc, b.id"""),
            new Part("Authorisations", """
                    select a.granted_at as at, a.lab_id as lab, lower(a.duty) || ', ' || a.reason
                        || case when a.revoked_at is null then '' else ', ended early: ' || a.revoke_reason end as words
                    from authorisations a where a.person_id = :person order by a.granted_at desc, a.id"""),
            // not "join": H2 would then begin with all that the record has of a lab
            new Part("Papers printed of your runs, with your name", """
                    select t.at as at, t.lab as lab, t.words as words
                    from (select run_id from run_people where person_id = :person
                        order by person_id desc, started_at desc, run_id desc fetch first :most rows only) p
                    left join runs r on r.id = p.run_id left join cells c on c.id = r.cell_id
                    left join trail_entries t on t.lab = c.lab_id and t.subject = cast(p.run_id as varchar(36))
                        and t.kind = 'report.run-printed'
                    where t.sequence is not null order by t.at desc, t.lab, t.sequence desc"""));

    private final JdbcClient jdbc;
    private final Labs labs;
    private final LabTime labTime;

    OwnRows(JdbcClient jdbc, Labs labs, LabTime labTime) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.labTime = labTime;
    }

    /** A part and what it asks the database. */
    private record Part(String title, String sql) {}

    List<Section> of(PersonId person, int most) {
        return PARTS.stream().map(part -> section(part, person, most)).toList();
    }

    private Section section(Part part, PersonId person, int most) {
        return new Section(
                part.title(),
                jdbc.sql(part.sql() + " fetch first :most rows only")
                        .param("person", person.value())
                        .param("most", most)
                        .query((row, number) -> entry(
                                SqlTime.read(row, "at"),
                                new LabId(row.getObject("lab", UUID.class)),
                                row.getString("words")))
                        .list());
    }

    /** An entry with its instant as people of its lab read it; what is of another lab than the present one says so. */
    Entry entry(Instant at, LabId of, String words) {
        Lab here = labs.theLab();
        if (of.equals(here.id())) {
            return new Entry(at, of, labTime.full(at), words);
        }
        return LabScope.in(
                of,
                () -> new Entry(at, of, labTime.full(at), words + labs.theLab().seenFrom(here)));
    }
}
