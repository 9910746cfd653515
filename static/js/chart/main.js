// Takes over the chart of the page, which comes complete from the server:
// without this script the chart can be read, with it it can be painted.
//
// The files build on each other in one direction; those up to commands touch no
// page, and Node tests them on cases that Go writes to testdata/chart:
//   edits < row < model < ledger, float, cells, selection, strands, commands < repeats < borders
//   < bound < tools, history, carry, strokes, balance, here < paths, svg, knit, marks, fives < fabric < over
//   < frame, where, arrive, page < view, ghost, zoom, keys, pinch, rulers, needle, place, strip, sight, remember, told, upright, boxed
//   < tracing < sentence < menu, lost, panel, carried < margin, motifs, laid, toolbar, pointer, live < editor < main
//
// A cell is named by section, round and column, always as on the right hand, so
// that a mark outlives the plan that it was painted on. A row arrives as runs of
// like cells, and is unpacked when it is needed. What a stroke changes is drawn
// in the next frame.
import * as events from "../events.js";
import { noConnection, postJSON } from "../outbox.js";
import { kept as keptAt } from "../storage.js";
import { isBoxed } from "./boxed.js";
import { Editor, ready } from "./editor.js";
import { act } from "./keys.js";
import { Live } from "./live.js";
import { remembered, rememberView } from "./remember.js";
import { Selection } from "./selection.js";
import { Strokes } from "./strokes.js";
import { turned } from "./upright.js";

const outboxes = new Map(); // one for each chart, kept when the chart is replaced
let editor;
let started = false; // the chart was shown before on this page
let leaving = false; // the page is being loaded anew, and this browser keeps what is unsent

// kept outlives a replaced chart, and all but what was copied and said a visit.
const work = remembered("work");
const left = work.get() ?? {};
const kept = {
  tool: { shape: "free", layer: "stitch", value: "p", mirror: false, ...left.tool },
  selection: new Selection(),
  clipboard: undefined,
  cursor: left.cursor,
  from: undefined,
  sizes: left.sizes ?? {}, // by view, as are the places where it was scrolled to
  scrolls: left.scrolls ?? {},
  said: "",
};
kept.selection.restore(left.selected ?? []);

// remember keeps how the chart is left.
function remember() {
  if (!editor) return;
  const { tool: { piece: _, ...tool }, cursor, sizes, scrolls, selection } = kept;
  if (tool.shape === "stamp") tool.shape = "free";
  work.set({ tool, cursor, sizes, scrolls, selected: [...selection.keys] });
}

export function start(root) {
  const place = root.querySelector("[data-chart-editor]");
  const data = root.querySelector("#chart-data");
  if (!place || !data) {
    listen(root.querySelector("#measure-form"));
    return;
  }
  editor?.brush.end(); // keeps the stroke under the pointer when the chart is replaced
  leaving = false;
  const focused = document.activeElement === document.body && editor?.hadFocus;
  const page = JSON.parse(data.textContent);
  rememberView(page);
  kept.tool = ready(kept.tool, place.dataset.second);
  editor = new Editor(place.closest("#chart"), page, outboxOf(page), kept);
  editor.view.svg.addEventListener("focus", () => { editor.hadFocus = true; });
  editor.view.svg.addEventListener("blur", (event) => { if (event.relatedTarget) editor.hadFocus = false; });
  if (focused) editor.view.svg.focus({ preventScroll: true });
  tellChange();
  turned(editor);
  editor.choose({}); // a brush that is ready may want upright columns
  if (!started && !kept.selection.empty) editor.announce("Still marked off from your last visit.");
  started = true;
  if (!isBoxed(editor)) editor.told.hint();
  if (editor.outbox.unsent) {
    say("unsaved");
    return;
  }
  editor.root.querySelector("#chart-saved").dataset.state = "saved";
  if (editor.outbox.older) carried(editor.outbox, page);
}

// listen opens the outbox of a page that shows no chart: it hears what happens
// to the mitt elsewhere, and delivers what an earlier visit could not.
function listen(form) {
  const { chart: href, mitt, revision } = form?.dataset ?? {};
  if (href) outboxOf({ href, mitt, revision: Number(revision), restored: Number(form.elements.restored.value) });
}

// settled waits for the answer to each stroke that is on its way. Undefined: none
// is.
export function settled() {
  const under = [...outboxes.values()].find((outbox) => outbox.sending);
  return under?.answered.then(settled);
}

// carried says what became of strokes from before a backup was put back.
function carried(outbox, { lost }) {
  outbox.older = false;
  editor.announce(`Your strokes from before the backup was put back are laid on it${lost.length > 0 ? "; some have no place: see below" : ""}.`);
}

// outboxOf returns the outbox of this chart. A new one begins with what an
// earlier visit could not deliver.
function outboxOf(data) {
  let outbox = outboxes.get(data.href);
  if (outbox?.apart(data)) {
    outbox.renew(data);
    outbox.live.renew();
  }
  if (!outbox) {
    const { href, revision, restored, mitt } = data;
    outbox = new Strokes({ href, revision, restored, mitt, send: postJSON, keep: keptAt(`thenar:strokes:${href}`), on });
    outboxes.set(data.href, outbox);
    queueMicrotask(() => outbox.push());
    outbox.live = new Live(outbox);
  }
  return outbox;
}

// changed says what a change of the plan did.
function changed({ request: { change, undo }, reply: { said = "", edits = [] } }) {
  const ofSheet = edits.filter((e) => e.layer === "sheet");
  if (undo && ofSheet.length > 0) {
    const motifs = ofSheet.every((e) => e.column.startsWith("repeats["));
    return `${motifs ? "The motifs are as they were." : "The plan is as it was."} ${said}`.trim();
  }
  if (!change || change.kind === "move") return said;
  const { name, noun } = editor?.model.rows.find((row) => row.section === change.section) ?? {};
  const first = change.round - ((change.round - 1) % 2); // of a pair of rows
  if (noun === "row" && change.kind === "remove") return `Rows ${first} and ${first + 1} of the ${name} are taken out. ${said}`.trim();
  if (noun === "row") return `Two plain rows are put in above row ${first + 1} of the ${name}. ${said}`.trim();
  const round = `ound ${change.round} of the ${name ?? change.section}`;
  const words = change.kind === "remove" ? `R${round} is taken out.` : `A plain round is put in above r${round}.`;
  return `${words} ${said}`.trim();
}

// tellChange says a change of the plan loudly, with the way back beside it.
function tellChange() {
  const back = kept.undone ? { words: "Redo", run: () => editor.run("redo") } : { words: "Undo", run: () => editor.run("undo") };
  if (kept.said) editor?.announce(kept.said, [back], { loud: true });
}

// on is told what becomes of the strokes.
function on(what, detail) {
  if (what === "applied") {
    editor?.history.applied(detail);
    kept.said = changed(detail); // said again when the chart is replaced
    kept.undone = Boolean(detail.request.undo);
    tellChange();
  }
  if (what === "heard") {
    editor?.history.heard(detail);
    if (detail.edits.length > 0) events.painted.tell();
    if (editor && isBoxed(editor)) events.view.tell();
  }
  if (what === "refused") {
    editor?.history.refused(detail);
    const message = detail.lines.join(" ");
    editor?.announce(message);
    if (!editor) document.getElementById("saved").textContent = `A stroke of the chart was not taken: ${message}`;
  }
  if (what === "decided") events.decided.tell({ revision: detail });
  if (what === "saving" || what === "saved" || what === "unsaved") say(what, detail?.why);
  if (what === "unsaved" && detail.again) editor?.byRule.waits();
  if (what === "stale") events.restored.tell();
  if (what === "saved") {
    events.painted.tell();
    if (editor && isBoxed(editor)) events.view.tell(); // something was taken back
    if (editor?.outbox.late > 0) { // the plan may have changed since: list anew what has no place now
      editor.outbox.late = 0;
      events.view.tell();
    }
  }
  editor?.toolbar.show();
}

function say(state, why = noConnection) {
  const place = editor?.root.querySelector("#chart-saved");
  if (!place) return;
  const now = new Date().toTimeString().slice(0, 5);
  place.textContent = { saving: "saving…", saved: "saved", unsaved: `not saved: ${why.replace(/\.$/, "")}; kept here` }[state];
  place.dataset.state = state;
  const bar = document.getElementById("saved");
  if (!bar || bar.dataset.state === "unsaved") return;
  if (state === "saved") bar.textContent = `saved ${now}`; // one time on the page
  if (state === "unsaved") bar.textContent = ""; // it would say the opposite of what stands below
}

events.swapped.hear(({ root }) => start(root));
events.replaced.hear(() => editor?.sight.draw()); // the small mitt may be one of them
events.round.hear(({ section, round, by }) => {
  if (by === "chart" || !editor) return;
  editor.lit = undefined;
  editor.view.thread(editor.model.byKey.get(`${section} ${round}`)?.y ?? 0);
});
// Taking back is the chart's also when nothing on it has the focus: otherwise the
// browser would take back what was typed into a field before. So is letting go of
// what is marked off, and a yarn's number where no field has the focus.
document.addEventListener("keydown", (event) => {
  const { run, yarn } = act(event) ?? {};
  if (yarn && editor && !event.defaultPrevented && event.target === document.body) return editor.toolbar.takeYarn(yarn);
  const ours = run === "drop" || ((run === "undo" || run === "redo") && (event.ctrlKey || event.metaKey));
  if (event.defaultPrevented || !editor || !ours) return;
  if (event.target.closest?.("input, textarea, select") || (run === "drop" && event.target !== document.body && !editor.root.contains(event.target))) return;
  event.preventDefault();
  editor.run(run);
});
window.addEventListener("online", () => {
  for (const outbox of outboxes.values()) outbox.push();
});
// A page that is loaded anew takes up what this browser keeps. What it could not
// keep is only on this page, which therefore has to stay.
events.restored.hear((_, event) => {
  editor?.brush.end();
  if (editor?.outbox.kept) leaving = true;
  else if (editor) event.preventDefault();
});
window.addEventListener("pagehide", () => {
  editor?.brush.end();
  remember();
});
document.addEventListener("visibilitychange", () => document.hidden && remember());
window.addEventListener("beforeunload", (event) => {
  if (editor?.outbox.unsent && !leaving) event.preventDefault();
});
start(document);
