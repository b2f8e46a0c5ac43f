// A size is judged on leaving its field; what stands behind it goes to the field of its own, so that the whole marking
// of a wheel can be typed as one: tyre, rim, bolt circle, bore, load rating.

import { get } from "./ask.js";
import { judge } from "./faults.js";
import { type } from "./question.js";
import { say } from "./words.js";

const KINDS = { "/tyre/size": "tyre", "/rim/size": "rim" };
// A rim behind a tyre: width, flange, a cross, the diameter and what follows ("8J x 18 H2 ET45"), or "18x8 ET45".
const RIM = /[\s,;+]+(?:on\s+)?(\d{1,2}(?:[.,]\d{1,2})?\s*(?:J{1,2}|JK|K)?\s*[x\u00d7]\s*\d{1,2}(?:[.,]5)?\b.*)$/i;
const BOLTS = /\s+(\d{1,2}\s*[x\u00d7/]\s*(?:9\d|[12]\d\d)(?:[.,]\d{1,2})?)(?=\s|$)/i;
const BORE = /\s+(?:ml|cb|nb)?\s*(\d{2,3}(?:[.,]\d{1,2})?)(?:\s*mm)?$/i;
const RATING = /\s+(\d{3,4}\s*kg)\b/i;

function kindOf(field) {
  const end = Object.keys(KINDS).find((each) => field.dataset.pointer?.endsWith(each));
  return KINDS[end];
}

function beside(field, end) {
  return document.getElementById(field.id.replace(/(tyre|rim)-size$/, end));
}


/** Put the rim that stands behind a tyre into the field below it. */
function splitTyre(field) {
  const found = field.value.match(RIM);
  const rim = beside(field, "rim-size");
  if (!found) return;
  type(field, field.value.slice(0, found.index).trim());
  type(rim, found[1].trim());
  left(rim).catch(() => {});
}

/** Put bolt circle, centre bore and load rating that stand behind a rim into their own fields. */
function splitRim(field) {
  let text = field.value;
  const cut = (pattern, end) => {
    const found = text.match(pattern);
    if (!found) return;
    text = text.replace(pattern, " ").trim();
    type(beside(field, end), found[1].trim());
  };
  cut(RATING, "rim-load_rating_kg");
  if (BOLTS.test(text)) {
    cut(BORE, "rim-centre_bore_mm");
    cut(BOLTS, "rim-bolt_circle");
  }
  if (text !== field.value) type(field, text);
}

async function left(field) {
  const kind = kindOf(field);
  if (!kind) return;
  if (kind === "tyre") splitTyre(field);
  else splitRim(field);
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
