package org.standclear.core.forecast;

import java.util.List;
import java.util.SplittableRandom;

/** How long one step at the bench takes, in minutes, from time to time. */
public sealed interface StepTime {

    /** One length, by chance. */
    double draw(SplittableRandom chance);

    /** The length on average. */
    double mean();

    /**
     * The triangular distribution: rarely shorter or longer than most people remember it. Drawn by inverting its
     * distribution function.
     */
    record Triangular(double least, double likely, double most) implements StepTime {

        public Triangular {
            if (!(least >= 0 && least <= likely && likely <= most && most < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("a step needs 0 <= least <= likely <= most");
            }
        }

        /** Always the same length. */
        public static Triangular always(double minutes) {
            return new Triangular(minutes, minutes, minutes);
        }

        @Override
        public double draw(SplittableRandom chance) {
            double share = chance.nextDouble();
            double width = most - least;
            double rising = likely - least;
            return share * width <= rising
                    ? least + Math.sqrt(share * width * rising)
                    : most - Math.sqrt((1 - share) * width * (most - likely));
        }

        @Override
        public double mean() {
            return (least + likely + most) / 3;
        }
    }

    /** Lengths that the lab's own log has; each is as likely as the next. */
    record Measured(List<Double> minutes) implements StepTime {

        public Measured {
            minutes = List.copyOf(minutes);
            if (minutes.isEmpty() || !minutes.stream().allMatch(one -> one >= 0 && one < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("measured steps need at least one time of 0 or more minutes");
            }
        }

        @Override
        public double draw(SplittableRandom chance) {
            return minutes.get(chance.nextInt(minutes.size()));
        }

        @Override
        public double mean() {
            return minutes.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
        }
    }
}
