package org.standclear.simulation;

import org.springframework.context.ApplicationContext;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.Bookings;
import org.standclear.booking.BulkMoves;
import org.standclear.booking.Turns;
import org.standclear.booking.WaitingList;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellStates;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.cell.Equipment;
import org.standclear.cell.RecurringDuties;
import org.standclear.cell.ToolChanges;
import org.standclear.cell.ToolReadings;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.Incidents;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.DutyRegister;
import org.standclear.people.PeopleRegister;
import org.standclear.people.SigningPins;
import org.standclear.program.ProgramUploads;
import org.standclear.program.Programs;
import org.standclear.run.RunLog;
import org.standclear.run.Runs;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.PaperCards;
import org.standclear.signoff.Preparation;
import org.standclear.signoff.Rechecks;
import org.standclear.signoff.Releases;
import org.standclear.signoff.SignoffDesk;
import org.standclear.signoff.Waivers;

/** The services behind the pages. */
record Doors(
        PeopleRegister people,
        SigningPins pins,
        AuthorisationRegister authorisations,
        DutyRegister duty,
        CellRegister register,
        Cells cells,
        CellStates states,
        DayTests dayTests,
        ToolReadings readings,
        ProgramUploads uploads,
        Programs programs,
        BookingDesk bookingDesk,
        Bookings bookings,
        WaitingList waitingList,
        BulkMoves bulkMoves,
        Turns turns,
        Preparation preparation,
        SignoffDesk desk,
        Releases releases,
        Handovers handovers,
        Waivers waivers,
        Rechecks rechecks,
        RunLog log,
        Runs runs,
        PaperCards paperCards,
        RecurringDuties duties,
        ToolChanges toolChanges,
        Equipment equipment,
        Incidents incidents,
        IncidentReports reports,
        IncidentReviews reviews,
        CorrectiveActions actions) {

    static Doors of(ApplicationContext application) {
        return new Doors(
                application.getBean(PeopleRegister.class),
                application.getBean(SigningPins.class),
                application.getBean(AuthorisationRegister.class),
                application.getBean(DutyRegister.class),
                application.getBean(CellRegister.class),
                application.getBean(Cells.class),
                application.getBean(CellStates.class),
                application.getBean(DayTests.class),
                application.getBean(ToolReadings.class),
                application.getBean(ProgramUploads.class),
                application.getBean(Programs.class),
                application.getBean(BookingDesk.class),
                application.getBean(Bookings.class),
                application.getBean(WaitingList.class),
                application.getBean(BulkMoves.class),
                application.getBean(Turns.class),
                application.getBean(Preparation.class),
                application.getBean(SignoffDesk.class),
                application.getBean(Releases.class),
                application.getBean(Handovers.class),
                application.getBean(Waivers.class),
                application.getBean(Rechecks.class),
                application.getBean(RunLog.class),
                application.getBean(Runs.class),
                application.getBean(PaperCards.class),
                application.getBean(RecurringDuties.class),
                application.getBean(ToolChanges.class),
                application.getBean(Equipment.class),
                application.getBean(Incidents.class),
                application.getBean(IncidentReports.class),
                application.getBean(IncidentReviews.class),
                application.getBean(CorrectiveActions.class));
    }
}
