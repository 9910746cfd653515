// The chart of the page in the hands of the script: what is drawn, chosen,
// selected and sent.
import * as events from "../events.js";
import { arrive } from "./arrive.js";
import { outBy } from "./balance.js";
import { noted, paste, shift } from "./commands.js";
import { floats } from "./float.js";
import { Frame } from "./frame.js";
import { Ghost } from "./ghost.js";
import { stepOf } from "./here.js";
import { History } from "./history.js";
import { act, moved } from "./keys.js";
import { Laid } from "./laid.js";
import { faults } from "./ledger.js";
import { byName } from "./menu.js";
import { Margin } from "./margin.js";
import { Model } from "./model.js";
import { Motifs } from "./motifs.js";
import { byTouch } from "./page.js";
import { Panel } from "./panel.js";
import { Pointer } from "./pointer.js";
import { amount } from "./sentence.js";
import { Sight } from "./sight.js";
import { Strip } from "./strip.js";
import { Told } from "./told.js";
import { Toolbar } from "./toolbar.js";
import { Brush } from "./tools.js";
import { eraseSpots, laidDown, leave, paintSpots, stitches } from "./tracing.js";
import { View } from "./view.js";
import { laid, upright } from "./upright.js";
import { Zoom } from "./zoom.js";

// ready returns the tool with the brush that is ready when the person picked none:
// the mitt's second yarn, if it has one.
export function ready(tool, second) {
  return tool.picked || !second ? tool : { ...tool, layer: "colour", value: second };
}

export class Editor {
  // kept outlives this editor: tool, selection, clipboard, size and cursor.
  constructor(root, data, outbox, kept) {
    Object.assign(this, { root, outbox, kept, place: root.querySelector("[data-chart-editor]") });
    this.model = new Model(data);
    this.frame = new Frame();
    this.view = new View(root, this.model, this.frame);
    arrive(this);
    this.history = new History(this.model, outbox, (rows, edits) => this.drawn(rows, edits));
    this.history.begun = () => {
      this.told.forget();
      kept.said = "";
    };
    this.history.laid = (edits) => {
      laid(this, edits);
      this.byRule.painted(edits);
    };
    this.brush = new Brush(this.model, this.history);
    this.brush.choose(kept.tool);
    this.waiting = new Set(); // rows to draw in the next frame
    this.redraw = this.frame.add({ write: () => this.draw() });
    this.ghost = new Ghost(this);
    this.told = new Told(root);
    this.view.knit.told = (words) => this.told.offers || this.announce(words);
    this.margin = new Margin(this);
    this.panel = new Panel(this);
    this.strip = new Strip(this);
    this.toolbar = new Toolbar(this);
    this.zoom = new Zoom(root.querySelector(".grid-frame"), this.view.svg, data, kept.sizes[data.view]);
    this.sight = new Sight(this);
    this.motifs = new Motifs(this, root.querySelector("[data-motifs]"));
    this.byRule = new Laid(this);
    new Pointer(this);
    this.keyboard();
    this.takeUp();
  }

  takeUp() {
    const { model } = this;
    this.dirty(this.history.takeUp());
    this.view.drawNeedles();
    this.view.drawNotes();
    this.margin.notes();
    this.view.choose(this.selection.places(model));
    this.read();
    this.toolbar.show();
    this.strip.offer();
    this.toolbar.point(this.cursor.y);
    this.view.count(this.cursor.y);
  }

  get tool() {
    return this.kept.tool;
  }

  get selection() {
    return this.kept.selection;
  }

  get cursor() {
    return this.view.cursor;
  }

  get clipboard() {
    return this.kept.clipboard;
  }

  set clipboard(cells) {
    this.kept.clipboard = cells;
    this.toolbar.show();
  }

  // dirty draws rows in the next frame, however many strokes it brings.
  dirty(rows) {
    for (const y of rows) this.waiting.add(y);
    if (this.waiting.size > 0) this.drawSoon();
  }

  // stroking draws what the stroke under the pointer has changed: over the chart
  // where it can, until the stroke ends.
  stroking(rows) {
    if (rows.length === 0) return;
    this.dirty(this.view.over.take(rows, this.brush.stroke));
    this.drawSoon();
  }

  drawSoon() {
    this.redraw();
    this.sight.draw();
  }

  draw() {
    const { over } = this.view;
    const { stroke } = this.brush;
    for (const y of this.waiting) this.view.drawRow(y);
    this.waiting.clear();
    if (stroke && over.open) over.draw(stroke);
    else over.clear(!stroke);
    this.read();
  }

  // read checks the ledger and the floats. What is said of them in words waits
  // for the end of a stroke.
  read() {
    const list = faults(this.model);
    if (!alike(list, this.faults)) {
      this.faults = list;
      this.out = outBy(this.model, list); // by how many stitches rounds are out of balance
      this.view.drawFaults(list);
    }
    if (this.brush.stroke && !this.view.strands) return;
    const long = floats(this.model);
    this.view.drawFloats(long);
    if (this.brush.stroke) return;
    this.panel.ledger(this.faults);
    this.margin.strands(long);
  }

  // drawn runs after a stroke, our own or somebody else's.
  drawn(rows, edits) {
    this.dirty(rows);
    if (edits.some((e) => e.layer === "needles")) {
      this.view.drawNeedles();
      this.sight.rulers.needles();
    }
    if (edits.some((e) => e.layer === "note")) {
      this.view.drawNotes();
      this.margin.notes();
    }
    if (edits.some((e) => e.layer === "sheet")) this.toSheet(edits);
    if (rows.includes(this.cursor.y)) {
      this.say(this.model.describe(this.cursor.y, this.cursor.x));
      this.view.name();
    }
    this.panel.lost.follow();
    this.toolbar.show();
  }

  toSheet(edits) {
    events.sheet.tell({ edits: edits.filter((e) => e.layer === "sheet" && !e.column.endsWith("].was")), revision: this.outbox.revision });
  }

  say(text) {
    this.root.querySelector("#chart-says").textContent = text;
  }

  // announce says what has happened, with buttons { words, run } beside it.
  announce(text, acts, how) {
    this.told.say(text, acts, how);
  }

  // point moves the cursor, reads the cell out, and lights the round in the
  // other views. The frame follows the keyboard, but keeps still under a
  // pointer.
  point(y, x, follow = true) {
    this.say(this.view.point(y, x));
    this.kept.cursor = this.model.anchor(y, x) ?? this.kept.cursor;
    this.ghost.at(this.cursor);
    if (follow) this.zoom.show(this.view.box(y, x));
    this.light(y);
    this.toolbar.point(y);
    this.strip.ask();
    this.panel.here();
  }

  // light lights a row, here and in the other views.
  light(y) {
    if (y === this.lit) return;
    this.lit = y;
    this.view.thread(y);
    this.sight.draw();
    const { section, round } = this.model.row(y);
    events.round.tell({ section, round, by: "chart" });
  }

  // leave lights the row of the cursor again, if the chart has the keyboard
  // focus.
  leave() {
    if (document.activeElement === this.view.svg) this.light(this.cursor.y);
    else {
      this.view.thread(0);
      this.lit = undefined;
      this.sight.draw();
    }
  }

  keyboard() {
    const { svg } = this.view;
    svg.addEventListener("keydown", (event) => {
      const asked = act(event);
      if (!asked) return;
      event.preventDefault();
      if (this.byRule.key(asked, event)) return;
      if (asked.run) this.run(asked.run);
      if (asked.yarn) this.toolbar.takeYarn(asked.yarn);
      if (asked.shift) this.shift(asked.shift);
      if (asked.move || asked.extend) this.go(asked.move ?? asked.extend, Boolean(asked.extend));
    });
  }

  // go moves the cursor. If extending, it selects from where it set out.
  go(way, extending) {
    if (extending) this.kept.from ??= { ...this.cursor };
    else this.kept.from = undefined;
    const to = moved(this.model, this.cursor, way);
    this.point(to.y, to.x);
    if (extending) this.select((s) => s.rectangle(this.model, this.kept.from, to));
  }

  run(name) {
    byName.get(name)?.run(this);
  }

  choose(change) {
    const tool = { ...this.tool, ...change };
    if (change.layer || change.erase) tool.picked = true;
    if ((change.layer || change.erase) && (tool.shape === "look" || tool.shape === "stamp")) tool.shape = "free";
    if (tool.shape !== "stamp") delete tool.piece;
    if (change.layer) tool.erase = false;
    this.kept.tool = tool;
    this.brush.choose(tool);
    this.ghost.show(tool.piece);
    this.toolbar.show();
    if (tool.shape === "stamp" || colours(tool, this.model.data.yarns[0].id)) upright(this);
  }

  // reach chooses how far a mark reaches, and says what moves an increase.
  reach(shape) {
    this.choose({ shape });
    if (shape === "move") this.announce(`Drag an increase up or down${byTouch() ? "" : ", or press Alt with an arrow"}.`);
  }

  select(how) {
    how(this.selection);
    const places = this.selection.places(this.model);
    this.view.choose(places);
    this.toolbar.picked();
    this.told.count(places.length === 0 ? "Nothing is marked off." : `${amount(places)} marked off.`);
  }

  paint() {
    if (this.tool.shape === "stamp") {
      this.history.stroke(paste(this.model, this.tool.piece, this.cursor.y, this.cursor.x));
      laidDown(this);
    } else if (!this.selection.empty && this.tool.shape !== "fill") paintSpots(this);
    else this.withShape(this.tool.shape === "fill" ? "fill" : "free");
  }

  // withShape paints at the cursor with another shape of the brush.
  withShape(shape) {
    const { y, x } = this.cursor;
    this.brush.choose({ ...this.tool, shape });
    this.brush.begin(y, x);
    this.brush.end();
    this.brush.choose(this.tool);
  }

  erase() {
    eraseSpots(this);
  }

  drop() {
    if (this.brush.stroke) this.dirty(this.brush.drop());
    else if (this.tool.shape === "stamp") leave(this);
    else if (this.byRule.hand) this.byRule.letGo();
    else if (!this.selection.empty) this.select((s) => s.clear());
  }

  shift(way) {
    if (this.tool.shape === "move" && way[0] !== 0) {
      this.change("move", way[0]);
      return;
    }
    if (this.selection.empty) return;
    const { edits, places } = shift(this.model, this.selection.places(this.model), way);
    this.history.stroke(edits);
    this.select((s) => s.set(this.model, places));
  }

  change(kind, by) {
    const row = this.model.row(this.cursor.y);
    const { section, round } = row;
    this.sight.follow("round");
    this.history.change({ kind, section, round, to: by ? round + by * stepOf(row) : 0 });
  }

  // changeFrom moves the increases of a row to another row of its section.
  changeFrom(y, to) {
    const [from, target] = [this.model.row(y), this.model.row(to)];
    if (target?.section !== from.section) this.announce("Increases stay in their part.");
    else this.history.change({ kind: "move", section: from.section, round: from.round, to: target.round });
  }

  note(round) {
    const { y, x } = this.cursor;
    const column = round ? "" : (this.model.at(y, x)?.column ?? "");
    const label = round ? `Note on ${this.model.name(y, true)}` : `Note on ${this.model.describe(y, x)}`;
    this.panel.askFor(label, this.model.mark(y, column).note, 200, (text) => this.history.stroke(noted(this.model, y, column, text)));
  }

  enlarge(by) {
    if (by === 0) this.zoom.set(0);
    else this.zoom.step(by, this.view.box(this.cursor.y, this.cursor.x));
    this.sized();
    const { across, up } = this.zoom.inView();
    this.announce(`${stitches(across)} and ${up} rounds in view.`);
  }

  // sized remembers the size of the stitches of this view.
  sized() {
    this.kept.sizes[this.model.data.view] = this.zoom.size;
  }

  turn() {
    const at = this.model.anchor(this.cursor.y, this.cursor.x);
    if (at) this.ask({ view: this.place.dataset.turned, middle: at.column });
  }

  // ask shows another view, which the address names, so that it can be
  // bookmarked.
  ask(change) {
    const query = new URLSearchParams(location.search);
    for (const [name, value] of Object.entries(change)) {
      if (value) query.set(name, value);
      else query.delete(name);
    }
    history.replaceState(history.state, "", `${location.pathname}${query.size > 0 ? `?${query}` : ""}${location.hash}`);
    events.view.tell();
  }

  moment() {
    this.panel.askFor("Name of this moment", "", 60, async (name) => {
      if (!name) return;
      const href = this.outbox.href.replace(/chart$/, "history");
      const reply = await fetch(href, { method: "POST", body: new URLSearchParams({ name }), redirect: "manual" }).catch(() => undefined);
      this.announce(reply ? `This moment is kept as ${name}, behind the mitt’s name.` : "Not kept: no connection.");
    });
  }

  // words opens the instructions of the selected rounds, or of the round under
  // the cursor.
  words() {
    const rows = [...new Set(this.selection.places(this.model).map(([y]) => y))].map((y) => this.model.row(y));
    const here = this.model.row(this.cursor.y);
    const of = rows.filter((r) => r.section === (rows[0] ?? here).section);
    const rounds = (of.length > 0 ? of : [here]).map((r) => r.round);
    const query = new URLSearchParams({ section: (of[0] ?? here).section, from: Math.min(...rounds), to: Math.max(...rounds) });
    location.assign(`${this.outbox.href.replace(/chart$/, "words.txt")}?${query}`);
  }
}

// colours reports whether a tool lays a yarn other than the main one.
function colours({ layer, value, erase }, main) {
  return !erase && layer === "colour" && value !== main;
}

// alike reports whether two lists of faults say the same.
function alike(list, before) {
  return before?.length === list.length && list.every((f, i) => f.y === before[i].y && f.left === before[i].left && f.eats === before[i].eats);
}
