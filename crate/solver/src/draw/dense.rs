//! Small full systems of equations: one unknown a cylinder.

/// The identity.
pub fn identity(size: usize) -> Vec<Vec<f64>> {
    (0..size)
        .map(|row| {
            (0..size)
                .map(|column| if row == column { 1.0 } else { 0.0 })
                .collect()
        })
        .collect()
}

/// Turns what a number adds to the right-hand side of M = g(M) into what it adds to M.
pub fn self_consistent(by: &mut [f64], inverse_columns: &[Vec<f64>]) {
    let size = inverse_columns.len();
    let given = by[..size].to_vec();
    for (row, value) in by[..size].iter_mut().enumerate() {
        *value = (0..size)
            .map(|column| inverse_columns[column][row] * given[column])
            .sum();
    }
}

/// Gaussian elimination with row exchange; the matrix is small, full and close to the identity.
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
