// The keyboard on the chart: arrows move the cursor in the directions of the
// drawing, and select with Shift; Enter or the space bar paints, Backspace
// takes a cell back to the plan; a digit takes up a yarn; a question mark opens
// the list of all commands.

const arrows = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [1, 0], ArrowDown: [-1, 0], Home: [0, -Infinity], End: [0, Infinity] };
const letters = { z: "undo", y: "redo", c: "trace", x: "lift", v: "lay", a: "select-all" };
const plain = {
  Enter: "paint", " ": "paint", Backspace: "erase", Delete: "erase", Escape: "drop",
  "?": "commands", "+": "larger", "-": "smaller", "0": "whole",
  l: "reach-look", s: "reach-free", n: "reach-line", b: "reach-rectangle", a: "reach-fill", m: "reach-select", e: "mirror-brush",
  i: "reach-move", p: "insert-round", t: "remove-round",
};

// act returns what a key asks for: { move }, { extend }, { shift }, { yarn } with
// its number, or { run } with the name of a command; undefined if the key does not belong to the
// chart.
export function act(event) {
  const command = event.ctrlKey || event.metaKey;
  const arrow = arrows[event.key];
  if (arrow && event.altKey && !command) return { shift: arrow };
  if (event.altKey) return undefined;
  if (command) {
    const name = letters[event.key.toLowerCase()];
    if (name === "undo" && event.shiftKey) return { run: "redo" };
    return name && { run: name };
  }
  if (arrow) return event.shiftKey ? { extend: arrow } : { move: arrow };
  if (/^[1-8]$/.test(event.key)) return { yarn: Number(event.key) };
  return plain[event.key] && { run: plain[event.key] };
}

// moved returns the place that a move leads to, which stays within the chart
// and within the cells of the row.
export function moved(model, { y, x }, [up, right]) {
  const to = Math.min(Math.max(y + up, 1), model.height);
  const { low, high } = model.row(to).span ?? { low: x, high: x };
  const at = Math.min(Math.max(x + right, low), high);
  return { y: to, x: nearest(model.row(to), at, Math.sign(right) || 1) };
}

// nearest skips places without a stitch, further on in the same direction.
function nearest(row, x, way) {
  for (let n = x; row.span && n >= row.span.low && n <= row.span.high; n += way) if (row.at(n)) return n;
  for (let n = x; row.span && n >= row.span.low && n <= row.span.high; n -= way) if (row.at(n)) return n;
  return x;
}
