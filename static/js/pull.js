// The tapes on the drawing of the hand: a tape's end is pulled out to say that a
// place is tight, and let in to say that it is loose. Each is a second hold on a
// group of radio buttons, which keyboard and screen reader use.
const stops = [-2, -1, 0, 1, 2]; // much too loose, at the mitt, to much too tight
const high = 7; // mm: how broad a tape is

// stopAt returns the step of the stop nearest to x. first is the x of the stop
// at the mitt, step the way to the next, which may be negative.
export function stopAt(x, { first, step }) {
  return stops[Math.min(Math.max(Math.round((x - first) / step), 0), stops.length - 1)];
}

// placeOf returns the x of a stop.
export function placeOf(value, { first, step }) {
  return first + (value - stops[0]) * step;
}

// tailOf returns the path of a tape from the mitt to its end.
export function tailOf(from, end, y) {
  return `M${from} ${y - high / 2}L${end} ${y - high / 2} ${end} ${y + high / 2} ${from} ${y + high / 2}Z`;
}

// Pulls puts a handle on the end of each tape of a drawing.
export class Pulls {
  constructor(place, form) {
    this.svg = place.querySelector("svg");
    const [, , width, height] = this.svg.getAttribute("viewBox").split(" ").map(Number);
    Object.assign(this, { place, form, width, height });
    this.all = [...this.svg.querySelectorAll(".pull")].map((group) => this.hang(group));
    form.addEventListener("change", () => this.show());
    this.show();
  }

  hang(group) {
    const { name, x, y, step, from } = group.dataset;
    const pull = { group, name, first: Number(x), y: Number(y), step: Number(step), from: Number(from), scale: this.form.querySelector(`.feel[data-zone="${name}"]`) };
    pull.handle = this.piece("pull-handle", pull);
    pull.words = this.piece("pull-words", pull);
    pull.words.style[pull.step < 0 ? "left" : "right"] = pull.step < 0
      ? `${(100 * (placeOf(2, pull) - 4)) / this.width}%` : `${100 - (100 * (placeOf(2, pull) + 4)) / this.width}%`;
    pull.handle.addEventListener("pointerdown", (event) => {
      event.preventDefault(); // of selecting text
      pull.handle.setPointerCapture(event.pointerId);
      this.choose(pull, event);
    });
    pull.handle.addEventListener("pointermove", (event) => {
      if (pull.handle.hasPointerCapture(event.pointerId)) this.choose(pull, event);
    });
    return pull;
  }

  piece(kind, { y }) {
    const piece = document.createElement("span");
    piece.className = kind;
    piece.setAttribute("aria-hidden", "true");
    piece.style.top = `${(100 * y) / this.height}%`;
    this.place.append(piece);
    return piece;
  }

  // choose presses the radio button of the stop under the pointer.
  choose(pull, event) {
    const box = this.svg.getBoundingClientRect();
    const value = stopAt(((event.clientX - box.left) / box.width) * this.width, pull);
    const radio = pull.scale.querySelector(`input[value="${value}"]`);
    if (radio.checked) return;
    radio.checked = true;
    radio.dispatchEvent(new Event("change", { bubbles: true }));
  }

  // show draws each tape as its buttons say; those of what is not knitted are
  // hidden.
  show() {
    for (const pull of this.all) {
      const said = pull.scale.querySelector("input:checked");
      const end = placeOf(Number(said?.value ?? 0), pull);
      pull.handle.style.left = `${(100 * end) / this.width}%`;
      pull.handle.classList.toggle("is-said", Boolean(said));
      pull.group.querySelector(".pull-tail").setAttribute("d", tailOf(pull.from, end, pull.y));
      const zone = pull.scale.querySelector("legend").textContent;
      pull.words.classList.toggle("is-said", Boolean(said));
      pull.words.textContent = said ? `${zone}: ${said.parentElement.textContent.trim()}` : zone;
      for (const one of [pull.handle, pull.words, pull.group]) one.toggleAttribute("hidden", pull.scale.hidden);
    }
  }
}
