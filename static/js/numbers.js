// The controls of the plan that write into the form: a button that fixes a
// number or makes a choice, a fixed number that is typed over, a slider with
// words.

export function startNumbers(document, form) {
  document.addEventListener("click", (event) => {
    const button = event.target.closest?.('button[name="set"][form="measure-form"]');
    if (!button || event.defaultPrevented) return; // a stroke has taken it
    event.preventDefault();
    const [path, text] = split(button.value);
    write(form, path, text, true);
  });
  document.addEventListener("click", (event) => {
    const button = event.target.closest?.("button[data-sets]");
    if (button) choose(form, new URLSearchParams(button.dataset.sets));
  });
  document.addEventListener("input", (event) => {
    const { copies, slides } = event.target.dataset ?? {};
    if (copies) write(form, copies.replace(/^field-/, ""), event.target.value, false);
    if (slides) slide(form, event.target);
    else if (event.target.form === form) follow(form, event.target);
    if (event.target.form === form) tint(event.target);
  });
  // Enter fixes a number as it stands.
  document.addEventListener("keydown", (event) => {
    const { copies } = event.target.dataset ?? {};
    if (event.key === "Enter" && copies && event.target.form !== form) write(form, copies.replace(/^field-/, ""), event.target.value, true);
  });
  document.addEventListener("change", (event) => {
    if (event.target.dataset?.sets) choose(form, new URLSearchParams(event.target.dataset.sets));
    if (event.target.dataset?.copies) form.dispatchEvent(new Event("change", { bubbles: true }));
  });
}

// split splits "path=text" at the first "=".
export function split(value) {
  const at = value.indexOf("=");
  return [value.slice(0, at), value.slice(at + 1)];
}

function write(form, path, text, done) {
  const field = form.elements.namedItem(path);
  if (!field) return;
  field.value = text;
  field.dispatchEvent(new Event("input", { bubbles: true }));
  if (done) field.dispatchEvent(new Event("change", { bubbles: true }));
}

// choose writes all fields of a choice.
function choose(form, sets) {
  for (const [path, text] of sets) write(form, path, text, false);
  form.dispatchEvent(new Event("change", { bubbles: true }));
}

const steps = (slider) => [...slider.list.options];

// slide writes the value of a slider's step into its field.
function slide(form, slider) {
  const step = steps(slider)[Number(slider.value)];
  say(slider, step);
  write(form, slider.dataset.slides.replace(/^field-/, ""), step.dataset.value, false);
}

// tint gives the picker beside a field the colour that was typed.
function tint(field) {
  const picker = field.parentElement.querySelector("input.pick");
  if (picker && picker !== field && /^#[0-9a-f]{6}$/i.test(field.value.trim())) picker.value = field.value.trim();
}

// follow moves the slider of a field to the nearest step.
function follow(form, field) {
  const slider = form.querySelector(`[data-slides="${field.id}"]`);
  if (!slider) return;
  const list = steps(slider);
  const typed = Number.parseFloat(field.value.replace(",", "."));
  const off = (step) => Math.abs(Number(step.dataset.value) - typed);
  const at = Number.isNaN(typed) ? Math.floor(list.length / 2) : list.indexOf(list.reduce((best, step) => (off(step) < off(best) ? step : best)));
  slider.value = String(at);
  say(slider, list[at]);
}

function say(slider, step) {
  slider.setAttribute("aria-valuetext", step.label);
  slider.closest(".slider").querySelector("output").textContent = step.label;
}
