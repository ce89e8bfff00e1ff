package org.standclear.booking;

import java.util.List;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;

/** Makes labs for whoever sets up a whole installation at once; people do it on a page. */
public interface LabMaker {

    /** Makes a lab that opens like this from Monday to Friday and has no staff yet; there must be none of its name in use. */
    LabId make(Lab lab, List<OpenPeriod> weekday, PersonId by);
}
