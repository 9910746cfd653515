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

// offAt returns how far an end of the gusset is off, in its unit, once the line
// that shows where it should sit lies so many mm above the plan. perUnit is mm in
// a unit; a millimetre or a tenth of an inch is the finest step.
export function offAt(up, perUnit) {
  const finest = perUnit === 1 ? 1 : 0.1;
  const off = Math.round(Math.abs(up) / perUnit / finest) * finest;
  return { length: String(Math.round(off * 10) / 10), way: off === 0 ? "" : up > 0 ? "low" : "high" };
}

// upOf returns how many mm above the plan the line lies; undefined if the text is
// no length.
export function upOf(length, way, perUnit) {
  const off = Number.parseFloat(length.replace(",", "."));
  if (Number.isNaN(off)) return undefined;
  const text = way || (length.trim().startsWith("-") || length.trim().startsWith("−") ? "low" : "high");
  return (text === "low" ? 1 : -1) * Math.abs(off) * perUnit;
}

const highest = 40; // mm that a line can be moved

// Pulls puts a handle on the end of each tape of a drawing, and on the line at
// each end of the gusset.
export class Pulls {
  constructor(place, form) {
    Object.assign(this, { place, form, perUnit: place.dataset.unit === "in" ? 25.4 : 1 });
    form.addEventListener("change", () => this.show());
    form.addEventListener("input", () => this.show());
    this.draw(place.querySelector("svg"));
  }

  // draw takes a drawing in place of the one that was there.
  draw(svg) {
    this.place.replaceChildren(svg);
    const [, , width, height] = svg.getAttribute("viewBox").split(" ").map(Number);
    Object.assign(this, { svg, width, height });
    this.all = [...svg.querySelectorAll(".pull")].map((group) => this.hang(group));
    this.seats = [...svg.querySelectorAll(".seat")].map((group) => this.seat(group));
    this.show();
  }

  hang(group) {
    const { name, x, y, step, from } = group.dataset;
    const pull = { group, name, first: Number(x), y: Number(y), step: Number(step), from: Number(from), scale: this.form.querySelector(`.feel[data-zone="${name}"]`) };
    pull.handle = this.piece("pull-handle", pull);
    pull.words = this.piece("pull-words", pull);
    const outer = placeOf(2, pull) + 4 * Math.sign(pull.step);
    const share = (mm) => `${(100 * mm) / this.width}%`;
    pull.words.style[pull.step < 0 ? "left" : "right"] = share(pull.step < 0 ? outer : this.width - outer);
    pull.words.style.textAlign = pull.step < 0 ? "left" : "right";
    pull.words.style.width = share(Math.abs(outer - pull.from) - 2); // clear of the hand
    pull.words.append(document.createElement("span"), document.createElement("span"));
    this.dragged(pull.handle, (event) => this.choose(pull, event));
    return pull;
  }

  seat(group) {
    const { name, x, y } = group.dataset;
    const seat = { group, name, x: Number(x), y: Number(y), line: group.querySelector(".seat-line") };
    seat.handle = this.piece("seat-handle", seat);
    seat.handle.style.left = `${(100 * seat.x) / this.width}%`;
    seat.words = this.piece("seat-words", seat);
    const left = seat.x < this.width / 2;
    seat.words.style[left ? "left" : "right"] = `${(100 * Math.max((left ? seat.x : this.width - seat.x) - 8, 0)) / this.width}%`; // its end is that of the handle
    this.dragged(seat.handle, (event) => this.move(seat, event));
    return seat;
  }

  dragged(handle, go) {
    handle.addEventListener("pointerdown", (event) => {
      event.preventDefault(); // of selecting text
      handle.setPointerCapture(event.pointerId);
      go(event);
    });
    handle.addEventListener("pointermove", (event) => {
      if (handle.hasPointerCapture(event.pointerId)) go(event);
    });
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

  // move writes into the fields of an end of the gusset where its line is moved.
  move(seat, event) {
    const box = this.svg.getBoundingClientRect();
    const up = seat.y - ((event.clientY - box.top) / box.height) * this.height;
    const { length, way } = offAt(Math.min(Math.max(up, -highest), highest), this.perUnit);
    const field = this.form.elements.namedItem(seat.name);
    field.value = length;
    for (const radio of this.form.elements.namedItem(`${seat.name}_way`)) radio.checked = radio.value === way;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }

  // show draws tapes and lines as the form says; those of what is not knitted
  // are hidden.
  show() {
    for (const pull of this.all) this.showPull(pull);
    for (const seat of this.seats) this.showSeat(seat);
  }

  showPull(pull) {
    const said = pull.scale.querySelector("input:checked");
    const end = placeOf(Number(said?.value ?? 0), pull);
    pull.handle.style.left = `${(100 * end) / this.width}%`;
    pull.handle.classList.toggle("is-said", Boolean(said));
    pull.group.querySelector(".pull-tail").setAttribute("d", tailOf(pull.from, end, pull.y));
    const zone = pull.scale.querySelector("legend").textContent;
    pull.words.classList.toggle("is-said", Boolean(said));
    const [name, felt] = pull.words.children;
    name.textContent = said ? `${zone}: ` : zone;
    felt.textContent = said ? said.parentElement.textContent.trim() : "";
    for (const one of [pull.handle, pull.words, pull.group]) one.toggleAttribute("hidden", pull.scale.hidden);
  }

  showSeat(seat) {
    const length = this.form.elements.namedItem(seat.name);
    const way = this.form.elements.namedItem(`${seat.name}_way`).value;
    const up = upOf(length.value, way, this.perUnit);
    seat.line.setAttribute("transform", `translate(0 ${-(up ?? 0)})`);
    seat.handle.style.top = seat.words.style.top = `${(100 * (seat.y - (up ?? 0))) / this.height}%`;
    for (const one of [seat.handle, seat.words]) one.classList.toggle("is-said", up !== undefined);
    const off = offAt(up ?? 0, this.perUnit);
    seat.words.textContent = up === undefined ? seat.name : off.way === "" ? `${seat.name}: right` : `${seat.name}: ${off.length} ${this.place.dataset.unit} too ${off.way}`;
    for (const one of [seat.handle, seat.words, seat.group]) one.toggleAttribute("hidden", length.closest("[data-felt]").hidden);
  }
}
