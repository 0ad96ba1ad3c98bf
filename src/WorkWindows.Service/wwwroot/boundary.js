"use strict";

// Draws the corners that the text names, and writes back what is drawn: the text alone is sent.
const drawing = document.getElementById("drawing");
const text = document.getElementById("corners");
const handles = drawing.querySelector(".corners");
const shape = drawing.querySelector(".drawn");
const [latitude, longitude, zoom] = drawing.dataset.frame.split(",").map(Number);
const { width, height } = drawing.viewBox.baseVal;
const world = 256 * 2 ** zoom, radians = Math.PI / 180, earthM = 6378137, [unitM2, unit] = drawing.dataset.areas === "Hectare" ? [10000, "ha"] : [4046.8564224, "acres"];
const middle = project([latitude, longitude]);
let rings = [];

function project([north, east]) {
  const sine = Math.sin(north * radians);
  return [world * (east + 180) / 360, world * (0.5 - Math.log((1 + sine) / (1 - sine)) / (4 * Math.PI))];
}

const drawn = corner => project(corner).map((value, axis) => value - middle[axis] + (axis ? height : width) / 2);

function onGlobe([x, y]) {
  const [wide, high] = [x + middle[0] - width / 2, y + middle[1] - height / 2];
  return [Math.atan(Math.sinh(Math.PI * (1 - 2 * high / world))) / radians, wide / world * 360 - 180];
}

function read() {
  rings = [];
  let open = null;
  for (const line of text.value.split("\n").map(one => one.trim())) {
    const corner = line.split(",").map(Number);
    if (line === "")
      open = null;
    else if (line.toLowerCase() === "hole" && rings.length)
      rings.push(open = { isHole: true, corners: [] });
    else if (corner.length === 2 && corner.every(Number.isFinite)) {
      if (!open)
        rings.push(open = { isHole: false, corners: [] });
      open.corners.push(corner);
    }
  }
}

function write() {
  text.value = rings.map((ring, index) =>
    (ring.isHole ? "hole\n" : index ? "\n" : "") + ring.corners.map(corner => corner.map(value => value.toFixed(6)).join(", ")).join("\n")).join("\n");
  text.dispatchEvent(new Event("change", { bubbles: true }));
}

// Spherical, within a percent: the service reckons on the ellipsoid when it is saved.
function areaM2(ring) {
  let twice = 0;
  ring.corners.forEach(([north, east], index) => {
    const [nextNorth, nextEast] = ring.corners[(index + 1) % ring.corners.length];
    twice += (nextEast - east) * radians * (2 + Math.sin(north * radians) + Math.sin(nextNorth * radians));
  });
  return Math.abs(twice) * earthM ** 2 / 2;
}

function element(name, attributes, parent) {
  const made = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(attributes))
    made.setAttribute(key, value);
  parent.append(made);
  return made;
}

function show(focused) {
  shape.setAttribute("d", rings.map(ring => ring.corners.length ? "M" + ring.corners.map(corner => drawn(corner).join(" ")).join("L") + "Z" : "").join(""));
  handles.replaceChildren();
  rings.forEach((ring, part) => ring.corners.forEach((corner, index) => {
    const at = drawn(corner), next = drawn(ring.corners[(index + 1) % ring.corners.length]);
    if (ring.corners.length > 2) {
      const between = element("circle", { class: "between", r: 5, cx: (at[0] + next[0]) / 2, cy: (at[1] + next[1]) / 2 }, handles);
      between.addEventListener("click", event => {
        event.stopPropagation();
        ring.corners.splice(index + 1, 0, onGlobe([(at[0] + next[0]) / 2, (at[1] + next[1]) / 2]));
        change([part, index + 1]);
      });
    }
    const name = `Corner ${index + 1}${rings.length > 1 ? ` of part ${part + 1}` : ""}`;
    const handle = element("circle", { class: "corner", r: 9, cx: at[0], cy: at[1], tabindex: 0, role: "button", "aria-label": name }, handles);
    handle.addEventListener("click", event => event.stopPropagation());
    handle.addEventListener("keydown", event => key(event, part, index));
    handle.addEventListener("pointerdown", event => {
      event.preventDefault();
      handle.setPointerCapture(event.pointerId);
      handle.addEventListener("pointermove", moved => {
        ring.corners[index] = onGlobe(point(moved));
        const [x, y] = drawn(ring.corners[index]);
        handle.setAttribute("cx", x);
        handle.setAttribute("cy", y);
      });
      handle.addEventListener("pointerup", () => change([part, index]), { once: true });
    });
    if (focused && focused[0] === part && focused[1] === index)
      handle.focus();
  }));
  const area = rings.reduce((sum, ring) => sum + (ring.isHole ? -1 : 1) * areaM2(ring), 0);
  document.getElementById("area").textContent = area > 0 ? `about ${(area / unitM2).toFixed(1)} ${unit}` : "";
}

function change(focused) {
  write();
  show(focused);
}

function key(event, part, index) {
  const corners = rings[part].corners, step = event.shiftKey ? 20 : 2;
  const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[event.key];
  if (by)
    corners[index] = onGlobe(drawn(corners[index]).map((value, axis) => value + by[axis]));
  else if (event.key === "Delete" || event.key === "Backspace") {
    corners.splice(index, 1);
    if (!corners.length)
      rings.splice(part, 1);
  } else
    return;
  event.preventDefault();
  change([part, Math.min(index, corners.length - 1)]);
}

function point(event) {
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(drawing.getScreenCTM().inverse());
  return [x, y];
}

drawing.addEventListener("click", event => {
  // Where only a point was known, the first corner takes its place.
  if (!rings.length || wasPoint)
    rings = [{ isHole: false, corners: [] }];
  wasPoint = false;
  rings.at(-1).corners.push(onGlobe(point(event)));
  change();
});

document.getElementById("undo").addEventListener("click", () => {
  rings.at(-1)?.corners.pop();
  if (rings.length && !rings.at(-1).corners.length)
    rings.pop();
  change();
});

document.getElementById("part").addEventListener("click", () => {
  if (rings.at(-1)?.corners.length)
    rings.push({ isHole: false, corners: [] });
});

text.addEventListener("input", () => {
  wasPoint = false;
  read();
  show();
});

document.getElementById("how").hidden = document.getElementById("tools").hidden = false;
read();
let wasPoint = rings.length === 1 && rings[0].corners.length === 1;
show();
