package org.standclear.people.roster;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.people.StandingBookings;
import org.standclear.people.roster.RosterRows.Effect.Kind;
import org.standclear.platform.ids.PersonId;

/** What an applied roster has changed, in sentences, and who left a section by it. */
@Component
class RosterDone {

    private final JdbcClient jdbc;
    private final StandingBookings standing;

    RosterDone(JdbcClient jdbc, StandingBookings standing) {
        this.jdbc = jdbc;
        this.standing = standing;
    }

    /** A sentence for each kind of change that there was. */
    List<String> says(UUID roster) {
        Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
        jdbc.sql("select kind, count(*) as n from roster_effects where import_id = :id group by kind")
                .param("id", roster)
                .query(row -> {
                    counts.put(Kind.valueOf(row.getString("kind")), row.getInt("n"));
                });
        List<String> says = new ArrayList<>();
        counts.forEach((kind, count) -> says.add(kind == Kind.TAKEN_OUT ? takenOut(roster, count) : says(kind, count)));
        return says;
    }

    private static String says(Kind kind, int count) {
        boolean one = count == 1;
        return count + " "
                + switch (kind) {
                    case ADDED ->
                        (one ? "new account, which" : "new accounts, which")
                                + " can sign in once an administrator has given a temporary password.";
                    case ENROLLED -> one ? "new enrolment." : "new enrolments.";
                    case TAKEN_OUT -> "taken out.";
                    case TEAMED -> (one ? "student" : "students") + " came into a pair or team.";
                    case ADDRESSED -> (one ? "person" : "people") + " got an address for messages.";
                    case LET_IN ->
                        one ? "account became a student of this lab." : "accounts became students of this lab.";
                };
    }

    /** What is ahead is counted now, not at the applying: it does not say who was told then. */
    private String takenOut(UUID roster, int count) {
        int ahead = standing.aheadOf(left(roster).keySet());
        return count + " taken out of "
                + (count == 1 ? "a section" : "their sections")
                + (ahead == 0
                        ? "; they have no bookings ahead now."
                        : "; " + ahead
                                + (ahead == 1
                                        ? " booking that they have ahead now stays."
                                        : " bookings that they have ahead now stay."));
    }

    /** Who was taken out, with the section: the last of several. */
    Map<PersonId, String> left(UUID roster) {
        Map<PersonId, String> left = new LinkedHashMap<>();
        jdbc.sql("""
                select f.person_id, c.code as course, s.code as section from roster_effects f
                join sections s on s.id = f.section_id join courses c on c.id = s.course_id
                where f.import_id = :id and f.kind = 'TAKEN_OUT' order by f.number""").param("id", roster).query(row -> {
            left.put(
                    new PersonId(row.getObject("person_id", UUID.class)),
                    row.getString("course") + "-" + row.getString("section"));
        });
        return left;
    }

    /** Tells who left by the roster and has bookings ahead. */
    void tellWhoLeft(UUID roster) {
        standing.tellOfLeaving(left(roster));
    }

    /** Tells those of them, when it is taken back, that they are in again. */
    void tellWhoIsBack(UUID roster) {
        standing.tellOfReturn(left(roster));
    }
}
