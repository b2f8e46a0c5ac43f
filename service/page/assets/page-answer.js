export const byId = (id) => document.getElementById(id);

const VERDICTS = {
  suitable: "It fits",
  suitable_with_conditions: "It fits, with conditions",
  undetermined: "Not known yet",
  unsuitable: "Do not fit",
};
const GROUPS = [
  ["not_met", "Speaks against it"],
  ["not_assessed", "Not answered"],
  ["advisory", "Needs attention"],
  ["met", "Answered and met"],
];
const PLACES = { front: "Front", rear: "Rear", vehicle: "Car" };

export function tell(words, summary, verdict) {
  byId("verdict-words").textContent = words;
  byId("bar-words").textContent = words;
  byId("summary").textContent = summary;
  byId("verdict").className = `verdict ${verdict}`;
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
  byId("findings").replaceChildren(...GROUPS.map((group) => groupOf(group, answer.findings)).filter(Boolean));
  fill("actions", answer.actions.map((each) => each.text));
  fill("cautions", answer.cautions);
  const balance = answer.vehicle.balance.text;
  byId("trade-offs").textContent = answer.trade_offs.text.includes(balance)
    ? answer.trade_offs.text
    : `${balance} ${answer.trade_offs.text}`;
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

function groupOf([outcome, title], findings) {
  const chosen = findings.filter((each) => each.outcome === outcome);
  if (!chosen.length) return null;
  const group = document.createElement("details");
  group.className = `group ${outcome.replaceAll("_", "-")}`;
  group.open = outcome !== "met";
  const head = document.createElement("summary");
  head.textContent = `${title}: ${chosen.length}`;
  const list = document.createElement("ul");
  list.append(...chosen.map(findingLine));
  group.append(head, list);
  return group;
}

function findingLine(finding) {
  const item = document.createElement("li");
  const place = document.createElement("b");
  place.textContent = PLACES[finding.axle];
  item.append(place, ` ${finding.message}`);
  if (finding.remedy) {
    const remedy = document.createElement("p");
    remedy.className = "remedy";
    remedy.textContent = `To settle it: ${finding.remedy.text}.`;
    item.append(remedy);
  }
  const ground = document.createElement("p");
  ground.className = "ground";
  ground.textContent = `${finding.code} · ${finding.basis.reference}`;
  item.append(ground);
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
