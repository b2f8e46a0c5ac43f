// The form and the state: each follows the other.

import { onChange, setCell, setOption, setVehicle, state } from "./state.js";

const form = document.getElementById("question");

function textAt(field) {
  const { pointer, column } = field.dataset;
  if (column) return state.columns[column]?.cells[pointer.slice("/candidate".length)] ?? "";
  return pointer.startsWith("/vehicle") ? state.vehicle[pointer.slice("/vehicle".length)] ?? "" : state.options[pointer] ?? "";
}

function take(field) {
  const { pointer, column } = field.dataset;
  if (column) setCell(Number(column), pointer.slice("/candidate".length), field.value);
  else if (pointer.startsWith("/vehicle")) setVehicle(pointer.slice("/vehicle".length), field.value);
  else setOption(pointer, field.value);
}

function fill() {
  for (const field of form.querySelectorAll("[data-pointer]")) field.value = textAt(field);
}

export function start() {
  form.addEventListener("input", ({ target }) => target.dataset.pointer && take(target));
  form.addEventListener("submit", (event) => event.preventDefault());
  onChange(({ kind }) => kind !== "typed" && fill());
}
