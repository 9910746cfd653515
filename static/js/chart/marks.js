// The marks on a chart as path data: shapes with a light edge, drawn as
// internal/picture does.
import { rect, round3 } from "./paths.js";

// basting is a stitch of thread along the foot of a cell.
export function basting(b) {
  return rect(b.x + 0.16 * b.w, b.y + 0.8 * b.h, 0.68 * b.w, 0.1 * b.w);
}

// frame is a frame of a thickness, half of it outside a box.
export function frame(b, thick) {
  const d = thick / 2;
  const [left, top, right, foot] = [b.x + d, b.y + d, b.x + b.w - d, b.y + b.h - d].map(round3);
  return `${rect(b.x - d, b.y - d, b.w + thick, b.h + thick)} M ${left} ${top} L ${left} ${foot} L ${right} ${foot} L ${right} ${top} Z`;
}

// pin is a pin that is stuck in at a point, with a flag to the right (side 1) or
// the left (−1), for cells of a size. It returns the paths of both and where the
// flag's number stands.
export function pin(x, y, side, size) {
  const at = ([u, v]) => `${round3(x + side * u * size)} ${round3(y + v * size)}`;
  const line = (points) => `M ${points.map(at).join(" L ")} Z`;
  return {
    flag: line([[0.34, -1.8], [1.85, -1.8], [1.6, -1.32], [1.85, -0.84], [0.18, -0.84]]),
    pin: `${line([[0, 0], [0.3, -1.9], [0.42, -1.88]])} ${knob(x + side * 0.37 * size, y - 2 * size, 0.22 * size)}`,
    text: { x: round3(x + side * 1.06 * size), y: round3(y - 1.02 * size) },
  };
}

function knob(x, y, r) {
  const k = 0.5523 * r;
  const c = (...n) => `C ${n.map(round3).join(" ")}`;
  return `M ${round3(x + r)} ${round3(y)} ${c(x + r, y + k, x + k, y + r, x, y + r)} ${c(x - k, y + r, x - r, y + k, x - r, y)} ` +
    `${c(x - r, y - k, x - k, y - r, x, y - r)} ${c(x + k, y - r, x + r, y - k, x + r, y)} Z`;
}

// needle is the needle under the round that is on it, from its first box to its
// last, with the arrow where the round begins, at the right or at the left.
export function needle(first, last, fromLeft) {
  const foot = first.y + first.h;
  const mid = first.y + first.h / 2;
  const [left, right, half, tip] = [first.x, last.x + last.w, first.w / 12, first.w / 2];
  const [x, to] = fromLeft ? [left - 2.3 * first.w, tip] : [right + 2.3 * first.w, -tip];
  const line = (points) => `M ${points.map(([u, v]) => `${round3(u)} ${round3(v)}`).join(" L ")} Z`;
  return `${line([[left - tip, foot], [left, foot - half], [right, foot - half], [right + tip, foot], [right, foot + half], [left, foot + half]])} ` +
    line([[x, mid - first.h / 3], [x + to, mid], [x, mid + first.h / 3]]);
}

// lines are the two lines along a round, above and below it.
export function lines(b, thick) {
  return `${rect(b.x, b.y - thick, b.w, thick)} ${rect(b.x, b.y + b.h, b.w, thick)}`;
}

// notches marks off cells as a paper pattern does: a notch at every corner of
// their outline. runs are { y, from, to }, ordered by row and place; box returns
// the box of a cell.
export function notches(runs, box) {
  const rows = new Map();
  for (const r of runs) rows.set(r.y, [...(rows.get(r.y) ?? []), r]);
  const has = (y, x) => rows.get(y)?.some((r) => x >= r.from && x <= r.to) ?? false;
  const seams = new Set([...rows.keys()].flatMap((y) => [y, y - 1])); // above row y
  const parts = [];
  for (const y of seams) {
    const ends = new Set([y, y + 1].flatMap((row) => rows.get(row) ?? []).flatMap((r) => [r.from, r.to + 1]));
    for (const x of ends) {
      const [sw, se, nw, ne] = [has(y, x - 1), has(y, x), has(y + 1, x - 1), has(y + 1, x)];
      const turns = [sw, se, nw, ne].filter(Boolean).length % 2 === 1 || (sw === ne && se === nw && sw !== se);
      if (turns) parts.push(notch(box(y, x), { west: sw !== nw, east: se !== ne, north: nw !== ne, south: sw !== se }));
    }
  }
  return parts.join(" ");
}

// notch has a leg along each side of an outline that meets in the upper left
// corner of a box.
function notch(b, { west, east, north, south }) {
  const [t, across, down] = [b.w / 6, 0.6 * b.w, 0.6 * b.h];
  const d = t / 2;
  const legs = [];
  if (west || east) legs.push(rect(b.x - (west ? across : d), b.y - d, (west ? across : d) + (east ? across : d), t));
  if (north || south) legs.push(rect(b.x - d, b.y - (north ? down : d), t, (north ? down : d) + (south ? down : d)));
  return legs.join(" ");
}
