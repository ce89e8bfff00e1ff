package org.standclear.signoff.records;

import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.BookingId;
import org.standclear.signoff.Disagreement;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffRecord;

/** Reads the record of the lists. */
@Service
@Transactional(readOnly = true)
class JdbcSignoffRecord implements SignoffRecord {

    private final SheetRows sheets;
    private final EventRows events;

    JdbcSignoffRecord(SheetRows sheets, EventRows events) {
        this.sheets = sheets;
        this.events = events;
    }

    @Override
    public List<Sheet> sheets(BookingId booking) {
        return sheets.all(booking);
    }

    @Override
    public List<Lapse> lapses(BookingId booking) {
        return events.lapses(booking);
    }

    @Override
    public List<Lapse> lapsesSince(Release release) {
        return events.lapsesAfter(
                release.booking(), sheets.before(release.sheet()).lapse());
    }

    @Override
    public List<Disagreement> disagreements(BookingId booking) {
        return events.disagreements(booking);
    }
}
