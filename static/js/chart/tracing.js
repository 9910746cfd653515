// What is done with what is marked off: it is traced, lifted off, laid down,
// turned, and laid again beside and above itself. Each acts on an Editor.
import { whole } from "./boxed.js";
import { erase, flip, laidAcross, laidUp, paintAll, piece, repeat } from "./commands.js";
import { byTouch } from "./page.js";

// stitches counts stitches in words.
export function stitches(n) {
  return n === 1 ? "1 stitch" : `${n} stitches`;
}

// spots returns the selected places, or the one under the cursor.
function spots(e) {
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

export function trace(e) {
  const places = spots(e);
  e.clipboard = piece(e.model, places);
  e.announce(`${stitches(places.length)} traced.`);
}

export function lift(e) {
  trace(e);
  eraseSpots(e);
  e.announce(`${stitches(e.clipboard.length)} lifted off; lay them down where you like.`);
}

export function lay(e) {
  if (!e.clipboard) e.announce("Trace some stitches first.");
  else takeInHand(e, e.clipboard);
}

// takeInHand takes a piece in hand, to be laid down by a press or with Enter.
export function takeInHand(e, piece) {
  const { shape, before } = e.tool;
  e.choose({ shape: "stamp", piece, before: shape === "stamp" ? before : shape });
  whole(e);
  e.view.svg.focus({ preventScroll: true });
  const touch = byTouch();
  const acts = [{ words: "Leave it", run: () => leave(e) }];
  if (touch) acts.unshift({ words: "Lay it here", run: () => e.paint() });
  e.announce(`Press where its lower right stitch goes.${touch ? "" : " Enter lays it, Escape leaves it."}`, acts);
}

// laidDown puts the brush back in hand once a piece was laid down.
export function laidDown(e) {
  const { piece } = e.tool;
  leave(e);
  e.announce("Laid down.", [{ words: "Lay it again", run: () => takeInHand(e, piece) }]);
}

// leave lets go of the piece in hand.
export function leave(e) {
  e.choose({ shape: e.tool.before ?? "free", before: undefined });
  e.announce("");
}

// layRound repeats what is marked off round the hand, and says what is left over;
// centred lays the rest in equal parts at both ends.
export function layRound(e) {
  const box = e.selection.box(e.model);
  if (!box) {
    e.announce("Mark off the stitches to repeat first.");
    return;
  }
  const places = e.selection.places(e.model);
  const cells = piece(e.model, places);
  const how = laidAcross(e.model, box);
  e.history.stroke(repeat(e.model, cells, box, 0));
  const acts = how.middle === 0 ? [] : [{
    words: "Centre it",
    run: () => {
      e.history.stroke(repeat(e.model, cells, box, how.middle));
      e.announce("The rest is shared by both ends.");
    },
  }];
  e.announce(laidWords(how), acts);
}

// often says how many times.
function often(times) {
  return times === 1 ? "Once" : `${times} times`;
}

// laidWords says how what was laid round the hand comes out.
export function laidWords({ times, left, right, gaps, uneven }) {
  if (times === 0) return "It stands whole nowhere; the rounds differ too much.";
  const round = often(times);
  if (gaps) return `${round} whole; gaps in the round break the others.`;
  if (uneven) return `${round} in every round; the ends differ.`;
  if (left + right === 0) return `${round}; it comes out even.`;
  const side = left === 0 ? " at the right" : right === 0 ? " at the left" : `: ${left} at the left, ${right} at the right`;
  return `${round}; ${stitches(left + right)} left over${side}.`;
}

// layUp repeats what is marked off up to the last round, and says how it ends.
export function layUp(e) {
  const box = e.selection.box(e.model);
  if (!box) {
    e.announce("Mark off the stitches to repeat first.");
    return;
  }
  const { times, over, edits } = laidUp(e.model, piece(e.model, e.selection.places(e.model)), box);
  e.history.stroke(edits);
  const round = often(times);
  e.announce(over === 0 ? `${round}, up to the last round.` : `${round}; ${over === 1 ? "1 round" : `${over} rounds`} left over at the top.`);
}

// turn turns over what is marked off, or stands it on its head, and says when
// that changes nothing.
export function turn(e, over) {
  const places = e.selection.places(e.model);
  if (places.length === 0) {
    e.announce("Mark off the stitches to turn first.");
    return;
  }
  const edits = flip(e.model, places, e.selection.box(e.model), over);
  e.history.stroke(edits);
  if (edits.length === 0) e.announce(`${places.length === 1 ? "One stitch is" : "They are"} the same ${over ? "upside down" : "turned over"}.`);
}
