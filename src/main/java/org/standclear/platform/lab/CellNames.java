package org.standclear.platform.lab;

import java.util.Map;
import org.standclear.platform.ids.CellId;

/** Names of cells, for features that know cells by id only. */
public interface CellNames {

    /** All cells by name, in that order. */
    Map<CellId, String> all();
}
