// The answer of the chosen candidate, and what all columns say beside one another.
import { onAnswers, onBusy, post } from "./ask.js";
import { showColumns } from "./columns.js";
import { byId, capital, dashed, el, fieldLink, folding } from "./dom.js";
import { showDrawings, showPlots } from "./drawn.js";
import { findingsOf } from "./findings.js";
import { keep, keptAll } from "./kept.js";
import { nameOf, onChange, question, state } from "./state.js";
import { showSearch } from "./search.js";
import { questionsOf } from "./unanswered.js";
import { showWheels } from "./wheels.js";
import { say } from "./words.js";

const DANGER = ["do_not_fit", "would_not_fit", "settle_first"];
// As many values may stand open beside the verdict; more would push it out of sight.
const MOST_OPEN = 3;

function tell(verdict, words, summary, stale = false) {
  byId("verdict-words").textContent = words;
  byId("bar-words").textContent = stale ? `${words} (${say("answer.earlier")})` : words;
  byId("summary").textContent = summary;
  byId("verdict").className = `verdict ${verdict}`;
  byId("bar").className = stale ? "open" : verdict;
  for (const id of ["verdict-mark", "bar-mark"]) byId(id).setAttribute("href", `#mark-${verdict}`);
}

// The heading has said the verdict already.
function withoutWords(summary, words) {
  if (!summary.startsWith(words)) return summary;
  return capital(summary.slice(words.length).replace(/^[:.] */, ""));
}

function faultLine({ pointer, detail }, column) {
  const field = pointer && pointer !== "/" ? [fieldLink(pointer, column), ": "] : [];
  return el("li", {}, field, detail);
}

function troubles({ problem, missing, column }) {
  if (missing.length) return missing.map((each) => el("li", {}, fieldLink(each, column)));
  if (!problem) return [];
  if (problem.status === 0) return [el("li", {}, say("answer.unreachable"))];
  const errors = problem.errors ?? [];
  return errors.length ? errors.map((each) => faultLine(each, column)) : [el("li", {}, problem.detail ?? problem.title)];
}

// What keeps the answer from being that of this question, with the way to each field.
function showTroubles(kept) {
  const { missing, answer } = kept;
  const lines = troubles(kept);
  const title = missing.length ? "answer.needed" : "answer.faults";
  byId("troubles").hidden = lines.length === 0;
  byId("troubles-title").textContent = [answer ? say("answer.stale") : "", lines.length ? say(title) : ""].filter(Boolean).join(" ");
  byId("troubles-list").replaceChildren(...lines);
}

function showVerdict({ answer, problem, column, stale }) {
  byId("verdict-of").textContent = state.columns.length > 1 ? nameOf(column) : "";
  if (!answer) return tell("waiting", say(problem ? "answer.not_answered" : "answer.waiting"), problem ? "" : say("answer.begin"));
  const words = say(`answer.${answer.verdict}`);
  return tell(dashed(answer.verdict), words, withoutWords(answer.summary, words), stale);
}

function list(texts) {
  return texts.map((text) => el("li", {}, text));
}

function usedLine({ text, why, pointer }, column) {
  return el("li", {}, fieldLink(pointer, column), ` ${text} (${why})`);
}

function lawWords(pack) {
  const { id, edition, rules_held: held, rules_applied: applied, rules_met: met } = pack;
  const name = document.querySelector('[data-pointer="/rule_pack"] option:checked')?.textContent.trim() || id;
  return say("answer.law", { pack: name, edition, held, applied, met, rest: applied - met });
}

// What counted and was not typed in view, what was assumed, and by which law.
function showGrounds({ answer, used, column }) {
  const { assumptions, rule_pack: pack } = answer;
  const lacks = pack.not_held ?? [];
  const also = used.length
    ? folding("used", used.length <= MOST_OPEN, {}, say("answer.used", { count: used.length }), el("ul", {}, used.map((each) => usedLine(each, column))))
    : "";
  const assumed = assumptions.length
    ? folding("assumed", assumptions.length <= MOST_OPEN, {}, say("answer.assumed", { count: assumptions.length }), el("ul", {}, list(assumptions)))
    : "";
  const law = lacks.length
    ? folding("law", false, { class: "law" }, lawWords(pack), el("p", {}, say("answer.not_held")), el("ul", {}, list(lacks)))
    : el("p", { class: "law" }, lawWords(pack));
  byId("grounds").replaceChildren(...[also, assumed, law].filter(Boolean));
}

function jobLine({ code, text }) {
  return el("li", { class: DANGER.includes(code) ? "danger" : "" }, text);
}

const SIGNS = { gain: "+", loss: "\u2212", alike: "=" };

function effectLine({ direction, text }) {
  const sign = el("span", { class: "sign", "aria-hidden": "true" }, SIGNS[direction] ?? "");
  const unseen = el("span", { class: "unseen" }, `${say(`answer.${direction}`)}: `);
  return el("li", { class: direction }, sign, unseen, text);
}

function showEffects({ answer }) {
  const { dry, wet, text } = answer.vehicle.balance;
  const order = Object.keys(SIGNS);
  const effects = [...answer.trade_offs].sort((one, other) => order.indexOf(one.direction) - order.indexOf(other.direction));
  const words = [dry?.text ?? text, wet?.text, answer.vehicle.turn_in?.text].filter(Boolean).join(" ");
  const all = effects.length
    ? folding("effects", false, {}, say("answer.effects", { count: effects.length }), el("ul", { class: "effects" }, effects.map(effectLine)))
    : "";
  byId("effects").replaceChildren(...[el("p", {}, words), all].filter(Boolean));
}

// What speaks against it, then what holds the verdict back, then what is to be done; the rest is folded.
function groupsOf(kept) {
  return [
    findingsOf("not_met", kept),
    findingsOf("not_recommended", kept),
    questionsOf("look", kept),
    questionsOf("measure", kept),
    findingsOf("advisory", kept),
    questionsOf("optional", kept),
    findingsOf("met", kept),
  ];
}

function showTold(kept) {
  const { answer } = kept;
  for (const id of ["told", "work"]) byId(id).hidden = !answer;
  if (!answer) return;
  showGrounds(kept);
  byId("findings").replaceChildren(...groupsOf(kept).filter(Boolean));
  // What would mend an earlier question may not mend this one.
  for (const each of byId("findings").querySelectorAll(".offer")) each.disabled = kept.stale;
  byId("actions").replaceChildren(...answer.actions.map(jobLine));
  byId("cautions").replaceChildren(...list(answer.cautions));
  showEffects(kept);
}

let shown = [];

// Whether what stands there is this already; making it anew would take the focus from who is reading it.
function stands(all) {
  const now = [state.chosen, state.units, ...all.flatMap(({ answer, problem, missing, column }) => [answer, problem, String(missing), nameOf(column)])];
  const same = now.length === shown.length && now.every((each, place) => each === shown[place]);
  shown = now;
  return same;
}

function render() {
  const all = keptAll();
  if (stands(all)) return;
  const kept = all[state.chosen];
  // A workshop must not take the jobs of an earlier question for this one's.
  for (const id of ["answer", "work"]) byId(id).classList.toggle("stale", Boolean(kept.answer) && kept.stale);
  byId("todo").hidden = kept.stale;
  showTroubles(kept);
  showVerdict(kept);
  showTold(kept);
  showColumns(all);
  showDrawings(kept);
  showPlots(all);
  showWheels(kept);
  showSearch(kept);
}

// A question that has faults has no report: the service says which in its own words.
async function openReport() {
  byId("report-said").textContent = "";
  try {
    const response = await post("v1/fitments/report", question(state.chosen).body);
    if (!response.ok) throw new Error(response.statusText);
    const opened = el("a", { href: URL.createObjectURL(await response.blob()), target: "_blank" });
    opened.click();
    byId("report-said").textContent = say("answer.report_opened");
  } catch {
    byId("report-said").textContent = say("answer.report_failed");
  }
}

// The address keeps the question behind its `#`: a link within the page goes there without changing it.
document.addEventListener("click", (event) => {
  const link = event.target.closest('a[href^="#"]');
  const target = link && document.querySelector(link.hash);
  if (!target) return;
  event.preventDefault();
  target.focus({ preventScroll: true });
  target.scrollIntoView();
});
onBusy((is) => {
  if (is) byId("answer").setAttribute("aria-busy", "true");
  else byId("answer").removeAttribute("aria-busy");
});
onAnswers((answers) => {
  keep(answers);
  render();
});
onChange(({ kind }) => kind === "chosen" && render());
byId("report").addEventListener("click", openReport);
