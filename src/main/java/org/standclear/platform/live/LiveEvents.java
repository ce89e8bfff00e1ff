package org.standclear.platform.live;

import org.standclear.platform.ids.CellId;

/** Says that something about a cell changed; pages that show it fetch it anew. Nothing else is told. */
public interface LiveEvents {

    /** Told to every instance when the running transaction has committed, once however often it is called in it. */
    void cellChanged(CellId cell);
}
