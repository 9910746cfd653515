// What lies round the chart and moves with it: the rulers, the needle, and the
// small mitt. All are drawn in one frame.
import { outBy } from "./balance.js";
import { Needle } from "./needle.js";
import { Place } from "./place.js";
import { Rulers } from "./rulers.js";

export class Sight {
  constructor(editor) {
    this.editor = editor;
    this.rulers = new Rulers(editor);
    this.needle = new Needle(editor);
    this.place = new Place(editor);
    const { zoom } = editor;
    zoom.changed = () => this.draw();
    zoom.frame.addEventListener("scroll", () => this.draw(), { passive: true });
    new ResizeObserver(() => this.resized()).observe(zoom.frame);
    for (const name of ["pointerdown", "wheel", "keydown"]) zoom.frame.addEventListener(name, () => { this.touched = true; }, { passive: true });
    this.resized();
  }

  // resized goes back to where the chart was left, or to where reading begins,
  // until the person moves it.
  resized() {
    const { zoom } = this.editor;
    if (!this.touched) {
      this.left ??= this.editor.kept.scrolls[this.editor.model.data.view];
      if (this.left) zoom.frame.scrollTo(this.left.left, this.left.top);
      else zoom.begin();
    }
    this.draw();
  }

  // round is the round in hand: the one that is pointed at, or the cursor's.
  get round() {
    const { lit, cursor, model } = this.editor;
    return model.row(lit) ? lit : cursor.y;
  }

  draw() {
    this.frame ??= requestAnimationFrame(() => {
      this.frame = undefined;
      const { model, kept, zoom, faults } = this.editor;
      if (!zoom.frame.isConnected) return; // the chart was replaced
      const at = this.rulers.place();
      this.rulers.show(at, this.round, outBy(model, faults ?? []));
      this.needle.show(at, this.round);
      this.place.show(at, this.round);
      if (this.touched) kept.scrolls[model.data.view] = { left: zoom.frame.scrollLeft, top: zoom.frame.scrollTop };
    });
  }
}
