import { byId, draw, setStale, show, tell } from "./page-answer.js";

const PAUSE_MS = 250;

const fields = [...document.querySelectorAll("#question [name]")];
let running = new AbortController();
let timer = 0;

function put(target, pointer, value) {
  const steps = pointer.split("/").slice(1);
  const last = steps.pop();
  let place = target;
  for (const step of steps) place = place[step] ??= {};
  if (value !== undefined) place[last] = value;
}

// What is no number is sent as it is: the service says at its field what it expects there.
function valueOf(field) {
  const text = field.value.trim();
  if (text === "") return undefined;
  if (!("number" in field.dataset)) return text;
  const number = Number(text.replace(",", "."));
  return Number.isFinite(number) ? number : text;
}

function question() {
  const asked = { detail: "full" };
  for (const field of fields) {
    const value = valueOf(field);
    // An empty field that must be filled still makes its surroundings, so that the fault points at it.
    if (value !== undefined || field.required) put(asked, field.name, value);
  }
  return asked;
}

function headers() {
  const made = { "Content-Type": "application/json" };
  if (byId("key").value) made["X-API-Key"] = byId("key").value;
  return made;
}

function post(path, body, signal) {
  return fetch(path, { method: "POST", headers: headers(), body, signal });
}

async function ask() {
  running.abort();
  running = new AbortController();
  const { signal } = running;
  const asked = question();
  const body = JSON.stringify(asked);
  showCurl(asked);
  byId("answer").setAttribute("aria-busy", "true");
  try {
    const response = await post("v1/fitments/check", body, signal);
    const answer = await response.json();
    if (signal.aborted) return;
    if (!response.ok) {
      refuse(response.status, answer);
      return;
    }
    clearFaults();
    show(answer);
    await draw((query) => post(`v1/fitments/drawing?${query}`, body, signal));
  } catch (error) {
    if (error.name === "AbortError") return;
    setStale(true);
    tell("No answer", "The service cannot be reached. Change any field to try again.", "");
  } finally {
    if (!signal.aborted) byId("answer").removeAttribute("aria-busy");
  }
}

function fieldAt(pointer) {
  if (pointer === "") return undefined;
  return (
    fields.find((field) => field.name === pointer) ??
    fields.find((field) => field.name.startsWith(`${pointer}/`)) ??
    fields.find((field) => pointer.startsWith(`${field.name}/`))
  );
}

function clearFaults() {
  byId("general").hidden = true;
  for (const field of [...fields, byId("key")]) {
    field.removeAttribute("aria-invalid");
    byId(`${field.id}-fault`).textContent = "";
  }
}

function blame(field, detail) {
  field.setAttribute("aria-invalid", "true");
  const place = byId(`${field.id}-fault`);
  place.textContent = place.textContent ? `${place.textContent} ${detail}` : detail;
  for (let node = field.parentElement; node; node = node.parentElement) {
    if (node.tagName === "DETAILS") node.open = true;
  }
}

function refuse(status, problem) {
  clearFaults();
  setStale(true);
  const faults = problem.errors ?? [];
  const list = byId("general");
  list.replaceChildren();
  for (const fault of faults) {
    const field = fieldAt(fault.pointer);
    if (field) blame(field, fault.detail);
    list.append(faultLine(field, fault));
  }
  if (status === 401) {
    blame(byId("key"), problem.detail);
    list.append(faultLine(byId("key"), problem));
  }
  list.hidden = list.childElementCount === 0;
  const count = Math.max(problem.error_count ?? 0, list.childElementCount);
  const words = count === 1 ? "One field to correct" : count > 1 ? `${count} fields to correct` : problem.title;
  tell(words, count ? "What stands below answers the last question that could be read." : problem.detail, "waiting");
}

function faultLine(field, fault) {
  const item = document.createElement("li");
  if (field) {
    const link = document.createElement("a");
    link.href = `#${field.id}`;
    link.textContent = labelOf(field);
    link.addEventListener("click", (event) => {
      event.preventDefault();
      field.focus();
    });
    item.append(link, `: ${fault.detail}`);
  } else {
    item.textContent = fault.pointer ? `${fault.pointer}: ${fault.detail}` : fault.detail;
  }
  return item;
}

function labelOf(field) {
  const own = field.labels[0].firstChild.textContent.trim();
  const group = field.closest("fieldset.fit") ?? field.closest("fieldset");
  return group ? `${group.querySelector("legend").textContent}, ${own}` : own;
}

function showCurl(asked) {
  const address = new URL("v1/fitments/check", document.baseURI).href;
  const quoted = JSON.stringify(asked).replaceAll("'", "'\\''");
  const key = byId("key").value ? " -H \"X-API-Key: $KEY\"" : "";
  byId("curl").textContent = `curl -sS '${address}' -H 'Content-Type: application/json'${key} -d '${quoted}'`;
}

async function copy() {
  const line = byId("curl");
  try {
    await navigator.clipboard.writeText(line.textContent);
    byId("copied").textContent = "Copied.";
  } catch {
    getSelection().selectAllChildren(line);
    byId("copied").textContent = "Selected: copy it with the keyboard.";
  }
}

async function openReport() {
  byId("report-said").textContent = "";
  try {
    const response = await post("v1/fitments/report", JSON.stringify(question()));
    if (!response.ok) throw new Error(response.statusText);
    const link = document.createElement("a");
    link.href = URL.createObjectURL(await response.blob());
    link.target = "_blank";
    link.click();
    byId("report-said").textContent = "Opened in a new tab.";
  } catch {
    byId("report-said").textContent = "There is no report until that field is corrected.";
  }
}

// A closed menu has no room for what regulations are about.
function packOption({ id, title }, chosen) {
  const option = new Option(`${title.split(" on ")[0]} (${id})`, id, false, chosen);
  option.title = title;
  return option;
}

async function fillPacks() {
  const select = fields.find((field) => field.name === "/rule_pack");
  const response = await fetch("v1/rule-packs", { headers: headers() });
  if (!response.ok) return;
  const { rule_packs: packs } = await response.json();
  const chosen = select.value;
  select.replaceChildren(...packs.map((pack) => packOption(pack, pack.id === chosen)));
}

// Gauges and doors of cars are marked in bar.
function showBar(field) {
  const kpa = valueOf(field);
  byId(field.dataset.bar).textContent = kpa > 0 ? `${Number((kpa / 100).toFixed(2))} bar` : "";
}

byId("question").addEventListener("input", (event) => {
  if ("bar" in event.target.dataset) showBar(event.target);
  clearTimeout(timer);
  timer = setTimeout(ask, PAUSE_MS);
});
byId("question").addEventListener("submit", (event) => {
  event.preventDefault();
  ask();
});
byId("copy").addEventListener("click", copy);
byId("report").addEventListener("click", openReport);
fields.filter((field) => "bar" in field.dataset).forEach(showBar);
fillPacks().catch(() => {});
ask();
