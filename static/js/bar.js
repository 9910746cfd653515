// The bar of a mitt: what lies behind its name closes as a drawer does, the
// name is changed in its place, and on a phone the plan's line is folded.
import { startStops } from "./stops.js";

const fold = document.querySelector("[data-plan]");
const narrow = matchMedia("(max-width: 46rem)");
const behind = document.querySelector(".behind");
const summary = behind?.querySelector("summary");
const rename = behind?.querySelector(".rename");

startStops(document);

if (fold) {
  const lay = () => { fold.open = !narrow.matches; };
  narrow.addEventListener("change", lay);
  lay();
}

// close shuts the drawer. The name that was not kept is forgotten, and the focus
// comes back to where it was opened.
function close(back) {
  if (!behind.open) return;
  behind.open = false;
  rename.querySelector(".fault-message").textContent = "";
  rename.elements.name.value = summary.textContent.trim();
  if (back) summary.focus({ preventScroll: true });
}

if (behind) {
  document.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || !behind.open) return;
    event.preventDefault();
    close(behind.contains(document.activeElement) || document.activeElement === document.body);
  });
  document.addEventListener("pointerdown", ({ target }) => {
    if (!behind.open || behind.contains(target)) return;
    const inside = behind.contains(document.activeElement);
    close(false);
    // By then the press has taken the focus to what it pressed, if that takes it.
    if (inside) document.addEventListener("pointerup", () => document.activeElement === document.body && summary.focus({ preventScroll: true }), { once: true });
  });
  behind.addEventListener("focusout", ({ relatedTarget }) => {
    if (relatedTarget && !behind.contains(relatedTarget)) close(false);
  });
  summary.addEventListener("click", () => {
    if (!behind.open) rename.elements.name.value = summary.textContent.trim(); // another window may have changed it
  });
  rename.addEventListener("submit", (event) => keep(event));
}

// keep changes the name without leaving the page. A desk with the mitt's form
// saves it with that; a page that belongs to one version of the mitt is left.
function keep(event) {
  const name = rename.elements.name.value.trim();
  const form = document.getElementById("measure-form");
  if (name === "") {
    event.preventDefault();
    rename.querySelector(".fault-message").textContent = "A mitt needs a name.";
  } else if (form?.dataset.chart) {
    event.preventDefault();
    form.elements.name.value = name;
    for (const kind of ["input", "change"]) form.elements.name.dispatchEvent(new Event(kind, { bubbles: true }));
    kept(name);
  } else if (!document.querySelector('main [name="after"]')) {
    event.preventDefault();
    send(name);
  }
}

async function send(name) {
  const said = rename.querySelector(".fault-message");
  const answer = await fetch(rename.action, { method: "POST", body: new URLSearchParams(new FormData(rename)), redirect: "manual" }).catch(() => undefined);
  const done = answer?.type === "opaqueredirect";
  said.textContent = done ? "" : `Not kept: ${answer ? "a name has 1 to 120 letters" : "no connection"}.`;
  if (done) kept(name);
}

function kept(name) {
  const before = summary.textContent.trim();
  document.title = document.title.replace(before, name);
  summary.querySelector("h1").textContent = name;
  close(true);
}
