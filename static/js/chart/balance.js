// Whether a round is in balance with its neighbours, in a knitter's words.
import { above, below } from "./ledger.js";

// inOut says how many stitches a round takes and leaves.
export function inOut(model, y) {
  const { eats, makes } = model.totals(y);
  return `${capital(model.name(y))}: ${eats} in, ${makes} out`;
}

// capital begins a sentence.
export function capital(text) {
  return text[0].toUpperCase() + text.slice(1);
}

// excess returns how many stitches of a round the next one does not take (below
// 0: how many it lacks), how many of those that lie on the needle it does not
// take itself, and whether either is wrong.
export function excess(model, y) {
  const { eats, makes } = model.totals(y);
  const over = makes - above(model, y);
  const left = below(model, y) - eats;
  return { over, left, wrong: over !== 0 || left !== 0 };
}

// outBy returns by how many stitches each round that is out of balance has too
// many, or too few.
export function outBy(model, faults) {
  const by = new Map();
  for (const { y, left, eats } of faults) by.set(y === 0 ? model.height : Math.max(y - 1, 1), left - eats);
  return by;
}
