// What every part of the answer is made with: elements, marks, numbers with a sign.
import { fieldOf, labelOf, reach } from "./reach.js";
import { language } from "./words.js";

const SVG = "http://www.w3.org/2000/svg";
const MINUS = "\u2212";

export const byId = (id) => document.getElementById(id);

// `el("p", {class: "remedy"}, "Fit ", strong)`: no markup is ever read from a text.
export function el(tag, given = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(given)) {
    if (name === "onclick") made.addEventListener("click", value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== undefined && value !== false && value !== null) made.setAttribute(name, value);
  }
  made.append(...children.flat().filter((each) => each !== null && each !== undefined && each !== ""));
  return made;
}

// The way to the field of an API pointer, by its name; the name alone where the page has no such field.
export function fieldLink(pointer, column) {
  const words = labelOf(pointer);
  if (!fieldOf(pointer, column)) return words;
  return el("button", { type: "button", class: "link", onclick: () => reach(pointer, column) }, words);
}

export function markOf(name) {
  const mark = document.createElementNS(SVG, "svg");
  mark.setAttribute("class", `mark ${name}`);
  mark.setAttribute("viewBox", "0 0 20 20");
  mark.setAttribute("aria-hidden", "true");
  const use = document.createElementNS(SVG, "use");
  use.setAttribute("href", `#mark-${name}`);
  mark.append(use);
  return mark;
}

export const dashed = (word) => word.replaceAll("_", "-");

export function capital(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

// A change says its direction; what is shown as nothing has none.
export function signed(value, shown) {
  return value > 0 && /[1-9]/.test(shown) ? `+${shown}` : shown;
}

// As the answers write their numbers: no idle zeros, a true minus, the decimal sign of the page's language.
export function number(value, digits) {
  const shown = value.toLocaleString(language, { maximumFractionDigits: digits, useGrouping: false });
  return /[1-9]/.test(shown) ? shown.replace("-", MINUS) : "0";
}

export const percent = (value, digits = 1) => signed(value, `${number(value, digits)} %`);

// Sections that the reader opened or closed stay so when the next answer replaces them.
const folds = new Map();

export function folding(name, open, given, summary, ...children) {
  const made = el("details", given, el("summary", {}, summary), ...children);
  made.open = folds.get(name) ?? open;
  made.firstChild.addEventListener("click", () => folds.set(name, !made.open));
  return made;
}
