package org.standclear.message;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Keeps messages in the running transaction. */
@Service
@Transactional
class JdbcMessages implements Messages {

    private static final Duration WORTH_SENDING = Duration.ofDays(3);
    private static final Duration SHOWN = Duration.ofDays(14);
    private static final int LONGEST_ADDRESS = 254;

    /** Narrower than RFC 5322, so that no address can carry a line or a second recipient. */
    private static final Pattern ADDRESS =
            Pattern.compile("[A-Za-z0-9._%+'-]{1,64}@(?:[A-Za-z0-9-]{1,63}\\.)+[A-Za-z]{2,63}");

    private final MessageRows rows;
    private final MailSettings mail;
    private final Labs labs;
    private final Clock clock;

    @org.springframework.beans.factory.annotation.Autowired
    JdbcMessages(MessageRows rows, MailSettings.Configured mail, Labs labs, Clock clock) {
        this(rows, mail.get(), labs, clock);
    }

    JdbcMessages(MessageRows rows, MailSettings mail, Labs labs, Clock clock) {
        this.rows = rows;
        this.mail = mail;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void tell(Message message) {
        Instant now = SqlTime.stored(clock.instant());
        Optional<Wishes> wishes = rows.wishesOf(message.to()).filter(Wishes::on);
        Instant notBefore = wishes.map(one -> new QuietHours(
                                one.quietFrom(), one.quietUntil(), labs.theLab().zone())
                        .earliest(now))
                .orElse(now);
        Instant until = Objects.requireNonNullElse(message.mailUntil(), now.plus(WORTH_SENDING));
        boolean byMail = mail.on() && wishes.isPresent();
        rows.insert(
                message, new MessageRows.Outgoing(Id.newValue(), labs.theLab().id(), now, byMail, notBefore, until));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Kept> of(PersonId person, int atMost) {
        return rows.of(person, atMost);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Kept> before(PersonId person, UUID message, int atMost) {
        return rows.before(person, message, atMost);
    }

    @Override
    @Transactional(readOnly = true)
    public int unreadOf(PersonId person) {
        return rows.unreadOf(person);
    }

    @Override
    public void read(PersonId person, List<UUID> shown) {
        rows.read(person, shown, clock.instant());
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Wishes> wishesOf(PersonId person) {
        return rows.wishesOf(person);
    }

    @Override
    public Optional<Wrong> wish(PersonId person, Wishes wishes) {
        String address = wishes.address().strip();
        if (!isAddress(address)) {
            return Optional.of(new Wrong("address", "Write one e-mail address, as name@college.example."));
        }
        rows.keep(person, new Wishes(address, wishes.on(), wishes.quietFrom(), wishes.quietUntil()));
        if (!wishes.on()) {
            rows.stopWaiting(person);
        }
        return Optional.empty();
    }

    static boolean isAddress(String address) {
        return address.length() <= LONGEST_ADDRESS && ADDRESS.matcher(address).matches();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Standing> standing() {
        return rows.standing(clock.instant().minus(SHOWN));
    }
}
