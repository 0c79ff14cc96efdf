// Draws the water cut along the cast. Lengths come in centimetres, words as finished strings; this file decides nothing.
// The pocket page carries the same file inside: it must not import anything.

const SVG = "http://www.w3.org/2000/svg";

export function el(name, attributes, parent) {
  const made = document.createElementNS(SVG, name);
  for (const key in attributes) made.setAttribute(key, attributes[key]);
  if (parent) parent.appendChild(made);
  return made;
}

function text(parent, x, y, words, attributes) {
  const made = el("text", Object.assign({ x: x.toFixed(1), y: y.toFixed(1) }, attributes), parent);
  made.textContent = words;
  return made;
}

// How the water is put on the screen: kept while a hand drags, so that the ground does not move under it.
export function viewOf(scene, width, most) {
  const air = scene.rod + 30;
  const across = scene.to - scene.from;
  const narrow = width < 560;
  const floor = narrow ? 46 : 62;
  const stretch = narrow ? scene.narrowStretch : scene.stretch;
  let scale = width / across;
  const tall = (scene.depth * stretch + air) * scale + floor;
  if (tall > most) scale = (most - floor) / (scene.depth * stretch + air);
  return { from: scene.from, to: scene.from + width / scale, stretch, narrow, scale, surface: Math.max(40, air * scale), width, height: Math.max(40, air * scale) + scene.depth * stretch * scale + floor };
}

export function place(view, x, z) {
  return [(x - view.from) * view.scale, z > 0 ? view.surface + z * view.stretch * view.scale : view.surface + z * view.scale];
}

function pathOf(view, line, from, to) {
  let d = "";
  for (let i = from; i <= to; i++) {
    const [x, y] = place(view, line.x[i], line.z[i]);
    d += (i === from ? "M" : "L") + x.toFixed(1) + " " + y.toFixed(1);
  }
  return d;
}

const MARKERS = [
  r => `M0 ${-r}L${r} 0L0 ${r}L${-r} 0Z`,
  r => `M${-r} ${-r}H${r}V${r}H${-r}Z`,
  r => `M0 ${-r}L${r} ${r}H${-r}Z`,
  r => `M${-r} 0A${r} ${r} 0 1 0 ${r} 0A${r} ${r} 0 1 0 ${-r} 0Z`,
  r => `M0 ${r}L${r} ${-r}H${-r}Z`,
];

export function marker(parent, index, x, y, size, color) {
  return el("path", { d: MARKERS[index % MARKERS.length](size), transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})`, fill: color, class: "marker" }, parent);
}

// Depth of the bottom (cm) at a place of the drawing; the same all along where the scene has no floor of its own.
function depthAt(scene, view, x) {
  const f = scene.floor;
  if (!f || f.length < 4) return scene.depth;
  const at = view.from + x / view.scale;
  let i = 0;
  while (i + 4 < f.length && f[i + 2] < at) i += 2;
  const share = Math.min(1, Math.max(0, (at - f[i]) / Math.max(1, f[i + 2] - f[i])));
  return f[i + 1] + share * (f[i + 3] - f[i + 1]);
}

// A wavy bottom, the same every time.
function floorPath(scene, view, kind, left, right) {
  const rough = kind === "shell" || kind === "hard" ? 2.4 : kind === "mud" ? 0.6 : 1.2;
  let d = "";
  for (let x = left; ; x = Math.min(right, x + 7)) {
    const [, y] = place(view, 0, depthAt(scene, view, x));
    d += `${d ? "L" : "M"}${x.toFixed(1)} ${(y + rough * (1 + Math.sin(x * 0.55) * Math.cos(x * 0.13))).toFixed(1)}`;
    if (x >= right) break;
  }
  return d + `L${right.toFixed(1)} ${view.height}L${left.toFixed(1)} ${view.height}Z`;
}

// A curve so far above the bottom (cm), from the left or back.
function overFloor(scene, view, above, back) {
  const points = [];
  for (let x = 0; x <= view.width + 6; x += 7) {
    const [, y] = place(view, 0, Math.max(0, depthAt(scene, view, x) - above));
    points.push(`${x} ${y.toFixed(1)}`);
  }
  return (back ? points.reverse() : points).join("L");
}

function grass(group, view, scene, height, left, right) {
  if (!height) return;
  let d = "";
  for (let x = left + 3; x < right; x += 9) {
    const depth = depthAt(scene, view, x), [, low] = place(view, 0, depth), [, top] = place(view, 0, depth - height);
    const tall = (low - top) * (0.82 + 0.18 * Math.sin(x * 1.7));
    const lean = 3 * Math.sin(x * 0.9);
    d += `M${x} ${low.toFixed(1)}q${(lean * 0.3).toFixed(1)} ${(-tall * 0.6).toFixed(1)} ${lean.toFixed(1)} ${(-tall).toFixed(1)}`;
  }
  el("path", { d, class: "grass" }, group);
}

function boat(group, view, scene) {
  const [x0, y0] = place(view, 0, 0);
  const [, tip] = place(view, 0, -scene.rod);
  const hand = Math.min(y0 - 14, y0 - (y0 - tip) * 0.45);
  const g = el("g", { class: "angler", "aria-hidden": "true" }, group);
  const left = Math.max(2, x0 - 34);
  el("path", { d: `M${left} ${y0 - 7}H${x0 + 4}L${x0 - 4} ${y0 + 5}H${left}Z`, class: "hull" }, g);
  el("circle", { cx: x0 - 17, cy: y0 - 34, r: 5 }, g);
  el("path", { d: `M${x0 - 17} ${y0 - 29}V${y0 - 8}M${x0 - 17} ${y0 - 24}L${x0 - 7} ${hand}`, class: "body" }, g);
  el("path", { d: `M${x0 - 12} ${hand + 3}L${x0} ${tip.toFixed(1)}`, class: "rod" }, g);
}

// Draws everything but the grips. Options: focus (id), ghost (lines kept for comparison), tries, dark, quiet (no labels of the axes), large (how much larger letters are).
export function drawScene(svg, scene, lines, rows, view, options) {
  svg.setAttribute("viewBox", `0 0 ${view.width.toFixed(0)} ${view.height.toFixed(0)}`);
  svg.setAttribute("width", view.width.toFixed(0));
  svg.setAttribute("height", view.height.toFixed(0));
  svg.replaceChildren();
  const defs = el("defs", {}, svg);
  const hatch = el("pattern", { id: "hatch", width: 7, height: 7, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" }, defs);
  el("path", { d: "M0 0V7", class: "hatch" }, hatch);
  const clip = el("clipPath", { id: "inside" }, defs);
  el("rect", { x: 0, y: 0, width: view.width, height: view.height }, clip);
  const root = el("g", { "clip-path": "url(#inside)" }, svg);
  const [, bottom] = place(view, 0, scene.depth);
  el("rect", { x: 0, y: view.surface, width: view.width, height: Math.max(0, bottom - view.surface), class: "sea" }, root);

  const [, zoneTop] = place(view, 0, scene.zoneTop), [, zoneBottom] = place(view, 0, scene.zoneBottom);
  if (scene.floor && scene.zoneFollows) {
    const high = scene.depth - scene.zoneTop, low = scene.depth - scene.zoneBottom;
    el("path", { d: `M${overFloor(scene, view, high, false)}L${overFloor(scene, view, low, true)}Z`, class: "zone" }, root);
    el("path", { d: `M${overFloor(scene, view, high, false)}M${overFloor(scene, view, low, false)}`, class: "zone-edge", fill: "none" }, root);
  } else {
    el("rect", { x: 0, y: zoneTop, width: view.width, height: Math.max(1, zoneBottom - zoneTop), class: "zone" }, root);
    el("rect", { x: 0, y: zoneTop - 2, width: view.width, height: 4, fill: "url(#hatch)" }, root);
    el("rect", { x: 0, y: zoneBottom - 2, width: view.width, height: 4, fill: "url(#hatch)" }, root);
    el("path", { d: `M0 ${zoneTop}H${view.width}M0 ${zoneBottom}H${view.width}`, class: "zone-edge" }, root);
  }

  // Stretches of one kind, or the whole of it.
  for (const piece of scene.pieces && scene.pieces.length ? scene.pieces : [{ from: scene.from, to: scene.from + view.width / view.scale, bottom: scene.bottom, grass: scene.grass }]) {
    const left = Math.max(0, (piece.from - view.from) * view.scale), right = Math.min(view.width, (piece.to - view.from) * view.scale);
    if (right <= left) continue;
    grass(root, view, scene, piece.grass, left, right);
    el("path", { d: floorPath(scene, view, piece.bottom, left, right), class: "floor floor-" + piece.bottom }, root);
  }
  el("path", { d: `M0 ${view.surface.toFixed(1)}H${view.width}`, class: "surface" }, root);

  if (!options.quiet) {
    const axis = el("g", { class: "axis" }, root);
    for (const tick of scene.down) {
      const [, y] = place(view, 0, tick.at);
      if (tick.at > 0 && tick.at < scene.depth * 0.985) {
        el("path", { d: `M${view.width - 8} ${y.toFixed(1)}H${view.width}` }, axis);
        text(axis, view.width - 11, y + 4, tick.label, { "text-anchor": "end" });
      }
    }
    for (const tick of scene.across) {
      const [x] = place(view, tick.at, 0);
      if (x < view.width - 30) {
        el("path", { d: `M${x.toFixed(1)} ${(bottom + 4).toFixed(1)}v6` }, axis);
        text(axis, x, bottom + 23, tick.label, { "text-anchor": "middle" });
      }
    }
  }
  for (const track of options.tries || []) {
    let d = "";
    for (let i = 0; i + 1 < track.length; i += 2) {
      const [x, y] = place(view, track[i], track[i + 1]);
      d += (i ? "L" : "M") + x.toFixed(1) + " " + y.toFixed(1);
    }
    el("path", { d, class: "try" }, root);
  }
  boat(root, view, scene);

  for (const line of options.ghost || []) {
    el("path", { d: pathOf(view, line, 0, line.x.length - 1), class: "ghost" }, root);
  }

  const look = {};
  for (const row of rows) look[row.id] = row;
  const drawn = [...lines].sort((a, b) => (a.id === options.focus ? 1 : 0) - (b.id === options.focus ? 1 : 0));
  const labels = [];
  const count = Math.max(1, rows.length - 1);
  for (const line of drawn) {
    const row = look[line.id];
    if (!row || !line.x.length) continue;
    const on = line.id === options.focus;
    const color = options.dark ? row.darkColor : row.color;
    const wide = on ? 4.5 : 1.4 + 1.4 * (rows.indexOf(row) / count);
    const group = el("g", { class: on ? "track on" : "track", "data-id": line.id }, root);
    if (on && line.line) {
      let d = "";
      for (let i = 0; i + 1 < line.line.length; i += 2) {
        const [x, y] = place(view, line.line[i], line.line[i + 1]);
        d += (i ? "L" : "M") + x.toFixed(1) + " " + y.toFixed(1);
      }
      el("path", { d, class: "fishing-line" }, group);
    }
    const fall = pathOf(view, line, 0, line.start);
    const work = pathOf(view, line, line.start, line.x.length - 1);
    if (on) el("path", { d: fall + work.replace("M", "L"), class: "halo" }, group);
    el("path", { d: fall, class: "fall" + (row.known ? "" : " lost"), stroke: color, "stroke-width": Math.max(1.4, wide * 0.6) }, group);
    el("path", { d: work, class: "work" + (row.known ? "" : " lost"), stroke: color, "stroke-width": wide }, group);
    const last = line.x.length - 1;
    const middle = Math.min(last, line.start + Math.max(1, Math.round((last - line.start) * (0.25 + 0.5 * (rows.indexOf(row) / count)))));
    const [mx, my] = place(view, line.x[middle], line.z[middle]);
    marker(group, row.marker, mx, my, on ? 7 : 5, color);
    labels.push({ row, on, x: mx, y: my, color });
  }
  // Labels beside their marks, kept apart from each other.
  const large = options.large || 1;
  labels.sort((a, b) => a.y - b.y || a.x - b.x);
  const taken = [];
  for (const label of labels) {
    const w = (label.row.name.length * (label.on ? 9.6 : 7.8) + 8) * large;
    let x = Math.min(view.width - w - 4, Math.max(4, label.x - w / 2));
    let y = label.y - 10;
    for (let turn = 0; turn < 12 && taken.some(t => x < t.x + t.w && t.x < x + w && Math.abs(y - t.y) < 16 * large); turn++) y -= 6 * large;
    if (y < 14 * large) y = label.y + 20 * large;
    taken.push({ x, y, w });
    // A name that had to keep clear of others is led to its mark.
    if (label.y - y > 28 * large) el("path", { d: `M${label.x.toFixed(1)} ${(label.y - 7).toFixed(1)}L${(x + w / 2).toFixed(1)} ${(y + 4).toFixed(1)}`, class: "leader" }, root);
    text(root, x + w / 2, y, label.row.name, { class: label.on ? "name on" : "name", "text-anchor": "middle", fill: label.color });
  }
  // The word of the zone stands where no name of a head is; over a bottom that slopes the zone has its height there.
  const w = scene.zoneText.length * 10 * large;
  const spots = [0.2, 0.4, 0.6, 0.75].map(part => {
    const x = Math.max(w / 2 + 4, view.width * part);
    const lift = scene.floor && scene.floor.length && scene.zoneFollows ? place(view, 0, scene.depth)[1] - place(view, 0, depthAt(scene, view, x))[1] : 0;
    return { x, y: (zoneTop + zoneBottom) / 2 + 5 - lift };
  });
  const clear = spots.find(s => !taken.some(t => s.x - w / 2 < t.x + t.w && t.x < s.x + w / 2 && Math.abs(s.y - t.y) < 17 * large)) || spots[0];
  text(root, clear.x, clear.y, scene.zoneText, { class: "zone-word", "text-anchor": "middle" });
  taken.push({ x: clear.x - w / 2, y: clear.y, w });
  return taken;
}

// The flow arrow: length is speed; the head points where the water goes along the cast.
export function arrow(group, x, y, flow, along, most) {
  const length = 16 + flow * most;
  const g = el("g", { class: "flow" }, group);
  if (!flow) {
    el("circle", { cx: x, cy: y, r: 4 }, g);
    return x;
  }
  const sideways = Math.abs(along) < 0.35;
  const way = along >= 0 ? 1 : -1;
  const end = x + (sideways ? length * 0.8 : way * length);
  if (sideways) {
    // Across the cast: into or out of the picture is drawn as an arrow at a slant.
    el("path", { d: `M${x} ${y}l${length * 0.8} ${-length * 0.28}m-9 -4l9 4l-6 8` }, g);
  } else {
    el("path", { d: `M${x} ${y}H${end}m${-way * 9} -6l${way * 9} 6l${-way * 9} 6` }, g);
  }
  return end;
}

// Seen from above: only where the lure is swept aside.
export function drawAbove(svg, line, width, color, words, large) {
  svg.replaceChildren();
  const height = 120;
  svg.setAttribute("viewBox", `0 0 ${width} ${height}`);
  svg.setAttribute("width", width);
  svg.setAttribute("height", height);
  let far = 1, side = 1;
  for (let i = 0; i < line.x.length; i++) {
    far = Math.max(far, line.x[i]);
    side = Math.max(side, Math.abs(line.y[i]));
  }
  const scale = Math.min((width - 60) / far, (height / 2 - 8) / side);
  let d = "";
  for (let i = 0; i < line.x.length; i++) d += (i ? "L" : "M") + (30 + line.x[i] * scale).toFixed(1) + " " + (height / 2 - line.y[i] * scale).toFixed(1);
  el("rect", { x: 0, y: 0, width, height, class: "sea" }, svg);
  el("path", { d: `M30 ${height / 2}H${30 + far * scale}`, class: "aim" }, svg);
  el("path", { d: `M22 ${height / 2 - 7}h14l4 7l-4 7h-14z`, class: "hull" }, svg);
  el("path", { d, class: "work", stroke: color, "stroke-width": 3 }, svg);
  text(svg, width - 8, 17 * (large || 1), words, { "text-anchor": "end", class: "name" });
}
