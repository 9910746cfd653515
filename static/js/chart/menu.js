// All commands of the chart, for the list and for the keys. Each acts on an
// Editor.
import { erase, flip, here, paintAll, paste, piece, repeat } from "./commands.js";

export const commands = [
  { group: "Paint", name: "paint", words: "Paint the cell, or what is marked off", key: "Enter", run: (e) => e.paint() },
  { group: "Paint", name: "erase", words: "Take the cell, or what is marked off, back to the plan", key: "Backspace", run: (e) => e.erase() },
  { group: "Paint", name: "fill", words: "All alike that hang together", run: (e) => e.withShape("fill") },
  { group: "Paint", name: "mirror-brush", words: "Both edges of the gusset: on or off", key: "e", run: (e) => e.choose({ mirror: !e.tool.mirror }) },
  { group: "How far a mark reaches", name: "reach-look", words: "Look: point and scroll", key: "l", run: (e) => e.choose({ shape: "look" }) },
  { group: "How far a mark reaches", name: "reach-free", words: "Stitch by stitch", key: "s", run: (e) => e.choose({ shape: "free" }) },
  { group: "How far a mark reaches", name: "reach-line", words: "A run of stitches", key: "n", run: (e) => e.choose({ shape: "line" }) },
  { group: "How far a mark reaches", name: "reach-rectangle", words: "A block of stitches", key: "b", run: (e) => e.choose({ shape: "rectangle" }) },
  { group: "How far a mark reaches", name: "reach-fill", words: "All alike", key: "a", run: (e) => e.choose({ shape: "fill" }) },
  { group: "Mark off", name: "reach-select", words: "Mark off with the pointer", key: "m", run: (e) => e.choose({ shape: "select" }) },
  { group: "Mark off", name: "select-round", words: "Mark off the round", run: (e) => e.select((s) => s.round(e.model, e.cursor.y)) },
  { group: "Mark off", name: "select-column", words: "Mark off the column", run: (e) => e.select((s) => s.column(e.model, e.cursor.y, e.cursor.x)) },
  { group: "Mark off", name: "select-all", words: "Mark off everything", key: "Ctrl A", run: (e) => e.select((s) => s.all(e.model)) },
  { group: "Mark off", name: "drop", words: "Drop the stroke, then what is marked off", key: "Esc", run: (e) => e.drop() },
  { group: "Copy", name: "copy", words: "Copy", key: "Ctrl C", run: (e) => copy(e) },
  { group: "Copy", name: "cut", words: "Cut", key: "Ctrl X", run: (e) => cut(e) },
  { group: "Copy", name: "paste", words: "Paste with its lower right corner at the cursor", key: "Ctrl V", run: (e) => put(e) },
  { group: "Copy", name: "repeat-across", words: "Repeat across the rounds", run: (e) => again(e, false) },
  { group: "Copy", name: "repeat-up", words: "Repeat up to the last round", run: (e) => again(e, true) },
  { group: "Copy", name: "mirror", words: "Mirror what is marked off, left for right", run: (e) => turn(e, false) },
  { group: "Copy", name: "upside-down", words: "Turn what is marked off upside down", run: (e) => turn(e, true) },
  { group: "Copy", name: "keep-motif", words: "Keep what is marked off as a motif", run: (e) => e.motifs.keep() },
  { group: "Rounds", name: "insert-round", words: "Put a plain round in above this one", key: "p", run: (e) => e.change("insert") },
  { group: "Rounds", name: "remove-round", words: "Take this round out", key: "t", run: (e) => e.change("remove") },
  { group: "Rounds", name: "reach-move", words: "Move an increase with the pointer", key: "i", run: (e) => e.choose({ shape: "move" }) },
  { group: "Rounds", name: "increase-up", words: "Move this round’s increases up a round", run: (e) => e.change("move", 1) },
  { group: "Rounds", name: "increase-down", words: "Move this round’s increases down a round", run: (e) => e.change("move", -1) },
  { group: "Rounds", name: "needles", words: "This round is on the needles, or is it not", run: (e) => e.history.stroke(here(e.model, e.cursor.y)) },
  { group: "Notes", name: "note", words: "Note on the cell", run: (e) => e.note(false) },
  { group: "Notes", name: "note-round", words: "Note on the round", run: (e) => e.note(true) },
  { group: "Look", name: "larger", words: "Larger", key: "+", run: (e) => e.enlarge(1) },
  { group: "Look", name: "smaller", words: "Smaller", key: "−", run: (e) => e.enlarge(-1) },
  { group: "Look", name: "whole", words: "The whole chart", key: "0", run: (e) => e.enlarge(0) },
  { group: "Look", name: "turn", words: "Turn the tube: this column in the middle", run: (e) => e.turn() },
  { group: "Look", name: "turn-back", words: "Turn the tube back", run: (e) => e.ask({ middle: "" }) },
  { group: "Look", name: "seeing", words: "What is seen on the chart", run: (e) => e.margin.open(e.root.querySelector("#chart-seeing")) },
  { group: "Look", name: "commands", words: "What can I do here?", key: "?", run: (e) => e.panel.toggle(true) },
  { group: "Keep", name: "undo", words: "Undo", key: "Ctrl Z", run: (e) => e.history.undo() },
  { group: "Keep", name: "redo", words: "Redo", key: "Ctrl Shift Z", run: (e) => e.history.redo() },
  { group: "Keep", name: "moment", words: "Give this moment a name", run: (e) => e.moment() },
  { group: "Keep", name: "words", words: "The words of these rounds", run: (e) => e.words() },
];

export const byName = new Map(commands.map((c) => [c.name, c]));

// spots returns the selected places, or the one under the cursor.
export function spots(e) {
  const places = e.selection.places(e.model);
  return places.length > 0 ? places : [[e.cursor.y, e.cursor.x]];
}

export function paintSpots(e) {
  const { layer, value, erase: back } = e.tool;
  e.history.stroke(back ? erase(e.model, spots(e)) : paintAll(e.model, spots(e), layer, value));
}

export function eraseSpots(e) {
  e.history.stroke(erase(e.model, spots(e)));
}

function copy(e) {
  const places = spots(e);
  e.clipboard = piece(e.model, places);
  e.announce(`${places.length} ${places.length === 1 ? "cell" : "cells"} copied`);
}

function cut(e) {
  copy(e);
  eraseSpots(e);
}

function put(e) {
  if (!e.clipboard) e.announce("nothing was copied yet");
  else e.history.stroke(paste(e.model, e.clipboard, e.cursor.y, e.cursor.x));
}

function again(e, up) {
  const box = e.selection.box(e.model);
  if (!box) e.announce("mark off first what is to be repeated");
  else e.history.stroke(repeat(e.model, e.selection.places(e.model), box, up));
}

function turn(e, over) {
  const box = e.selection.box(e.model);
  if (!box) e.announce("mark off first what is to be turned");
  else e.history.stroke(flip(e.model, e.selection.places(e.model), box, over));
}
