// What the service draws: sections and contact patches of the chosen candidate, and plots of all columns.
import { post } from "./ask.js";
import { byId, el } from "./dom.js";
import { compareQuestion } from "./state.js";
import { say } from "./words.js";

const DRAWINGS = ["section&axles=front", "section&axles=rear", "patches&axles=front", "patches&axles=rear"];
const PLOTS = ["grip", "balance", "outlines"];

// Title and description of the drawing are the words for those who do not see it.
function wordsOf(text) {
  const drawing = new DOMParser().parseFromString(text, "image/svg+xml");
  return [...drawing.querySelectorAll("svg > title, svg > desc")].map((each) => each.textContent).join(". ");
}

function put(image, text) {
  const before = image.src;
  image.alt = wordsOf(text);
  image.src = URL.createObjectURL(new Blob([text], { type: "image/svg+xml" }));
  if (before) URL.revokeObjectURL(before);
}

async function draw(frame, path, body, signal) {
  const response = await post(path, body, signal);
  frame.hidden = !response.ok;
  if (response.ok) put(frame.querySelector("img"), await response.text());
  return response;
}

// A sheet of drawings that is asked for when it comes near the window, and again when the question has changed.
class Sheet {
  constructor(id, names, pathOf) {
    this.place = byId(id);
    this.pathOf = pathOf;
    this.near = false;
    this.wanted = null;
    this.question = "null";
    this.running = new AbortController();
    this.frames = names.map((name) => [name, frameOf(name)]);
    this.place.querySelector(".drawings").replaceChildren(...this.frames.map(([, frame]) => frame));
    new IntersectionObserver(([entry]) => this.see(entry.isIntersecting), { rootMargin: "400px" }).observe(this.place);
  }

  see(near) {
    this.near = near;
    if (near && this.wanted) this.fetch();
  }

  show(body) {
    const question = JSON.stringify(body);
    if (question === this.question) return;
    this.question = question;
    this.place.hidden = !body;
    this.running.abort();
    this.wanted = body;
    if (this.near && body) this.fetch();
  }

  async fetch() {
    const body = this.wanted;
    this.wanted = null;
    this.running = new AbortController();
    const { signal } = this.running;
    this.place.setAttribute("aria-busy", "true");
    try {
      const answers = await Promise.all(
        this.frames.map(([name, frame]) => draw(frame, this.pathOf(name), body, signal)),
      );
      this.place.hidden = !answers.some((each) => each.ok);
    } catch (error) {
      if (error.name !== "AbortError" && !(error instanceof TypeError)) throw error;
    }
    if (!signal.aborted) this.place.removeAttribute("aria-busy");
  }
}

// On a phone a drawing is too small to read: a tap shows it as large as its lettering needs.
function enlarge(image) {
  const large = byId("enlarged");
  const shown = large.querySelector("img");
  shown.src = image.src;
  shown.alt = image.alt;
  large.showModal();
}

function frameOf(name) {
  const image = el("img", { alt: "", "data-view": name });
  image.addEventListener("click", () => enlarge(image));
  const button = el("button", { type: "button", class: "offer", onclick: () => enlarge(image) }, say("answer.enlarge"));
  return el("figure", { hidden: true }, image, button);
}

const drawings = new Sheet("drawn", DRAWINGS, (name) => `v1/fitments/drawing?view=${name}`);
const plots = new Sheet("plots", PLOTS, (name) => `v1/fitments/compare.svg?plot=${name}`);


// What is drawn is the question of the last good answer, marked where that is an earlier one.
export function showDrawings({ answer, body, stale }) {
  byId("drawn").classList.toggle("stale", stale);
  drawings.show(answer ? body : null);
}

export function showPlots(kept) {
  const faulty = kept.some((each) => each.problem);
  byId("plots").classList.toggle("stale", faulty);
  if (faulty) return;
  const body = compareQuestion();
  plots.show(body.candidates.length ? body : null);
}
