// All commands of the chart, for the list and for the keys. Each acts on an
// Editor. rows are its words where the cursor is in a row, not a round.
import { box, whole } from "./boxed.js";
import { here } from "./commands.js";
import { lay, layRound, layUp, lift, trace, turn } from "./tracing.js";

export const commands = [
  { group: "Marking", name: "paint", words: "Mark the stitch, or all that is marked off", key: "Enter", run: (e) => e.paint() },
  { group: "Marking", name: "erase", words: "Take it back to the plan", key: "Backspace", run: (e) => e.erase() },
  { group: "Marking", name: "fill", words: "Mark all alike that hang together", run: (e) => e.withShape("fill") },
  { group: "Marking", name: "mirror-brush", words: "Both edges of the gusset at once, or one", key: "e", run: (e) => e.choose({ mirror: !e.tool.mirror }) },
  { group: "How far a mark reaches", name: "reach-free", words: "Stitch by stitch", key: "s", run: (e) => e.reach("free") },
  { group: "How far a mark reaches", name: "reach-line", words: "A run of stitches", key: "n", run: (e) => e.reach("line") },
  { group: "How far a mark reaches", name: "reach-rectangle", words: "A block of stitches", key: "b", run: (e) => e.reach("rectangle") },
  { group: "How far a mark reaches", name: "reach-fill", words: "All alike", key: "a", run: (e) => e.reach("fill") },
  { group: "How far a mark reaches", name: "reach-look", words: "Nowhere: only look", key: "l", run: (e) => e.reach("look") },
  { group: "Marking off", name: "reach-select", words: "Mark off a block", key: "m", run: (e) => e.reach("select") },
  { group: "Marking off", name: "select-round", words: "Mark off the round", rows: "Mark off the row", run: (e) => e.select((s) => s.round(e.model, e.cursor.y)) },
  { group: "Marking off", name: "select-column", words: "Mark off the column", run: (e) => e.select((s) => s.column(e.model, e.cursor.y, e.cursor.x)) },
  { group: "Marking off", name: "select-all", words: "Mark off the whole chart", key: "Ctrl A", run: (e) => e.select((s) => s.all(e.model)) },
  { group: "Marking off", name: "drop", words: "Let go of it", key: "Esc", run: (e) => e.drop() },
  { group: "Tracing and laying", name: "trace", words: "Trace it", key: "Ctrl C", run: (e) => trace(e) },
  { group: "Tracing and laying", name: "lift", words: "Lift it off", key: "Ctrl X", run: (e) => lift(e) },
  { group: "Tracing and laying", name: "lay", words: "Lay the tracing down", key: "Ctrl V", run: (e) => lay(e) },
  { group: "Tracing and laying", name: "repeat", words: "Repeat it all round by rule, anew on each plan", run: (e) => e.byRule.laySelection() },
  { group: "Tracing and laying", name: "lay-round", words: "Lay it round the hand, again and again", run: (e) => layRound(e) },
  { group: "Tracing and laying", name: "lay-up", words: "Lay it upward to the last round", rows: "Lay it upward to the last row", run: (e) => layUp(e) },
  { group: "Tracing and laying", name: "turn-over", words: "Turn it over, left for right", run: (e) => turn(e, false) },
  { group: "Tracing and laying", name: "head-down", words: "Turn it upside down", run: (e) => turn(e, true) },
  { group: "Tracing and laying", name: "keep-motif", words: "Keep it in the sampler", run: (e) => e.motifs.keep() },
  { group: "Rounds and increases", name: "insert-round", words: "Put in a plain round above this one", rows: "Put in two plain rows above these", key: "p", run: (e) => e.change("insert") },
  { group: "Rounds and increases", name: "remove-round", words: "Take out this round", rows: "Take out these two rows", key: "t", run: (e) => e.change("remove") },
  { group: "Rounds and increases", name: "reach-move", words: "Move an increase by dragging", key: "i", run: (e) => e.reach("move") },
  { group: "Rounds and increases", name: "increase-up", words: "This round’s increases, one round up", rows: "This row’s increases, two rows up", run: (e) => e.change("move", 1) },
  { group: "Rounds and increases", name: "increase-down", words: "This round’s increases, one round down", rows: "This row’s increases, two rows down", run: (e) => e.change("move", -1) },
  { group: "Rounds and increases", name: "needles", words: "This round is on the needles, or not", rows: "This row is on the needles, or not", run: (e) => e.history.stroke(here(e.model, e.cursor.y)) },
  { group: "Rounds and increases", name: "words", words: "These rounds in words", rows: "These rows in words", run: (e) => e.words() },
  { group: "Notes", name: "note", words: "A note on the stitch", run: (e) => e.note(false) },
  { group: "Notes", name: "note-round", words: "A note on the round", rows: "A note on the row", run: (e) => e.note(true) },
  { group: "Looking", name: "larger", words: "Nearer", key: "+", run: (e) => e.enlarge(1) },
  { group: "Looking", name: "smaller", words: "Farther", key: "−", run: (e) => e.enlarge(-1) },
  { group: "Looking", name: "whole", words: "The whole width", key: "0", run: (e) => e.enlarge(0) },
  { group: "Looking", name: "turn", words: "Turn the tube: this column to the middle", run: (e) => e.turn() },
  { group: "Looking", name: "turn-back", words: "Turn the tube back", run: (e) => e.ask({ middle: "" }) },
  { group: "Looking", name: "boxed", words: "Of motifs that repeat one, boxed, or all", run: (e) => box(e) },
  { group: "Looking", name: "seeing", words: "What is shown on the chart", run: (e) => e.margin.open(e.root.querySelector("#chart-seeing")) },
  { group: "Looking", name: "commands", words: "What can I do here?", key: "?", run: (e) => e.panel.toggle(true) },
  { group: "Taking back and keeping", name: "undo", words: "Undo", key: "Ctrl Z", run: (e) => e.history.undo() },
  { group: "Taking back and keeping", name: "redo", words: "Redo", key: "Ctrl Shift Z", run: (e) => e.history.redo() },
  { group: "Taking back and keeping", name: "moment", words: "Give this moment a name", run: (e) => e.moment() },
];

export const byName = new Map([...commands, { name: "whole-chart", run: (e) => whole(e) }].map((c) => [c.name, c]));
