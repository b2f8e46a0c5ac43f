// Numbers as the reader's gauges show them. The API speaks kPa, kg, km/h and mm; fields hold text as typed.

import { state } from "./state.js";
import { language, say } from "./words.js";

const PLAIN = { kPa: ["kPa", 1, 0], kg: ["kg", 1, 0], "km/h": ["km/h", 1, 0] };
// Unit by system: its name, how many of the API's one of it is, decimals.
const SYSTEMS = {
  metric: PLAIN,
  bar: { ...PLAIN, kPa: ["bar", 100, 2] },
  imperial: { kPa: ["psi", 6.894757293168361, 1], kg: ["lb", 0.45359237, 0], "km/h": ["mph", 1.609344, 1] },
};
const NAMED = { kpa: 1, bar: 100, psi: 6.894757293168361, kg: 1, lb: 0.45359237, lbs: 0.45359237, "km/h": 1, kmh: 1, mph: 1.609344 };
const UNITS = { _kpa: "kPa", _kg: "kg", _kmh: "km/h", _mm: "mm", _in: "in", per_side: "" };
const BARE = /^\d+(\.\d+)?$/;
const TEXTS = /\/(size|bolt_circle|id|label)$/;
const GROUPED = /^\d{1,3}(?:[.,' \u00a0\u202f]\d{3})+(?=\s*[a-z]*$)/i;
// A round value that shows as what stands there is what was meant: 36.3 psi is 250 kPa, 130.5 mph 210 km/h.
const ROUND = [10, 5, 1];

/** Return the API's unit of a pointer, "" for a bare number, undefined where it is a text. */
export function unitOf(pointer) {
  const end = Object.keys(UNITS).find((each) => pointer.endsWith(each));
  return end === undefined ? undefined : UNITS[end];
}

/** Return the unit that the reader sees for a unit of the API. */
export function unitShown(unit) {
  return (SYSTEMS[state.units][unit] ?? [unit])[0];
}

function written(value, digits) {
  return value.toLocaleString(language, { maximumFractionDigits: digits, useGrouping: false }).replace("-", "\u2212");
}

/** Return a value of the API with its unit as the reader reads it: `show(255, "kPa")` is "2.55 bar". */
export function show(value, unit, digits = 0) {
  const [name, size, decimals] = SYSTEMS[state.units][unit] ?? [unit, 1, digits];
  return `${written(value / size, Math.max(decimals, digits))} ${name}`.trim();
}

/** Return a value of the API as the text of its field, without a unit. */
export function typed(value, pointer) {
  const unit = unitOf(pointer);
  const [, size, decimals] = SYSTEMS[state.units][unit] ?? [unit, 1, 2];
  return written(value / size, size === 1 ? 2 : decimals).replace("\u2212", "-");
}

/** Return what a text at a pointer means to the API: a number in its unit, the text where it is none, or undefined. */
export function parse(text, pointer) {
  const trimmed = (text ?? "").trim();
  if (trimmed === "") return undefined;
  const unit = unitOf(pointer);
  // A request that was opened may hold numbers that the page has no field for.
  if (unit === undefined) return BARE.test(trimmed) && !TEXTS.test(pointer) ? Number(trimmed) : trimmed;
  const found = together(trimmed, unit).match(/^([-\u2212]?\d*[.,]?\d+)\s*([a-z/]*)$/i);
  // What is no number is sent as it is: the service says at its field what it expects there.
  if (!found) return trimmed;
  const number = Number(found[1].replace(",", ".").replace("\u2212", "-"));
  const size = sizeOf(number, unit, found[2].toLowerCase());
  if (size === undefined) return trimmed;
  const value = Math.round(number * size * 1000) / 1000;
  return size === 1 ? value : (roundAs(value, found[1].replace(",", "."), size, unit) ?? value);
}

// Nobody states a mass or a length to a thousandth: 1,050 kg and 1.050 kg are a thousand and fifty.
function together(text, unit) {
  return unit === "kg" || unit === "mm" ? text.replace(GROUPED, (digits) => digits.replace(/\D/g, "")) : text;
}

function roundAs(value, text, size, unit) {
  const decimals = text.split(".")[1]?.length ?? 0;
  const rounds = ROUND.map((step) => step * Math.round(value / step));
  return rounds.find((each) => (decimals > 0 || unit === "kg") && (each / size).toFixed(decimals) === text);
}

function sizeOf(number, unit, name) {
  if (name && name !== unit) return name in NAMED && unit in PLAIN ? NAMED[name] : undefined;
  if (name) return 1;
  if (unit === "kPa") return pressureSize(number);
  return (SYSTEMS[state.units][unit] ?? [unit, 1])[1];
}

// No gauge reads a road tyre below 60 kPa, above 15 bar or above 150 psi.
function pressureSize(number) {
  if (number > 0 && number < 15) return NAMED.bar;
  if (state.units === "imperial") return number < 150 ? NAMED.psi : 1;
  return number < 60 ? NAMED.psi : 1;
}

/** Return "read as 2.5 bar" where a text in a pressure field was not taken in the unit beside it, else "". */
export function readAs(text, pointer) {
  const value = parse(text, pointer);
  if (unitOf(pointer) !== "kPa" || typeof value !== "number") return "";
  const bare = text.trim().match(/^\d*[.,]?\d+$/);
  if (!bare) return "";
  const size = pressureSize(Number(bare[0].replace(",", ".")));
  if (size === SYSTEMS[state.units].kPa[1]) return "";
  const name = size === 1 ? "kPa" : size === 100 ? "bar" : "psi";
  return say("question.read_as", { value: `${text.trim()} ${name}` });
}
