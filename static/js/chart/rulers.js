// The rulers at the edges of the chart, which stay while it scrolls: the rounds
// at the side where they begin, the stitches of the round in hand along the
// foot. A finger that is drawn along one of them scrolls the chart, since on the
// chart it paints.
import { changes } from "./frame.js";
import { groups, patch, round1 } from "./svg.js";

const wide = 48; // px of the rounds' ruler
const tap = 10; // px that a finger may move in a tap
const close = 11; // px of a row below which only every fifth number fits
const line = 16; // px that a number of the rounds takes

export class Rulers {
  constructor(editor) {
    this.editor = editor;
    this.frame = editor.zoom.frame;
    this.rounds = editor.root.querySelector('[data-rule="rounds"]');
    this.stitches = editor.root.querySelector('[data-rule="stitches"]');
    this.rounds.parentElement.classList.toggle("from-left", Boolean(editor.model.data.from_left));
    this.up = groups(this.rounds, "present", "ticks", "off", "numbers", "needles", "sections");
    this.along = groups(this.stitches, "ticks", "numbers", "areas");
    this.sections = sectionsOf(editor.model.rows);
    this.newRounds = changes();
    this.newStitches = changes();
    this.tapped = undefined; // is called with a finger's tap on a number
    scrolls(this, this.rounds, 0, 1);
    scrolls(this, this.stitches, 1, 0);
  }

  // show draws both rulers with the round in hand. out is by how many stitches
  // rounds are out of balance.
  show(at, y, out) {
    if (this.newRounds(at, y, out, this.here)) this.showRounds(at, y, out);
    if (this.newStitches(at, y)) this.showStitches(at, y);
  }

  // needles draws the mark of the round on the needles anew, which was moved.
  needles() {
    this.here = Symbol("moved");
  }

  // showRounds writes the number of each round that can be seen.
  showRounds(at, present, out) {
    const { model } = this.editor;
    const { up } = this;
    const list = { present: [], ticks: [], off: [], numbers: [], needles: [] };
    for (let y = at.low; y <= at.high; y++) {
      const top = at.y(y);
      const middle = top + at.h / 2;
      const { behind, data: { round, changed } } = model.row(y);
      const [here, fifth, wrong] = [y === present, round % 5 === 0, out.get(y)];
      if (here) list.present.push(["rect", { class: "present", x: 0, y: round1(middle - Math.max(at.h, line) / 2), width: 26, height: round1(Math.max(at.h, line)) }]);
      list.ticks.push(["path", { class: "tick", d: `M0 ${round1(top + at.h)}h${fifth ? 6 : 3}` }]);
      if (wrong) list.off.push(...off(wrong, top, at.h));
      if (!here && at.h < close && (!fifth || at.h * Math.abs(y - present) < close + 3)) continue;
      if (middle > at.height - 4 || middle < 5) continue;
      const name = ["number", here && "here", fifth && "every-fifth", changed && "changed"].filter(Boolean).join(" ");
      list.numbers.push(["text", { class: name, x: 22, y: round1(middle + 4.5), "text-anchor": "end" }, round]);
      if (behind) list.numbers.push(["path", { class: "far-edge", d: `M28 ${round1(middle - 3)}l-3 3l3 3` }]); // it begins at the other edge
      if (model.mark(y, "").needles !== "") list.needles.push(["path", { class: "on-needles", d: `M38 ${round1(middle - 5)}l-8 5l8 5z` }]);
    }
    for (const [name, drawn] of Object.entries(list)) patch(up[name], drawn);
    patch(up.sections, this.sections.flatMap((s) => bracket(s, at)));
  }

  // showStitches numbers the stitches of a round, and brackets those that lie on
  // palm, gusset or back.
  showStitches(at, y) {
    const { along } = this;
    const { ticks, numbers } = this.counted(at, y);
    patch(along.ticks, ticks);
    patch(along.numbers, numbers);
    patch(along.areas, this.areas(at, y));
  }

  counted(at, y) {
    const ticks = [];
    const numbers = [];
    let n = 0;
    const list = this.editor.model.row(y)?.numbered ?? [];
    for (const cell of list) {
      n++;
      if (cell.x < 0) continue;
      const x = at.x(cell.x);
      if (x < -at.w || x > at.width) continue;
      const named = n === 1 || n % 5 === 0;
      ticks.push(["path", { class: "tick", d: `M${round1(x + at.w)} 0v${named ? 6 : 3}` }]);
      const apart = n === 1 || Math.abs(cell.x - list[0].x) * at.w > 20; // from the first
      if (named && apart && (n % 10 === 0 || n === 1 || at.w > 8)) numbers.push(["text", { class: n === 1 ? "number here" : "number", x: round1(x + at.w / 2), y: 17, "text-anchor": "middle" }, n]);
    }
    return { ticks, numbers };
  }

  areas(at, y) {
    const row = this.editor.model.row(y);
    return spansOf(row).flatMap(({ words, from, to }) => {
      const left = Math.max(at.x(from) + 2, 3);
      const right = Math.min(at.x(to + 1) - 2, at.width - 3);
      const room = words.length * 3.6 + 6;
      if (right - left < 2 * room) return [];
      const middle = (left + right) / 2;
      return [
        ["path", { class: "bracket", d: `M${round1(left)} 24v5H${round1(middle - room)}M${round1(middle + room)} 29H${round1(right)}v-5` }],
        ["text", { class: "area", x: round1(middle), y: 34, "text-anchor": "middle" }, words],
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

// sectionsOf returns the sections of a chart with the rows that they reach over.
function sectionsOf(rows) {
  const spans = new Map();
  for (const { name, y } of rows) spans.set(name, { name, from: spans.get(name)?.from ?? y, to: y });
  return [...spans.values()];
}

// bracket brackets the rounds of a section, with its name upright.
function bracket({ name, from, to }, at) {
  const top = Math.max(at.y(to) + 2, 2);
  const foot = Math.min(at.y(from - 1) - 2, at.height - 2);
  if (foot - top < 44) return [];
  const middle = round1((top + foot) / 2);
  return [
    ["path", { class: "bracket", d: `M27 ${round1(top)}h4V${round1(foot)}h-4` }],
    ["text", { class: "section", transform: `translate(44 ${middle}) rotate(-90)`, "text-anchor": "middle" }, name],
  ];
}

// off says how many stitches a round is out by.
function off(by, top, high) {
  const words = by > 0 ? `+${by}` : `−${-by}`;
  return [
    ["rect", { class: "off", x: 26, y: round1(top), width: wide - 26, height: round1(high) }],
    ["text", { class: "off-by", x: 37, y: round1(top + high / 2 + 4.5), "text-anchor": "middle" }, words],
  ];
}

// scrolls lets a finger that is drawn along a ruler scroll the frame. One that
// only taps presses a number.
function scrolls(rulers, ruler, across, down) {
  const { frame } = rulers;
  let first;
  let last;
  ruler.addEventListener("pointerdown", (event) => {
    if (event.pointerType !== "touch") return;
    first = last = event;
    ruler.setPointerCapture(event.pointerId);
    event.preventDefault();
  });
  ruler.addEventListener("pointermove", (event) => {
    if (!last || event.pointerId !== last.pointerId) return;
    frame.scrollBy((last.clientX - event.clientX) * across, (last.clientY - event.clientY) * down);
    last = event;
  });
  ruler.addEventListener("pointerup", (event) => {
    if (last && Math.hypot(event.clientX - first.clientX, event.clientY - first.clientY) < tap) rulers.tapped?.(event);
    last = undefined;
  });
  ruler.addEventListener("pointercancel", () => { last = undefined; });
  ruler.addEventListener("wheel", (event) => frame.scrollBy(event.deltaX, event.deltaY), { passive: true });
}
