package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.List;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Turn;

/** What is asked for, as the solver reads it: slot by slot, or block by block. */
interface AskedFor {

    /** Where the numbers are. */
    CpModel model();

    /** What they are made from. */
    Problem problem();

    /** Every turn is in one of these. */
    List<? extends Group<?>> alike();

    /**
     * Turns that are alike, and where they could be.
     *
     * @param places one for each number; of a block the one that costs least
     * @param taken how many of the turns are there
     */
    record Group<N extends IntVar>(List<Turn> turns, List<Place> places, List<N> taken) {

        public Group {
            turns = List.copyOf(turns);
            places = List.copyOf(places);
            taken = List.copyOf(taken);
        }

        Turn one() {
            return turns.get(0);
        }

        LinearExprBuilder placed() {
            LinearExprBuilder sum = LinearExpr.newBuilder();
            taken.forEach(sum::add);
            return sum;
        }
    }
}
