// Thin lines between every five stitches of the round in hand, over the fabric,
// which has no grid to count by.
import { round3 } from "./paths.js";

// fives returns the path data of the lines for a round, over the whole height of
// its part of the mitt. box returns the box of a cell.
export function fives(model, y, box) {
  const row = model.row(y);
  const rows = model.rows.filter((r) => r.section === row.section);
  const [foot, top] = [box(rows[0].y, 0), box(rows.at(-1).y, 0)];
  const from = round3(foot.y + foot.h);
  const to = round3(top.y);
  const parts = [];
  row.worked.forEach((cell, i) => {
    if ((i + 1) % 5 !== 0 || cell.x < 0) return;
    const b = box(y, cell.x);
    parts.push(`M ${round3(model.leftFirst(y) ? b.x + b.w : b.x)} ${from} V ${to}`);
  });
  return parts.join(" ");
}
