// Talk with the service: one check for each column that can be asked, the latest round only.

import { MOST_COLUMNS, canAsk, onChange, originOf, question, state } from "./state.js";

const PAUSE_MS = 250;
const listeners = [];
let running = new AbortController();
let timer = 0;
// A column whose question has not changed keeps its answer.
const held = new Map();

function headers(more = {}) {
  const key = document.getElementById("key")?.value;
  return key ? { ...more, "X-API-Key": key } : more;
}

/** Post a body to a path of this service ("v1/fitments/check") and return the response. */
export function post(path, body, signal) {
  const text = JSON.stringify(body);
  return fetch(path, { method: "POST", headers: headers({ "Content-Type": "application/json" }), body: text, signal });
}

/** Get a path of this service and return the response. */
export function get(path, signal) {
  return fetch(path, { headers: headers(), signal });
}

/** Hear the answers: `listener([{ column, ok, answer | problem }], chosen)`; columns that cannot be asked yet are absent. */
export function onAnswers(listener) {
  listeners.push(listener);
}

/** Return whether a round of questions is on its way. */
export let busy = false;

const waiting = [];

/** Hear of the begin and end of a round: `listener(true)`, `listener(false)`. */
export function onBusy(listener) {
  waiting.push(listener);
}

function tellBusy(is) {
  busy = is;
  for (const listener of waiting) listener(is);
}

async function check(column, signal) {
  const { body } = question(column);
  const text = JSON.stringify(body);
  const before = held.get(text);
  if (before) return placed(before, column);
  const found = await answerTo(body, signal);
  if (held.size > 8 * MOST_COLUMNS) held.clear();
  // What the service was too busy for is asked again.
  if (found.ok || found.problem.status === 422) held.set(text, found);
  return placed(found, column);
}

// A fault is told once, where the text stands that is at fault, and not at every cell that follows it.
function placed(found, column) {
  if (found.ok || !found.problem.errors) return { ...found, column };
  const errors = found.problem.errors.map((each) => ({ ...each, pointer: originOf(column, each.pointer ?? "") }));
  const once = errors.filter((each, place) => errors.findIndex((other) => other.pointer === each.pointer && other.code === each.code) === place);
  return { ...found, column, problem: { ...found.problem, errors: once } };
}

async function answerTo(body, signal) {
  try {
    const response = await post("v1/fitments/check", body, signal);
    const content = await response.json();
    return response.ok ? { ok: true, answer: content } : { ok: false, problem: content };
  } catch (error) {
    if (error.name === "AbortError") throw error;
    return { ok: false, problem: { status: 0, title: "", detail: "", errors: [] } };
  }
}

/** Ask now what can be asked; `again` forgets what was answered before. */
export async function askNow(again = false) {
  clearTimeout(timer);
  if (again) held.clear();
  running.abort();
  running = new AbortController();
  const { signal } = running;
  const columns = state.columns.map((_, place) => place).filter(canAsk);
  tellBusy(true);
  try {
    const answers = await Promise.all(columns.map((column) => check(column, signal)));
    if (signal.aborted) return;
    for (const listener of listeners) listener(answers, state.chosen);
  } catch (error) {
    if (error.name !== "AbortError") throw error;
  } finally {
    if (!signal.aborted) tellBusy(false);
  }
}

onChange(({ kind }) => {
  clearTimeout(timer);
  timer = setTimeout(askNow, kind === "typed" ? PAUSE_MS : 0);
});
