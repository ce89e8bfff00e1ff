package org.standclear.signoff.records;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab releases and what was signed for them belong to. */
@Component
class SignoffThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(
                Kind.own("signoff_paper_cards"),
                Kind.of("signoff_preparations", "booking_id", "bookings"),
                Kind.of("signoff_sheets", "booking_id", "bookings"),
                Kind.of("signoff_releases", "booking_id", "bookings"),
                Kind.of("signoff_lapses", "booking_id", "bookings"),
                Kind.of("signoff_disagreements", "booking_id", "bookings"),
                Kind.of("signoff_waivers", "booking_id", "bookings"),
                Kind.of("signoff_handovers", "booking_id", "bookings"),
                Kind.of("signoff_signatures", "sheet_id", "signoff_sheets", "booking_id", "bookings"));
    }
}
