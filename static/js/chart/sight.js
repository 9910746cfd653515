// What lies round the chart and moves with it: the rulers, the needle, and the
// small mitt. All are drawn in one frame, and of each only what changed.
import { Needle } from "./needle.js";
import { Place } from "./place.js";
import { Rulers } from "./rulers.js";
import { Where } from "./where.js";

export class Sight {
  constructor(editor) {
    this.editor = editor;
    this.rulers = new Rulers(editor);
    this.needle = new Needle(editor);
    this.place = new Place(editor);
    const { zoom } = editor;
    this.draw = editor.frame.add({ read: () => this.read(), write: (seen) => this.write(seen) });
    zoom.changed = () => this.draw();
    zoom.frame.addEventListener("scroll", () => this.draw(), { passive: true });
    new ResizeObserver(() => this.resized()).observe(zoom.frame);
    for (const name of ["pointerdown", "wheel", "keydown"]) zoom.frame.addEventListener(name, () => this.touch(), { passive: true });
    this.resized();
  }

  // resized goes back to where the chart was left, to the beginning of the part
  // that was gone to, or to where reading begins, until the person moves it.
  resized() {
    const { zoom, kept } = this.editor;
    if (!this.touched) {
      this.left ??= kept.scrolls[this.editor.model.data.view];
      if (this.left) zoom.frame.scrollTo(this.left.left, this.left.top);
      else zoom.begin();
      if (kept.follows) this.show(kept.follows);
    }
    this.draw();
  }

  // follow brings the round in hand into view, or, for a part, to the foot of the
  // canvas. It keeps it there while what is said changes the room, or the chart is
  // drawn anew, until the person moves it.
  follow(what) {
    this.editor.kept.follows = what;
    this.touched = false;
    this.show(what);
  }

  show(what) {
    const { zoom, view, cursor, kept, model } = this.editor;
    const box = view.box(cursor.y, cursor.x);
    if (what === "part") zoom.beginAt(box);
    else zoom.show(box);
    this.left = { left: zoom.frame.scrollLeft, top: zoom.frame.scrollTop };
    kept.scrolls[model.data.view] = this.left;
  }

  // touch is called when the person moves the chart, or works on it.
  touch() {
    this.touched = true;
    this.editor.kept.follows = undefined;
  }

  // round is the round in hand: the one that is pointed at, or the cursor's.
  get round() {
    const { lit, cursor, model } = this.editor;
    return model.row(lit) ? lit : cursor.y;
  }

  // read says where the cells are now. Undefined: the chart was replaced.
  read() {
    const { zoom: { frame }, view: { svg }, model: { data } } = this.editor;
    if (!frame.isConnected) return undefined;
    const at = new Where({
      svg: svg.getBoundingClientRect(), frame: frame.getBoundingClientRect(), width: frame.clientWidth, height: frame.clientHeight,
      view: svg.viewBox.baseVal, data, needle: this.needle.svg.getBoundingClientRect(),
    });
    return { at, left: frame.scrollLeft, top: frame.scrollTop };
  }

  write(seen) {
    if (!seen) return;
    const { editor, round } = this;
    if (!seen.at.same(this.at)) this.at = seen.at;
    this.rulers.show(this.at, round, editor.out);
    this.needle.show(this.at, round);
    this.place.show(this.at, round);
    if (this.touched) editor.kept.scrolls[editor.model.data.view] = { left: seen.left, top: seen.top };
  }
}
