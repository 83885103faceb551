//! Continuous headers with constant friction against the header equation integrated elsewhere.

use crate::continuous_header::{Case, Header};
use crate::evidence::{Check, Kind, assert_all};

const SOURCE: &str = "header equation with a constant Darcy factor (Bajura 1971; Bajura and Jones 1976), \
    integrated by scipy 1.17.1 solve_bvp to 1e-10";

pub fn checks() -> Vec<Check> {
    let dividing = |m, friction| Header {
        m,
        beta: 0.5,
        friction,
        combining: false,
    };
    let combining = |friction| Header {
        m: 0.8,
        beta: 1.0,
        friction,
        combining: true,
    };
    let cases: [(&str, Header, &[f64], [f64; 2]); 5] = [
        (
            "DIVF-A",
            dividing(0.8, 0.2),
            &[0.215761, 0.244306, 0.264642, 0.275291],
            [0.992222, 1.91977],
        ),
        (
            "DIVF-B",
            dividing(0.8, 1.0),
            &[0.226611, 0.244536, 0.25986, 0.268994],
            [1.18518, 1.83172],
        ),
        (
            "DIVF-D",
            dividing(0.5, 4.0),
            &[0.17054, 0.16679, 0.165202, 0.165122, 0.16582, 0.166526],
            [4.32356, 4.00094],
        ),
        (
            "COMF-A",
            combining(0.2),
            &[0.205551, 0.222338, 0.257603, 0.314509],
            [1.02839, 3.08524],
        ),
        (
            "COMF-B",
            combining(1.0),
            &[0.133784, 0.138783, 0.149303, 0.166061, 0.189956, 0.222114],
            [0.994677, 3.27482],
        ),
    ];
    cases
        .into_iter()
        .flat_map(|(name, header, strips, ends)| {
            Case {
                name,
                header,
                source: SOURCE,
                kind: Kind::ReferenceLibrary,
                strips,
                ends: Some(ends),
            }
            .checks()
        })
        .collect()
}

#[test]
fn headers_with_friction_follow_the_integrated_equation() {
    assert_all(&checks());
}
