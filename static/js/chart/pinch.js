// Two fingers on the chart: they move and enlarge it, since the browser leaves
// every finger on it to the brush. A finger that only rests beside one that
// draws changes nothing.

const slop = 8; // px that a finger wanders without meaning it
const enlarges = 1.08; // times as far apart (or as near), from where fingers enlarge

export class Pinch {
  // begun is called when two fingers turn out to go together.
  constructor(zoom, begun) {
    this.zoom = zoom;
    this.begun = begun;
    this.fingers = new Map(); // by pointer: where it was put down, and where it is
    this.active = undefined;
  }

  // down tells whether the finger belongs to two that go together: one that
  // joins another which has drawn nothing yet.
  down(event) {
    if (event.isPrimary) this.clear(); // fingers before it were lost on the way
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

  // up lets a finger go; what is left of two paints nothing.
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
    this.active = { apart, size: this.zoom.size || this.zoom.whole(), enlarging: false, last: middle };
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
