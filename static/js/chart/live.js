// Listens to what others draw on the same chart, for as long as the window is
// looked at: a browser has few connections, and a hidden window keeps none.

// restored tells the page that a backup was put back, or that its file is
// another: whoever holds more than a new page would, prevents that one is made.
export function restored() {
  return new CustomEvent("thenar:restored", { cancelable: true });
}

export class Live {
  constructor(line, open = (href) => new EventSource(href)) {
    this.line = line;
    this.open = open;
    document.addEventListener("visibilitychange", () => this.look());
    window.addEventListener("pagehide", () => this.stop());
    window.addEventListener("pageshow", () => this.look());
    this.look();
  }

  look() {
    if (document.hidden) this.stop();
    else this.start();
  }

  // start asks from the revision that is known now; the browser's own way of
  // asking again would ask from the first one, which does no harm.
  start() {
    if (this.source) return;
    this.source = this.open(`${this.line.href}/events?after=${this.line.revision}&restored=${this.line.restored}`);
    this.source.addEventListener("message", (event) => this.line.hear(JSON.parse(event.data)));
    this.source.addEventListener("restored", () => {
      this.source.close(); // and stays there, so that it is not opened again
      document.dispatchEvent(restored());
    });
  }

  // renew listens to the file that the line knows now.
  renew() {
    this.stop();
    this.look();
  }

  stop() {
    this.source?.close();
    this.source = undefined;
  }
}
