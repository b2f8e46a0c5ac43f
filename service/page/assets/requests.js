// From what was typed to a request: what is empty follows front or present, and is said to have counted.

import { labelOf } from "./reach.js";
import { letterOf, state } from "./state.js";
import { parse, show, unitOf } from "./units.js";
import { language, say } from "./words.js";

const AXLES = ["front", "rear"];
// What belongs together: a rim that follows another brings its bolt circle and its spacer along.
const PARTS = [
  ["tyre", "/tyre/size", (pointer) => pointer.startsWith("/tyre/")],
  ["rim", "/rim/size", (pointer) => pointer.startsWith("/rim/") || pointer === "/spacer_mm"],
  ["pressure", "/pressure_kpa", (pointer) => pointer === "/pressure_kpa"],
];

let inView = () => true;

/** Tell what the reader has before his eyes: `see(pointer, column)`, column undefined for the vehicle. */
export function look(see) {
  inView = see;
}

function below(texts, root) {
  const pairs = Object.entries(texts).filter(([pointer]) => pointer.startsWith(`${root}/`));
  return Object.fromEntries(pairs.map(([pointer, text]) => [pointer.slice(root.length), text]));
}

function partOf(texts, belongs) {
  return Object.fromEntries(Object.entries(texts).filter(([pointer]) => belongs(pointer)));
}

function same(one, other) {
  const tidy = (text) => (text ?? "").replace(/\s/g, "").toLowerCase();
  return tidy(one) === tidy(other);
}

/** Return the present wheels of both axles with what the rear takes over from the front: `{front, rear, followed}`. */
function present() {
  const [front, rear] = AXLES.map((axle) => below(state.vehicle, `/${axle}/fitted`));
  const followed = [];
  const filled = { ...rear };
  for (const [part, lead, belongs] of PARTS) {
    if (lead in rear || !(lead in front)) continue;
    // A pressure follows only beside the same tyre.
    if (part === "pressure" && filled["/tyre/size"] && !same(filled["/tyre/size"], front["/tyre/size"])) continue;
    Object.assign(filled, { ...partOf(front, belongs), ...partOf(rear, belongs) });
    followed.push({ pointer: lead, from: "front" });
  }
  return { front, rear: filled, followed };
}

/** Return what a column means: cells of both axles with what follows front or present filled in. */
function meant(column, now = present()) {
  const { cells } = state.columns[column];
  const [front, rear] = AXLES.map((axle) => below(cells, `/${axle}`));
  const wheels = { front: { ...front }, rear: { ...rear } };
  const followed = [];
  for (const axle of AXLES) {
    for (const [part, lead, belongs] of PARTS) {
      if (lead in wheels[axle]) continue;
      const from = source(part, lead, axle, { front, now });
      if (!from) continue;
      const texts = from === "front" ? wheels.front : now[axle];
      Object.assign(wheels[axle], { ...partOf(texts, belongs), ...partOf(wheels[axle], belongs) });
      followed.push({ axle, pointer: lead, from });
    }
  }
  return { wheels, followed };
}

/** Return what an empty cell follows: "front", "present" or nothing. */
function source(part, lead, axle, { front, now }) {
  // What pressure a new wheel needs is the answer's to say.
  if (part === "pressure") return "";
  const square = same(now.front[lead], now.rear[lead]);
  if (axle === "rear" && square && lead in front) return "front";
  return lead in now[axle] ? "present" : "";
}

/** Return the text that an empty cell stands for, for its field to show, and what it follows. */
export function followed(column, pointer) {
  const [, axle, rest] = pointer.match(/^\/(front|rear)(\/.*)$/) ?? [];
  if (column === undefined) {
    const { rear, followed: given } = present();
    const found = axle === "rear" && given.some((each) => each.pointer === rest.replace("/fitted", ""));
    return found ? { text: rear[rest.replace("/fitted", "")], from: "front" } : undefined;
  }
  const { wheels, followed: given } = meant(column);
  const found = given.find((each) => each.axle === axle && each.pointer === rest);
  return found ? { text: wheels[axle][rest], from: found.from } : undefined;
}

/** Return where the text stands that counts at an API pointer: the cell itself, or the one that it follows. */
export function originOf(column, pointer) {
  const [, root, axle, rest] = pointer.match(/^\/(vehicle|candidate)\/(front|rear)(?:\/fitted)?(\/.*)$/) ?? [];
  const lead = rest && PARTS.find(([, , belongs]) => belongs(rest))?.[1];
  const candidate = root === "candidate";
  const given = candidate ? meant(column).followed : present().followed.map((each) => ({ ...each, axle: "rear" }));
  const found = lead && given.find((each) => each.axle === axle && each.pointer === lead);
  if (!found) return pointer;
  const front = candidate ? "/candidate/front" : "/vehicle/front/fitted";
  return originOf(column, `${found.from === "front" ? front : `/vehicle/${axle}/fitted`}${rest}`);
}

function put(target, pointer, value) {
  const steps = pointer.split("/").slice(1);
  const last = steps.pop();
  let place = target;
  for (const step of steps) place = place[step] ??= {};
  place[last] = value;
}

function putAll(target, root, texts) {
  for (const [pointer, text] of Object.entries(texts)) {
    const value = parse(text, pointer);
    if (value !== undefined) put(target, root + pointer, value);
  }
}

function base() {
  const body = { language, units: state.units === "imperial" ? "imperial" : "metric" };
  putAll(body, "", state.options);
  const now = present();
  putAll(body, "/vehicle", state.vehicle);
  putAll(body, "/vehicle/rear/fitted", now.rear);
  return { body, now };
}

/** Return what is still missing for a first answer of a column, as API pointers. */
export function missing(column) {
  const { front } = present();
  const wanted = ["/tyre/size", "/rim/size"].filter((lead) => !(lead in front));
  const found = wanted.map((lead) => `/vehicle/front/fitted${lead}`);
  if (Object.keys(state.columns[column].cells).length === 0) found.push("/candidate/front/tyre/size");
  return found;
}

/** Return whether a column has what a question needs. */
export function canAsk(column) {
  return missing(column).length === 0;
}

/** Return a `check` of a column and what counted in it without being typed in view. */
export function question(column) {
  const { body, now } = base();
  const { wheels, followed: given } = meant(column, now);
  body.detail = "full";
  body.candidate = candidate(column, wheels);
  return { body, used: [...usedDefaults(), ...usedWheels(now, wheels, given), ...usedFolded(column)] };
}

function candidate(column, wheels) {
  const made = { id: letterOf(column) };
  const name = state.columns[column].name.trim();
  if (name) made.label = name;
  for (const axle of AXLES) putAll(made, `/${axle}`, wheels[axle]);
  return made;
}

/** Return a `compare` of all columns that have something in them; their `id` is their letter. */
export function compareQuestion() {
  const { body, now } = base();
  const columns = state.columns.map((_, place) => place).filter((place) => canAsk(place));
  body.detail = "full";
  body.candidates = columns.map((column) => candidate(column, meant(column, now).wheels));
  return body;
}

function usedDefaults() {
  const made = [];
  if (!state.options["/rule_pack"]) made.push(["/rule_pack", say("question.default_rules")]);
  if (!state.vehicle["/category"]) made.push(["/vehicle/category", "M1"]);
  return made.map(([pointer, text]) => ({ label: labelOf(pointer), text, why: say("question.by_default"), pointer }));
}

function usedWheels(now, wheels, given) {
  const rows = now.followed.map(({ pointer }) => [`/vehicle/rear/fitted${pointer}`, now.rear[pointer], "front"]);
  for (const { axle, pointer, from } of given) rows.push([`/candidate/${axle}${pointer}`, wheels[axle][pointer], from]);
  return rows.map(([pointer, text, from]) => ({
    label: labelOf(pointer),
    text: shown(text, pointer),
    why: say(`question.as_${from}`),
    pointer,
  }));
}

function usedFolded(column) {
  const vehicle = Object.entries(state.vehicle).filter(([pointer]) => !inView(`/vehicle${pointer}`));
  const cells = Object.entries(state.columns[column].cells).filter(([pointer]) => !inView(`/candidate${pointer}`, column));
  const all = [
    ...vehicle.map(([pointer, text]) => [`/vehicle${pointer}`, text]),
    ...cells.map(([pointer, text]) => [`/candidate${pointer}`, text]),
  ];
  return all.map(([pointer, text]) => ({
    label: labelOf(pointer),
    text: shown(text, pointer),
    why: say("question.folded"),
    pointer,
  }));
}

function shown(text, pointer) {
  const value = parse(text, pointer);
  return typeof value === "number" ? show(value, unitOf(pointer), 2) : text;
}
