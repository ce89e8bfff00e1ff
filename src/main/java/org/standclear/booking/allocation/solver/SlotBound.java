package org.standclear.booking.allocation.solver;

import java.util.Map;
import java.util.OptionalLong;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Problem;

/**
 * What no plan can do better than, slot by slot with fractions of turns allowed. It knows who attends where at every
 * instant, which numbers by blocks do not, and is often higher than they are.
 */
final class SlotBound {

    /** The linear solver has no measure of its own for what it has done; it is through in about a second at a college's size. */
    private static final double SECONDS = 20;

    private final SatModel model;
    private final SatLevels levels;

    SlotBound(Problem problem, Places places) {
        this.model = new SatModel(problem, places);
        this.levels = new SatLevels(model);
    }

    /** A stage in its order, to be asked of or held. */
    SatStage stage(int number) {
        return levels.stages().get(number).get();
    }

    /** The least of the stage's weighted sum among all that is held; empty when the linear solver does not say. */
    OptionalLong of(SatStage stage, double secondsLeft) {
        model.model().minimize(stage.weighted());
        Relaxation.Prices prices = new Relaxation(model.model().model()).solve(Math.min(SECONDS, secondsLeft));
        return prices == null ? OptionalLong.empty() : OptionalLong.of(prices.bound());
    }

    /** From now on only what is as good as that. */
    void hold(SatStage stage, Map<Level, Long> values) {
        stage.parts().forEach(part -> {
            Long most = values.get(part.level());
            if (most != null) {
                model.model().addLessOrEqual(part.sum(), most);
            }
        });
    }
}
