// What the row over the chart says: how far a mark reaches, and how much is
// marked off.
import { stitches } from "./tracing.js";

const doing = { // where nothing is marked: the sentence, and what of it is said strongly
  look: ["You look;", "nothing is marked"],
  select: ["You", "mark off a block"],
  move: ["You", "move an increase"],
  stamp: ["You lay down", "a motif"],
};

// reaching returns what the pointer does, as a sentence in two parts; reach is
// how far a mark reaches.
export function reaching(shape, reach, mirror) {
  return doing[shape] ?? ["A mark reaches", mirror ? `${reach}, both edges` : reach];
}

// amount says how many stitches places are, and of a block, how wide and high.
export function amount(places) {
  const [ys, xs] = [0, 1].map((i) => places.map((p) => p[i]));
  const [high, wide] = [new Set(ys).size, new Set(xs).size];
  if (high < 2) return stitches(places.length);
  const block = places.length === high * wide && Math.max(...ys) - Math.min(...ys) < high && Math.max(...xs) - Math.min(...xs) < wide;
  return block ? `${stitches(wide)} by ${high} rounds` : `${stitches(places.length)} in ${high} rounds`;
}
