// A fitment that the service proposed, as a column of the reader's.
import { byId, el } from "./dom.js";
import { addColumn } from "./state.js";
import { typed } from "./units.js";
import { say } from "./words.js";

// `{front: {tyre: {size: "..."}}}` gives `{"/front/tyre/size": "..."}`, numbers in the reader's units.
export function cellsOf(value, pointer = "") {
  if (value === null || typeof value !== "object") {
    return { [pointer]: typeof value === "number" ? typed(value, pointer) : String(value) };
  }
  return Object.assign({}, ...Object.entries(value).map(([name, part]) => cellsOf(part, `${pointer}/${name}`)));
}

// Add it, or say that there is no room; the focus goes to the answer that follows.
export function addAsColumn(cells, name, status) {
  const added = addColumn(cells, name);
  status.textContent = added ? "" : say("answer.full");
  if (added) byId("answer").focus();
}

export function columnButton(cells, name, status) {
  const add = () => addAsColumn(cells(), name, status);
  return el("button", { type: "button", class: "offer", onclick: add }, say("answer.make_column"));
}
