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

// rememberView names the view that is shown in the address, so that what is
// asked for next is about the same one, and remembers it for the next visit.
export function rememberView({ view }) {
  const query = new URLSearchParams(location.search);
  if (query.get("view") !== view) {
    query.set("view", view);
    history.replaceState(null, "", `${location.pathname}?${query}${location.hash}`);
  }
  document.cookie = `chart=${encodeURIComponent(query)}; path=${mitt}; max-age=${days * 86400}; samesite=lax`;
}
