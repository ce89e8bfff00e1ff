package org.standclear.people.roster;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.people.StandingBookings;
import org.standclear.people.roster.RosterRows.Effect.Kind;
import org.standclear.people.roster.RosterUndo.TakenBack;
import org.standclear.people.roster.SectionMoves.Place;
import org.standclear.platform.ids.PersonId;

/** What an applied roster has changed, in sentences, and who is told of it. */
@Component
class RosterDone {

    private final JdbcClient jdbc;
    private final StandingBookings standing;
    private final SectionMoves moves;

    RosterDone(JdbcClient jdbc, StandingBookings standing, SectionMoves moves) {
        this.jdbc = jdbc;
        this.standing = standing;
        this.moves = moves;
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
        int ahead = standing.aheadOf(places(roster, Kind.TAKEN_OUT).stream()
                .map(place -> new PersonId(place.person()))
                .toList());
        return count + " taken out of "
                + (count == 1 ? "a section" : "their sections")
                + (ahead == 0
                        ? "; they have no bookings ahead now."
                        : "; " + ahead
                                + (ahead == 1
                                        ? " booking that they have ahead now stays."
                                        : " bookings that they have ahead now stay."));
    }

    private List<Place> places(UUID roster, Kind kind) {
        return jdbc.sql("""
                select f.person_id, f.section_id, c.code as course, s.code as section from roster_effects f
                join sections s on s.id = f.section_id join courses c on c.id = s.course_id
                where f.import_id = :id and f.kind = :kind order by f.number""")
                .param("id", roster)
                .param("kind", kind.name())
                .query(SectionMoves::place)
                .list();
    }

    /** Tells who left sections by the roster and has bookings ahead; who left one for another hears of both at once. */
    void tellWhoLeft(UUID roster) {
        List<Place> left = places(roster, Kind.TAKEN_OUT);
        if (left.isEmpty()) {
            return;
        }
        Set<String> courses =
                left.stream().map(place -> place.person() + place.course()).collect(Collectors.toSet());
        List<Place> came = places(roster, Kind.ENROLLED).stream()
                .filter(place -> courses.contains(place.person() + place.course()))
                .toList();
        standing.tellOfLeaving(moves.of(left, came));
    }

    /** Tells those whose sections really changed when it was taken back. */
    void tellWhoIsBack(TakenBack back) {
        standing.tellOfReturn(moves.of(back.ended(), back.reopened()));
    }
}
