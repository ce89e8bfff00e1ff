package org.standclear.core.forecast;

/**
 * How long the steps of one turn take.
 *
 * @param setUp from the start of the slot until the bench is ready for the technician
 * @param release the technician's work up to the release
 * @param watch the technician watches the first start
 * @param noShow share of slots to which nobody comes, 0 to 1
 * @param closeOutMinutes kept at the end of a slot for the close-out
 */
public record BenchSteps(StepTime setUp, StepTime release, StepTime watch, double noShow, double closeOutMinutes) {

    /** Before the lab has a log of its own: the values of the project's design, estimated and not measured. */
    public static final BenchSteps ESTIMATED = new BenchSteps(
            new StepTime.Triangular(4, 6, 11),
            new StepTime.Triangular(2.5, 3.5, 7),
            new StepTime.Triangular(1, 2, 4),
            0.12,
            4);

    public BenchSteps {
        if (!(noShow >= 0 && noShow <= 1 && closeOutMinutes >= 0)) {
            throw new IllegalArgumentException("a share lies between 0 and 1, and a time is 0 or more");
        }
    }
}
