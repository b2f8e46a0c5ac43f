// The question as it was typed, and the requests that it makes. Nothing here touches the page.

import { parse, typed } from "./units.js";
import { language, say } from "./words.js";

export { labelOf, reach } from "./reach.js";
export { canAsk, compareQuestion, followed, look, missing, originOf, question } from "./requests.js";

export const MOST_COLUMNS = 4;
export const UNITS = ["metric", "bar", "imperial"];

/**
 * vehicle: pointer below /vehicle -> text as typed; options: "/rule_pack", "/season" -> text;
 * columns: name and cells, pointer below the candidate -> text as typed.
 */
export const state = { units: "metric", vehicle: {}, options: {}, columns: [{ name: "", cells: {} }], chosen: 0 };

const listeners = [];

/** Hear of each change: `listener({ kind })`; kinds: typed, columns, chosen, units, loaded. */
export function onChange(listener) {
  listeners.push(listener);
}

export function changed(kind) {
  for (const listener of listeners) listener({ kind });
}

function put(target, pointer, text) {
  if (text.trim() === "") delete target[pointer];
  else target[pointer] = text;
}

/** Set a text of the vehicle, in the unit shown. */
export function setVehicle(pointer, text) {
  put(state.vehicle, pointer, text);
  changed("typed");
}

/** Set an option of the request: "/rule_pack", "/season". */
export function setOption(pointer, text) {
  put(state.options, pointer, text);
  changed("typed");
}

/** Set a text of a candidate, in the unit shown. */
export function setCell(column, pointer, text) {
  put(state.columns[column].cells, pointer, text);
  changed("typed");
}

/** Set a number of a candidate, in the API's unit. */
export function setCellValue(column, pointer, value) {
  setCell(column, pointer, typed(value, pointer));
  changed("columns");
}

/** Set a number of the vehicle, in the API's unit. */
export function setVehicleValue(pointer, value) {
  setVehicle(pointer, typed(value, pointer));
  changed("columns");
}

/** Set the reader's own name of a column. */
export function setName(column, text) {
  state.columns[column].name = text;
  changed("typed");
}

/** Return the letter of a column: A, B, C, D. */
export function letterOf(column) {
  return "ABCD"[column];
}

/** Return what a column is called: the reader's own name, or its letter. */
export function nameOf(column) {
  return state.columns[column].name.trim() || say("question.column", { letter: letterOf(column) });
}

/** Add a column with a copy of these cells and choose it; false where there is no room. An empty last one is filled. */
export function addColumn(cells = {}, name = "") {
  const made = { name, cells: { ...cells } };
  const last = state.columns.length - 1;
  if (Object.keys(state.columns[last].cells).length === 0 && Object.keys(cells).length > 0) state.columns[last] = made;
  else if (state.columns.length >= MOST_COLUMNS) return false;
  else state.columns.push(made);
  state.chosen = state.columns.length - 1;
  changed("columns");
  return true;
}

/** Take a column away; the last one is emptied. */
export function removeColumn(column) {
  state.columns.splice(column, 1);
  if (state.columns.length === 0) state.columns.push({ name: "", cells: {} });
  state.chosen = Math.min(state.chosen, state.columns.length - 1);
  changed("columns");
}

function ofAxle(cells, axle) {
  return Object.entries(cells).filter(([pointer]) => pointer.startsWith(`/${axle}/`));
}

function moved(entries, from, to) {
  return Object.fromEntries(entries.map(([pointer, text]) => [pointer.replace(`/${from}/`, `/${to}/`), text]));
}

/** Put on the rear axle what is on the front one. */
export function rearAsFront(column) {
  const front = ofAxle(state.columns[column].cells, "front");
  state.columns[column].cells = { ...Object.fromEntries(front), ...moved(front, "front", "rear") };
  changed("columns");
}

/** Change front and rear of a candidate. */
export function swapAxles(column) {
  const { cells } = state.columns[column];
  const [front, rear] = [ofAxle(cells, "front"), ofAxle(cells, "rear")];
  state.columns[column].cells = { ...moved(rear, "rear", "front"), ...moved(front, "front", "rear") };
  changed("columns");
}

/** Choose the column whose answer is shown. */
export function choose(column) {
  if (column === state.chosen || !state.columns[column]) return;
  state.chosen = column;
  changed("chosen");
}

function converted(texts, from, to) {
  return Object.fromEntries(
    Object.entries(texts).map(([pointer, text]) => {
      state.units = from;
      const value = parse(text, pointer);
      state.units = to;
      return [pointer, typeof value === "number" ? typed(value, pointer) : text];
    }),
  );
}

/** Show every number in other units: metric, bar, imperial. */
export function setUnits(to) {
  const from = state.units;
  if (from === to || !UNITS.includes(to)) return;
  state.vehicle = converted(state.vehicle, from, to);
  for (const column of state.columns) column.cells = converted(column.cells, from, to);
  state.units = to;
  changed("units");
}

const TEXT_MOST = 100;

function texts(from) {
  const pairs = Object.entries(from ?? {}).filter(
    ([pointer, text]) => pointer.startsWith("/") && typeof text === "string" && text.trim(),
  );
  return Object.fromEntries(pairs.slice(0, 200).map(([pointer, text]) => [pointer, text.slice(0, TEXT_MOST)]));
}

/** Take a state that was saved; what is not understood is left out. */
export function load(saved) {
  const columns = Array.isArray(saved?.columns) ? saved.columns.slice(0, MOST_COLUMNS) : [];
  state.units = UNITS.includes(saved?.units) ? saved.units : "metric";
  state.vehicle = texts(saved?.vehicle);
  state.options = texts(saved?.options);
  state.columns = columns.map((each) => ({ name: String(each?.name ?? "").slice(0, 80), cells: texts(each?.cells) }));
  if (state.columns.length === 0) state.columns.push({ name: "", cells: {} });
  state.chosen = Math.max(0, Math.min(Number(saved?.chosen) || 0, state.columns.length - 1));
  changed("loaded");
}

/** Return the state as it can be saved. */
export function saved() {
  const { units, vehicle, options, columns, chosen } = state;
  return { units, vehicle, options, columns, chosen };
}

export { language };
