// What this browser keeps over a reload. Where it lets no page keep anything,
// or has no room, nothing outlives the page.

const careful = (f, otherwise) => {
  try {
    return f();
  } catch {
    return otherwise;
  }
};

// kept is a store with one entry for each request, so that windows that share
// it never write over each other. get gives them in the order of put.
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

// nowhere keeps nothing.
export const nowhere = { get: () => [], put() {}, drop() {}, has: () => false };

// Drafts keeps a form's texts that are not saved yet.
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
