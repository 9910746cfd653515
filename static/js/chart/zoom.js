// How large a stitch is on the screen: the whole chart fits its frame, or a
// stitch has a number of pixels, from a few to one that fills the frame.
import { byTouch } from "./page.js";

const steps = [4, 6, 8, 11, 16, 22, 32, 44, 64, 96, 144, 220, 320];
const minWhole = 14; // px of a stitch; a chart with smaller ones does not begin whole
const wideWhole = 30; // px up to which a stitch grows with the width of the frame
const maxWhole = 52; // px up to which it grows further, if the chart stays whole
const wholeStep = 4; // px by which it does, so that one round more seldom changes it
const minTouch = 28; // px of a stitch under a finger
const edge = 0.6; // of a stitch, round the cells

export class Zoom {
  // frame scrolls the drawing; size is the kept size of a stitch, 0 for whole.
  constructor(frame, svg, data, size) {
    Object.assign(this, { frame, svg, data });
    this.drawings = [svg, frame.querySelector(".over")]; // which lie over each other
    this.high = innerHeight;
    this.tallest = this.fitting();
    new ResizeObserver(() => this.resized()).observe(frame);
    this.crop();
    this.stitches = data.width + 2 * edge; // the width of the drawing
    this.size = size ?? this.first();
    this.set(this.size);
  }

  // crop leaves the numbers round the cells to the rulers.
  crop() {
    const { left, bottom, width, rows, cell_width: w, cell_height: h } = this.data;
    const high = rows.length * h;
    for (const svg of this.drawings) {
      svg.classList.add("cropped");
      svg.setAttribute("viewBox", [left - edge * w, bottom - high - edge * h, (width + 2 * edge) * w, high + edge * h].join(" "));
    }
  }

  // first is the size with which a chart begins.
  first() {
    if (byTouch() && this.whole() < minTouch) return minTouch;
    return this.whole() < minWhole ? 16 : 0;
  }

  // whole returns the size of a stitch when the whole chart is visible.
  whole() {
    return Math.min(this.frame.clientWidth / this.stitches, this.tallest);
  }

  // fitting returns the size of a stitch with which all rounds fill the height of
  // the frame, within bounds.
  fitting() {
    const { rows, cell_width: w, cell_height: h } = this.data;
    const fits = (this.frame.clientHeight / (rows.length + 2 * edge)) * (w / h);
    return Math.min(Math.max(Math.floor(fits / wholeStep) * wholeStep, wideWhole), maxWhole);
  }

  // resized fits a whole chart to another window. What is said under the chart takes
  // room from the frame, too: that leaves the stitches as they are.
  resized() {
    if (innerHeight === this.high) return;
    this.high = innerHeight;
    this.tallest = this.fitting();
    if (this.size === 0) this.set(0);
  }

  get now() {
    return this.size || this.whole();
  }

  set(size) {
    this.size = size;
    for (const svg of this.drawings) {
      svg.classList.toggle("sized", size > 0);
      svg.setAttribute("width", String(Math.round((size || this.tallest) * this.stitches)));
    }
    this.changed?.();
  }

  // step goes one size up or down, and keeps a place of the drawing in sight.
  step(by, place) {
    const next = by > 0 ? steps.find((s) => s > this.now * 1.02) : steps.findLast((s) => s < this.now * 0.98);
    if (next) this.set(next);
    this.show(place);
  }

  // inView returns how many stitches and rounds the frame has room for, of those
  // of the chart.
  inView() {
    const { width, rows, cell_width: w, cell_height: h } = this.data;
    return {
      across: Math.min(Math.round(this.frame.clientWidth / this.now), width),
      up: Math.min(Math.round((this.frame.clientHeight / this.now) * (w / h)), rows.length),
    };
  }

  // to sets the size of a stitch freely, within the range of the steps.
  to(size) {
    this.set(Math.min(Math.max(size, steps[0]), steps.at(-1)));
  }

  // begin scrolls to where reading begins.
  begin() {
    this.frame.scrollTop = this.frame.scrollHeight;
    this.frame.scrollLeft = this.data.from_left ? 0 : this.frame.scrollWidth;
  }

  // beginAt scrolls a box of the drawing to where reading begins: to the foot of
  // the frame, and to its edge at that side.
  beginAt(box) {
    const view = this.svg.viewBox.baseVal;
    const scale = this.svg.clientWidth / view.width;
    const past = edge * box.w;
    this.frame.scrollTop = (box.y + box.h - view.y) * scale - this.frame.clientHeight;
    this.frame.scrollLeft = this.data.from_left ? (box.x - past - view.x) * scale : (box.x + box.w + past - view.x) * scale - this.frame.clientWidth;
  }

  // hold takes hold of the drawing at a point of the window. The function that
  // it returns scrolls that place to another point: the frame first, then the
  // page.
  hold({ x, y }) {
    const box = this.svg.getBoundingClientRect();
    const [across, down] = [(x - box.left) / box.width, (y - box.top) / box.height];
    return (to) => {
      const now = this.svg.getBoundingClientRect();
      const before = this.frame.scrollTop;
      const by = now.top + down * now.height - to.y;
      this.frame.scrollLeft += now.left + across * now.width - to.x;
      this.frame.scrollTop += by;
      const rest = by - (this.frame.scrollTop - before);
      if (Math.abs(rest) >= 1) window.scrollBy(0, rest);
    };
  }

  // show scrolls the frame until a box of the drawing is in it.
  show(box) {
    if (!box) return;
    const view = this.svg.viewBox.baseVal;
    const scale = this.svg.clientWidth / view.width;
    const near = (at, size, from, room) => {
      const margin = Math.min(size, room / 4);
      if (at - margin < from) return Math.max(at - margin, 0);
      if (at + size + margin > from + room) return at + size + margin - room;
      return from;
    };
    const { frame } = this;
    frame.scrollLeft = near((box.x - view.x) * scale, box.w * scale, frame.scrollLeft, frame.clientWidth);
    frame.scrollTop = near((box.y - view.y) * scale, box.h * scale, frame.scrollTop, frame.clientHeight);
  }
}
