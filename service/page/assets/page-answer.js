export const byId = (id) => document.getElementById(id);

const VERDICTS = {
  suitable: "It fits",
  suitable_with_conditions: "It fits, with conditions",
  undetermined: "Not known yet",
  not_recommended: "We advise against it",
  unsuitable: "Do not fit",
};
// Name for style and mark, heading, and which findings stand there.
const GROUPS = [
  ["not-met", "Speaks against it", (each) => each.outcome === "not_met"],
  ["not-recommended", "Advised against", (each) => each.outcome === "not_recommended"],
  ["not-assessed", "To be settled first", (each) => each.decides === true],
  ["advisory", "Needs attention", (each) => each.outcome === "advisory"],
  ["open", "Open, and decides nothing", (each) => each.decides === false],
  ["met", "Answered and met", (each) => each.outcome === "met"],
];
const FOLDED = ["open", "met"];
const DANGER = ["do_not_fit", "would_not_fit", "settle_first"];
const PLACES = { front: "Front", rear: "Rear", vehicle: "Car" };

export function tell(words, summary, verdict) {
  byId("verdict-words").textContent = words;
  byId("bar-words").textContent = words;
  byId("summary").textContent = summary;
  byId("verdict").className = `verdict ${verdict}`;
  byId("bar").className = verdict;
  for (const id of ["verdict-mark", "bar-mark"]) byId(id).setAttribute("href", `#mark-${verdict}`);
}

// What stands there may answer an earlier question; a workshop must not take it for this one's.
export function setStale(stale) {
  document.body.classList.toggle("stale", stale);
  byId("todo").hidden = stale;
}

// The heading has said the verdict already.
function withoutWords(summary, words) {
  if (!summary.startsWith(words)) return summary;
  const rest = summary.slice(words.length).replace(/^[:.] /, "");
  return rest[0].toUpperCase() + rest.slice(1);
}

export function show(answer) {
  setStale(false);
  const words = VERDICTS[answer.verdict];
  tell(words, withoutWords(answer.summary, words), answer.verdict.replaceAll("_", "-"));
  byId("findings").replaceChildren(...GROUPS.map((group) => groupOf(group, answer)).filter(Boolean));
  fill("actions", answer.actions.map((each) => each.text));
  answer.actions.forEach(({ code }, place) => {
    byId("actions").children[place].classList.toggle("danger", DANGER.includes(code));
  });
  fill("cautions", answer.cautions);
  const balance = answer.vehicle.balance.text;
  byId("trade-offs").textContent = `${balance} ${answer.trade_offs_text}`;
  byId("edition").textContent = `${answer.rule_pack.id}, edition ${answer.rule_pack.edition}`;
  for (const axle of ["front", "rear"]) wheel(axle, answer.axles[axle]);
  byId("told").hidden = false;
  byId("drawn").hidden = false;
}

function fill(id, texts) {
  byId(id).replaceChildren(
    ...texts.map((text) => {
      const item = document.createElement("li");
      item.textContent = text;
      return item;
    }),
  );
}

const SVG = "http://www.w3.org/2000/svg";

function markOf(name) {
  const mark = document.createElementNS(SVG, "svg");
  mark.setAttribute("class", "mark");
  mark.setAttribute("viewBox", "0 0 20 20");
  mark.setAttribute("aria-hidden", "true");
  const use = document.createElementNS(SVG, "use");
  use.setAttribute("href", `#mark-${name}`);
  mark.append(use);
  return mark;
}

function groupOf([name, title, belongs], { findings, sources }) {
  const chosen = findings.filter(belongs);
  if (!chosen.length) return null;
  // What the change brings stands before what the car has today already.
  chosen.sort((one, other) => one.already - other.already);
  const group = document.createElement("details");
  group.className = `group ${name}`;
  group.open = !FOLDED.includes(name);
  const head = document.createElement("summary");
  head.append(markOf(name), ` ${title}: ${chosen.length}`);
  const list = document.createElement("ul");
  list.append(...chosen.map((each) => (name === "open" ? openLine(each) : findingLine(each, sources))));
  group.append(head, list);
  return group;
}

function paragraph(style, text) {
  const made = document.createElement("p");
  made.className = style;
  made.textContent = text;
  return made;
}

function lineOf(finding) {
  const item = document.createElement("li");
  const place = document.createElement("b");
  place.textContent = PLACES[finding.axle];
  item.append(place, " ");
  if (finding.already) {
    const tag = document.createElement("span");
    tag.className = "today";
    tag.textContent = "today already";
    item.append(tag, " ");
  }
  item.append(finding.message);
  return item;
}

function openLine(finding) {
  const item = lineOf(finding);
  if (finding.remedy) item.append(` To answer it: ${finding.remedy.text}.`);
  return item;
}

function groundOf({ basis }, sources) {
  const { reference, checked } = sources[basis.source];
  return [reference, basis.place, checked ? `checked ${checked}` : ""].filter(Boolean).join(", ");
}

function findingLine(finding, sources) {
  const item = lineOf(finding);
  if (finding.remedy) item.append(paragraph("remedy", `To settle it: ${finding.remedy.text}.`));
  item.append(paragraph("ground", `${finding.code} · ${groundOf(finding, sources)}`));
  return item;
}

// Seventy drawing units stand for the mean of both radii, so that a difference shows as what it is.
function wheel(axle, numbers) {
  const then = numbers.proposed.overall_diameter_mm;
  const now = numbers.present.overall_diameter_mm;
  if (!then || !now) return;
  const group = document.querySelector(`#side [data-axle=${axle}]`);
  const scale = 140 / (then + now);
  for (const [kind, diameter] of [["phantom", now], ["wide", then]]) {
    const circle = group.querySelector(`circle.${kind}`);
    circle.setAttribute("r", diameter * scale);
    circle.setAttribute("cy", 160 - diameter * scale);
  }
}

// `fetchDrawing` answers a query with a response.
export async function draw(fetchDrawing) {
  const wanted = [
    ["drawn-front", "view=section&axles=front"],
    ["drawn-rear", "view=section&axles=rear"],
    ["drawn-patches-front", "view=patches&axles=front"],
    ["drawn-patches-rear", "view=patches&axles=rear"],
  ];
  await Promise.all(
    wanted.map(async ([id, query]) => {
      const response = await fetchDrawing(query);
      if (!response.ok) return;
      const text = await response.text();
      const drawing = new DOMParser().parseFromString(text, "image/svg+xml");
      const image = byId(id);
      const before = image.src;
      image.alt = [...drawing.querySelectorAll("title, desc")].map((each) => each.textContent).join(". ");
      image.src = URL.createObjectURL(new Blob([text], { type: "image/svg+xml" }));
      if (before) URL.revokeObjectURL(before);
    }),
  );
}
