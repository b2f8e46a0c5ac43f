// What a remedy with a value does to a candidate: a button that says the value and sets it.
import { capital } from "./dom.js";
import { changed, setCell, setCellValue, state } from "./state.js";
import { show } from "./units.js";
import { say } from "./words.js";

const INDEX_AND_SYMBOL = /(\s)(\d{2,3})([A-Y]\d?)(?=\s|$)/;
const OFFSET = /\bET\s*(-?\d+(?:[.,]\d+)?)/i;

// `leaves({rim: {size: "7J"}})` gives [["/rim/size", "7J"]].
function leaves(value, pointer = "") {
  if (value === null || typeof value !== "object") return [[pointer, value]];
  return Object.entries(value).flatMap(([name, part]) => leaves(part, `${pointer}/${name}`));
}

function putFitment(column, axle, fitment) {
  for (const pointer of Object.keys(state.columns[column].cells)) {
    if (pointer.startsWith(`/${axle}/`)) setCell(column, pointer, "");
  }
  for (const [pointer, value] of leaves(fitment, `/${axle}`)) {
    if (typeof value === "number") setCellValue(column, pointer, value);
    else setCell(column, pointer, String(value));
  }
}

function sizeOffer(axle, from, to) {
  if (!from || from === to) return null;
  return {
    label: say("answer.use", { value: to }),
    apply: (column) => setCell(column, `/${axle}/tyre/size`, to),
  };
}

function tyreOffer(remedy, axle, tyre) {
  const { quantity, at_least: least, equals } = remedy;
  if (!tyre) return null;
  if (quantity === "load_index" && least) return sizeOffer(axle, tyre, tyre.replace(INDEX_AND_SYMBOL, `$1${least}$3`));
  if (quantity === "speed_symbol" && equals) return sizeOffer(axle, tyre, tyre.replace(INDEX_AND_SYMBOL, `$1$2${equals}`));
  if (quantity === "marking" && equals && !tyre.includes(equals)) return sizeOffer(axle, tyre, `${tyre} ${equals}`);
  return null;
}

export function withOffset(rim, offset) {
  return `${rim.replace(OFFSET, "").replace(/\s+/g, " ").trim()} ET${offset}`;
}

// The whole millimetre within the range that is nearest to the rim's own offset: wheels are not sold by tenths.
function offsetOffer(remedy, axle, rim, presentRim) {
  const low = Math.ceil(remedy.at_least ?? remedy.at_most);
  const high = Math.floor(remedy.at_most ?? remedy.at_least);
  const given = OFFSET.exec(rim ?? "") ?? OFFSET.exec(presentRim ?? "");
  if (!rim || !(low <= high)) return null;
  const wanted = given ? Number(given[1].replace(",", ".")) : (low + high) / 2;
  const offset = Math.round(Math.min(high, Math.max(low, wanted)));
  return {
    label: say("answer.use", { value: `ET ${offset}` }),
    apply: (column) => setCell(column, `/${axle}/rim/size`, withOffset(rim, offset)),
  };
}

function fitmentOffer(remedy, axle, body) {
  const fitment = remedy.equals === "present" ? body.vehicle[axle].fitted : body.candidate[remedy.equals];
  if (!fitment) return null;
  return { label: capital(remedy.text), apply: (column) => putFitment(column, axle, fitment) };
}

// What the button says and does, or null where the remedy gives no value for the candidate.
export function offerOf(remedy, { body, answer }) {
  const place = /^\/candidate\/(front|rear)(\/.*)?$/.exec(remedy?.pointer ?? "");
  if (!place) return null;
  const [, axle, field] = place;
  const { present, proposed } = answer.axles[axle];
  if (remedy.quantity === "fitment") return fitmentOffer(remedy, axle, body);
  if (field === "/tyre/size") return tyreOffer(remedy, axle, proposed.tyre);
  if (remedy.quantity === "offset_mm") return offsetOffer(remedy, axle, proposed.rim, present.rim);
  if (remedy.quantity === "pressure_kpa" && remedy.at_least !== undefined) {
    const value = Math.ceil(remedy.at_least);
    return {
      label: say("answer.use", { value: show(value, "kPa") }),
      apply: (column) => setCellValue(column, `/${axle}${field}`, value),
    };
  }
  if (remedy.quantity === "bolt_circle" && remedy.equals) {
    return {
      label: say("answer.use", { value: remedy.equals }),
      apply: (column) => setCell(column, `/${axle}${field}`, remedy.equals),
    };
  }
  return null;
}

// The form follows what was set here as it follows a loaded question.
export function applyAll(offers, column) {
  for (const each of offers) each.apply(column);
  changed("columns");
}
