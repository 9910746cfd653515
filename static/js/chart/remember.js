// What this browser remembers of a mitt's chart, so that coming back finds the
// same. If it lets no page store anything, nothing is remembered.

import { careful } from "../storage.js";

const mitt = location.pathname.split("/").slice(0, 3).join("/");

// remembered returns the store of one thing about this mitt's chart.
export function remembered(name) {
  const key = `thenar:chart:${mitt}:${name}`;
  return {
    get: () => careful(() => JSON.parse(localStorage.getItem(key)) ?? undefined),
    set: (value) => careful(() => localStorage.setItem(key, JSON.stringify(value))),
  };
}

const days = 400; // how long a view is remembered

let taken; // the layout that the page took by itself
let seen = false; // a view was remembered before on this page

// rememberView names the view and the layout that are shown in the address, so
// that what is asked for next is about the same one: a page keeps its layout
// while one works, even if the last colour goes. It remembers them for the next
// visit, but for a wedge that nobody chose.
export function rememberView({ view, layout }) {
  const query = new URLSearchParams(location.search);
  if (!seen) taken = history.state?.taken; // the page was loaded anew
  if (!query.has("layout")) taken = !seen && layout === "wedge" && chosenBefore() ? undefined : layout;
  else if (query.get("layout") !== taken) taken = undefined;
  seen = true;
  if (query.get("view") !== view || query.get("layout") !== layout) {
    query.set("view", view);
    query.set("layout", layout);
  }
  history.replaceState({ ...history.state, taken }, "", `${location.pathname}?${query}${location.hash}`);
  if (taken === "wedge") query.delete("layout");
  document.cookie = `chart=${encodeURIComponent(query)}; path=${mitt}; max-age=${days * 86400}; samesite=lax`;
}

// chosenBefore reports whether the wedge was chosen at an earlier visit.
function chosenBefore() {
  const [, kept = ""] = /(?:^|; )chart=([^;]*)/.exec(document.cookie) ?? [];
  return new URLSearchParams(decodeURIComponent(kept)).get("layout") === "wedge";
}

// turnUpright takes upright columns in the place of a wedge that nobody chose,
// and reports whether it did.
export function turnUpright() {
  if (taken !== "wedge") return false;
  taken = "columns";
  return true;
}
