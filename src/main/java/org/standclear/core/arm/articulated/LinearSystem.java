package org.standclear.core.arm.articulated;

/** Six equations in six unknowns, by elimination with row pivots. */
final class LinearSystem {

    /** A pivot counts as no smaller than this part of the largest entry: a singular place has large rates, not none. */
    private static final double SMALLEST_PIVOT = 1e-13;

    private LinearSystem() {}

    /** The unknowns; matrix and right side are used up. */
    static double[] solve(double[][] matrix, double[] right) {
        int n = right.length;
        double floor = SMALLEST_PIVOT * largest(matrix);
        for (int column = 0; column < n; column++) {
            pivot(matrix, right, column);
            double[] row = matrix[column];
            if (Math.abs(row[column]) < floor) {
                row[column] = Math.copySign(floor, row[column]);
            }
            for (int below = column + 1; below < n; below++) {
                double part = matrix[below][column] / row[column];
                for (int k = column; k < n; k++) {
                    matrix[below][k] -= part * row[k];
                }
                right[below] -= part * right[column];
            }
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                right[i] -= matrix[i][k] * right[k];
            }
            right[i] /= matrix[i][i];
        }
        return right;
    }

    /** The determinant; the matrix is used up. */
    static double determinant(double[][] matrix) {
        double product = 1;
        double[] right = new double[matrix.length];
        for (int column = 0; column < matrix.length; column++) {
            double[] before = matrix[column];
            pivot(matrix, right, column);
            double[] row = matrix[column];
            product *= row == before ? row[column] : -row[column];
            if (row[column] == 0) {
                return 0;
            }
            for (int below = column + 1; below < matrix.length; below++) {
                double part = matrix[below][column] / row[column];
                for (int k = column; k < matrix.length; k++) {
                    matrix[below][k] -= part * row[k];
                }
            }
        }
        return product;
    }

    private static void pivot(double[][] matrix, double[] right, int column) {
        int best = column;
        for (int i = column + 1; i < right.length; i++) {
            best = Math.abs(matrix[i][column]) > Math.abs(matrix[best][column]) ? i : best;
        }
        double[] row = matrix[column];
        matrix[column] = matrix[best];
        matrix[best] = row;
        double value = right[column];
        right[column] = right[best];
        right[best] = value;
    }

    private static double largest(double[][] matrix) {
        double largest = Double.MIN_NORMAL;
        for (double[] row : matrix) {
            for (double entry : row) {
                largest = Math.max(largest, Math.abs(entry));
            }
        }
        return largest;
    }
}
