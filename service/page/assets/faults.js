// What is wrong stands at its field, goes when it is mended, and does not speak while a field is still being typed.

import { onAnswers } from "./ask.js";
import { fieldOf, labelOf } from "./reach.js";
import { onChange } from "./state.js";
import { type } from "./question.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);
// Field -> { pointer, detail, did_you_mean }, as the service tells it.
let faults = new Map();
let typing;

/** Say what is wrong with a field that was left, or with undefined that nothing is. */
export function judge(field, fault) {
  if (fault) faults.set(field, fault);
  else faults.delete(field);
  showAll();
}

function take(answers) {
  faults = new Map([...faults].filter(([field]) => field.isConnected && answers.length === 0));
  for (const { column, problem } of answers) {
    if (problem?.status === 401) faults.set(byId("key"), { pointer: "", detail: problem.detail });
    for (const error of problem?.errors ?? []) place(error, column);
  }
  showAll();
}

function place({ pointer, detail, did_you_mean: meant }, column) {
  const field = fieldOf(pointer, column);
  if (field) faults.set(field, { pointer, detail, did_you_mean: meant });
}

function clear() {
  for (const field of document.querySelectorAll("#question [aria-invalid]")) {
    field.removeAttribute("aria-invalid");
    byId(`${field.id}-fault`).replaceChildren();
  }
}

function showAll() {
  clear();
  const seen = [...faults].filter(([field]) => field !== typing);
  for (const [field, fault] of seen) show(field, fault);
  hear(seen);
}

function show(field, { detail, did_you_mean: meant }) {
  field.setAttribute("aria-invalid", "true");
  const place = byId(`${field.id}-fault`);
  place.append(detail);
  if (!meant) return;
  const button = document.createElement("button");
  button.type = "button";
  button.className = "use";
  button.textContent = say("question.use", { value: meant });
  button.addEventListener("click", () => {
    faults.delete(field);
    type(field, meant);
    field.focus();
    showAll();
  });
  place.append(" ", button);
}

// Somebody who does not see the field change hears of it.
function hear(seen) {
  byId("heard").textContent = seen.map(([, { pointer, detail }]) => `${labelOf(pointer)}: ${detail}`).join(" ");
}

export function start() {
  const form = byId("question");
  form.addEventListener("input", ({ target }) => {
    typing = target;
    if (faults.delete(target)) showAll();
  });
  form.addEventListener("focusout", ({ target }) => {
    if (target !== typing) return;
    typing = undefined;
    showAll();
  });
  onChange(({ kind }) => {
    if (kind === "typed") return;
    typing = undefined;
    faults = new Map();
    showAll();
  });
  onAnswers(take);
}
