package org.standclear.core.arm.articulated;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.quantity.Interval;

/** Arms with six axes for tests; every axis turns twice round either way. */
public final class SixAxes {

    private SixAxes() {}

    /** An arm from the numbers a, alpha, d of each row. */
    public static ArticulatedArm of(double... table) {
        List<DhRow> rows = new ArrayList<>();
        for (int i = 0; i < 18; i += 3) {
            rows.add(new DhRow(table[i], table[i + 1], table[i + 2], 0));
        }
        return with(rows);
    }

    static ArticulatedArm with(List<DhRow> rows) {
        List<Axis> axes = IntStream.range(0, 6)
                .mapToObj(i -> new Axis("axis" + i, true, new Interval(-720, 720), 200.0 + 40 * i, 800 + 100 * i))
                .toList();
        return new ArticulatedArm(rows, axes);
    }

    /**
     * A university lecture's table, in mm (design value of grade C: checked by two programs); texts differ, so the
     * vectors hold for this table alone.
     */
    public static ArticulatedArm lecture() {
        return of(0, -90, 0, 431.8, 0, 0, 20.3, -90, 149.09, 0, 90, 433.07, 0, -90, 0, 0, 0, 0);
    }

    static AxisValues axes(double[] row, int from) {
        return AxisValues.of(row[from], row[from + 1], row[from + 2], row[from + 3], row[from + 4], row[from + 5]);
    }
}
