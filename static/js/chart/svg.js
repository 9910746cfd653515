// Small drawings that the script makes by itself: rulers, needle, the mitt.

const space = "http://www.w3.org/2000/svg";

// draw returns an element of a drawing.
export function draw(name, attributes, text) {
  const element = document.createElementNS(space, name);
  for (const [key, value] of Object.entries(attributes)) if (value !== undefined) element.setAttribute(key, String(value));
  if (text !== undefined) element.textContent = text;
  return element;
}

// groups returns empty groups in a drawing, by name, the first one at the bottom.
export function groups(svg, ...names) {
  const list = names.map((name) => [name, draw("g", {})]);
  svg.replaceChildren(...list.map(([, g]) => g));
  return Object.fromEntries(list);
}

// set gives an element an attribute, if it has another value.
export function set(element, name, value) {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

// reuse gives an element a path for each list of attributes, and changes what
// differs.
export function reuse(place, list) {
  while (place.children.length > list.length) place.lastElementChild.remove();
  while (place.children.length < list.length) place.append(draw("path", {}));
  list.forEach((attributes, i) => {
    for (const [name, value] of Object.entries(attributes)) set(place.children[i], name, value);
  });
}

const held = new WeakMap(); // what patch drew in a place: [{ of, element }]

// patch makes a place hold drawings, each [name, attributes, text] as draw takes
// them, and changes only what differs from those before.
export function patch(place, list) {
  const before = held.get(place) ?? [];
  held.set(place, list.map((of, i) => {
    const { of: old, element } = before[i] ?? {};
    if (old === of) return before[i];
    if (old?.[0] === of[0]) change(element, old, of);
    else {
      const fresh = draw(...of);
      if (element) element.replaceWith(fresh);
      else place.append(fresh);
      return { of, element: fresh };
    }
    return { of, element };
  }));
  for (const { element } of before.slice(list.length)) element.remove();
}

function change(element, [, before, said], [, now, text]) {
  for (const key of Object.keys(before)) if (now[key] === undefined) element.removeAttribute(key);
  for (const [key, value] of Object.entries(now)) {
    if (value !== undefined && value !== before[key]) element.setAttribute(key, String(value));
  }
  if (text !== said) element.textContent = text ?? "";
}

export function round1(n) {
  return Math.round(n * 10) / 10;
}
