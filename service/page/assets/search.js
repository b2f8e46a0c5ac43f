// What sizes one can have on rims that one has: a list, each line a column to be made of it.
import { cellsOf, columnButton } from "./as_column.js";
import { post } from "./ask.js";
import { byId, dashed, el, markOf } from "./dom.js";
import { question, state } from "./state.js";
import { say } from "./words.js";

const MOST_ROWS = 10;
let body = null;
// What was typed there by hand is not overwritten by the next answer.
let touched = false;

// The rims of the question by their text, with bolt circle and bore where they are told.
function rimsOf(bodies) {
  const known = new Map();
  for (const { vehicle, candidate } of bodies) {
    for (const axle of ["front", "rear"]) {
      for (const rim of [vehicle[axle]?.fitted?.rim, candidate[axle]?.rim]) if (rim?.size) known.set(rim.size, rim);
    }
  }
  return known;
}

const allRims = () => rimsOf(state.columns.map((_, column) => question(column).body));

function rowLine(row) {
  const { candidate, change, verdict, reason, gains, losses } = row;
  const name = dashed(verdict);
  const words = (all) => all.filter((each) => each !== "room").map((each) => say(`answer.by_${each}`)).join(", ");
  const better = words(gains) && say("answer.better", { what: words(gains) });
  const worse = words(losses) && say("answer.worse", { what: words(losses) });
  const cells = () => {
    const made = cellsOf(candidate);
    // A new tyre is what an empty depth means already.
    for (const axle of ["front", "rear"]) delete made[`/${axle}/tyre/tread_depth_mm`];
    return made;
  };
  return el(
    "li",
    { class: name },
    el("p", {}, el("b", { class: "toned" }, markOf(name), ` ${say(`answer.${verdict}`)}`), ` ${change} `, columnButton(cells, "", byId("search-said"))),
    el("p", { class: "ground" }, [reason, better, worse].filter(Boolean).join(" ")),
  );
}

async function find() {
  const { candidate, detail, ...rest } = body;
  const known = allRims();
  const texts = byId("search-rims").value.split("\n").map((each) => each.trim()).filter(Boolean);
  const rims = texts.map((size) => known.get(size) ?? { size });
  const asked = { ...rest, rims: { front: rims }, rank_by: byId("search-rank").value, max_results: MOST_ROWS, explain_first: 0 };
  byId("search-said").textContent = say("answer.searching");
  const response = await post("v1/fitments/search", asked);
  const answer = await response.json();
  const { rows = [], why_none: none, notes = [], errors = [], detail: fault } = answer;
  const trouble = errors.map((each) => each.detail).join(" ") || fault;
  byId("search-said").textContent = response.ok ? none ?? "" : trouble;
  byId("search-rows").replaceChildren(...rows.map(rowLine));
  byId("search-notes").replaceChildren(...notes.map((each) => el("p", { class: "ground" }, each)));
}

export function showSearch(kept) {
  byId("search").hidden = !kept.answer;
  if (!kept.answer) return;
  body = kept.body;
  if (!touched) byId("search-rims").value = [...allRims().keys()].join("\n");
}

byId("search-rims").addEventListener("input", () => {
  touched = byId("search-rims").value.trim() !== "";
});
byId("search-form").addEventListener("submit", (event) => {
  event.preventDefault();
  find().catch(() => {
    byId("search-said").textContent = say("answer.no_answer");
  });
});
