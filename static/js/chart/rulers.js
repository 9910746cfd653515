// The rulers at the edges of the chart, which stay while it scrolls: the rounds
// at the side where they begin, the stitches of the round in hand along the
// foot. A finger that is drawn along one of them scrolls the chart, since on the
// chart it paints.
import { draw, round1 } from "./svg.js";

const wide = 48; // px of the rounds' ruler
const close = 11; // px of a row below which only every fifth number fits

export class Rulers {
  constructor(editor) {
    this.editor = editor;
    this.frame = editor.zoom.frame;
    this.rounds = editor.root.querySelector('[data-rule="rounds"]');
    this.stitches = editor.root.querySelector('[data-rule="stitches"]');
    this.rounds.parentElement.classList.toggle("from-left", Boolean(editor.model.data.from_left));
    scrolls(this.rounds, this.frame, 0, 1);
    scrolls(this.stitches, this.frame, 1, 0);
  }

  // place says where the cells are in the frame now.
  place() {
    const { view: { svg }, model: { data: d } } = this.editor;
    const box = svg.getBoundingClientRect();
    const frame = this.frame.getBoundingClientRect();
    const view = svg.viewBox.baseVal;
    const scale = box.width / view.width;
    return {
      x: (column) => box.left - frame.left + (d.left + column * d.cell_width - view.x) * scale,
      y: (row) => box.top - frame.top + (d.bottom - row * d.cell_height - view.y) * scale,
      w: d.cell_width * scale,
      h: d.cell_height * scale,
      left: frame.left,
      width: this.frame.clientWidth,
      height: this.frame.clientHeight,
    };
  }

  show(at, y, bad) {
    this.rounds.replaceChildren(...this.numbers(at, y, bad), ...this.sections(at));
    this.stitches.replaceChildren(...this.counted(at, y), ...this.areas(at, y));
  }

  // numbers writes the number of each round that can be seen.
  numbers(at, present, bad) {
    const { model } = this.editor;
    const low = Math.max(1, Math.floor((at.y(0) - at.height) / at.h) + 1);
    const high = Math.min(model.height, Math.ceil(at.y(0) / at.h));
    const list = [];
    for (let y = low; y <= high; y++) {
      const top = at.y(y);
      const { round, changed } = model.row(y).data;
      const [here, fifth, wrong] = [y === present, round % 5 === 0, bad.get(y)];
      if (here) list.push(draw("rect", { class: "present", x: 0, y: round1(top), width: 26, height: round1(at.h) }));
      list.push(draw("path", { class: "tick", d: `M0 ${round1(top + at.h)}h${fifth ? 6 : 3}` }));
      if (wrong) list.push(...off(wrong, top, at.h));
      if (at.h < close && !fifth && !here) continue;
      if (top + at.h / 2 > at.height - 4 || top + at.h / 2 < 5) continue;
      const name = ["number", here && "here", fifth && "every-fifth", changed && "changed"].filter(Boolean).join(" ");
      list.push(draw("text", { class: name, x: 22, y: round1(top + at.h / 2 + 4.5), "text-anchor": "end" }, round));
      if (model.mark(y, "").needles !== "") list.push(draw("path", { class: "on-needles", d: `M38 ${round1(top + at.h / 2 - 5)}l-8 5l8 5z` }));
    }
    return list;
  }

  // sections brackets the rounds of each section, with its name upright.
  sections(at) {
    const { model } = this.editor;
    const spans = new Map();
    for (const row of model.rows) {
      const span = spans.get(row.name) ?? { from: row.y };
      spans.set(row.name, { ...span, to: row.y });
    }
    return [...spans].flatMap(([name, { from, to }]) => {
      const top = Math.max(at.y(to) + 2, 2);
      const foot = Math.min(at.y(from - 1) - 2, at.height - 2);
      if (foot - top < 44) return [];
      const middle = round1((top + foot) / 2);
      return [
        draw("path", { class: "bracket", d: `M27 ${round1(top)}h4V${round1(foot)}h-4` }),
        draw("text", { class: "section", transform: `translate(44 ${middle}) rotate(-90)`, "text-anchor": "middle" }, name),
      ];
    });
  }

  // counted numbers the stitches of a round.
  counted(at, y) {
    const list = [];
    let n = 0;
    for (const cell of this.editor.model.row(y)?.cells ?? []) {
      n++;
      if (cell.x < 0) continue;
      const x = at.x(cell.x);
      if (x < -at.w || x > at.width) continue;
      const named = n === 1 || n % 5 === 0;
      list.push(draw("path", { class: "tick", d: `M${round1(x + at.w)} 0v${named ? 6 : 3}` }));
      if (named && (n % 10 === 0 || n === 1 || at.w > 8)) list.push(draw("text", { class: n === 1 ? "number here" : "number", x: round1(x + at.w / 2), y: 17, "text-anchor": "middle" }, n));
    }
    return list;
  }

  // areas brackets the stitches of a round that lie on palm, gusset or back.
  areas(at, y) {
    const row = this.editor.model.row(y);
    return spansOf(row).flatMap(({ words, from, to }) => {
      const left = Math.max(at.x(from) + 2, 3);
      const right = Math.min(at.x(to + 1) - 2, at.width - 3);
      const room = words.length * 3.6 + 6;
      if (right - left < 2 * room) return [];
      const middle = (left + right) / 2;
      return [
        draw("path", { class: "bracket", d: `M${round1(left)} 24v5H${round1(middle - room)}M${round1(middle + room)} 29H${round1(right)}v-5` }),
        draw("text", { class: "area", x: round1(middle), y: 34, "text-anchor": "middle" }, words),
      ];
    });
  }
}

// spansOf returns the areas of a row with the columns that they reach over, from
// the left. One with another in its middle has several.
export function spansOf(row) {
  const places = [];
  let i = 0;
  for (const { words, n } of row?.data.areas ?? []) {
    for (const { x } of row.cells.slice(i, i + n)) if (x >= 0) places.push({ words, x });
    i += n;
  }
  const list = [];
  for (const { words, x } of places.sort((a, b) => a.x - b.x)) {
    if (list.at(-1)?.words === words) list.at(-1).to = x;
    else list.push({ words, from: x, to: x });
  }
  return list.filter(({ words }) => words !== "");
}

// off says how many stitches a round is out by.
function off(by, top, high) {
  const words = by > 0 ? `+${by}` : `−${-by}`;
  return [
    draw("rect", { class: "off", x: 26, y: round1(top), width: wide - 26, height: round1(high) }),
    draw("text", { class: "off-by", x: 37, y: round1(top + high / 2 + 4.5), "text-anchor": "middle" }, words),
  ];
}

// scrolls lets a finger that is drawn along a ruler scroll the frame.
function scrolls(ruler, frame, across, down) {
  let last;
  ruler.addEventListener("pointerdown", (event) => {
    if (event.pointerType !== "touch") return;
    last = event;
    ruler.setPointerCapture(event.pointerId);
    event.preventDefault();
  });
  ruler.addEventListener("pointermove", (event) => {
    if (!last || event.pointerId !== last.pointerId) return;
    frame.scrollBy((last.clientX - event.clientX) * across, (last.clientY - event.clientY) * down);
    last = event;
  });
  for (const name of ["pointerup", "pointercancel"]) ruler.addEventListener(name, () => { last = undefined; });
  ruler.addEventListener("wheel", (event) => frame.scrollBy(event.deltaX, event.deltaY), { passive: true });
}
