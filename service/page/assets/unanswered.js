// The questions that an answer leaves open: merged by axle, sorted by what is to be done, each a link to its field.
import { capital, el, fieldLink, folding, markOf } from "./dom.js";
import { placeOf } from "./findings.js";
import { say } from "./words.js";

// What needs a rule, a caliper or a gauge; the rest stands on the wheel, on the tyre or in papers.
const MEASURED = [
  "inboard_mm", "outboard_mm", "radial_mm", "centre_bore_mm", "tread_depth_mm", "overall_diameter_mm",
  "section_width_mm", "rolling_circumference_mm", "track_mm", "inner_wheel_offset_mm", "pressure_kpa",
];
function kindOf({ decides, remedy }) {
  if (!decides) return "optional";
  return MEASURED.includes(remedy?.quantity) ? "measure" : "look";
}

const withoutAxle = (pointer) => pointer.replace(/\/(front|rear)(?=\/|$)/, "/axle");

// One question a field: several findings may wait for the same one. Both axles' fields stand together.
function merged(findings) {
  const asked = new Map();
  for (const each of findings) {
    const { remedy, code, message, axle } = each;
    const key = remedy ? withoutAxle(remedy.pointer) : code + message;
    const question = asked.get(key) ?? { parts: new Map(), messages: new Map() };
    const place = remedy?.pointer ?? "";
    const part = question.parts.get(place) ?? { axles: [], texts: new Set(), pointer: place };
    if (remedy) part.texts.add(remedy.text);
    if (!part.axles.includes(axle)) part.axles.push(axle);
    question.parts.set(place, part);
    question.messages.set(message, [...(question.messages.get(message) ?? []), axle]);
    asked.set(key, question);
  }
  return [...asked.values()];
}

// Said once where both axles ask the same; else each axle its own words.
function toDo(parts, column) {
  const texts = parts.map(({ texts: each }) => capital([...each].join(", ")));
  const links = (all) => all.map(({ pointer }) => fieldLink(pointer, column));
  if (new Set(texts).size === 1) return [el("p", { class: "remedy" }, `${texts[0]}. `, links(parts))];
  return parts.map((part, place) => el("p", { class: "remedy" }, `${texts[place]}. `, links([part])));
}

function line({ parts, messages }, column) {
  const places = [...parts.values()];
  const told = [...messages].map(([message, axles]) =>
    el("p", { class: "why" }, el("b", {}, placeOf([...new Set(axles)])), ` ${message}`),
  );
  return el("li", {}, places[0].pointer ? toDo(places, column) : "", told);
}

// The open questions of a kind: look (up), measure, or optional.
export function questionsOf(kind, { answer, column }) {
  const open = answer.findings.filter((each) => each.outcome === "not_assessed" && kindOf(each) === kind);
  const chosen = merged(open);
  if (!chosen.length) return null;
  const style = kind === "optional" ? "open" : "not-assessed";
  const title = el("span", {}, markOf(style), ` ${say(`answer.${kind}`)}: ${chosen.length}`);
  const list = el("ul", {}, chosen.map((each) => line(each, column)));
  return folding(kind, kind !== "optional", { class: `group ${style}`, "data-kind": kind }, title, list);
}
