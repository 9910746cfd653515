// Motifs that are laid by rule: their part of the margin, and the one that is in hand.
import { whole } from "./boxed.js";
import { borders, coverOf, extent } from "./borders.js";
import { frame } from "./marks.js";
import { nameOf } from "./model.js";
import { byTouch } from "./page.js";
import { changed, field, follow, fromOf, isDown, laidAnew, moved, removed, seen, stretched, swapped, taken } from "./repeats.js";
import { textures } from "./row.js";
import { draw, set } from "./svg.js";

const near = { mouse: 7, touch: 18 }; // px from a border within which a press takes hold of it

export class Laid {
  constructor(editor) {
    this.editor = editor;
    this.box = editor.root.querySelector("[data-laid-box]");
    const thick = editor.model.data.cell_width;
    this.lines = [["laid-edge", 6], ["laid-line", 16]].map(([name, of]) => draw("path", { class: name, "stroke-width": thick / of }));
    const place = draw("g", { class: "laid-borders" });
    place.append(...this.lines);
    editor.view.svg.append(place);
    this.frame = draw("path", { class: "in-hand" });
    editor.view.over.layer.append(this.frame);
    this.listen();
    this.draw();
    this.tell();
  }

  get model() {
    return this.editor.model;
  }

  // hand is the repeat in hand.
  get hand() {
    return this.model.repeats.find((r) => r.at === this.editor.kept.inHand && r.given.off !== "true");
  }

  listen() {
    this.box?.addEventListener("change", ({ target }) => {
      const repeat = this.of(target);
      if (repeat && target.name && target.checkValidity()) this.stroke(repeat, changed(repeat, target.name, target.value.trim()));
    });
    this.box?.addEventListener("submit", (event) => {
      const repeat = this.of(event.target);
      if (!repeat) return;
      event.preventDefault();
      this.done(repeat, event.submitter?.value);
    });
    this.box?.addEventListener("click", ({ target }) => target.matches("[data-laid-take]") && this.take(this.of(target)));
    this.editor.root.querySelector("[data-margin]").onclick = (event) => this.cure(event);
    this.press();
  }

  // cure sets one field, as a button says that stands beside what became of a motif.
  cure(event) {
    const [, at, key, value] = /^repeats\[(\d+)\]\.(\w+)=(.*)$/.exec(event.target.closest?.("[data-repeat-set]")?.dataset.repeatSet ?? "") ?? [];
    const repeat = this.model.repeats.find((r) => String(r.at) === at);
    if (!repeat) return;
    event.preventDefault();
    this.stroke(repeat, changed(repeat, key, value));
  }

  // of returns the repeat of a part of the margin.
  of(element) {
    const at = element.closest("[data-laid-form]")?.dataset.laidForm;
    return this.model.repeats.find((r) => String(r.at) === at);
  }

  // done does what a button asks for.
  done(repeat, what) {
    if (what === "on" || what === "off") this.turn(repeat, what === "off");
    if (what === "over" || what === "under") this.stroke(undefined, swapped(this.model, repeat, what === "over"));
    if (what !== "remove") return;
    this.letGo();
    this.stroke(undefined, removed(repeat), `${nameOf(repeat)} is taken away.`);
  }

  turn(repeat, off) {
    if (off) this.letGo();
    this.stroke(repeat, [field(repeat.at, "off", off ? "true" : "")], off ? `${nameOf(repeat)} is turned off.` : undefined);
  }

  // stroke sends edits of the sheet, and tells what came of a repeat once the plan is
  // there, or what is said instead.
  stroke(repeat, edits, said) {
    if (edits.length === 0) return;
    const { kept, history } = this.editor;
    history.stroke(edits);
    kept.laidSaid = { at: repeat?.at, said };
    follow(this.model, edits);
  }

  // tell says what came of the repeat that was changed last, or that is in hand: its buttons
  // stay when the chart is replaced.
  tell() {
    const { kept } = this.editor;
    const { at, said } = kept.laidSaid ?? {};
    kept.laidSaid = undefined;
    const repeat = this.model.repeats.find((r) => r.at === at) ?? this.hand;
    if (said) this.editor.announce(said);
    else if (repeat) this.editor.announce(`${nameOf(repeat)}: ${repeat.words}`, repeat === this.hand ? this.acts() : []);
  }

  // waits says that what was asked for a motif is not on the chart yet: its plan is worked out
  // by the server.
  waits() {
    const { kept } = this.editor;
    if (!kept.laidSaid) return;
    const words = "The motif changes as soon as there is a connection.";
    this.editor.announce(words);
    const came = this.box?.querySelector(`[data-laid-form="${kept.laidSaid.at}"] [data-came]`);
    if (came) came.textContent = words;
  }

  // acts are what can be done with the one in hand without keys.
  acts() {
    const by = (words, run) => ({ words, run });
    const list = [by("let go", () => this.letGo())];
    if (!byTouch()) return list;
    return [by("up", () => this.move([1, 0])), by("down", () => this.move([-1, 0])), by("left", () => this.move([0, -1])), by("right", () => this.move([0, 1])), ...list];
  }

  // lay lays cells as a motif over all others, with its first stitch on a cell.
  lay(cells, name, place, edits = []) {
    const { editor } = this;
    const anew = laidAnew(this.model, cells, name, place);
    if (anew.why) {
      editor.announce(anew.why);
      return;
    }
    editor.kept.inHand = anew.at;
    editor.select((s) => s.clear());
    editor.history.stroke([...anew.edits, ...edits]);
    editor.kept.laidSaid = { at: anew.at };
    editor.view.svg.focus({ preventScroll: true });
  }

  // laySelection lays what is marked off, where it is.
  laySelection() {
    const { editor, model } = this;
    const places = editor.selection.places(model);
    if (places.length === 0) {
      editor.announce("Mark off the stitches to repeat first.");
      return;
    }
    const ys = places.map(([y]) => y);
    const row = model.row(isDown(model) ? Math.max(...ys) : Math.min(...ys));
    const cell = row.cells.find((c) => c.x >= 0 && places.some(([y, x]) => y === row.y && x === c.x));
    this.lay(seen(model, places), "", { row, cell }, taken(model, places));
  }

  // layHere lays a motif of the sampler with its lower right stitch on the one in hand.
  layHere({ name, cells }) {
    const { y, x } = this.editor.cursor;
    const row = this.model.row(y);
    this.lay(cells, name, { row, cell: row.at(x) ?? row.cells[0] });
  }

  // take takes a repeat in hand, or lets go of it.
  take(repeat) {
    const { editor } = this;
    if (!repeat || repeat === this.hand) {
      this.letGo();
      return;
    }
    editor.kept.inHand = repeat.at;
    if (whole(editor)) {
      editor.kept.laidSaid = { at: repeat.at };
      return;
    }
    this.held();
    editor.announce(`${nameOf(repeat)} in hand. ${byTouch() ? "Drag its upper or lower edge." : "Arrows move it, with Shift they stretch it; Delete turns it off."}`, this.acts());
    editor.view.svg.focus({ preventScroll: true });
    const box = extent(this.model, repeat);
    if (box) editor.zoom.show(editor.view.box(isDown(this.model) ? box.high : box.low, box.right));
  }

  letGo() {
    if (this.editor.kept.inHand === undefined) return;
    this.editor.kept.inHand = undefined;
    this.held();
    this.editor.announce("");
  }

  // key does what a key asks for with the repeat in hand, and reports whether it did.
  key({ move, extend, run }, { key }) {
    const repeat = this.hand;
    if (!repeat) return false;
    const still = (way) => way?.every(Number.isFinite);
    if (still(move)) this.move(move);
    else if (still(extend)) this.stretch(extend);
    else if (key === "Delete") this.turn(repeat, true);
    else if (run === "drop") this.letGo();
    else return false;
    return true;
  }

  // worked turns a way of the drawing into rounds and stitches in the order in which the right
  // hand works them.
  worked([up, right]) {
    const { from_left: fromLeft, mirrored } = this.model.data;
    return [isDown(this.model) ? -up : up, Boolean(fromLeft) !== Boolean(mirrored) ? right : -right];
  }

  move(way) {
    const repeat = this.hand;
    if (repeat) this.stroke(repeat, moved(this.model, repeat, ...this.worked(way)));
  }

  stretch(way) {
    const repeat = this.hand;
    const edits = stretched(this.model, repeat, ...this.worked(way));
    this.stroke(repeat, edits);
    if (edits.length === 0) this.editor.announce(way[0] === 0 ? "It lies across all there is; choose another part in the margin." : "It ends there.", this.acts());
  }

  // painted offers to put what was painted on a laid cell into its motif.
  painted(all) {
    const { model, editor } = this;
    const edits = all.filter((e) => e.layer !== "motif");
    if (model.repeats.length === 0 || edits.some((e) => !["colour", "stitch"].includes(e.layer))) return;
    const hit = edits.filter((e) => e.value !== "").map((e) => ({ e, ...this.covered(e) })).filter((h) => h.up !== undefined && h.letter);
    if (hit.length === 0) return;
    const [{ repeat: which, up }] = hit;
    const own = hit.filter((h) => h.repeat === which);
    const repeat = model.repeats[which];
    const plain = !["palm", "back", "columns", "round", undefined].includes(repeat.given.over) || !["out", undefined].includes(repeat.given.gusset);
    const times = repeat.across * (repeat.up + (up < (repeat.part ?? 0) ? 1 : 0));
    editor.announce("Painted here only.", [{ words: plain || times < 2 ? `in all of ${nameOf(repeat)}` : `in all ${times}`, run: () => this.inAll(repeat, own) }]);
  }

  // covered returns the cell of a motif that an edit lies on, and its letter there.
  covered({ section, round, column, layer, value }) {
    const row = this.model.byKey.get(`${section} ${round}`);
    const cell = row?.column(column);
    const cover = cell && coverOf(row, this.model, cell);
    return { ...cover, letter: layer === "colour" ? value : Object.keys(textures).find((k) => textures[k] === value) };
  }

  // inAll draws what was painted into the motif, and takes the marks away.
  inAll(repeat, hits) {
    const { wide, high, at } = repeat;
    const edits = hits.map(({ e }) => ({ ...e, value: "" }));
    for (const [layer, key, rows] of [["colour", "motif", repeat.yarns], ["stitch", "stitches", repeat.stitches]]) {
      const own = hits.filter(({ e }) => e.layer === layer);
      if (own.length === 0) continue;
      const letters = (rows ?? Array(high).fill(".".repeat(wide))).map((row) => [...row]);
      for (const { right, up, letter } of own) letters[high - 1 - up][wide - 1 - right] = letter;
      edits.push(field(at, key, letters.map((row) => row.join("")).join("/")));
    }
    this.stroke(repeat, edits);
  }

  // draw draws the borders of all motifs, and the frame of the one in hand.
  draw() {
    const d = this.model.repeats.length > 0 ? borders(this.model) : "";
    for (const line of this.lines) set(line, "d", d);
    this.held();
  }

  // held shows which is in hand.
  held(box = this.hand && extent(this.model, this.hand)) {
    const { view } = this.editor;
    this.extent = box;
    for (const b of this.box?.querySelectorAll("[data-laid-take]") ?? []) b.setAttribute("aria-pressed", String(this.of(b) === this.hand));
    const corner = box && view.box(box.high, box.left);
    set(this.frame, "d", box ? frame({ ...corner, w: corner.w * (box.right - box.left + 1), h: corner.h * (box.high - box.low + 1) }, corner.w / 6) : "");
  }

  // press lets the upper and the lower border of the one in hand be dragged.
  press() {
    const { view } = this.editor;
    let held;
    const end = () => {
      held = undefined;
      this.held();
    };
    this.grab = (event) => {
      const edge = this.edgeAt(event);
      if (!edge) return false;
      held = { edge, id: event.pointerId, box: this.extent };
      view.svg.setPointerCapture(event.pointerId);
      return true;
    };
    view.svg.addEventListener("pointermove", (event) => {
      if (held?.id === event.pointerId) this.held(this.dragged(held, event));
    });
    view.svg.addEventListener("pointerup", (event) => {
      if (held?.id !== event.pointerId) return;
      const [{ edge, box }, to] = [held, this.dragged(held, event)];
      end();
      if (to[edge] !== box[edge]) this.stroke(this.hand, this.dropped(edge, to[edge]));
    });
    view.svg.addEventListener("pointercancel", (event) => held?.id === event.pointerId && end());
  }

  // edgeAt returns which border of the one in hand a press takes hold of: "high", "low" or
  // none.
  edgeAt({ clientX, clientY, pointerType, button }) {
    if (!this.extent || button !== 0) return undefined;
    const { view } = this.editor;
    const { low, high, left, right } = this.extent;
    const at = view.cellAt(clientX, clientY);
    const scale = view.svg.getScreenCTM().d;
    const line = (y) => view.svg.getScreenCTM().f + view.box(y, 0).y * scale;
    if (!at || at.x < left || at.x > right) return undefined;
    const reach = near[pointerType] ?? near.mouse;
    const [up, down] = [Math.abs(clientY - line(high)), Math.abs(clientY - line(low - 1))];
    if (Math.min(up, down) > reach) return undefined;
    return up <= down ? "high" : "low";
  }

  // dragged returns the box of what is in hand with one border at the pointer.
  dragged({ edge, box }, { clientX, clientY }) {
    const d = this.model.data;
    const p = new DOMPoint(clientX, clientY).matrixTransform(this.editor.view.svg.getScreenCTM().inverse());
    const line = Math.min(Math.max(Math.round((d.bottom - p.y) / d.cell_height), 0), this.model.height); // rows below it
    return edge === "high" ? { ...box, high: Math.max(line, box.low) } : { ...box, low: Math.min(line + 1, box.high) };
  }

  // dropped returns the edits that let a border of the one in hand lie at a row.
  dropped(edge, y) {
    const { model, hand: repeat } = this;
    const row = model.row(y);
    const { section = "whole" } = repeat.given;
    const n = section === "whole" ? model.data.hand[row.section] + row.round : row.section === section ? row.round : undefined;
    if (!n) return [];
    if ((edge === "high") === isDown(model)) return [field(repeat.at, "from", n)];
    return n < fromOf(repeat) ? [] : [field(repeat.at, "to", n)];
  }
}
