// The forms of a try and of its answer. The script sends them, so that what was
// typed stays on the page while the server can't be reached.
import { Outbox, postForm } from "./outbox.js";
import { Pulls } from "./pull.js";
import { Drafts } from "./storage.js";

const again = 2000; // ms before it is sent again
const busy = new Set([429]); // statuses after which it is sent again; after others the page shows the server's message

// outboxOf returns the outbox of a form. It sends { body } until that arrives;
// the answer says which page comes next.
export function outboxOf(href, options) {
  return new Outbox({
    href, send: postForm, wire: ({ body }) => body, arrived: (reply) => typeof reply?.to === "string",
    notNow: busy, first: again, longest: again, ...options,
  });
}

const bare = (why) => why.replace(/\.$/, "");
const begun = (why) => bare(why).replace(/^./, (first) => first.toUpperCase());
const say = (text) => (document.getElementById("try-kept").textContent = text);

function startTry(form) {
  const drafts = new Drafts(form.action);
  const typed = () => {
    const body = new URLSearchParams();
    for (const [name, value] of new FormData(form)) if (typeof value === "string") body.append(name, value);
    return body;
  };
  const outbox = outboxOf(form.action, {
    on: (what, detail) => {
      if (what === "unsaved") say(detail.again ? `${begun(detail.why)}: kept here, and sent as soon as it can be.` : `Not sent: ${bare(detail.why)}. It stays on this page.`);
      if (what === "refused") {
        say("Not kept yet: a field asks for something else.");
        refuse(form, detail.lines);
      }
      if (what === "delivered") {
        drafts.drop();
        location.assign(detail.reply.to);
      }
    },
  });
  for (const what of ["input", "change"]) form.addEventListener(what, () => drafts.keep(typed()));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    say("Keeping it…");
    outbox.replace({ body: new FormData(form) });
  });
  // A round belongs to its part: another part needs another round.
  const drawn = document.querySelector("[data-tried]");
  const pulls = drawn && new Pulls(drawn, form);
  for (const note of form.querySelectorAll("[data-scripted]")) note.hidden = false;
  const moved = () => {
    felt(form);
    follow(form, pulls);
  };
  form.elements.section.addEventListener("change", () => {
    form.elements.round.value = "";
    form.elements.round.focus();
    moved();
  });
  for (const name of ["round", "side"]) form.elements[name].addEventListener("change", moved);
  letGo(form);
  const draft = drafts.kept();
  if (!draft) return;
  for (const [name, value] of draft) {
    const field = form.elements.namedItem(name);
    if (field) field.value = value; // a group of radio buttons takes the value as a whole
  }
  if (draft.get("note")) form.elements.note.closest("details").open = true;
  moved();
  say("What you had typed is here again.");
}

// follow draws the hand as it is at the round in the form, and puts the words of
// the scales into the order of its tapes.
async function follow(form, pulls) {
  const { side, section, round } = form.elements;
  const at = new URLSearchParams({ side: side.value, section: section.value, round: round.value });
  const desk = new URL(form.getAttribute("action"), location).pathname.replace(/tries$/, "desk/try");
  const reply = await fetch(`${desk}?${at}`).catch(() => undefined);
  if (!reply?.ok || at.get("round") !== round.value || at.get("section") !== section.value || at.get("side") !== side.value) return;
  const page = new DOMParser().parseFromString(await reply.text(), "text/html");
  const svg = page.querySelector("[data-tried] svg");
  if (!svg) return;
  form.querySelector("[data-stands]").textContent = page.querySelector("[data-stands]").textContent;
  for (const scale of form.querySelectorAll(".scale")) {
    const name = scale.querySelector("input").name;
    for (const { value } of page.querySelectorAll(`.scale input[name="${CSS.escape(name)}"]`)) scale.append(scale.querySelector(`input[value="${value}"]`).parentElement);
  }
  for (const end of form.querySelectorAll("[data-end]")) {
    const told = page.querySelector(`[data-end="${CSS.escape(end.dataset.end)}"] .help`);
    if (told) end.querySelector(".help").textContent = told.textContent;
  }
  pulls?.draw(document.adoptNode(svg));
}

// letGo lets a radio button that is pressed again say nothing any more.
function letGo(form) {
  const held = new Map();
  form.addEventListener("pointerdown", ({ target }) => {
    const radio = target.closest("label")?.querySelector('input[type="radio"]');
    if (radio) held.set(radio.name, radio.checked && radio);
  });
  form.addEventListener("click", ({ target }) => {
    if (target.type !== "radio" || held.get(target.name) !== target) return;
    target.checked = false;
    held.delete(target.name);
    target.dispatchEvent(new Event("change", { bubbles: true }));
  });
}

// felt shows the questions about what is knitted, and names the zones that are
// not. An answer about one of those is removed.
function felt(form) {
  const section = form.elements.section.value;
  const unfelt = [];
  for (const scale of form.querySelectorAll("[data-felt]")) {
    scale.hidden = !knitted(scale.dataset, section, Number(form.elements.round.value));
    if (!scale.hidden) continue;
    for (const field of scale.querySelectorAll("input")) {
      if (field.type === "radio") field.checked = false;
      else field.value = "";
    }
    if (scale.classList.contains("feel")) unfelt.push(scale.querySelector("legend").textContent);
  }
  const place = form.querySelector("[data-unfelt]");
  place.hidden = unfelt.length === 0;
  place.textContent = `${unfelt.join(", ")}: not knitted yet`;
  tellTop(form);
}

// tellTop says how far above the round the top of the gusset comes. A mitt
// without a gusset has none.
function tellTop(form) {
  const place = form.querySelector("[data-ahead]");
  if (!place) return;
  const { section, round } = form.elements;
  const tops = JSON.parse(document.getElementById("tops").textContent);
  place.textContent = topOf(tops, section.value, round.value);
  place.hidden = place.textContent === "";
}

// topOf returns the text for a round of a section. tops has, by section, the
// texts after each round of the gusset, from 0 on.
export function topOf(tops, section, round) {
  return /^\s*[1-9]\d*\s*$/.test(round) ? (tops[section]?.[Number(round)] ?? "") : "";
}

// knitted reports whether a zone is knitted once a round of a section is. felt
// names the sections in which it always is; whole names a section, and the
// round from which it is there.
export function knitted({ felt, whole = "" }, section, round) {
  const [part, last] = whole.split(" ");
  return felt.split(" ").includes(section) || (part === section && round >= Number(last));
}

// refuse shows each message at its field, and leads to the first.
function refuse(form, lines) {
  for (const place of form.querySelectorAll("[data-fault]")) place.textContent = "";
  const rest = [];
  let first;
  for (const line of lines) {
    const at = line.indexOf(": ");
    const name = line.slice(0, at);
    const place = form.querySelector(`[data-fault="${CSS.escape(name)}"]`);
    if (!place) {
      rest.push(line);
      continue;
    }
    place.textContent = line.slice(at + 2);
    for (let up = place.closest("details"); up; up = up.parentElement.closest("details")) up.open = true;
    const field = form.elements.namedItem(name) ?? place.parentElement.querySelector("input");
    first ??= field instanceof RadioNodeList ? field[0] : field;
  }
  document.getElementById("try-says").textContent = ["Not kept yet: look at the fields that say so.", ...rest].join(" ");
  first?.focus();
}

function startAnswer(form) {
  const outbox = outboxOf(form.action, {
    on: (what, detail) => {
      if (what === "unsaved") say(detail.again ? `${begun(detail.why)}: your answer is kept here, and sent as soon as it can be.` : `Not sent: ${detail.why}`);
      if (what === "refused") say(detail.lines.join(" "));
      if (what === "delivered") location.assign(detail.reply.to);
    },
  });
  form.querySelector(".weigh")?.setAttribute("hidden", "");
  let asked = 0;
  const weigh = async () => {
    const number = ++asked;
    const place = form.querySelector('[data-fragment="onward"]');
    place.setAttribute("aria-busy", "true");
    const reply = await fetch(`${form.dataset.weigh}?${new URLSearchParams(new FormData(form))}`).catch(() => undefined);
    if (number !== asked) return;
    if (reply?.ok) {
      const page = new DOMParser().parseFromString(await reply.text(), "text/html");
      for (const name of ["onward", "drawing"]) {
        document.querySelector(`[data-fragment="${name}"]`).replaceChildren(...page.querySelector(`[data-fragment="${name}"]`).childNodes);
      }
      suggest(form, page);
      say("");
    } else {
      say("No connection: what follows below is as it was with the ticks before.");
    }
    place.setAttribute("aria-busy", "false");
  };
  form.addEventListener("change", weigh);
  form.addEventListener("submit", (event) => {
    if (event.submitter?.formMethod === "get") return; // it looks at the answer without taking it
    event.preventDefault();
    say("Keeping it…");
    const body = new FormData(form);
    if (event.submitter?.name) body.set(event.submitter.name, event.submitter.value);
    outbox.replace({ body: new URLSearchParams(body) });
  });
}

// suggest shows the corrections anew after a tick: where the gauge is declined,
// what was felt counts for more.
function suggest(form, page) {
  const place = form.querySelector('[data-fragment="corrections"]');
  const focus = form.ownerDocument.activeElement?.value;
  place.replaceChildren(...page.querySelector('[data-fragment="corrections"]').childNodes);
  if (focus) form.querySelector(`input[name="keep"][value="${CSS.escape(focus)}"]`)?.focus();
}

const tryForm = globalThis.document?.getElementById("try-form");
if (tryForm) startTry(tryForm);
const answerForm = globalThis.document?.getElementById("answer-form");
if (answerForm) startAnswer(answerForm);
