//! Exact sensitivities of a solved state: what each uncertain law forces on the equations, and the
//! adjoint that turns a forcing into the change of one result.

use super::system::direction;
use super::{Conditions, Flowing, Solver};
use crate::branch::{Arriving, Chain, Fall, Origin};
use crate::law::cooler::effectiveness;
use crate::law::{Scatter, junction};

/// One uncertain law at one place.
#[derive(Clone, Debug, PartialEq)]
pub struct Cause {
    /// Catalogue kind of the law.
    pub law: &'static str,
    /// Whether `element` is a node.
    pub at_node: bool,
    /// Branch or node index.
    pub element: usize,
    /// Position among the branch's losses or the node's uncertain numbers.
    pub position: usize,
    /// Part of the variance that is the same everywhere [-].
    pub common: f64,
}

/// What one standard deviation of one uncertain number adds to the right-hand side of Newton's equations. That is
/// counted here, because the same number can scatter more in one state than in another: a header's where it
/// combines, a change of area's where air goes back.
#[derive(Clone, Debug)]
pub struct Forcing {
    /// Which number.
    pub cause: Cause,
    /// Row and amount.
    pub entries: Vec<(usize, f64)>,
}

/// Sets the uncertain numbers of one loss apart: parts of a schedule, and the heat of a core from its drop.
const PART_OF: usize = 1 << 8;
const HEAT_OF: usize = 1 << 16;

impl Cause {
    /// `position` of one of a loss's numbers.
    pub fn of_loss(origin: &Origin) -> usize {
        origin.loss as usize + origin.part as usize * PART_OF
    }

    /// `position` of the conductance of a core, by that of the core among its branch's losses.
    pub fn of_heat(loss: usize) -> usize {
        HEAT_OF + loss
    }
}

impl Solver<'_> {
    /// Factorises the equations as last evaluated, at a solved state; adjoints and forcings refer to it.
    pub fn linearise(&mut self, conditions: &Conditions, state: &Flowing) -> bool {
        self.system.assemble(self.model, conditions, state);
        self.system.matrix.factorise().is_ok()
    }

    /// Turns the gradient of a result by the unknowns into its gradient by the right-hand side.
    pub fn adjoint(&mut self, gradient: &mut [f64]) {
        self.system.matrix.solve_transposed(gradient);
    }

    /// The forcing of every uncertain number at the linearised state.
    pub fn forcings(&self, state: &Flowing) -> Vec<Forcing> {
        let mut forcings = Vec::new();
        for branch in 0..self.model.branches.len() {
            self.branch_forcings(branch, state, &mut forcings);
        }
        for node in 0..self.model.nodes.len() {
            self.junction_forcings(node, state, &mut forcings);
        }
        for passage in 0..self.model.passages.len() {
            forcings.push(self.passage_forcing(passage, state));
        }
        forcings
    }

    fn branch_forcings(&self, branch: usize, state: &Flowing, forcings: &mut Vec<Forcing>) {
        let own = &self.system.branches[branch];
        let (chain, chamber, up) = direction(self.model, branch, own.forward);
        let leg = self
            .system
            .leg_gauge(self.model, state, branch, !own.forward);
        let air = Arriving::new(
            state.datum + leg,
            state.temperature[up],
            state.flow[branch].abs(),
        )
        .leaving_at(self.system.leaving(self.model, state, branch));
        let changes = if own.choked {
            choked_changes(chain, chamber, air)
        } else {
            open_changes(chain, chamber, air, own.by_downstream)
        };
        let sign = if own.forward { 1.0 } else { -1.0 };
        for (origin, change) in chain.origins.iter().zip(changes) {
            let Scatter {
                relative, common, ..
            } = origin.scatter;
            forcings.push(Forcing {
                cause: Cause {
                    law: origin.kind,
                    at_node: false,
                    element: branch,
                    position: Cause::of_loss(origin),
                    common,
                },
                entries: vec![(branch, sign * change * relative)],
            });
        }
    }

    /// A core's conductance: what it does to the temperature that the air leaves with.
    fn passage_forcing(&self, passage: usize, state: &Flowing) -> Forcing {
        let given = &self.model.passages[passage];
        let own = &self.system.branches[given.branch];
        let (_, _, up) = direction(self.model, given.branch, own.forward);
        let entering = self.system.entering(self.model, state, passage);
        let exchange = given.exchange(state.flow[given.branch].abs());
        let Scatter {
            relative, common, ..
        } = effectiveness::SCATTER;
        let rise = exchange.by_conductance * (entering - state.temperature[up]);
        Forcing {
            cause: Cause {
                law: "cooler",
                at_node: false,
                element: given.branch,
                position: Cause::of_heat(given.loss),
                common,
            },
            entries: vec![(self.system.exit_unknown(passage), rise * relative)],
        }
    }

    fn junction_forcings(&self, node: usize, state: &Flowing, forcings: &mut Vec<Forcing>) {
        let at = &self.model.nodes[node];
        let Some(junction) = &at.junction else { return };
        let flows: Vec<f64> = at
            .legs
            .iter()
            .map(|leg| leg.flow_into(&state.flow))
            .collect();
        let doubts = junction.doubts(state.pressure(node), state.temperature[node], &flows);
        for (position, doubt) in doubts.into_iter().enumerate() {
            let entries = at
                .legs
                .iter()
                .zip(&doubt.by_number)
                .map(|(leg, by_number)| {
                    // A leg's pressure falls by what its loss rises.
                    let own = &self.system.branches[leg.branch];
                    let upstream = own.forward != leg.at_to;
                    let by_leg = if upstream {
                        own.by_upstream
                    } else {
                        -own.by_downstream
                    };
                    let sign = if own.forward { 1.0 } else { -1.0 };
                    (leg.branch, -sign * by_leg * by_number * doubt.scatter)
                })
                .collect();
            forcings.push(Forcing {
                cause: Cause {
                    law: doubt.law,
                    at_node: true,
                    element: node,
                    position,
                    common: junction::COMMON,
                },
                entries,
            });
        }
    }
}

/// Change of flow with each element's scale, in an open chain.
fn open_changes(chain: &Chain, chamber: bool, air: Arriving, conductance: f64) -> Vec<f64> {
    let mut parts: Vec<Fall> = Vec::with_capacity(chain.elements.len() + 1);
    if chain
        .visit(air, chamber, |_, part| parts.push(*part))
        .is_none()
    {
        return vec![0.0; chain.elements.len()];
    }
    // Pressure lost early changes what comes behind: carry the factor from the end forwards.
    let mut behind = 1.0;
    let mut changes = vec![0.0; chain.elements.len()];
    for position in (0..parts.len()).rev() {
        if position < changes.len() {
            changes[position] =
                -conductance * parts[position].fall * behind / chain.elements[position].scale;
        }
        behind *= 1.0 - parts[position].by_pressure;
    }
    changes
}

/// Change of the greatest flow with each element's scale, by differences.
fn choked_changes(chain: &Chain, chamber: bool, air: Arriving) -> Vec<f64> {
    let step = 1e-4;
    (0..chain.elements.len())
        .map(|position| {
            let greatest = |factor: f64| {
                let mut scaled = chain.clone();
                scaled.elements[position].scale *= factor;
                scaled.greatest_flow(air, chamber)
            };
            (greatest(1.0 + step) - greatest(1.0 - step)) / (2.0 * step)
        })
        .collect()
}
