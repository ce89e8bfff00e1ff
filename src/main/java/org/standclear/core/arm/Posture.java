package org.standclear.core.arm;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * One of the eight ways in which a six-axis arm reaches a place.
 *
 * @param shoulder whether the arm reaches out before axis 1 or back over it
 * @param bend whether the elbow lies above or below the line from shoulder to wrist, where the arm reaches out
 * @param wrist on which side axis 5 is bent
 */
public record Posture(Shoulder shoulder, Bend bend, Wrist wrist) implements Branch {

    /** All eight. */
    public static final List<Posture> ALL = Arrays.stream(Shoulder.values())
            .flatMap(shoulder -> Arrays.stream(Bend.values())
                    .flatMap(bend -> Arrays.stream(Wrist.values()).map(wrist -> new Posture(shoulder, bend, wrist))))
            .toList();

    /** Seen in the frame that turns with axis 1: the wrist's place along that frame's x. */
    public enum Shoulder {
        /** Above 0. */
        FRONT,
        /** Below 0. */
        BACK;

        /** 1 in front, -1 behind. */
        public int sign() {
            return this == FRONT ? 1 : -1;
        }
    }

    /** Seen from the side with the way that the shoulder reaches to the right. */
    public enum Bend {
        /** The elbow lies above the line from shoulder to wrist. */
        UP,
        /** It lies below. */
        DOWN;

        /** 1 up, -1 down. */
        public int sign() {
            return this == UP ? 1 : -1;
        }
    }

    /** The angle of axis 5 with the row's own theta added. */
    public enum Wrist {
        /** From 0 to 180 deg. */
        PLAIN,
        /** From -180 to 0 deg. */
        TURNED;

        /** 1 plain, -1 turned. */
        public int sign() {
            return this == PLAIN ? 1 : -1;
        }
    }

    @Override
    public String word() {
        return words();
    }

    @Override
    public String words() {
        return "shoulder " + lower(shoulder) + ", elbow " + lower(bend) + ", wrist " + lower(wrist);
    }

    private static String lower(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
