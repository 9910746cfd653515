// Pointing at a round in the drawing, the numbers, the words or the chart
// lights it in all of them.
import * as events from "./events.js";

const lit = "lit";

// startThread listens on the whole page, so that parts which are replaced need
// nothing done.
export function startThread(document) {
  const show = (section, from, to, source) => {
    for (const place of document.querySelectorAll("[data-section]")) {
      place.classList.toggle(lit, touches(place.dataset, section, from, to));
    }
    const says = document.querySelector("[data-round-says]");
    const round = document.querySelector(`.band.${lit}[data-says]`);
    if (says && round) says.textContent = round.dataset.says;
    if (source !== "event" && section) {
      events.round.tell({ section, round: from, by: "thread" });
    }
  };
  const point = (event) => {
    const place = event.target.closest?.("[data-section]");
    if (!place || !document.body.contains(place)) return;
    const from = Number(place.dataset.from ?? 1);
    show(place.dataset.section, from, Number(place.dataset.to ?? place.dataset.rounds ?? from));
  };
  document.addEventListener("pointerover", point);
  document.addEventListener("focusin", point);
  events.round.hear(({ section, round, by }) => {
    if (by !== "thread") show(section, round, round, "event");
  });
}

// touches reports whether an element shows any of the rounds from–to of a
// section. An element without rounds shows the whole section.
export function touches(data, section, from, to) {
  if (data.section !== section) return false;
  if (data.from === undefined) return true;
  return Number(data.from) <= to && Number(data.to ?? data.from) >= from;
}
