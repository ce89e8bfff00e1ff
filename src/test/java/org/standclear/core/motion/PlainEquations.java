package org.standclear.core.motion;

/** Linear equations for the reference of the peaks, by elimination with row pivots. */
final class PlainEquations {

    private PlainEquations() {}

    /** The unknowns; matrix and right side are used up. */
    static double[] solve(double[][] matrix, double[] right) {
        eliminate(matrix, right);
        int n = right.length;
        double[] found = new double[n];
        for (int row = n - 1; row >= 0; row--) {
            double rest = right[row];
            for (int k = row + 1; k < n; k++) {
                rest -= matrix[row][k] * found[k];
            }
            found[row] = rest / matrix[row][row];
        }
        return found;
    }

    /** The determinant; the matrix is used up. */
    static double determinant(double[][] matrix) {
        double product = eliminate(matrix, new double[matrix.length]);
        for (int i = 0; i < matrix.length; i++) {
            product *= matrix[i][i];
        }
        return product;
    }

    /** Returns -1 where the rows were exchanged an odd number of times. */
    private static int eliminate(double[][] matrix, double[] right) {
        int sign = 1;
        int n = right.length;
        for (int column = 0; column < n; column++) {
            int best = column;
            for (int row = column + 1; row < n; row++) {
                best = Math.abs(matrix[row][column]) > Math.abs(matrix[best][column]) ? row : best;
            }
            if (best != column) {
                sign = -sign;
                double[] swapped = matrix[best];
                matrix[best] = matrix[column];
                matrix[column] = swapped;
                double value = right[best];
                right[best] = right[column];
                right[column] = value;
            }
            for (int row = column + 1; row < n; row++) {
                double part = matrix[row][column] / matrix[column][column];
                for (int k = column; k < n; k++) {
                    matrix[row][k] -= part * matrix[column][k];
                }
                right[row] -= part * right[column];
            }
        }
        return sign;
    }
}
