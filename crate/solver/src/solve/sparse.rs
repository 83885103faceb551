//! Sparse LU factors on a fixed pattern, without pivoting.
//!
//! The order is approximate minimum degree (Amestoy, Davis and Duff 2004, by the `amd` crate) on the
//! symmetrised pattern, then one repair: a node's pressure, whose own diagonal entry may vanish, waits
//! until all its branches' flows are eliminated. Its pivot then is the conductance to what is left, and
//! a shut port behind it, whose conductance cancels, cannot make it zero. The pattern is found once;
//! each factorisation is a fixed list of multiplications. No pivoting is safe enough here: branch rows
//! have the pivot 1, node rows a sum of conductances; a bad pivot is reported and Newton steps back.

/// A pivot too small to divide by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BadPivot;

/// A square matrix with a fixed pattern and its factors.
#[derive(Clone, Debug)]
pub struct Sparse {
    /// Values by entry, in the order the pattern was given.
    pub values: Vec<f64>,
    order: Vec<u32>,
    /// Entries of each permuted row: (column, entry).
    row_start: Vec<u32>,
    row_entries: Vec<(u32, u32)>,
    /// Pattern of the strictly upper rows, which is that of the strictly lower columns.
    upper_start: Vec<u32>,
    upper_index: Vec<u32>,
    upper: Vec<f64>,
    /// Strictly lower rows.
    lower_start: Vec<u32>,
    lower_index: Vec<u32>,
    lower: Vec<f64>,
    inverse_pivot: Vec<f64>,
    work: Vec<f64>,
}

impl Sparse {
    /// A matrix of `size` with `entries` (row, column); `weak` tells which diagonals may be zero.
    pub fn new(size: usize, entries: &[(u32, u32)], weak: impl Fn(usize) -> bool) -> Self {
        let neighbours = symmetric_neighbours(size, entries);
        let order = elimination_order(&neighbours, weak);
        let mut place = vec![0u32; size];
        for (position, original) in order.iter().enumerate() {
            place[*original as usize] = position as u32;
        }
        let upper_rows = fill(&neighbours, &order, &place);
        let mut lower_rows: Vec<Vec<u32>> = vec![Vec::new(); size];
        for (row, columns) in upper_rows.iter().enumerate() {
            for column in columns {
                lower_rows[*column as usize].push(row as u32);
            }
        }
        let mut rows: Vec<Vec<(u32, u32)>> = vec![Vec::new(); size];
        for (entry, (row, column)) in entries.iter().enumerate() {
            rows[place[*row as usize] as usize].push((place[*column as usize], entry as u32));
        }
        let (row_start, row_entries) = flatten(rows);
        let (upper_start, upper_index) = flatten(upper_rows);
        let (lower_start, lower_index) = flatten(lower_rows);
        Self {
            values: vec![0.0; entries.len()],
            order,
            row_start,
            row_entries,
            upper: vec![0.0; upper_index.len()],
            upper_start,
            upper_index,
            lower: vec![0.0; lower_index.len()],
            lower_start,
            lower_index,
            inverse_pivot: vec![0.0; size],
            work: vec![0.0; size],
        }
    }

    /// Factorises the present values.
    pub fn factorise(&mut self) -> Result<(), BadPivot> {
        for row in 0..self.order.len() {
            let lower = self.lower_start[row] as usize..self.lower_start[row + 1] as usize;
            let upper = self.upper_start[row] as usize..self.upper_start[row + 1] as usize;
            for entry in
                &self.row_entries[self.row_start[row] as usize..self.row_start[row + 1] as usize]
            {
                self.work[entry.0 as usize] += self.values[entry.1 as usize];
            }
            for position in lower {
                let pivot_row = self.lower_index[position] as usize;
                let factor = self.work[pivot_row] * self.inverse_pivot[pivot_row];
                self.work[pivot_row] = 0.0;
                self.lower[position] = factor;
                if factor != 0.0 {
                    let span = self.upper_start[pivot_row] as usize
                        ..self.upper_start[pivot_row + 1] as usize;
                    for (column, value) in
                        self.upper_index[span.clone()].iter().zip(&self.upper[span])
                    {
                        self.work[*column as usize] -= factor * value;
                    }
                }
            }
            let pivot = std::mem::take(&mut self.work[row]);
            let mut usable = pivot != 0.0 && pivot.is_finite();
            for position in upper {
                let column = self.upper_index[position] as usize;
                self.upper[position] = std::mem::take(&mut self.work[column]);
                usable &= self.upper[position].is_finite();
            }
            if !usable {
                self.work.fill(0.0);
                return Err(BadPivot);
            }
            self.inverse_pivot[row] = 1.0 / pivot;
        }
        Ok(())
    }

    /// Replaces `right` by the solution with it as right-hand side.
    pub fn solve(&mut self, right: &mut [f64]) {
        let size = self.order.len();
        for row in 0..size {
            let span = self.lower_start[row] as usize..self.lower_start[row + 1] as usize;
            let mut sum = right[self.order[row] as usize];
            for (column, value) in self.lower_index[span.clone()].iter().zip(&self.lower[span]) {
                sum -= value * self.work[*column as usize];
            }
            self.work[row] = sum;
        }
        for row in (0..size).rev() {
            let span = self.upper_start[row] as usize..self.upper_start[row + 1] as usize;
            let mut sum = self.work[row];
            for (column, value) in self.upper_index[span.clone()].iter().zip(&self.upper[span]) {
                sum -= value * self.work[*column as usize];
            }
            self.work[row] = sum * self.inverse_pivot[row];
        }
        self.hand_out(right);
    }

    /// As `solve`, with the transposed matrix.
    pub fn solve_transposed(&mut self, right: &mut [f64]) {
        let size = self.order.len();
        for row in 0..size {
            self.work[row] = right[self.order[row] as usize];
        }
        for row in 0..size {
            let span = self.upper_start[row] as usize..self.upper_start[row + 1] as usize;
            let known = self.work[row] * self.inverse_pivot[row];
            self.work[row] = known;
            for (column, value) in self.upper_index[span.clone()].iter().zip(&self.upper[span]) {
                self.work[*column as usize] -= value * known;
            }
        }
        for row in (0..size).rev() {
            let span = self.lower_start[row] as usize..self.lower_start[row + 1] as usize;
            let known = self.work[row];
            for (column, value) in self.lower_index[span.clone()].iter().zip(&self.lower[span]) {
                self.work[*column as usize] -= value * known;
            }
        }
        self.hand_out(right);
    }

    /// Moves the work vector into original order and leaves it zero for the next factorisation.
    fn hand_out(&mut self, right: &mut [f64]) {
        for (position, original) in self.order.iter().enumerate() {
            right[*original as usize] = self.work[position];
        }
        self.work.fill(0.0);
    }
}

fn symmetric_neighbours(size: usize, entries: &[(u32, u32)]) -> Vec<Vec<u32>> {
    let mut neighbours: Vec<Vec<u32>> = vec![Vec::new(); size];
    for (row, column) in entries.iter().filter(|(row, column)| row != column) {
        neighbours[*row as usize].push(*column);
        neighbours[*column as usize].push(*row);
    }
    for list in &mut neighbours {
        list.sort_unstable();
        list.dedup();
    }
    neighbours
}

fn elimination_order(neighbours: &[Vec<u32>], weak: impl Fn(usize) -> bool) -> Vec<u32> {
    let size = neighbours.len();
    let (starts, index) = flatten(neighbours.to_vec());
    let starts: Vec<usize> = starts.into_iter().map(|start| start as usize).collect();
    let index: Vec<usize> = index.into_iter().map(|column| column as usize).collect();
    let minimum_degree = amd::order(size, &starts, &index, &amd::Control::default())
        .map_or_else(|_| (0..size).collect(), |(order, _, _)| order);
    let mut unready: Vec<usize> = (0..size)
        .map(|unknown| {
            if weak(unknown) {
                neighbours[unknown]
                    .iter()
                    .filter(|other| !weak(**other as usize))
                    .count()
            } else {
                0
            }
        })
        .collect();
    let mut waiting = vec![false; size];
    let mut order = Vec::with_capacity(size);
    for unknown in minimum_degree {
        if unready[unknown] > 0 {
            waiting[unknown] = true;
            continue;
        }
        order.push(unknown as u32);
        if weak(unknown) {
            continue;
        }
        for other in neighbours[unknown]
            .iter()
            .map(|other| *other as usize)
            .filter(|other| weak(*other))
        {
            unready[other] -= 1;
            if unready[other] == 0 && waiting[other] {
                order.push(other as u32);
            }
        }
    }
    order
}

/// Pattern of the strictly upper rows after elimination, sorted; by the elimination tree.
fn fill(neighbours: &[Vec<u32>], order: &[u32], place: &[u32]) -> Vec<Vec<u32>> {
    let size = order.len();
    let mut rows: Vec<Vec<u32>> = Vec::with_capacity(size);
    let mut children: Vec<Vec<u32>> = vec![Vec::new(); size];
    let mut mark = vec![u32::MAX; size];
    for row in 0..size {
        let mut columns = Vec::new();
        let own = neighbours[order[row] as usize]
            .iter()
            .map(|other| place[*other as usize]);
        let inherited = children[row]
            .iter()
            .flat_map(|child| rows[*child as usize].iter().copied());
        for column in own.chain(inherited).filter(|column| *column as usize > row) {
            if mark[column as usize] != row as u32 {
                mark[column as usize] = row as u32;
                columns.push(column);
            }
        }
        columns.sort_unstable();
        if let Some(parent) = columns.first() {
            children[*parent as usize].push(row as u32);
        }
        rows.push(columns);
    }
    rows
}

fn flatten<T>(rows: Vec<Vec<T>>) -> (Vec<u32>, Vec<T>) {
    let mut starts = Vec::with_capacity(rows.len() + 1);
    let mut all = Vec::new();
    starts.push(0);
    for row in rows {
        all.extend(row);
        starts.push(all.len() as u32);
    }
    (starts, all)
}
