// The form and the state: each follows the other.

import { dress } from "./dress.js";
import { start as startColumns } from "./grid.js";
import { start as startFaults } from "./faults.js";
import { start as startExamples } from "./examples.js";
import { start as startSizes } from "./sizes.js";
import { followed, look, onChange, setCell, setOption, setUnits, setVehicle, state } from "./state.js";
import { parse, readAs, show, unitOf, unitShown } from "./units.js";
import { say } from "./words.js";

const form = document.getElementById("question");
const units = document.getElementById("units");

export const fields = () => [...form.querySelectorAll("[data-pointer]")];

/** Return where the text of a field stands in the state: its map and its pointer there. */
export function placeOf(field) {
  const { pointer, column } = field.dataset;
  if (column) return [state.columns[column]?.cells ?? {}, pointer.slice("/candidate".length)];
  if (pointer.startsWith("/vehicle")) return [state.vehicle, pointer.slice("/vehicle".length)];
  return [state.options, pointer];
}

function take(field) {
  const { pointer, column } = field.dataset;
  const [, place] = placeOf(field);
  if (column) setCell(Number(column), place, field.value);
  else if (pointer.startsWith("/vehicle")) setVehicle(place, field.value);
  else setOption(place, field.value);
}

/** Set a field's text as if it had been typed. */
export function type(field, text) {
  field.value = text;
  take(field);
}

function fill() {
  for (const field of fields()) {
    const [texts, place] = placeOf(field);
    field.value = texts[place] ?? "";
  }
}

// What an empty cell stands for is shown in it, greyed.
function hint(field) {
  if (field.tagName !== "INPUT") return;
  const { pointer, column } = field.dataset;
  const [, place] = placeOf(field);
  const found = /\/(fitted|candidate)\//.test(pointer) && followed(column && Number(column), place);
  const value = found && parse(found.text, place);
  const open = column && pointer.endsWith("/pressure_kpa") ? say("question.pressure_open") : "";
  field.placeholder = found ? (typeof value === "number" ? show(value, unitOf(place), 2) : found.text) : open;
  document.getElementById(`${field.id}-also`).textContent = field.value ? readAs(field.value, place) : "";
}

function hints() {
  fields().forEach(hint);
}

function showUnits() {
  units.value = state.units;
  for (const each of form.querySelectorAll("[data-unit]")) each.textContent = unitShown(each.dataset.unit);
}

// Enter goes down the column, as in a sheet of numbers; Tab goes across.
function down(field) {
  const column = field.dataset.column ?? "";
  const inGrid = (each) => each.closest("#grid") && (each.dataset.column ?? "") === column && each.checkVisibility();
  const ways = fields().filter(inGrid);
  (ways[ways.indexOf(field) + 1] ?? field).focus();
}

function pressed(event) {
  const field = event.target;
  if (event.key !== "Enter" || field.tagName !== "INPUT") return;
  event.preventDefault();
  if (field.closest("#grid")) down(field);
  else field.blur();
}

export function start() {
  dress(form);
  if (matchMedia("(max-width: 47.99rem)").matches) document.getElementById("tools").open = false;
  for (const each of document.querySelectorAll("#more-front, #more-rear")) each.hidden = true;
  look((pointer, column) => {
    const field = fields().find((each) => each.dataset.pointer === pointer && (column === undefined || Number(each.dataset.column) === column));
    return Boolean(field) && !field.closest("details:not([open]), [hidden]");
  });
  startColumns();
  startFaults();
  startSizes();
  startExamples();
  form.addEventListener("input", ({ target }) => target.dataset.pointer && take(target));
  form.addEventListener("keydown", pressed);
  form.addEventListener("submit", (event) => event.preventDefault());
  units.addEventListener("change", () => setUnits(units.value));
  fill();
  onChange(({ kind }) => {
    if (kind !== "typed") fill();
    if (kind === "units" || kind === "loaded") showUnits();
    hints();
  });
  hints();
}
