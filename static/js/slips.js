// Slips of the plan's numbers, and folds that stay as they were left. A number
// opens its slip by itself; here its text is taken in hand, and Escape puts the
// slip away.

import { careful } from "./storage.js";

export function startSlips(document) {
  document.addEventListener("click", (event) => {
    const summary = event.target.closest?.('details[name="slip"] > summary');
    if (summary) setTimeout(() => take(summary.parentElement));
  });
  document.addEventListener("click", (event) => {
    const key = event.target.closest?.("button[data-slip]")?.dataset.slip;
    if (key) step(document, key);
  });
  document.addEventListener("keydown", (event) => {
    const slip = event.key === "Escape" && event.target.closest?.('details[name="slip"][open]');
    if (!slip) return;
    slip.open = false;
    slip.querySelector("summary").focus();
  });
  document.addEventListener("toggle", (event) => {
    if (event.target.matches?.('details[name="slip"]')) makeRoom(document);
  }, true);
  window.addEventListener("resize", () => makeRoom(document));
  for (const fold of document.querySelectorAll("details[data-remembers]")) remember(fold);
}

// makeRoom lays an open slip into the margin beside its number. On a phone, which
// has none, it lies under the hand: what follows makes room, and a thread leads
// up to its number.
export function makeRoom(document) {
  const hand = document.querySelector(".drawing > .hand");
  const curves = document.querySelector(".drawing > .curves");
  const slip = document.querySelector('details[name="slip"][open] > .slip');
  if (curves) curves.style.marginTop = "";
  if (!slip) return;
  const thread = slip.querySelector(".thread");
  Object.assign(slip.style, { top: "", bottom: "" });
  Object.assign(thread.style, { top: "", bottom: "", height: "" });
  if (!matchMedia("(max-width: 46rem)").matches) {
    keepIn(slip, thread, hand.parentElement);
    return;
  }
  slip.style.top = `${hand.offsetTop + hand.offsetHeight + 12}px`;
  curves.style.marginTop = `${slip.offsetHeight + 32}px`;
  thread.style.height = `${slip.getBoundingClientRect().top - slip.parentElement.getBoundingClientRect().top - 12}px`;
}

// keepIn lays a slip beside its number, and all of it within the drawing.
function keepIn(slip, thread, drawing) {
  if (getComputedStyle(slip.parentElement).position === "static") return; // it has a place of its own
  const number = slip.parentElement.getBoundingClientRect();
  const box = drawing.getBoundingClientRect();
  const middle = number.top + number.height / 2;
  const top = Math.max(Math.min(middle - 51, box.bottom - slip.offsetHeight - 8), box.top + 8);
  Object.assign(slip.style, { top: `${top - number.top}px`, bottom: "auto" });
  Object.assign(thread.style, { top: `${middle - top - 2}px`, bottom: "auto" });
}

// take selects the text of a slip's number, so that typing replaces it.
function take(slip) {
  const field = slip.open && slip.querySelector("input[data-keep]");
  if (!field) return;
  field.focus({ preventScroll: true });
  field.select();
  makeRoom(document);
  slip.querySelector(".slip").scrollIntoView({ block: "nearest" });
}

// step opens the slip of another number, with the way on to the next in hand.
function step(document, key) {
  const slip = document.querySelector(`.numbers > [data-key="${CSS.escape(key)}"] > details`);
  slip.open = true;
  (slip.querySelector("button[data-slip]") ?? slip.querySelector("summary")).focus({ preventScroll: true });
  makeRoom(document);
  slip.querySelector(".slip").scrollIntoView({ block: "nearest" });
}

// toLadder shows the plan's numbers. On a phone they stand where the form is
// while it is open.
export function toLadder(document) {
  const ladder = document.getElementById("ladder");
  if (!ladder) return false;
  const measure = document.getElementById("measure");
  if (measure && getComputedStyle(ladder).display === "none") measure.open = false;
  ladder.scrollIntoView({ block: "start" });
  ladder.querySelector('summary[tabindex="0"]')?.focus({ preventScroll: true });
  return true;
}

// toNumber opens the slip that a number stands in.
export function toNumber(document, number) {
  toLadder(document);
  scrollTo(0, 0); // the ladder is seen as a whole, as far as it can be
  const slip = number.closest('details[name="slip"]');
  slip.open = true;
  take(slip);
  number.querySelector("input[data-keep]")?.focus({ preventScroll: true });
  return true;
}

// remember opens a fold as it was left in this browser, and notes it from then
// on.
function remember(fold) {
  const key = `thenar:fold:${fold.dataset.remembers}`;
  if (careful(() => localStorage.getItem(key)) === "open") fold.open = true;
  fold.addEventListener("toggle", () => careful(() => localStorage.setItem(key, fold.open ? "open" : "folded")));
}

// openFolds returns a function that opens, in what a part of the page is
// replaced by, the folds that are open in it now.
export function openFolds(place) {
  const name = (fold) => fold.id || `${fold.closest("[data-key]")?.dataset.key} ${fold.className} ${fold.querySelector("summary").textContent.replace(/\d+/g, "")}`;
  const slip = (fold) => (fold.matches('[name="slip"]') ? fold.closest("[data-key]").dataset.key : name(fold));
  const open = new Set([...place.querySelectorAll("details[open]")].map(slip));
  return () => {
    for (const fold of place.querySelectorAll("details")) if (open.has(slip(fold))) fold.open = true;
  };
}
