// The path data of what a row shows, drawn as internal/picture does.

export function round3(n) {
  return Math.round(n * 1000) / 1000;
}

export function rect(x, y, w, h) {
  return `M ${round3(x)} ${round3(y)} L ${round3(x + w)} ${round3(y)} L ${round3(x + w)} ${round3(y + h)} L ${round3(x)} ${round3(y + h)} Z`;
}

const parsed = new Map();

// parse splits path data once: into letters, and numbers that are across and
// down by turns.
export function parse(path) {
  if (!parsed.has(path)) {
    let i = 0;
    parsed.set(path, path.split(" ").map((word) => {
      const n = Number(word);
      if (Number.isNaN(n)) {
        i = 0;
        return word;
      }
      return { n: n / 100, across: i++ % 2 === 0 };
    }));
  }
  return parsed.get(path);
}

// symbol fits the path data of a 100 by 100 cell into a box: centred, and as
// large as the shorter side allows.
export function symbol(path, box) {
  const size = Math.min(box.w, box.h);
  const left = box.x + (box.w - size) / 2;
  const top = box.y + (box.h - size) / 2;
  let out = "";
  for (const p of parse(path)) out += typeof p === "string" ? `${p} ` : `${round3((p.across ? left : top) + p.n * size)} `;
  return out;
}
