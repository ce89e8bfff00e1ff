package org.standclear.desk.web;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.standclear.booking.WaitingList;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.message.Messages;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** What somebody should see before anything else on their page: a slot that is kept for minutes, and new messages. */
@Component
class MyNews {

    private final WaitingList waiting;
    private final Messages messages;
    private final Cells cells;
    private final LabTime labTime;

    MyNews(WaitingList waiting, Messages messages, Cells cells, LabTime labTime) {
        this.waiting = waiting;
        this.messages = messages;
        this.cells = cells;
        this.labTime = labTime;
    }

    /** A slot offered, with until when. */
    record OfferLine(UUID id, String until, String slot) {}

    List<OfferLine> offers(PersonId person) {
        return waiting.of(person).stream()
                .flatMap(one -> Stream.ofNullable(one.offer()))
                .map(offer -> new OfferLine(
                        offer.id(),
                        labTime.time(offer.until())
                                + (labTime.isToday(offer.until()) ? "" : ", " + labTime.day(offer.until())),
                        cells.find(offer.slot().cell()).map(Cell::name).orElse("A cell") + ", "
                                + labTime.datedSpan(
                                        offer.slot().start(), offer.slot().end())))
                .toList();
    }

    int unread(PersonId person) {
        return messages.unreadOf(person);
    }
}
