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
    /// Strictly lower rows.
    lower_start: Vec<u32>,
    lower_index: Vec<u32>,
    /// The factors of the values last factorised, or others that were put in their place.
    pub factors: Factors,
    work: Vec<f64>,
}

/// The numbers of a factorisation, apart from the pattern that several share.
#[derive(Clone, Debug, Default)]
pub struct Factors {
    upper: Vec<f64>,
    lower: Vec<f64>,
    inverse_pivot: Vec<f64>,
}

impl Factors {
    fn resize(&mut self, size: usize, upper: usize, lower: usize) {
        self.upper.resize(upper, 0.0);
        self.lower.resize(lower, 0.0);
        self.inverse_pivot.resize(size, 0.0);
    }
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
            upper_start,
            upper_index,
            lower_start,
            lower_index,
            factors: Factors::default(),
            work: vec![0.0; size],
        }
    }

    /// Factorises the present values.
    pub fn factorise(&mut self) -> Result<(), BadPivot> {
        let Self {
            values,
            row_start,
            row_entries,
            upper_start,
            upper_index,
            lower_start,
            lower_index,
            factors,
            work,
            ..
        } = self;
        factors.resize(work.len(), upper_index.len(), lower_index.len());
        let Factors {
            upper,
            lower,
            inverse_pivot,
        } = factors;
        for row in 0..work.len() {
            for (column, entry) in &row_entries[span(row_start, row)] {
                work[*column as usize] += values[*entry as usize];
            }
            for position in span(lower_start, row) {
                let pivot_row = lower_index[position] as usize;
                let factor = std::mem::take(&mut work[pivot_row]) * inverse_pivot[pivot_row];
                lower[position] = factor;
                if factor != 0.0 {
                    let its = span(upper_start, pivot_row);
                    for (column, value) in upper_index[its.clone()].iter().zip(&upper[its]) {
                        work[*column as usize] -= factor * value;
                    }
                }
            }
            let pivot = std::mem::take(&mut work[row]);
            let mut usable = pivot != 0.0 && pivot.is_finite();
            let its = span(upper_start, row);
            for (column, value) in upper_index[its.clone()].iter().zip(&mut upper[its]) {
                *value = std::mem::take(&mut work[*column as usize]);
                usable &= value.is_finite();
            }
            if !usable {
                work.fill(0.0);
                return Err(BadPivot);
            }
            inverse_pivot[row] = 1.0 / pivot;
        }
        Ok(())
    }

    /// Replaces `right` by the solution with it as right-hand side.
    pub fn solve(&mut self, right: &mut [f64]) {
        let Self { work, factors, .. } = self;
        for row in 0..work.len() {
            let its = span(&self.lower_start, row);
            let mut sum = right[self.order[row] as usize];
            for (column, value) in self.lower_index[its.clone()]
                .iter()
                .zip(&factors.lower[its])
            {
                sum -= value * work[*column as usize];
            }
            work[row] = sum;
        }
        for row in (0..work.len()).rev() {
            let its = span(&self.upper_start, row);
            let mut sum = work[row];
            for (column, value) in self.upper_index[its.clone()]
                .iter()
                .zip(&factors.upper[its])
            {
                sum -= value * work[*column as usize];
            }
            work[row] = sum * factors.inverse_pivot[row];
        }
        self.hand_out(right);
    }

    /// As `solve`, with the transposed matrix.
    pub fn solve_transposed(&mut self, right: &mut [f64]) {
        let Self { work, factors, .. } = self;
        for (known, original) in work.iter_mut().zip(&self.order) {
            *known = right[*original as usize];
        }
        for row in 0..work.len() {
            let its = span(&self.upper_start, row);
            let known = work[row] * factors.inverse_pivot[row];
            work[row] = known;
            if known == 0.0 {
                continue;
            }
            for (column, value) in self.upper_index[its.clone()]
                .iter()
                .zip(&factors.upper[its])
            {
                work[*column as usize] -= value * known;
            }
        }
        for row in (0..work.len()).rev() {
            let its = span(&self.lower_start, row);
            let known = work[row];
            for (column, value) in self.lower_index[its.clone()]
                .iter()
                .zip(&factors.lower[its])
            {
                work[*column as usize] -= value * known;
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

/// Where a row's entries stand.
fn span(starts: &[u32], row: usize) -> std::ops::Range<usize> {
    starts[row] as usize..starts[row + 1] as usize
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
