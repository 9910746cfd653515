// Two fingers on the chart move and enlarge it, which the browser does not do,
// since it leaves every finger to the brush. A finger that only rests beside
// one that draws changes nothing.

const slop = 8; // px that a finger may wander without meaning to
const enlarges = 1.08; // how much further apart (or nearer) fingers go before they enlarge

export class Pinch {
  // begun is called once two fingers turn out to move together.
  constructor(zoom, begun) {
    this.zoom = zoom;
    this.begun = begun;
    this.fingers = new Map(); // by pointer ID: { from, at }, where it was put down and where it is
    this.active = undefined;
  }

  // down reports whether the finger is one of two that move together: it joins
  // another that has drawn nothing yet.
  down(event) {
    if (event.isPrimary) this.clear(); // any earlier finger was lifted unseen
    this.fingers.set(event.pointerId, { from: spot(event), at: spot(event) });
    if (this.fingers.size === 2 && [...this.fingers.values()].every((f) => !wandered(f))) this.begin();
    return this.active !== undefined;
  }

  move(event) {
    const finger = this.fingers.get(event.pointerId);
    if (!finger) return false;
    finger.at = spot(event);
    const drawing = !this.active && this.fingers.size === 2;
    if (drawing && !event.isPrimary && wandered(finger)) this.begin();
    if (this.active && this.fingers.size === 2) this.follow();
    return this.active !== undefined;
  }

  // up lets a finger go. The one that remains of two paints nothing.
  up(event) {
    this.fingers.delete(event.pointerId);
    if (this.fingers.size === 0) this.clear();
  }

  clear() {
    this.fingers.clear();
    this.active = undefined;
  }

  begin() {
    const { middle, apart } = this.pair();
    this.active = { apart, size: this.zoom.now, enlarging: false, last: middle };
    this.begun();
  }

  follow() {
    const { active, zoom } = this;
    const { middle, apart } = this.pair();
    const times = apart / active.apart;
    active.enlarging ||= times > enlarges || times < 1 / enlarges;
    const hold = zoom.hold(active.last);
    if (active.enlarging) zoom.to(active.size * times);
    hold(middle);
    active.last = middle;
  }

  pair() {
    const [a, b] = [...this.fingers.values()].map((f) => f.at);
    return { middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, apart: Math.max(Math.hypot(a.x - b.x, a.y - b.y), 1) };
  }
}

function spot(event) {
  return { x: event.clientX, y: event.clientY };
}

function wandered({ from, at }) {
  return Math.hypot(at.x - from.x, at.y - from.y) > slop;
}
