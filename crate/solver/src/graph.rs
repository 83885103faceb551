//! What the shape of the network says before anything is solved.

use petgraph::graph::{NodeIndex, UnGraph};
use petgraph::unionfind::UnionFind;
use petgraph::visit::Dfs;

use crate::study::{Network, NodeKind};

/// What the shape of a network says of its nodes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shape {
    /// Ports that no source reaches.
    pub unreached_ports: Vec<usize>,
    /// Other nodes that no source reaches.
    pub islands: Vec<usize>,
    /// Inner nodes with a single branch: air can go nowhere from there.
    pub dead_ends: Vec<usize>,
}

fn graph(nodes: usize, edges: impl Iterator<Item = (usize, usize)>) -> UnGraph<(), usize> {
    let mut graph = UnGraph::with_capacity(nodes, 0);
    for _ in 0..nodes {
        graph.add_node(());
    }
    for (branch, (from, to)) in edges.enumerate() {
        graph.add_edge(NodeIndex::new(from), NodeIndex::new(to), branch);
    }
    graph
}

/// Branches without which their two ends would fall apart.
pub fn bridges(nodes: usize, edges: impl Iterator<Item = (usize, usize)>) -> Vec<usize> {
    let graph = graph(nodes, edges);
    petgraph::algo::bridges::bridges(&graph)
        .map(|edge| *edge.weight())
        .collect()
}

/// Looks for ports without air, islands and dead ends; `edges` are node indices by branch.
pub fn shape(network: &Network, edges: &[(usize, usize)]) -> Shape {
    let graph = graph(network.nodes.len(), edges.iter().copied());
    let mut reached = vec![false; network.nodes.len()];
    for (node, given) in network.nodes.iter().enumerate() {
        if matches!(given.kind, NodeKind::Source { .. }) && !reached[node] {
            let mut search = Dfs::new(&graph, NodeIndex::new(node));
            while let Some(found) = search.next(&graph) {
                reached[found.index()] = true;
            }
        }
    }
    let mut shape = Shape::default();
    for (node, given) in network.nodes.iter().enumerate() {
        let is_port = matches!(given.kind, NodeKind::Port { .. });
        let is_source = matches!(given.kind, NodeKind::Source { .. });
        if !reached[node] {
            if is_port {
                &mut shape.unreached_ports
            } else {
                &mut shape.islands
            }
            .push(node);
        } else if !is_port
            && !is_source
            && graph.neighbors_undirected(NodeIndex::new(node)).count() == 1
        {
            shape.dead_ends.push(node);
        }
    }
    shape
}

/// What hangs together without the blowers and the ways round them: a number by node, the same where
/// air can go without either.
pub fn sides(network: &Network) -> Vec<usize> {
    let positions = network.positions();
    let mut together = UnionFind::new(network.nodes.len());
    for branch in &network.branches {
        let open = branch.blower.is_none() && !branch.bypass;
        if let (true, Some(from), Some(to)) = (
            open,
            positions.get(branch.from.as_str()),
            positions.get(branch.to.as_str()),
        ) {
            together.union(*from, *to);
        }
    }
    together.into_labeling()
}

/// Nodes that lie before every blower: no port is fed from them without one.
pub fn before_blowers(network: &Network) -> Vec<bool> {
    let sides = sides(network);
    let has_port = |side: usize| {
        let mut nodes = network.nodes.iter().zip(&sides);
        nodes.any(|(node, own)| *own == side && matches!(node.kind, NodeKind::Port { .. }))
    };
    sides.iter().map(|side| !has_port(*side)).collect()
}
