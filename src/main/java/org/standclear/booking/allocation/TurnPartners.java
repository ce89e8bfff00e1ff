package org.standclear.booking.allocation;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;

/**
 * What people who were named as partners answer. To be named asks for no consent, since pairs talk to each other; so who
 * was named can get out of it at once, and whoever declined is not named again by the same person in that window.
 */
@Service
public class TurnPartners {

    private static final String PAIR = "window_id = :window and operator_id = :operator and partner_id = :partner";

    private final JdbcClient jdbc;
    private final Windows windows;
    private final TurnRequests requests;
    private final PartnerLetters letters;
    private final LabTime labTime;
    private final Clock clock;

    TurnPartners(
            JdbcClient jdbc,
            Windows windows,
            TurnRequests requests,
            PartnerLetters letters,
            LabTime labTime,
            Clock clock) {
        this.jdbc = jdbc;
        this.windows = windows;
        this.requests = requests;
        this.letters = letters;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** What somebody asks of a partner: who, how many turns, and when they could be. */
    public record Asked(PersonId operator, String turns, String times) {}

    /** Who names the person in the window, in the order in which they asked. */
    public List<Asked> naming(UUID window, PersonId partner) {
        return requests.naming(window, partner).stream()
                .filter(request -> request.named().isPresent())
                .map(request -> new Asked(
                        request.operator(), RequestWords.turns(request), RequestWords.times(request, labTime)))
                .toList();
    }

    /** Whom the person has declined in the window, the first first. */
    public List<PersonId> declinedBy(UUID window, PersonId partner) {
        return people("operator_id", "partner_id", window, partner);
    }

    /** Who has declined the person in the window, the first first. */
    public List<PersonId> declinersOf(UUID window, PersonId operator) {
        return people("partner_id", "operator_id", window, operator);
    }

    private List<PersonId> people(String who, String of, UUID window, PersonId person) {
        return jdbc.sql("select " + who + " from booking_partner_declines where window_id = :window and " + of
                        + " = :person order by declined_at, " + who)
                .param("window", window)
                .param("person", person.value())
                .query((row, number) -> new PersonId(row.getObject(1, UUID.class)))
                .list();
    }

    /**
     * The partner will not stand at the e-stop of the operator's turns, and the operator is told. Nothing happens the
     * second time; says why not once requests have ended. Who is not named has nothing to decline.
     */
    @Transactional
    public Optional<String> decline(UUID window, PersonId operator, PersonId partner) {
        Window locked = windows.lock(window);
        if (isDeclined(window, operator, partner)) {
            return Optional.empty();
        }
        TurnRequest request = requests.of(window, operator)
                .filter(one -> one.named().filter(partner::equals).isPresent())
                .orElseThrow(() -> new NotFoundException("request"));
        if (!locked.takesRequests(labTime.now())) {
            return Optional.of(tooLate(locked));
        }
        requests.letPartnerGo(request);
        jdbc.sql("""
                insert into booking_partner_declines (window_id, operator_id, partner_id, declined_at)
                values (:window, :operator, :partner, :at)""")
                .param("window", window)
                .param("operator", operator.value())
                .param("partner", partner.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        letters.declined(locked, operator, partner);
        return Optional.empty();
    }

    /** Takes that back: the partner is named again, unless the operator has named somebody else meanwhile. */
    @Transactional
    public Optional<String> canAfterAll(UUID window, PersonId operator, PersonId partner) {
        Window locked = windows.lock(window);
        Optional<TurnRequest> request = requests.of(window, operator);
        if (!isDeclined(window, operator, partner)) {
            if (request.flatMap(TurnRequest::named).filter(partner::equals).isEmpty()) {
                throw new NotFoundException("request");
            }
            return Optional.empty();
        }
        if (!locked.takesRequests(labTime.now())) {
            return Optional.of(tooLate(locked));
        }
        jdbc.sql("delete from booking_partner_declines where " + PAIR)
                .param("window", window)
                .param("operator", operator.value())
                .param("partner", partner.value())
                .update();
        Optional<TurnRequest> free = request.filter(one -> one.turns() > 0 && one.partner() == null);
        free.ifPresent(one -> requests.nameAgain(one, partner));
        letters.canAfterAll(locked, operator, partner, free.isPresent());
        return Optional.empty();
    }

    private static String tooLate(Window window) {
        return window.accepted() != null
                ? "The slots are shared out. Whoever books for you can choose another attendant on the booking's page;"
                        + " nothing was changed."
                : "Requests for this window have ended; nothing was changed. Tell lab staff if you cannot.";
    }

    private boolean isDeclined(UUID window, PersonId operator, PersonId partner) {
        return jdbc.sql("select count(*) from booking_partner_declines where " + PAIR)
                        .param("window", window)
                        .param("operator", operator.value())
                        .param("partner", partner.value())
                        .query(Integer.class)
                        .single()
                > 0;
    }
}
