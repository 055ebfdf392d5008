// Readings by the thousand for tests and measurements: invented, and the same for the same seed.

/** Numbers from 0 to 1, the same for the same seed (mulberry32, public domain). */
export function chance(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const SPECIES = ["FOUR", "WINT", "SHAD", "GREA", "BUDS"];

/** A unit as a heading names it, the length of its line, and how a number is written in it. */
const UNITS = [
  { heading: "in", length: "600", write: (share) => (Math.round(share * 600 * 8) / 8).toString() },
  { heading: "decimal ft", length: "100", write: (share) => (share * 100).toFixed(2) },
  { heading: "cm", length: "2000", write: (share) => Math.round(share * 2000).toString() },
  { heading: "m", length: "50", write: (share) => (share * 50).toFixed(2) },
];

/**
 * Files of readings: so many sites with so many lines in so many years, stretches that touch, overlap and leave gaps of any length.
 * Every unit has a file of its own, and each site one unit.
 */
export function readings({ sites, lines, years = 1, most = 12, seed = 1 }) {
  const next = chance(seed);
  const rows = UNITS.map(() => []);
  for (let site = 0; site < sites; site += 1) {
    const at = site % UNITS.length;
    const unit = UNITS[at];
    const name = `Invented ${String(site + 1).padStart(4, "0")}`;
    const plenty = 0.2 + next();
    for (let year = 0; year < years; year += 1) {
      for (let line = 1; line <= lines; line += 1) {
        const head = `${name},${line},${unit.length},${2026 - year}-06-${String(1 + Math.floor(28 * next())).padStart(2, "0")},A. Reader`;
        const count = Math.floor(next() * most * plenty);
        if (count === 0) rows[at].push(`${head},,,,,nothing found`);
        for (let one = 0; one < count; one += 1) {
          const start = next() * 0.9;
          const stop = Math.min(1, start + next() * next() * 0.2 + 0.003);
          const species = SPECIES[Math.floor(next() * SPECIES.length)];
          const state = next() < 0.15 ? "dead" : "live";
          rows[at].push(`${head},${species},${unit.write(start)},${unit.write(stop)},${state},`);
        }
      }
    }
  }
  return UNITS.map((unit, at) => ({
    name: `readings-${unit.heading.replace(" ", "-")}.csv`,
    text: [`site,line,line length (${unit.heading === "decimal ft" ? "ft" : unit.heading}),date,reader,species,start (${unit.heading}),stop (${unit.heading}),state,outcome`, ...rows[at]].join("\n") + "\n",
  })).filter((file, at) => rows[at].length > 0);
}

/** Codes and forms of what grows there. */
export const PLANTS = {
  name: "plants.csv",
  text: `code,form\n${SPECIES.map((code) => `${code},${code === "WINT" ? "subshrub" : "shrub"}`).join("\n")}\n`,
};

/** One goal for all. */
export const GOALS = { name: "goals.csv", text: "site,goal,source\n,at least 15 %,invented\n" };
