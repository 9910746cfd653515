// Lists of rows in the form. The last row is always empty, to go on with. When
// a row is left out, the rows after it move up.

export function startRows(form) {
  form.addEventListener("input", (event) => {
    const list = event.target.closest("[data-rows]");
    if (list) grow(list);
  });
  form.addEventListener("click", (event) => {
    const row = event.target.closest("[data-remove]")?.closest("[data-row]");
    if (row) leaveOut(form, row);
  });
}

// ensure adds rows until the form has the named field, if it is one of a row.
export function ensure(form, name) {
  const [, path] = /^(.*)\[\d+\]\./.exec(name) ?? [];
  const list = path && form.querySelector(`[data-rows="${path}"]`);
  while (list && !form.elements.namedItem(name) && add(list));
}

const rowsOf = (list) => [...list.querySelectorAll("[data-row]")];
const textsOf = (row) => [...row.querySelectorAll("input")];
const isEmpty = (row) => textsOf(row).every((input) => input.value.trim() === "");

function grow(list) {
  if (!isEmpty(rowsOf(list).at(-1))) add(list);
}

// add puts an empty row at the end, and returns false if there is no room for
// more.
function add(list) {
  const rows = rowsOf(list);
  if (rows.length >= Number(list.dataset.most)) return false;
  const template = rows.at(-1);
  const row = rows.length === 1 && list.dataset.rows === "gauge.swatches" ? further(template) : template.cloneNode(true);
  for (const input of textsOf(row)) {
    input.value = "";
    input.removeAttribute("value");
  }
  for (const said of row.querySelectorAll("[data-fault-for], [data-filled-for]")) said.textContent = "";
  for (const details of [row, ...row.querySelectorAll("details")]) details.removeAttribute("open");
  list.append(row);
  number(list);
  return true;
}

// further returns a row after the first, in a list whose later rows are folded.
function further(first) {
  const row = first.ownerDocument.createElement("details");
  row.className = "row";
  row.dataset.row = "";
  row.innerHTML = '<summary><span data-row-name="Swatch"></span></summary><button type="button" data-remove>Leave it out</button>';
  row.querySelector("summary").after(...first.cloneNode(true).childNodes);
  return row;
}

function leaveOut(form, row) {
  const list = row.closest("[data-rows]");
  const rows = rowsOf(list);
  for (const input of textsOf(row)) input.value = "";
  const next = rows[rows.indexOf(row) + 1];
  if (next) {
    row.remove();
    number(list);
  }
  (next ?? row).querySelector("summary, input")?.focus();
  const changed = next ?? row;
  changed.dispatchEvent(new Event("input", { bubbles: true }));
  changed.dispatchEvent(new Event("change", { bubbles: true }));
}

// number writes the index of each row into the names of its fields.
function number(list) {
  const path = list.dataset.rows;
  const place = new RegExp(`${path.replaceAll(".", "\\.")}\\[\\d+\\]`, "g");
  rowsOf(list).forEach((row, i) => {
    for (const element of row.querySelectorAll("*")) {
      for (const attribute of element.attributes) {
        if (attribute.value.includes(`${path}[`)) attribute.value = attribute.value.replaceAll(place, `${path}[${i}]`);
      }
      if (element.dataset.rowName) element.textContent = `${element.dataset.rowName} ${i + 1}`;
      if (element.matches("[data-remove][aria-label]")) {
        element.setAttribute("aria-label", element.getAttribute("aria-label").replace(/\d+$/, String(i + 1)));
      }
    }
  });
}
