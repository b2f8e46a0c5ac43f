// The numbers of the table, a row each: where they stand in an answer, what they changed by, what limits them.
import { capital, number, percent, signed } from "./dom.js";
import { show } from "./units.js";
import { say } from "./words.js";

const SEVERITY = ["not_met", "not_recommended", "not_assessed", "advisory"];

export function findingOf(answer, code, axle) {
  return answer.findings.find((each) => each.code === code && each.axle === axle);
}

// The worst outcome of the questions that a number answers; what is met, or open and decides nothing, colours no cell.
export function outcomeOf(answer, codes, axle) {
  const outcomes = answer.findings
    .filter((each) => codes.includes(each.code) && each.axle === axle && each.decides !== false)
    .map((each) => each.outcome);
  return SEVERITY.find((each) => outcomes.includes(each));
}

const change = (value, unit, digits = 0) => signed(value, show(value, unit, digits));

// `+1.8 %` with `0.9 to 3.1 %` below it; an estimate without its band would look like a measurement.
function estimate(band, unit) {
  if (!band) return null;
  const digits = unit === "%" ? 1 : 2;
  const [value, low, high] = [band.value, band.low, band.high].map((each) => signed(each, number(each, digits)));
  return { value: `${value} ${unit}`, change: low === high ? "" : say("answer.range", { low, high }) };
}

const length = (name, limit) => ({ now, then, ...asked }) => ({
  now: now[name] && show(now[name], "mm"),
  value: then[name] && show(then[name], "mm"),
  change: asked.change[name.replace("_mm", "_percent")] !== undefined && percent(asked.change[name.replace("_mm", "_percent")], 2),
  limit: limit?.(asked),
});

function deviation({ answer, axle }) {
  const limit = findingOf(answer, "diameter.deviation", axle)?.limit;
  return limit === undefined ? "" : say("answer.within", { limit: `${number(limit, 1)} %` });
}

// How far the edge moves, and what is then left of the room that was measured.
const edge = (name) => ({ change: { [`${name}_edge_mm`]: moved }, answer, axle, body }) => {
  const room = body.vehicle[axle].clearance?.[`${name}_mm`];
  const found = findingOf(answer, `clearance.${name}`, axle);
  const left = room !== undefined && found?.measured !== undefined;
  return {
    now: room === undefined ? "" : say("answer.room", { room: show(room, "mm") }),
    value: moved === undefined ? undefined : change(moved, "mm", 1),
    change: left ? say("answer.left", { room: show(found.measured, "mm", 1) }) : "",
    limit: left && found.limit !== undefined ? say("answer.least", { limit: show(found.limit, "mm") }) : "",
  };
};

function load({ now, then, change: moved }) {
  return {
    now: now.load_capacity_kg && show(now.load_capacity_kg, "kg"),
    value: then.load_capacity_kg && show(then.load_capacity_kg, "kg"),
    change: moved.load_capacity_percent !== undefined && percent(moved.load_capacity_percent),
    limit: then.load_required_kg && say("answer.least", { limit: show(then.load_required_kg, "kg") }),
  };
}

function pressure({ now, then }) {
  const moved = then.pressure_kpa - now.pressure_kpa;
  return {
    now: now.pressure_kpa && show(now.pressure_kpa, "kPa"),
    value: then.pressure_kpa && show(then.pressure_kpa, "kPa"),
    change: moved ? change(moved, "kPa") : "",
    limit: then.minimum_pressure_kpa && say("answer.least", { limit: show(then.minimum_pressure_kpa, "kPa") }),
  };
}

function grip({ change: moved }) {
  return estimate(moved.peak_grip_percent, "%") ?? {};
}

function wetReserve({ now, then }) {
  const [before, after] = [now.wet_reserve_percent, then.wet_reserve_percent];
  if (!after) return {};
  const points = before && number(after.value - before.value, 1);
  return {
    now: before && `${number(before.value, 1)} %`,
    value: `${number(after.value, 1)} %`,
    change: before ? say("answer.points", { points: signed(after.value - before.value, points) }) : "",
  };
}

function aquaplaning({ now, then, change: moved }) {
  return {
    now: now.aquaplaning_onset_kmh && show(now.aquaplaning_onset_kmh.value, "km/h"),
    value: then.aquaplaning_onset_kmh && show(then.aquaplaning_onset_kmh.value, "km/h"),
    change: moved.aquaplaning_onset_percent && percent(moved.aquaplaning_onset_percent.value),
  };
}

// What the needle shows where it shows 100 today; the lead that it must have today bounds it.
function speedShown({ answer }) {
  const { circumference_ratio: ratio, least_lead_percent: low, greatest_lead_percent: high } = answer.vehicle.speedometer ?? {};
  if (!ratio) return {};
  const bounds = low !== undefined && high !== undefined;
  return {
    now: number(100, 0),
    value: number(100 / ratio, 1),
    change: percent((1 / ratio - 1) * 100, 1),
    limit: bounds ? say("answer.lead", { low: number(low, 1), high: number(high, 1) }) : "",
  };
}

function balance({ answer }) {
  const { direction, degree, understeer_gradient_change_deg_per_g: band } = answer.vehicle.balance;
  if (!band) return {};
  const words = degree === "negligible" ? say("answer.alike") : `${say(`answer.${direction}`)}, ${say(`answer.${degree}`)}`;
  const shown = estimate(band, say("answer.per_g"));
  return { value: capital(words), change: shown.value, limit: shown.change };
}

// Key of the words, whether a row for each axle, the cell, the questions that it answers.
export const FIGURES = [
  ["diameter", true, length("overall_diameter_mm", deviation), ["diameter.deviation", "clearance.radial"]],
  ["circumference", true, length("rolling_circumference_mm"), []],
  ["inner_edge", true, edge("inboard"), ["clearance.inboard"]],
  ["outer_edge", true, edge("outboard"), ["clearance.outboard"]],
  ["load", true, load, ["load.capacity", "load.below_present"]],
  ["pressure", true, pressure, ["load.pressure"]],
  ["speed_shown", false, speedShown, ["diameter.speedometer"]],
  ["dry_grip", true, grip, []],
  ["braking", false, ({ answer }) => estimate(answer.vehicle.braking_distance_percent, "%") ?? {}, []],
  ["wet_reserve", true, wetReserve, ["wet.reserve"]],
  ["aquaplaning", true, aquaplaning, ["wet.aquaplaning"]],
  ["balance", false, balance, ["balance.change", "balance.grip_order"]],
];

// One cell of a column: `axle` is front, rear, or vehicle for what concerns the whole of it.
export function cellOf([, , figure, codes], { answer, body }, axle) {
  const { present: now, proposed: then, change: moved } = answer.axles[axle] ?? {};
  const cell = figure({ answer, body, axle, now, then, change: moved });
  return { ...cell, outcome: outcomeOf(answer, codes, axle) };
}
