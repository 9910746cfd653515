// What the Tab key stops at. A row of like things is one stop, and the arrows go
// along it (WAI-ARIA Authoring Practices, toolbar); the key F8 leads to the desks,
// and from there to the work.
import * as events from "./events.js";

const rows = '[role="toolbar"]';
const stops = "a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex]";
const typed = 'textarea, input:not([type="radio"], [type="checkbox"], [type="range"], [type="color"], [type="file"])';

export function startStops(document) {
  const lasting = new Map(); // what had the focus last in each row: rows are replaced
  const all = () => document.querySelectorAll(rows);
  const tidyAll = () => all().forEach((row) => tidy(row, lasting.get(nameOf(row))));
  document.addEventListener("focusin", ({ target }) => {
    const row = target.closest(rows);
    const item = row && itemsOf(row).find((one) => one === target || (one.matches("summary") && one.parentElement.contains(target)));
    if (!item) return;
    lasting.set(nameOf(row), keyOf(item));
    tidy(row, keyOf(item));
  });
  document.addEventListener("keydown", (event) => event.key === "Tab" && tidyAll(), { capture: true }); // what was the stop may be gone
  document.addEventListener("keydown", walk);
  document.addEventListener("keydown", (event) => leads(event) && lead(document, event));
  document.addEventListener("click", (event) => {
    const skip = event.target.closest?.("a.skip");
    if (skip && reach(document, skip)) event.preventDefault();
  });
  // The rest of this key press would open what has the focus by then.
  document.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || !bare(event) || !event.target.matches?.("a.skip")) return;
    event.preventDefault();
    document.addEventListener("keyup", () => reach(document, event.target), { once: true });
  });
  events.replaced.hear(tidyAll);
  tidyAll();
}

const nameOf = (row) => row.getAttribute("aria-label");
const keyOf = (item) => item.dataset.keep ?? item.getAttribute("href") ?? item.textContent;
const itemsOf = (row) => [...row.querySelectorAll(row.dataset.along ?? "a[href], button")];
const bare = (event) => !event.ctrlKey && !event.metaKey && !event.altKey && !event.shiftKey;
const free = (item) => !item.disabled && item.checkVisibility({ visibilityProperty: true });

// tidy leaves one stop in a row: what had the focus last, else what is chosen in
// it, else the first.
function tidy(row, key) {
  const items = itemsOf(row);
  const list = items.filter(free);
  const stop = list.find((item) => keyOf(item) === key) ?? list.find((item) => item.matches('[aria-pressed="true"], [aria-current]')) ?? list[0] ?? items[0];
  for (const item of items) item.tabIndex = item === stop ? 0 : -1;
}

// walk goes along a row.
function walk(event) {
  const row = event.target.closest?.(rows);
  if (!row || event.defaultPrevented || !bare(event)) return;
  const list = itemsOf(row).filter(free);
  const at = list.indexOf(event.target);
  if (at < 0) return;
  const to = along(list.map((item) => item.getBoundingClientRect()), at, event.key, row.getAttribute("aria-orientation") === "vertical");
  if (to === undefined) return;
  event.preventDefault();
  list[to].focus();
}

// along returns which of a row's boxes a key leads to from one of them; undefined:
// the key is not the row's. In a row that is broken into lines, up and down lead to
// what lies nearest in the next line.
export function along(boxes, at, key, upright) {
  const last = boxes.length - 1;
  if (key === "Home") return 0;
  if (key === "End") return last;
  const step = (upright ? { ArrowUp: -1, ArrowDown: 1 } : { ArrowLeft: -1, ArrowRight: 1 })[key];
  if (step) return Math.min(Math.max(at + step, 0), last);
  const way = !upright && { ArrowUp: -1, ArrowDown: 1 }[key];
  return way ? nearest(boxes, boxes[at], way) : undefined;
}

function nearest(boxes, from, way) {
  const beyond = (box) => (way > 0 ? box.top - from.bottom : from.top - box.bottom);
  const beside = (box) => Math.abs(box.left + box.right - from.left - from.right);
  let found;
  boxes.forEach((box, i) => {
    if (beyond(box) < -1) return; // in the same line, or on the other side
    const before = boxes[found];
    if (!before || beyond(box) < beyond(before) - 1 || (beyond(box) < beyond(before) + 1 && beside(box) < beside(before))) found = i;
  });
  return found;
}

// leads reports whether a key press asks for the desks. It is not a single letter,
// of which speech makes words (WCAG 2.2, 2.1.4), and what is typed into keeps it:
// there it may change what is being composed.
function leads(event) {
  return event.key === "F8" && bare(event) && !event.defaultPrevented && !event.isComposing && !event.target.matches?.(typed);
}

// lead goes to the present desk on the tape, or from the tape to the work.
function lead(document, event) {
  const [work, desks] = document.querySelectorAll("a.skip");
  const tape = document.getElementById("desks");
  if (reach(document, tape.contains(document.activeElement) ? work : desks)) event.preventDefault();
}

// reach goes to where a skip link leads, and reports whether something there takes
// the focus: in that place, or else the next after it. On the tape it is the
// present desk.
function reach(document, link) {
  const place = document.getElementById(link.hash.slice(1)) ?? document.getElementById("main");
  const list = [...document.querySelectorAll(stops)].filter((e) => e.tabIndex >= 0 && free(e));
  const after = (e) => place.compareDocumentPosition(e) & Node.DOCUMENT_POSITION_FOLLOWING;
  const to = (place.id === "desks" && place.querySelector("[aria-current]")) || list.find((e) => place === e || after(e)) || list.find((e) => e.closest("main"));
  to?.focus();
  return Boolean(to);
}
