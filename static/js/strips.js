// The charts of a hand on the needles. The page comes with the rows about its
// present round; the whole charts are fetched once, and then kept, so that the
// page can go on without the server.
const stripRows = 6; // rows of the chart on a strip
const belowRows = 3; // those of them below the present one, where there are any

// rowsAbout returns the first and the last row that a strip shows about one.
function rowsAbout(strip, row) {
  const low = Math.max(Math.min(row - belowRows, strip.rows - stripRows + 1), 1);
  return [low, Math.min(low + stripRows - 1, strip.rows)];
}

// windowOf returns the part of a strip around a row, as a viewBox, with the needle under
// it if that is shown.
export function windowOf(strip, row, onNeedle = false) {
  const [low, high] = rowsAbout(strip, row);
  return [0, strip.bottom - high * strip.cell_height, strip.width, (high - low + 1) * strip.cell_height + (onNeedle ? strip.needle : 0)];
}

// toned reports whether a strip shows places without a stitch around a row.
export function toned(strip, row) {
  const [low, high] = rowsAbout(strip, row);
  return strip.gaps.some((gap) => low <= gap && gap <= high);
}

// Strips holds what is known of each view's strip.
export class Strips {
  // list is what came with the page; the whole is at href, asked by get.
  constructor(list, href, get = (address) => fetch(address, { headers: { Accept: "application/json" } })) {
    this.views = new Map(list.map((s) => [s.view, s]));
    this.href = href;
    this.ask = get;
    this.whole = false; // all have arrived
    this.asking = false;
  }

  get(view) {
    return this.views.get(view);
  }

  // has reports whether all rows about one are drawn.
  has(view, row) {
    const strip = this.views.get(view);
    if (!strip || row < 1 || row > strip.rows) return false;
    const [low, high] = rowsAbout(strip, row);
    return strip.from <= low && high <= strip.to;
  }

  // fetch fetches the whole strips unless they are here. It returns true if they
  // came just now; without them the page goes on in words.
  async fetch() {
    if (this.whole || this.asking) return false;
    this.asking = true;
    try {
      const reply = await this.ask(this.href);
      const strips = reply.ok ? (await reply.json()).strips : undefined;
      if (!Array.isArray(strips)) return false;
      this.views = new Map(strips.map((s) => [s.view, s]));
      this.whole = true;
      return true;
    } catch {
      return false; // no connection, or the answer of a sign-in page
    } finally {
      this.asking = false;
    }
  }
}
