// The findings by outcome, worst first; alike ones of both axles share a line.
import { byId, capital, dashed, el, fieldLink, folding, markOf } from "./dom.js";
import { applyAll, offerOf } from "./remedies.js";
import { say } from "./words.js";

export function placeOf(axles) {
  return say(axles.length > 1 ? "answer.both" : `answer.${axles[0]}`);
}

// Findings of one question with one remedy: each message with the axles it is said of.
function merged(findings, asked) {
  const rows = new Map();
  for (const each of findings) {
    const key = JSON.stringify([each.code, each.remedy?.text, each.already]);
    const row = rows.get(key) ?? { finding: each, messages: new Map(), offers: new Map(), fields: new Set() };
    row.messages.set(each.message, [...(row.messages.get(each.message) ?? []), each.axle]);
    // What is to be measured or looked up on the car has a field of its own.
    if (each.remedy?.pointer.startsWith("/vehicle/")) row.fields.add(each.remedy.pointer);
    const offer = offerOf(each.remedy, asked);
    if (offer) row.offers.set(offer.label, [...(row.offers.get(offer.label) ?? []), offer]);
    rows.set(key, row);
  }
  return [...rows.values()];
}

function offerButton(label, offers, column) {
  const apply = () => {
    applyAll(offers, column);
    // The button goes with the finding; who pressed it by keyboard reads on at the verdict.
    byId("answer").focus();
  };
  return el("button", { type: "button", class: "offer", onclick: apply }, label);
}

function groundOf({ basis, code }, sources) {
  const source = sources?.[basis?.source];
  return [source?.reference, basis?.place, code].filter(Boolean).join(" · ");
}

function remedyLine({ finding: { remedy }, offers, fields }, column) {
  const text = capital(remedy.text);
  const buttons = [...offers].map(([label, all]) => offerButton(label, all, column));
  // A button whose words are the remedy says it once.
  const told = buttons.some((each) => each.textContent === text) ? "" : `${text}. `;
  const links = [...fields].map((pointer) => fieldLink(pointer, column));
  return el("p", { class: "remedy" }, told, buttons, links);
}

function line(row, { answer, column }, isMet) {
  const { finding, messages } = row;
  const told = [...messages].map(([message, axles]) => {
    const today = finding.already ? [el("span", { class: "today" }, say("answer.today")), " "] : [];
    return el("p", {}, el("b", {}, placeOf(axles)), " ", today, message);
  });
  const remedy = finding.remedy ? remedyLine(row, column) : "";
  return el("li", {}, told, remedy, isMet ? "" : el("p", { class: "ground" }, groundOf(finding, answer.sources)));
}

// The findings that came out so; what is not assessed stands among the unanswered questions.
export function findingsOf(outcome, shown) {
  const chosen = shown.answer.findings.filter((each) => each.outcome === outcome);
  if (!chosen.length) return null;
  const name = dashed(outcome);
  const isMet = outcome === "met";
  // What the change brings stands before what the car has today already.
  const rows = merged(chosen, shown).sort((one, other) => one.finding.already - other.finding.already);
  const list = el("ul", {}, rows.map((row) => line(row, shown, isMet)));
  const title = el("span", {}, markOf(name), ` ${say(`answer.group_${outcome}`)}: ${chosen.length}`);
  return folding(name, !isMet, { class: `group ${name}` }, title, list);
}
