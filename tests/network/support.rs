//! Small builders for test networks.

use evenport::{
    Answer, Branch, Cylinder, Draw, Leg, Loss, Network, Node, NodeKind, Outcome, Settings, Solved,
    Study, solve,
};

/// A network in the making.
#[derive(Default)]
pub struct Builder {
    nodes: Vec<Node>,
    branches: Vec<Branch>,
    ports: usize,
}

impl Builder {
    pub fn node(&mut self, id: &str, kind: NodeKind) -> &mut Self {
        self.nodes.push(Node {
            id: id.to_owned(),
            kind,
        });
        self
    }

    pub fn source(&mut self, id: &str) -> &mut Self {
        self.node(id, NodeKind::source(180_000.0, 330.0))
    }

    /// A port with a cylinder of its own, numbered from 1 in the order of the calls.
    pub fn port(&mut self, id: &str) -> &mut Self {
        self.ports += 1;
        let cylinder = self.ports.to_string();
        self.node(
            id,
            NodeKind::Port {
                cylinder,
                valve: None,
                cad_section: None,
            },
        )
    }

    pub fn branch(&mut self, id: &str, from: &str, to: &str, losses: Vec<Loss>) -> &mut Self {
        self.legs(id, (from, None), (to, None), losses)
    }

    pub fn legs(
        &mut self,
        id: &str,
        from: (&str, Option<Leg>),
        to: (&str, Option<Leg>),
        losses: Vec<Loss>,
    ) -> &mut Self {
        self.branches.push(Branch {
            from_leg: from.1,
            to_leg: to.1,
            ..Branch::new(id, from.0, to.0, losses)
        });
        self
    }

    /// A study on a bench of `depression` pascal.
    pub fn study(&self, depression: f64) -> Study {
        let mut settings = Settings::default();
        settings.bench.depression = depression;
        let cylinders = (1..=self.ports)
            .map(|number| Cylinder {
                id: number.to_string(),
                swept_volume: Some(5e-4),
                bank: None,
            })
            .collect();
        let network = Network {
            nodes: self.nodes.clone(),
            branches: self.branches.clone(),
        };
        let mut study = Study::new("test", network);
        study.engine.cylinders = cylinders;
        study.settings = settings;
        study
    }
}

/// Makes the engine of a study with one cylinder draw a steady flow [kg/s].
pub fn draw(study: &mut Study, flow: f64) {
    let bench = &study.settings.bench;
    let density = evenport::gas::density(bench.ambient_pressure, bench.ambient_temperature);
    study.engine.speed = Some(1.0);
    study.engine.volumetric_efficiency = Some(1.0);
    // Half a cycle a second at the room's density.
    study.engine.cylinders[0].swept_volume = Some(flow / (0.5 * density));
}

/// A typed coefficient.
pub fn typed(k: f64, area: f64) -> Loss {
    Loss::TypedK {
        k,
        k_reversed: None,
        area,
        origin: String::new(),
    }
}

/// The answer, which must exist.
pub fn answer(study: &Study) -> Answer {
    solve(study).unwrap_or_else(|errors| panic!("{errors:#?}"))
}

/// One draw of an answer, which must be solved.
pub fn solved(answer: &Answer, draw: Draw) -> &Solved {
    let found = answer
        .draws
        .iter()
        .find(|other| other.draw == draw)
        .expect("the draw");
    match &found.outcome {
        Outcome::Solved(solved) => solved,
        Outcome::Refused(refusal) => panic!("{}", refusal.sentence),
    }
}

/// Shares of all ports open.
pub fn shares(study: &Study) -> Vec<f64> {
    let answer = answer(study);
    solved(&answer, Draw::BenchAllOpen)
        .cylinders
        .iter()
        .map(|cylinder| cylinder.share)
        .collect()
}
