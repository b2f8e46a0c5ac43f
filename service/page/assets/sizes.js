// A size is judged on leaving its field; a rim that stands behind the tyre goes to its own field.

import { get } from "./ask.js";
import { judge } from "./faults.js";
import { type } from "./question.js";
import { say } from "./words.js";

const KINDS = { "/tyre/size": "tyre", "/rim/size": "rim" };
// A rim behind a tyre: width, flange, a cross, the diameter and what follows ("8J x 18 H2 ET45"), or "18x8 ET45".
const RIM = /[\s,;+]+(?:on\s+)?(\d{1,2}(?:[.,]\d{1,2})?\s*(?:J{1,2}|JK|K)?\s*[x\u00d7]\s*\d{1,2}(?:[.,]5)?\b.*)$/i;

function kindOf(field) {
  const end = Object.keys(KINDS).find((each) => field.dataset.pointer?.endsWith(each));
  return KINDS[end];
}

/** Put the rim that stands behind a tyre into the field below it. */
function split(field) {
  const found = field.value.match(RIM);
  const rim = document.getElementById(field.id.replace(/tyre-size$/, "rim-size"));
  if (!found || rim.value.trim()) return;
  type(rim, found[1].trim());
  type(field, field.value.slice(0, found.index).trim());
  left(rim);
}

async function left(field) {
  const kind = kindOf(field);
  if (!kind) return;
  if (kind === "tyre") split(field);
  const text = field.value.trim();
  if (!text) return;
  const response = await get(`v1/designations/${kind}?text=${encodeURIComponent(text)}`);
  const found = await response.json();
  if (field.value.trim() !== text) return;
  if (response.ok) {
    judge(field);
    readAs(field, found, text);
  } else if (response.status === 422) {
    judge(field, { ...found.errors[0], pointer: field.dataset.pointer });
  }
}

// Said only where the spelling was not the usual one, since then something else may have been meant.
function readAs(field, { canonical }, text) {
  const tidy = (each) => each.replace(/[\s.,/]/g, "").toLowerCase();
  const same = tidy(canonical) === tidy(text);
  document.getElementById(`${field.id}-also`).textContent = same ? "" : say("question.read_as", { value: canonical });
}

export function start() {
  // `change` comes with the leaving of a field that was changed.
  document.getElementById("question").addEventListener("change", ({ target }) => {
    left(target).catch(() => {});
  });
}
