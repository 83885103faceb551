//! Whose formula a loss can follow, the default first.

use super::ChoiceInfo;

const fn author(name: &'static str, label: &'static str, help: &'static str) -> ChoiceInfo {
    ChoiceInfo { name, label, help }
}

pub const SHARP_ENTRY: [ChoiceInfo; 2] = [
    author("idelchik", "Idelchik", "K = 0.5, as most handbooks"),
    author(
        "rennels2012",
        "Rennels 2012",
        "K = 0.57, a truly sharp edge",
    ),
];

pub const ROUNDED_ENTRY: [ChoiceInfo; 3] = [
    author("rennels2012", "Rennels 2012", "the largest of six methods"),
    author(
        "idelchik",
        "Idelchik",
        "diagram 3-4: K over r/d by table, 0.5 at 0, 0.22 at 0.05, 0.09 at 0.12, 0.03 from 0.2",
    ),
    author(
        "swamee2008",
        "Swamee 2008",
        "K = 0.5 / (1 + 36 (r/d)^1.2), Swamee and Sharma, Design of Water Supply Pipe Networks",
    ),
];

pub const REENTRANT_ENTRY: [ChoiceInfo; 2] = [
    author(
        "rennels2012",
        "Rennels 2012",
        "1.12 for a thin wall, 0.57 for a thick one",
    ),
    author(
        "idelchik",
        "Idelchik",
        "diagram 3-2: K over t/d by table, 1.0 at 0, 0.72 at 0.02, 0.5 from 0.05",
    ),
];

pub const BEND: [ChoiceInfo; 3] = [
    author(
        "rennels2012",
        "Rennels 2012",
        "r/d from 0.5 to 20, any angle; follows the wall's friction",
    ),
    author(
        "idelchik",
        "Idelchik",
        "diagram 6-1: K = A B + f a r/d, B = 0.21 (r/d)^-2.5 to r/d 1, 0.21 (r/d)^-0.5 to 3; Reynolds number from 3e5",
    ),
    author(
        "craneTp410",
        "Crane TP-410",
        "page A-30: K = f c from 90 degrees, c over r/d by table, f of steel pipe in complete turbulence; r/d 1 to 20",
    ),
];

pub const STEP: [ChoiceInfo; 2] = [
    author(
        "rennels2012",
        "Rennels 2012",
        "narrowing, up to 0.58; widening as all, Borda and Carnot",
    ),
    author(
        "idelchik",
        "Idelchik",
        "narrowing, diagram 4-9: K = 0.5 (1 - A2/A1)^0.75; widening as all, Borda and Carnot",
    ),
];

pub const CONE: [ChoiceInfo; 2] = [
    author(
        "rennels2012",
        "Rennels 2012",
        "with the cone's wall friction",
    ),
    author(
        "craneTp410",
        "Crane TP-410",
        "page A-27: widening 2.6 sin(a/2) (1 - A1/A2)^2, narrowing 0.8 sin(a/2) (1 - A2/A1), to 45 degrees",
    ),
];

pub const SCHEDULE: [ChoiceInfo; 3] = [
    author(
        "rennels2012",
        "Rennels 2012",
        "cones and bends; a cone's wall friction is that of its steps",
    ),
    author(
        "idelchik",
        "Idelchik",
        "bends by diagram 6-1; cones by Rennels 2012",
    ),
    author(
        "craneTp410",
        "Crane TP-410",
        "cones by page A-27, the friction of their steps beside it; bends by page A-30",
    ),
];

pub const ROUND_SCREEN: [ChoiceInfo; 2] = [
    author(
        "blevins1984",
        "Blevins 1984",
        "follows the Reynolds number of the gap up to 400; open part 0.05 to 0.8",
    ),
    author(
        "idelchik",
        "Idelchik",
        "diagram 8-6, from memory: K = 1.3 (1 - s) + (1/s - 1)^2 from Reynolds number 400; open part 0.2 to 0.9",
    ),
];

pub const SQUARE_SCREEN: [ChoiceInfo; 2] = [
    author(
        "blevins1984",
        "Blevins 1984",
        "K over the open part by table: 30 at 0.25, 3.8 at 0.5, 0.78 at 0.75",
    ),
    author(
        "idelchik",
        "Idelchik",
        "diagram 8-1, from memory: K = (0.707 sqrt(1 - s) + 1 - s)^2 / s^2; open part from 0.02",
    ),
];
