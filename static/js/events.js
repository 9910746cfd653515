// Every event by which a module of the page tells others something without
// knowing them. Each is told and heard by its name here, nowhere by a string.

// event is a kind of news on the document. tell returns false where it may be
// prevented and somebody did; hear calls f(detail, event).
function event(name, options) {
  const type = `thenar:${name}`;
  return {
    tell: (detail) => document.dispatchEvent(new CustomEvent(type, { ...options, detail })),
    hear: (f) => document.addEventListener(type, (e) => f(e.detail, e)),
  };
}

// round: a round is pointed at. { section, round, by } with by "thread" or
// "chart", who told it. Told and heard by thread.js and chart/main.js; told by
// chart/editor.js.
export const round = event("round");

// painted: strokes have come, our own or somebody else's, and what follows
// from the chart is no longer right. Told by chart/main.js, heard by measure.js.
export const painted = event("painted");

// view: the address names another view of the chart, or what has no place in it
// is to be listed anew. Told by chart/editor.js and chart/main.js, heard by
// measure.js.
export const view = event("view");

// swapped: a part of the page with a chart was put in its place anew. { root }.
// Told by measure.js, heard by chart/main.js.
export const swapped = event("swapped");

// sheet: a stroke changed numbers of the form, which are saved already.
// { edits, revision }. Told by chart/editor.js, heard by measure.js.
export const sheet = event("sheet");

// decided: another window saved the form. { revision }. Told by chart/main.js,
// heard by measure.js.
export const decided = event("decided");

// restored: a backup was put back, or the page's file is another. Whoever holds
// more than a new page would prevents that one is made. Told by chart/live.js
// and chart/main.js, heard by chart/main.js, then by measure.js.
export const restored = event("restored", { cancelable: true });
