//! Bench readings carried over to the conditions of the study's own bench.

use super::ConvertedReading;
use crate::law::opening::depression::Depression;
use crate::study::Study;

/// Every reading, in the order of the study.
pub fn readings(study: &Study) -> Vec<ConvertedReading> {
    let bench = &study.settings.bench;
    // A bench that blows raises the pressure before the port; one that sucks lowers the one behind it.
    let air = |room: f64, temperature: f64, depression: f64| Depression {
        pressure: if bench.blowing {
            room + depression
        } else {
            room
        },
        temperature,
        depression,
    };
    let to = air(
        bench.ambient_pressure,
        bench.ambient_temperature,
        bench.depression,
    );
    let mut readings = Vec::with_capacity(bench.readings.len());
    for reading in &bench.readings {
        let from = air(
            reading.pressure.unwrap_or(bench.ambient_pressure),
            reading.temperature.unwrap_or(bench.ambient_temperature),
            reading.depression,
        );
        let effective_area = reading.flow / from.flow();
        let sharp = to.past_sharp_edge().zip(from.past_sharp_edge());
        readings.push(ConvertedReading {
            flow: effective_area * to.flow(),
            by_square_root: reading.flow * (to.by_square_root() / from.by_square_root()),
            sharp_edged: sharp.map(|(to, from)| reading.flow * (to / from)),
            effective_area,
            read_choked: from.chokes(),
            choked: to.chokes(),
        });
    }
    readings
}
