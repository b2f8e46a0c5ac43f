// The columns of the grid: as many as there are candidates, one of them chosen.

import { addColumn, choose, letterOf, MOST_COLUMNS, nameOf, onChange, rearAsFront, removeColumn, setName, state, swapAxles } from "./state.js";

const byId = (id) => document.getElementById(id);
const grid = byId("grid");

function rename(id, column) {
  return id.replace(/^fA/, `f${letterOf(column)}`).replace(/col-0/, `col-${column}`);
}

// A column is a copy of the first one, which the server wrote.
function copied(cell, column) {
  const made = cell.cloneNode(true);
  for (const each of [made, ...made.querySelectorAll("[id]")]) {
    if (each.id) each.id = rename(each.id, column);
    for (const name of ["aria-labelledby", "aria-describedby"]) {
      const ids = each.getAttribute(name);
      if (ids) each.setAttribute(name, ids.split(" ").map((id) => rename(id, column)).join(" "));
    }
    if (each.dataset.column) each.dataset.column = column;
    // The form without a script posts the first candidate only.
    each.removeAttribute("name");
    each.removeAttribute("aria-invalid");
  }
  for (const each of made.querySelectorAll("p")) each.replaceChildren();
  made.dataset.at = column;
  return made;
}

function fitColumns() {
  const wanted = state.columns.length;
  for (const row of grid.rows) {
    const cells = [...row.querySelectorAll(".candidate")];
    for (const cell of cells.slice(wanted)) cell.remove();
    for (let column = cells.length; column < wanted; column += 1) row.append(copied(cells[0], column));
  }
  grid.dataset.columns = wanted;
}

function tab(column) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = nameOf(column);
  made.setAttribute("aria-pressed", String(column === state.chosen));
  made.addEventListener("click", () => choose(column));
  return made;
}

function showNames() {
  for (const head of grid.tHead.querySelectorAll(".candidate")) head.textContent = nameOf(Number(head.dataset.at));
  byId("tabs").replaceChildren(...state.columns.map((_, column) => tab(column)));
}

function showChosen() {
  for (const cell of grid.querySelectorAll(".candidate")) {
    cell.classList.toggle("is-chosen", Number(cell.dataset.at) === state.chosen);
  }
  const name = byId("name");
  if (document.activeElement !== name) name.value = state.columns[state.chosen].name;
  name.placeholder = `${letterOf(state.chosen)}`;
  byId("add").disabled = state.columns.length >= MOST_COLUMNS;
}

function show() {
  fitColumns();
  showNames();
  showChosen();
}

function unfold() {
  const open = byId("more").getAttribute("aria-expanded") !== "true";
  byId("more").setAttribute("aria-expanded", String(open));
  for (const each of grid.querySelectorAll(".more-rows")) each.hidden = !open;
}

// The next thing that anybody does with a new column is to change its tyre.
function added() {
  const { cells } = state.columns[state.chosen];
  addColumn(cells);
  grid.querySelector(`[data-column="${state.chosen}"]`)?.select();
}

export function start() {
  byId("add").addEventListener("click", added);
  byId("rear-as-front").addEventListener("click", () => rearAsFront(state.chosen));
  byId("swap").addEventListener("click", () => swapAxles(state.chosen));
  byId("remove").addEventListener("click", () => removeColumn(state.chosen));
  byId("more").addEventListener("click", unfold);
  byId("name").addEventListener("input", ({ target }) => setName(state.chosen, target.value));
  grid.addEventListener("focusin", ({ target }) => target.dataset.column && choose(Number(target.dataset.column)));
  onChange(({ kind }) => (kind === "typed" ? showNames() : show()));
  show();
}
