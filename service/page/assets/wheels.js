// Which wheels would fit under the chosen candidate's tyres: width by offset, each cell a wheel to try.
import { addAsColumn } from "./as_column.js";
import { post } from "./ask.js";
import { byId, capital, el, markOf, number } from "./dom.js";
import { withOffset } from "./remedies.js";
import { state } from "./state.js";
import { say } from "./words.js";

// As fine as leaves the chart narrow enough to be seen at once; the best offset of a width stands beside it anyway.
const STEPS_MM = [1, 2, 5, 10];
const MOST_OFFSETS = 16;
let running = new AbortController();
let asked = null;

const within = (window, offset) =>
  window ? [window, ...(window.further ?? [])].some((each) => offset >= each.from_mm && offset <= each.to_mm) : false;

function runOf(window) {
  const runs = [window, ...(window.further ?? [])];
  return runs.map(({ from_mm: low, to_mm: high }) => (low === high ? number(low, 0) : say("answer.range", { low: number(low, 0), high: number(high, 0) }))).join(", ");
}

function stateAt(width, offset) {
  if (within(width.suitable, offset)) return "suitable";
  return within(width.with_conditions, offset) ? "suitable_with_conditions" : "";
}

function take(axle, rim, name) {
  const { cells } = state.columns[state.chosen];
  addAsColumn({ ...cells, [`/${axle}/rim/size`]: rim }, name, byId("wheels-said"));
}

function cellButton(axle, width, offset, outcome) {
  const rim = withOffset(width.best.rim.size, offset);
  const words = `${rim}: ${say(`answer.${outcome}`)}`;
  const button = el(
    "button",
    { type: "button", tabindex: "-1", class: `spot ${outcome.replaceAll("_", "-")}`, "aria-label": words, title: words, onclick: () => take(axle, rim, rim) },
    markOf(outcome.replaceAll("_", "-")),
  );
  return button;
}

function widthHead(width) {
  const { suitable, with_conditions: conditions, why_none: none } = width;
  const lines = [];
  if (suitable) lines.push(say("answer.et_suitable", { range: runOf(suitable) }));
  if (conditions && (!suitable || runOf(conditions) !== runOf(suitable))) lines.push(say("answer.et_conditions", { range: runOf(conditions) }));
  if (!width.best && none?.length) lines.push(capital(none[0].text));
  return el("th", { scope: "row" }, `${number(width.width_in, 2)} in`, lines.map((each) => el("span", { class: "limit" }, each)));
}

function bestCell(axle, width) {
  if (!width.best) return el("td", { role: "gridcell" });
  const { offset_mm: offset, rim } = width.best;
  const button = el(
    "button",
    { type: "button", tabindex: "-1", class: "offer", "aria-label": `${rim.size}: ${say("answer.make_column")}`, onclick: () => take(axle, rim.size, rim.size) },
    `ET ${number(offset, 0)}`,
  );
  return el("td", { role: "gridcell" }, button);
}

function rowOf(axle, width, offsets) {
  const cells = offsets.map((offset) => {
    const outcome = width.best ? stateAt(width, offset) : "";
    return el("td", { role: "gridcell" }, outcome ? cellButton(axle, width, offset, outcome) : "");
  });
  return el("tr", {}, widthHead(width), bestCell(axle, width), cells);
}

function offsetsOf(widths) {
  const windows = widths.flatMap(({ suitable, with_conditions: conditions }) => [suitable, conditions].filter(Boolean));
  if (!windows.length) return [];
  const low = Math.min(...windows.map((each) => each.from_mm));
  const high = Math.max(...windows.map((each) => each.to_mm));
  const step = STEPS_MM.find((each) => (high - low) / each < MOST_OFFSETS) ?? STEPS_MM.at(-1);
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, place) => (first + place) * step);
}

function chartOf(axle, { tyre, widths }) {
  const offsets = offsetsOf(widths);
  const title = `${say(`answer.${axle}`)}: ${tyre}`;
  const heads = [say("answer.width"), say("answer.best"), ...offsets.map((each) => `ET ${each}`)];
  const table = el(
    "table",
    { role: "grid", "aria-label": title, class: "wheels" },
    el("thead", {}, el("tr", {}, heads.map((each) => el("th", { scope: "col" }, each)))),
    el("tbody", {}, widths.map((width) => rowOf(axle, width, offsets))),
  );
  rove(table);
  return el("div", {}, el("h3", {}, title), el("div", { class: "scroll" }, table));
}

// One stop of the Tab key for the whole chart; arrows go from wheel to wheel and skip what does not fit.
function rove(table) {
  const buttons = [...table.querySelectorAll("button")];
  const place = (button) => [button.closest("tr").rowIndex, button.closest("td").cellIndex];
  if (buttons[0]) buttons[0].tabIndex = 0;
  const go = (from, to) => {
    from.tabIndex = -1;
    to.tabIndex = 0;
    to.focus();
  };
  table.addEventListener("keydown", (event) => {
    const step = { ArrowRight: [0, 1], ArrowLeft: [0, -1], ArrowDown: [1, 0], ArrowUp: [-1, 0] }[event.key];
    const from = event.target.closest("button");
    if (!step || !from) return;
    event.preventDefault();
    const [row, column] = place(from);
    const ahead = buttons.filter((each) => {
      const [y, x] = place(each);
      return step[0] ? x === column && (y - row) * step[0] > 0 : y === row && (x - column) * step[1] > 0;
    });
    const next = step[0] + step[1] > 0 ? ahead[0] : ahead.at(-1);
    if (next) go(from, next);
  });
}

async function fetchWheels() {
  const { body } = asked;
  running.abort();
  running = new AbortController();
  const { candidate, detail, ...rest } = body;
  const tyres = { front: [candidate.front.tyre], rear: [candidate.rear.tyre] };
  byId("wheels-said").textContent = "";
  try {
    const response = await post("v1/fitments/rims", { ...rest, tyres }, running.signal);
    const answer = await response.json();
    if (!response.ok) throw new Error(answer.detail);
    const charts = ["front", "rear"].flatMap((axle) => answer.axles[axle].tyres.map((each) => chartOf(axle, each)));
    byId("wheels-charts").replaceChildren(...charts);
  } catch (error) {
    if (error.name !== "AbortError") byId("wheels-said").textContent = say("answer.no_answer");
  }
}

// Asked only while the chart is open, and again when the question has changed.
export function showWheels({ answer, body }) {
  byId("wheels").hidden = !answer;
  if (!answer || asked?.body === body) return;
  asked = { body };
  if (byId("wheels-fold").open) fetchWheels();
}

byId("wheels-fold").addEventListener("toggle", () => byId("wheels-fold").open && asked && fetchWheels());
