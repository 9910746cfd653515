// The events by which modules of the page tell each other something without
// knowing each other. They are used by their names here, never by a string.

// event returns a kind of event on the document. tell sends it, and returns
// false if a listener prevented it; hear calls f(detail, event) for each.
function event(name, options) {
  const type = `thenar:${name}`;
  return {
    tell: (detail) => document.dispatchEvent(new CustomEvent(type, { ...options, detail })),
    hear: (f) => document.addEventListener(type, (e) => f(e.detail, e)),
  };
}

// round: somebody points at a round. { section, round, by }; by is "thread" or
// "chart", whichever told it. Told and heard by thread.js and chart/main.js;
// told by chart/editor.js.
export const round = event("round");

// painted: strokes came, our own or somebody else's, and what follows from the
// chart is out of date. Told by chart/main.js, heard by measure.js and print.js.
export const painted = event("painted");

// view: the address names another view of the chart, or the marks that have no
// place in it have to be listed anew. Told by chart/editor.js,
// chart/lost.js and chart/main.js, heard by measure.js.
export const view = event("view");

// swapped: a part of the page with a chart was replaced. { root }. Told by
// measure.js, heard by chart/main.js.
export const swapped = event("swapped");

// sheet: a stroke changed numbers of the form, or the choices of the pattern were
// kept, which are saved already. { edits, revision }. Told by chart/editor.js and
// print.js, heard by measure.js.
export const sheet = event("sheet");

// decided: another window saved the form. { revision }. Told by chart/main.js,
// heard by measure.js.
export const decided = event("decided");

// restored: a backup was put back, or the page belongs to another file. A
// listener that holds something which a reload would lose prevents the reload.
// Told by chart/live.js and chart/main.js, heard by chart/main.js, then by
// measure.js.
export const restored = event("restored", { cancelable: true });

// replaced: parts of the page that follow from its numbers or from its chart came
// anew. Told by measure.js, heard by chart/main.js and stops.js.
export const replaced = event("replaced");

// stored: the form of the mitt was saved, here or in another window, and is shown.
// Told by measure.js, heard by print.js.
export const stored = event("stored");
