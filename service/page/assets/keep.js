// What keeps a question: the address of the page behind its `#`, which no browser sends, a file, the clipboard.

import { get } from "./ask.js";
import { canAsk, load, onChange, question, saved, state } from "./state.js";
import { typed, unitOf } from "./units.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);
const PAUSE_MS = 300;
const FILE_MOST_BYTES = 100_000;
let timer = 0;
// What this page itself has put behind the `#`.
let own = "";

function encoded(value) {
  const bytes = new TextEncoder().encode(JSON.stringify(value));
  const text = btoa(Array.from(bytes, (each) => String.fromCharCode(each)).join(""));
  return text.replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

function decoded(text) {
  const bytes = Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (each) => each.charCodeAt(0));
  return JSON.parse(new TextDecoder().decode(bytes));
}

function isEmpty() {
  const { units, vehicle, options, columns } = state;
  const first = columns.length === 1 && !columns[0].name && Object.keys(columns[0].cells).length === 0;
  return first && units === "metric" && !Object.keys(vehicle).length && !Object.keys(options).length;
}

/** Put the question behind the `#` of this page and of the links to its other languages. */
function remember() {
  clearTimeout(timer);
  own = isEmpty() ? "" : `#${encoded(saved())}`;
  if (location.hash !== own) history.replaceState(null, "", own || location.pathname + location.search);
  for (const link of document.querySelectorAll(".languages a")) link.hash = own;
}

function recall() {
  if (location.hash.length < 2 || location.hash === own) return;
  try {
    load(decoded(location.hash.slice(1)));
  } catch {
    // A link that was cut short opens the empty page.
    history.replaceState(null, "", location.pathname + location.search);
  }
}

function* leaves(value, pointer = "") {
  if (value !== null && typeof value === "object" && !Array.isArray(value)) {
    for (const [name, part] of Object.entries(value)) yield* leaves(part, `${pointer}/${name}`);
  } else if (typeof value === "string" || typeof value === "number") yield [pointer, value];
}

function asTexts(value) {
  const pairs = [...leaves(value)].map(([pointer, each]) => [
    pointer,
    typeof each === "number" && unitOf(pointer) !== undefined ? typed(each, pointer) : String(each),
  ]);
  return Object.fromEntries(pairs);
}

/** Return the state that a request of the API (check or compare) makes, for `load`. */
export function fromRequest({ vehicle, rule_pack: pack, season, candidate, candidates = [candidate] }) {
  const columns = candidates.map(({ label, id, ...wheels }) => ({ name: label ?? "", cells: asTexts(wheels) }));
  const options = asTexts({ rule_pack: pack === "unece" ? undefined : pack, season });
  // Texts are made in the units that are shown.
  return { units: state.units, vehicle: asTexts(vehicle), options, columns, chosen: 0 };
}

function tell(key, id = "said") {
  byId(id).textContent = say(key);
}

function link(address, more) {
  Object.assign(document.createElement("a"), { href: address, ...more }).click();
}

function save() {
  const text = JSON.stringify({ fitment_page: 1, ...saved() }, null, 1);
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  link(address, { download: `${state.columns[state.chosen].name.replace(/[^\w-]+/g, "-") || "fitment"}.json` });
  URL.revokeObjectURL(address);
  tell("question.saved");
}

async function open({ target }) {
  const [file] = target.files;
  try {
    if (file.size > FILE_MOST_BYTES) throw new RangeError("too large");
    const found = JSON.parse(await file.text());
    const known = found.fitment_page || found.vehicle?.front;
    if (!known) throw new TypeError("no question");
    load(found.fitment_page ? found : fromRequest(found));
    tell("question.opened");
  } catch {
    tell("question.not_opened");
  }
  target.value = "";
}

async function copy(text, said) {
  try {
    await navigator.clipboard.writeText(text);
    tell("question.copied", said);
  } catch {
    tell("question.not_copied", said);
  }
}

function curl() {
  const address = new URL("v1/fitments/check", document.baseURI).href;
  const quoted = JSON.stringify(question(state.chosen).body).replaceAll("'", "'\\''");
  const key = byId("key").value ? ' -H "X-API-Key: $KEY"' : "";
  return `curl -sS '${address}' -H 'Content-Type: application/json'${key} -d '${quoted}'`;
}

// A closed menu has no room for what regulations are about.
async function fillPacks() {
  const select = document.querySelector("[data-pointer='/rule_pack']");
  const response = await get("v1/rule-packs");
  if (!response.ok) return;
  const { rule_packs: packs } = await response.json();
  const options = packs.map(({ id, title }) => Object.assign(new Option(`${title.split(" on ")[0]} (${id})`, id), { title }));
  select.replaceChildren(select.options[0], ...options.filter((each) => each.value !== "unece"));
  select.value = state.options["/rule_pack"] ?? "";
}

function empty() {
  load({ units: state.units });
  tell("question.emptied");
}

export function start() {
  byId("clear").addEventListener("click", empty);
  byId("save").addEventListener("click", save);
  byId("open").addEventListener("click", () => byId("open-file").click());
  byId("open-file").addEventListener("change", open);
  byId("copy-link").addEventListener("click", () => {
    remember();
    copy(location.href);
  });
  byId("copy-curl").addEventListener("click", () => copy(curl(), "copied"));
  byId("copy-json").addEventListener("click", () => copy(JSON.stringify(question(state.chosen).body, null, 2), "copied"));
  addEventListener("hashchange", recall);
  onChange(() => {
    clearTimeout(timer);
    timer = setTimeout(remember, PAUSE_MS);
    byId("curl").textContent = canAsk(state.chosen) ? curl() : "";
  });
  fillPacks().catch(() => {});
  recall();
}
