// One table of all columns: a row a number, present beside the candidates, with change and limit.
import { byId, dashed, el, markOf } from "./dom.js";
import { FIGURES, cellOf } from "./figures.js";
import { placeOf } from "./findings.js";
import { choose, letterOf, nameOf, state } from "./state.js";
import { say } from "./words.js";

const AGAINST = ["not_met", "not_recommended", "not_assessed", "advisory"];

function headOf({ column, stale, answer }) {
  const chosen = column === state.chosen;
  const name = state.columns[column].name.trim() ? ` ${nameOf(column)}` : "";
  const letter = el("b", {}, letterOf(column));
  const button = el(
    "button",
    { type: "button", class: "pick", "aria-pressed": String(chosen), "aria-label": nameOf(column), onclick: () => pick(column) },
    letter,
    name,
  );
  const tag = stale && answer ? el("span", { class: "today" }, say("answer.earlier")) : "";
  return el("th", { scope: "col", class: chosen ? "is-chosen" : "" }, button, tag);
}

// The table is made anew: the focus stays on the head that was pressed.
function pick(column) {
  choose(column);
  byId("table").querySelectorAll(".pick")[column]?.focus();
}

function verdictCell({ answer }) {
  if (!answer) return el("td", {}, say("answer.none"));
  const name = dashed(answer.verdict);
  return el("td", { class: name }, el("b", { class: "toned" }, markOf(name), ` ${say(`answer.${answer.verdict}`)}`));
}

function reasonCell({ answer }) {
  const first = answer?.findings.find((each) => AGAINST.includes(each.outcome) && each.decides !== false);
  return el("td", { class: "reason" }, first ? `${placeOf([first.axle])}: ${first.message}` : "");
}

function numberCell({ value, change, limit, outcome }) {
  const mark = outcome ? [markOf(dashed(outcome)), el("span", { class: "unseen" }, `${say(`answer.group_${outcome}`)}: `)] : [];
  return el(
    "td",
    { class: outcome ? dashed(outcome) : "" },
    el("span", { class: outcome ? "value toned" : "value" }, mark, value ?? say("answer.unknown")),
    change ? el("span", { class: "change" }, change) : "",
    limit ? el("span", { class: "limit" }, limit) : "",
  );
}

function rowOf(figure, cells, places) {
  const [key] = figure;
  const where = places ? el("span", { class: "where" }, placeOf(places)) : "";
  const present = cells.map((each) => each?.now).find(Boolean) ?? "";
  return el(
    "tr",
    { "data-row": key, "data-axle": places?.length === 1 ? places[0] : "" },
    el("th", { scope: "row" }, say(`answer.row_${key}`), where),
    el("td", { class: "now" }, present),
    cells.map((each) => (each ? numberCell(each) : el("td", {}))),
  );
}

function rowsOf(figure, kept) {
  const cellsOf = (axle) => kept.map((each) => each.answer && cellOf(figure, each, axle));
  if (!figure[1]) return [rowOf(figure, cellsOf("vehicle"))];
  const [front, rear] = [cellsOf("front"), cellsOf("rear")];
  // What is the same on both axles of every column stands once.
  if (JSON.stringify(front) === JSON.stringify(rear)) return [rowOf(figure, front, ["front", "rear"])];
  return [rowOf(figure, front, ["front"]), rowOf(figure, rear, ["rear"])];
}

function headRow(name, kept, cell) {
  return el("tr", { "data-row": name, "data-axle": "" }, el("th", { scope: "row" }, say(`answer.row_${name}`)), el("td", { class: "now" }), kept.map(cell));
}

export function showColumns(kept) {
  byId("columns").hidden = !kept.some((each) => each.answer);
  const head = el("tr", {}, el("td", {}), el("th", { scope: "col" }, say("answer.present")), kept.map(headOf));
  const body = [
    headRow("verdict", kept, verdictCell),
    headRow("reason", kept, reasonCell),
    ...FIGURES.flatMap((figure) => rowsOf(figure, kept)),
  ];
  byId("table").replaceChildren(
    el("caption", { class: "unseen" }, say("answer.columns")),
    el("thead", {}, head),
    el("tbody", {}, body),
  );
  frame(state.chosen);
}

// The chosen column is framed from head to foot.
function frame(column) {
  for (const row of byId("table").rows) row.cells[column + 2]?.classList.add("is-chosen");
}
