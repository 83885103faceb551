//! Small full systems of equations: one unknown a cylinder and a few more.

/// Gaussian elimination with row exchange; the matrix is small and full.
pub fn solve_dense(matrix: &mut [Vec<f64>], right: &mut [f64]) {
    let size = right.len();
    for pivot in 0..size {
        let best = (pivot..size)
            .max_by(|a, b| matrix[*a][pivot].abs().total_cmp(&matrix[*b][pivot].abs()))
            .unwrap_or(pivot);
        matrix.swap(pivot, best);
        right.swap(pivot, best);
        for row in pivot + 1..size {
            let factor = matrix[row][pivot] / matrix[pivot][pivot];
            if factor != 0.0 {
                for column in pivot..size {
                    matrix[row][column] -= factor * matrix[pivot][column];
                }
                right[row] -= factor * right[pivot];
            }
        }
    }
    for row in (0..size).rev() {
        let known: f64 = (row + 1..size)
            .map(|column| matrix[row][column] * right[column])
            .sum();
        right[row] = (right[row] - known) / matrix[row][row];
    }
}
