// From a pointer of the API to the field that states it, and to the words that name it.

import { choose, state } from "./state.js";

const labels = JSON.parse(document.getElementById("labels").textContent);

function fieldAt(pointer, column) {
  const fields = [...document.querySelectorAll("#question [data-pointer]")];
  const own = fields.filter((each) => !each.dataset.column || Number(each.dataset.column) === column);
  const at = (each) => each.dataset.pointer;
  return (
    own.find((each) => at(each) === pointer) ??
    own.find((each) => at(each).startsWith(`${pointer}/`)) ??
    own.find((each) => pointer.startsWith(`${at(each)}/`))
  );
}

/** Return the field that states what an API pointer points at, or undefined. */
export function fieldOf(pointer, column = state.chosen) {
  return pointer ? fieldAt(pointer, column) : undefined;
}

function unfold(field) {
  for (let node = field.parentElement; node; node = node.parentElement) {
    if (node.tagName === "DETAILS") node.open = true;
    if (node.tagName === "TBODY" && node.hidden) document.querySelector(`[aria-controls="${node.id}"]`).click();
  }
}

/** Focus the field of an API pointer ("/candidate/front/tyre/size"), unfolding what hides it; false where there is none. */
export function reach(pointer, column = state.chosen) {
  const field = fieldOf(pointer, column);
  if (!field) return false;
  if (field.dataset.column && column !== state.chosen) choose(column);
  unfold(field);
  field.focus();
  field.scrollIntoView({ block: "center" });
  return true;
}

/** Return the words for an API pointer: "Front axle, present: Tyre"; for a part of a field those of the field. */
export function labelOf(pointer) {
  const inside = pointer.replace(/\/[^/]*$/, "");
  return labels[pointer] ?? labels[`${pointer}/size`] ?? labels[`${inside}/size`] ?? labels[inside] ?? pointer;
}
