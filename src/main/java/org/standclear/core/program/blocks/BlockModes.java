package org.standclear.core.program.blocks;

import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What stays in force from one block to the next.
 *
 * @param motion the G number of the moves, 0 to 3; -1 before the first
 * @param incremental whether places are counted from where the tool point stands
 * @param inches whether lengths are in inches rather than mm
 * @param ended whether the program is over
 */
record BlockModes(int motion, boolean incremental, boolean inches, boolean ended) {

    /** G4, which stands alone and does not stay in force. */
    static final int DWELL = 4;

    /** Millimetres and absolute places until something else is said. */
    static final BlockModes INITIAL = new BlockModes(-1, false, false, false);

    private static final double MM_PER_INCH = 25.4;

    /** Groups of which a block names at most one member. */
    private enum Group {
        MOTION,
        PLANE,
        UNITS,
        PLACES,
        UNKNOWN
    }

    /** Length in mm of the unit of length. */
    double scale() {
        return inches ? MM_PER_INCH : 1;
    }

    /** What is in force after the G and M words of a block; null when one of them is not understood. */
    @Nullable
    BlockModes after(Block block) {
        if (ended || block.m().size() > 1 || !block.m().stream().allMatch(m -> m == 2 || m == 30)) {
            return null;
        }
        Set<Group> seen = new HashSet<>();
        BlockModes next = new BlockModes(motion, incremental, inches, !block.m().isEmpty());
        for (int g : block.g()) {
            Group group = group(g);
            if (group == Group.UNKNOWN || !seen.add(group)) {
                return null;
            }
            next = next.with(g);
        }
        return next;
    }

    private static Group group(int g) {
        return switch (g) {
            case 0, 1, 2, 3, DWELL -> Group.MOTION;
            case 17 -> Group.PLANE;
            case 20, 21 -> Group.UNITS;
            case 90, 91 -> Group.PLACES;
            default -> Group.UNKNOWN;
        };
    }

    private BlockModes with(int g) {
        return switch (g) {
            case 0, 1, 2, 3 -> new BlockModes(g, incremental, inches, ended);
            case 20, 21 -> new BlockModes(motion, incremental, g == 20, ended);
            case 90, 91 -> new BlockModes(motion, g == 91, inches, ended);
            default -> this;
        };
    }
}
