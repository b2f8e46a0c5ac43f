// The last good answer of each column, so that a fault erases none, and what the latest round said.
import { missing, question, state } from "./state.js";

// By the column itself, not by its place: columns are removed and moved.
const good = new WeakMap();
const faults = new WeakMap();

export function keep(answers) {
  const asked = new Set();
  for (const { column, ok, answer, problem } of answers) {
    const held = state.columns[column];
    asked.add(held);
    if (ok) {
      // The same answer keeps its question, so that nothing is drawn anew for it.
      const { body, used } = question(column);
      good.set(held, { answer, body: good.get(held)?.answer === answer ? good.get(held).body : body, used });
      faults.delete(held);
    } else {
      faults.set(held, problem);
    }
  }
  // What can no longer be asked was not answered either.
  for (const each of state.columns) if (!asked.has(each)) faults.delete(each);
}

// `{column, answer, body, used, problem, missing, stale}`: the answer is absent until there was one; stale says that it
// is one to an earlier question.
function keptOf(column) {
  const held = state.columns[column];
  const problem = faults.get(held);
  const lacking = missing(column);
  return { column, ...good.get(held), problem, missing: lacking, stale: Boolean(problem) || lacking.length > 0 };
}

export const keptAll = () => state.columns.map((_, column) => keptOf(column));
