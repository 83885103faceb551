//! Published rows at hand that no check uses, and why.

/// Rows and the reason.
const UNUSED: [(&str, &str); 26] = [
    (
        "1h HASSAN-2014, 34 % uniform and 14 % tapered",
        "a measured header in water, but the laterals' length and fittings and how the deviation is averaged are not known: laterals of 1 to 3 velocity heads and regain factors of 0.5 to 1 give 8 to 43 % by the header equation",
    ),
    (
        "1h HAYES-1989",
        "plane laminar flow at Reynolds number 300; the junction laws are for turbulent flow",
    ),
    (
        "1h NACA-1936",
        "spread of the mixture of an engine whose manifold is not described",
    ),
    (
        "1h HUANG-2021, KARVOUNIS-2019",
        "no flow of a single branch was reached",
    ),
    (
        "3a entrance_beveled, entrance_angled",
        "the library has no bevelled and no slanted entry",
    ),
    (
        "Weisbach's bellmouth at heads of 0.66 and 1.64 ft",
        "0.087 and 0.069 at small flow, where friction on the bell counts; 0.052 to 0.012 at larger heads are checked",
    ),
    (
        "Miller 1990, table 10.1, r/d 1 and 1, spacer 8 d, combination angle 150",
        "reads 0.91 between 0.81 and 0.80; taken as 0.81",
    ),
    (
        "3b bend_miter",
        "the library has no mitre bend; a sharp one is typed as K",
    ),
    (
        "3d contraction_round",
        "the library has no rounded contraction; an entry from a chamber is",
    ),
    (
        "3e diffuser_conical by Swamee and by Miller",
        "0.44 and 0.26 where four others give 0.09 to 0.13: outside three standard deviations, and not believed",
    ),
    (
        "3e CENGEL-8-6 head loss and exit pressure",
        "its kinetic-energy factor of 1.06 is 1 here; its coefficient is checked",
    ),
    (
        "3f round_edge_open_mesh",
        "nets with open parts from 0.85: wider than any screen in an intake; the wire screen warns above 0.8",
    ),
    (
        "3f square_edge_grill",
        "bars as deep as wide; within 23 % of the thin screen's rows, and no choice of its own",
    ),
    (
        "Weisbach's disc at 5 degrees from wide open",
        "0.24 where the plate with the discharge coefficient that suits the other angles says 0.47: nearly open, the coefficient rises",
    ),
    (
        "3g nozzle coefficients C_long_radius_nozzle, C_ISA_1932_nozzle",
        "metering nozzles, which no manifold has",
    ),
    (
        "3g C_Reader_Harris_Gallagher at flange taps",
        "used as a row of its own diameter ratio only",
    ),
    (
        "4a rho/rho0",
        "no function of the library gives it; pressure, area and temperature ratio are checked",
    ),
    (
        "4b T/T*",
        "no answer gives a static temperature; the other three ratios are checked on whole branches in tests/network",
    ),
    (
        "4e at ratios of specific heats other than 1.4",
        "the ratio is a constant of the program",
    ),
    (
        "4h T_critical_flow, T_stagnation_ideal, isothermal_gas",
        "no function of the library gives them",
    ),
    (
        "4i sonic nozzle coefficient",
        "metering nozzles, which no manifold has; from memory",
    ),
    (
        "6b specific heat, conductivity and compressibility factor",
        "the first two stand in no equation here; the third is the density over again",
    ),
    (
        "6d reference conditions other than sea level",
        "conditions that a user types, no law",
    ),
    (
        "8c but for the Mach index, 8e; 8d without compressibility",
        "inputs, facts and unit factors, no law",
    ),
    (
        "5a counterflow",
        "a charge cooler's passages are crossed; one that runs against its coolant has no law yet",
    ),
    (
        "7, 9 casting tolerances, waves and filling",
        "no tolerance and nothing unsteady in the program yet",
    ),
];

/// Prints them when asked to by the environment.
pub fn print() {
    if std::env::var_os("EVENPORT_EVIDENCE").is_some() {
        println!("not used | because");
        for (rows, reason) in UNUSED {
            println!("{rows} | {reason}");
        }
    }
}
