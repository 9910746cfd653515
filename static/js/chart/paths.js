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
function parse(path) {
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

// corner marks a painted cell in its upper right corner.
export function corner(box) {
  const size = Math.min(box.w, box.h) / 4;
  const right = box.x + box.w;
  return `M ${round3(right - size)} ${round3(box.y)} L ${round3(right)} ${round3(box.y)} L ${round3(right)} ${round3(box.y + size)} Z`;
}

// note marks a cell with a note in its lower left corner.
export function note(box) {
  const size = Math.min(box.w, box.h) / 3;
  const foot = box.y + box.h;
  return `M ${round3(box.x)} ${round3(foot - size)} L ${round3(box.x)} ${round3(foot)} L ${round3(box.x + size)} ${round3(foot)} Z`;
}

// roundNote marks a round with a note, left of its first box.
export function roundNote(box) {
  const size = Math.min(box.w, box.h) / 3;
  const x = box.x - box.w / 5;
  const mid = box.y + box.h / 2;
  return `M ${round3(x - size)} ${round3(mid)} L ${round3(x - size / 2)} ${round3(mid - size / 2)} L ${round3(x)} ${round3(mid)} L ${round3(x - size / 2)} ${round3(mid + size / 2)} Z`;
}

// needles marks the round that is on the needles, from its first box to its
// last.
export function needles(first, last) {
  const foot = first.y + first.h;
  const mid = first.y + first.h / 2;
  const x = last.x + last.w + 2.3 * last.w;
  return `M ${round3(first.x)} ${round3(foot)} L ${round3(last.x + last.w)} ${round3(foot)} ` +
    `M ${round3(x)} ${round3(mid - first.h / 3)} L ${round3(x - first.w / 2)} ${round3(mid)} L ${round3(x)} ${round3(mid + first.h / 3)} Z`;
}

const textures = {
  b: (l, b, s) => level(l, b, s, false),
  c: (l, b, s) => upright(l, b, s),
  d: (l, b, s) => rising(l, b, s),
  e: (l, b, s) => falling(l, b, s),
  f: (l, b, s) => { level(l, b, 1.5 * s, false); upright(l, b, 1.5 * s); },
  g: (l, b, s) => { rising(l, b, 1.5 * s); falling(l, b, 1.5 * s); },
  h: (l, b, s) => level(l, b, s, true),
};

// texture returns the lines that tell a yarn from the others without colour.
export function texture(yarn, box, step) {
  const parts = [];
  textures[yarn]?.((x1, y1, x2, y2) => parts.push(`M ${round3(x1)} ${round3(y1)} L ${round3(x2)} ${round3(y2)}`), box, step);
  return parts.join(" ");
}

function level(line, { x, y, w, h }, step, broken) {
  for (let v = step / 2; v < h; v += step) {
    if (!broken) line(x, y + v, x + w, y + v);
    else for (let u = step / 2; u < w; u += 2 * step) line(x + u, y + v, x + Math.min(u + step, w), y + v);
  }
}

function upright(line, { x, y, w, h }, step) {
  for (let v = step / 2; v < w; v += step) line(x + v, y, x + v, y + h);
}

function rising(line, { x, y, w, h }, step) {
  for (let v = step / 2; v < w + h; v += step) line(x + Math.min(v, w), y + Math.max(v - w, 0), x + Math.max(v - h, 0), y + Math.min(v, h));
}

function falling(line, { x, y, w, h }, step) {
  for (let v = step / 2; v < w + h; v += step) line(x + w - Math.min(v, w), y + Math.max(v - w, 0), x + w - Math.max(v - h, 0), y + Math.min(v, h));
}
