// Examples of invented cars; when the car is changed, what belonged to the example goes.

import { load, onChange, saved, state } from "./state.js";
import { fromRequest } from "./keep.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);
const CAR = /\/(tyre\/size|rim\/size|max_axle_mass_kg|max_speed_kmh|category|wheels_per_side)$/;
// What the example had, while the car is still its own.
let lent;

function copyOf(value) {
  return JSON.parse(JSON.stringify(value));
}

async function loadExample(place) {
  const response = await fetch("examples.json");
  if (!response.ok) return;
  const made = fromRequest((await response.json())[place]);
  // Its name is English, whatever the page speaks.
  load({ ...made, columns: made.columns.map((each) => ({ ...each, name: "" })) });
  lent = copyOf(saved());
  byId("said").textContent = say("question.example");
}

function own(texts, had) {
  return Object.fromEntries(Object.entries(texts).filter(([pointer, text]) => had[pointer] !== text));
}

/** Take away what still is the example's, so that no unknown car is judged by another's measured room. */
function dropExample() {
  const before = copyOf(saved());
  const had = lent;
  lent = undefined;
  load({
    ...before,
    vehicle: own(before.vehicle, had.vehicle),
    options: before.options,
    columns: before.columns.map((each, place) => ({
      name: each.name,
      cells: own(each.cells, had.columns[place]?.cells ?? {}),
    })),
  });
  offer(before);
}

function offer(before) {
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = say("question.put_back");
  button.addEventListener("click", () => {
    load(before);
    byId("said").textContent = "";
  });
  byId("said").replaceChildren(say("question.example_gone"), " ", button);
}

function changedCar({ target }) {
  const pointer = target.dataset.pointer ?? "";
  if (!lent || !pointer.startsWith("/vehicle") || !CAR.test(pointer)) return;
  const place = pointer.slice("/vehicle".length);
  if ((state.vehicle[place] ?? "") !== (lent.vehicle[place] ?? "")) dropExample();
}

export function start() {
  for (const button of document.querySelectorAll("[data-example]")) {
    button.addEventListener("click", () => loadExample(Number(button.dataset.example)).catch(() => {}));
  }
  byId("question").addEventListener("change", changedCar);
  onChange(({ kind }) => {
    // The same numbers in other units are still the example's.
    if (kind === "units" && lent) lent = copyOf(saved());
    if (kind === "loaded") lent = undefined;
  });
}
