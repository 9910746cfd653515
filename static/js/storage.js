// What this browser keeps over a reload. If it lets no page store anything, or
// has no room, nothing outlives the page.

export const careful = (f, otherwise) => {
  try {
    return f();
  } catch {
    return otherwise;
  }
};

// kept returns a store with an entry of its own for each request, so that
// windows that share it never overwrite each other. get returns them in the
// order of put.
export function kept(prefix) {
  let n = 0;
  return {
    get: () => careful(() => {
      const names = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i)).filter((name) => name.startsWith(`${prefix}:`));
      const all = names.map((name) => JSON.parse(localStorage.getItem(name)));
      return all.sort((a, b) => a.at - b.at || a.n - b.n).map(({ at, n: _, ...request }) => request);
    }, []),
    put: (request) => careful(() => localStorage.setItem(`${prefix}:${request.key}`, JSON.stringify({ ...request, at: Date.now(), n: n++ }))),
    drop: (key) => careful(() => localStorage.removeItem(`${prefix}:${key}`)),
    has: (key) => careful(() => localStorage.getItem(`${prefix}:${key}`) !== null, false),
  };
}

// nowhere is a store that keeps nothing.
export const nowhere = { get: () => [], put() {}, drop() {}, has: () => false };

// Drafts keeps the texts of a form that are not saved yet.
export class Drafts {
  constructor(address) {
    this.key = `thenar:draft:${new URL(address).pathname}`;
  }

  keep(body) {
    careful(() => localStorage.setItem(this.key, body.toString()));
  }

  kept() {
    return careful(() => {
      const text = localStorage.getItem(this.key);
      return text === null ? undefined : new URLSearchParams(text);
    });
  }

  drop() {
    careful(() => localStorage.removeItem(this.key));
  }
}
