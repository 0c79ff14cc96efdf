import { Knobs } from "./knobs.js";
import { drawScene, drawAbove, viewOf, place, arrow, el, marker } from "./scene.js";
import { Swimmer } from "./swim.js";
import { Classroom } from "./class.js";

const $ = id => document.getElementById(id);
const REST = 120;            // ms without a change until the fine picture is asked for
const SPEAK = 1500;          // ms between two sentences read aloud

const page = {
  state: {},                 // what the knobs were set to, where that is not what the file has
  start: {},                 // what the page was opened with
  picture: null,             // the newest answer drawn
  lines: new Map(),
  rows: [],
  focus: "",
  pin: null,                 // the picture that is kept: its settings and its lines
  view: null,
  frozen: false,
  tries: null,
  seq: 0,
  drawn: 0,
  boxed: 0,                  // the newest answer that the rows are from
  water: 0,                  // which water is shown: the page's own, or a lesson's
  rested: 0,                 // the newest wish at rest: how it swims and its colors follow the fine picture
  trying: 0,                 // the newest wish for tries, a choice or what was seen
  flying: 0,
  waiting: false,
  fine: false,
  socket: null,
  sent: new Map(),
  step: 0,
};

const dark = matchMedia("(prefers-color-scheme: dark)");
const calm = matchMedia("(prefers-reduced-motion: reduce)");
const knobs = new Knobs($("strip"), $("more-knobs"), $("rig-knobs"), turned, released);
const swimmer = new Swimmer($("swim-above"), $("swim-side"), $("swim-pause"), calm);
const room = new Classroom($("class-room"), page, { look: turnedTo, draw, knobs, send, settle, forget });

// ---- settings ----

function fragment(state) {
  return Object.keys(state).sort().map(key => encodeURIComponent(key) + "=" + encodeURIComponent(state[key])).join("&");
}

function parsed(hash) {
  const state = {};
  for (const part of hash.replace(/^#/, "").split("&")) {
    const at = part.indexOf("=");
    if (at > 0) {
      try { state[decodeURIComponent(part.slice(0, at))] = decodeURIComponent(part.slice(at + 1)); } catch { /* not one of ours */ }
    }
  }
  return state;
}

function turned(id, value, isFile) {
  if (id !== lately) settle();
  lately = id;
  if (isFile) delete page.state[id]; else page.state[id] = value;
  if (id === "way") for (const own of ["cnt", "spd", "cst", "lft", "rst", "aim"]) delete page.state[own];
  $("hint").hidden = true;
  const noted = id === "dep" && page.state.seen;
  if (noted) delete page.state.seen;
  clearTries();
  look();
  if (noted) $("seen-words").textContent = "What you saw belongs to water as deep as it was then and is forgotten; Undo brings it back.";
}

function turnedTo(state) {
  page.state = Object.assign({}, state);
  knobs.show(page.state);
  clearTries();
  look();
}

let noting = 0, lately = null;
function released() {
  clearTimeout(noting);
  noting = setTimeout(settle, 250);
}

// What a hand has just let go of gets its entry before another knob is turned or it is undone.
function settle() {
  if (!noting) return;
  clearTimeout(noting);
  noting = 0;
  note();
}

// Of what was turned in a class nothing is noted; the knobs show the page's own settings again.
function forget() {
  clearTimeout(noting);
  noting = 0;
  clearTries();
  knobs.show(page.state);
  steps();
}

// One entry of the history a change, never one an event: Back is undo.
function note() {
  if (room.open) return;
  const now = "#" + fragment(page.state);
  if (now === (location.hash || "#")) return;
  page.step++;
  history.pushState({ step: page.step }, "", now);
  page.most = page.step;
  steps();
}

function undo() {
  settle();
  if (page.step > 0) history.back();
}

function steps() {
  $("undo").disabled = page.step === 0;
  $("redo").disabled = page.step >= (page.most || 0);
  $("again").disabled = fragment(page.state) === fragment(page.start);
}

addEventListener("popstate", event => {
  page.step = event.state?.step ?? 0;
  const state = location.hash.length > 1 ? parsed(location.hash) : Object.assign({}, room.open ? room.mine.start : page.start);
  if (room.open) { room.leave(state); return; }
  page.state = state;
  knobs.show(page.state);
  clearTries();
  look();
  steps();
});

$("undo").addEventListener("click", undo);
$("redo").addEventListener("click", () => history.forward());
$("again").addEventListener("click", () => { turnedTo(page.start); note(); });
addEventListener("keydown", event => {
  if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z") {
    event.preventDefault();
    if (event.shiftKey) history.forward(); else undo();
  }
});

// ---- the socket: one wish under way, the newest waits ----

function connect() {
  const socket = new WebSocket(`ws://${location.host}/live?id=${document.body.dataset.id}`);
  page.socket = socket;
  socket.addEventListener("open", () => {
    send({ kind: "hello", nonce: document.body.dataset.nonce, version: document.body.dataset.version });
    if (location.hash.length > 1 || page.lost) look(); else rest(0);
    page.lost = false;
  });
  socket.addEventListener("message", event => take(JSON.parse(event.data)));
  socket.addEventListener("close", event => {
    page.lost = true;
    page.flying = 0;
    say(event.reason || "LureSim has stopped. Your settings are in the address bar.");
    document.body.classList.add("lost");
  });
}

function send(message) {
  if (page.socket && page.socket.readyState === WebSocket.OPEN) page.socket.send(JSON.stringify(message));
}

function look() {
  page.fine = false;
  page.rested = 0;
  document.body.classList.add("rough", "behind");
  rest(REST);
  if (page.flying) { page.waiting = true; return; }
  page.waiting = false;
  page.flying = ++page.seq;
  page.sent.set(page.seq, performance.now());
  if (page.sent.size > 600) page.sent.delete(page.sent.keys().next().value);
  send({ kind: "look", seq: page.seq, state: page.state, pin: page.pin?.state });
}

let resting = 0;
function rest(after) {
  clearTimeout(resting);
  resting = setTimeout(() => {
    if (page.flying || page.waiting) { rest(30); return; }
    page.rested = ++page.seq;
    send({ kind: "fine", seq: page.rested, state: page.state, pin: page.pin?.state });
  }, after);
}

function take(message) {
  if (message.kind === "look" || message.kind === "error") {
    if (message.seq === page.flying) page.flying = 0;
    if (page.waiting) look();
  }

  // Of the water before nothing is drawn any more: its heads and counts may be named as those of the water now.
  if (message.water < page.water) return;
  page.water = message.water ?? page.water;
  switch (message.kind) {
    case "look":
    case "box":
    case "fine":
      // Never back to an older one; a picture at rest is not replaced by the same one in a hurry.
      if (message.seq < page.drawn) { late(message); return; }
      page.drawn = message.seq;
      show(message);
      break;
    case "swim": if (message.seq === page.rested) swim(message.swim); break;
    case "colors": if (message.seq === page.rested) colors(message.colors); break;
    case "tries": if (message.seq === page.trying) tries(message.tries); break;
    case "choice": if (message.seq === page.trying) choice(message.choice); break;
    case "seen": if (message.seq === page.trying) seen(message.seen); break;
    case "saved": saved(message); break;
    case "lessons": room.titles(message.lessons, message.note); break;
    case "lesson": room.show(message.lesson, message.seq); break;
    case "error": say(message.note); break;
    case "reload": say(message.note); break;
  }
}

// ---- the picture ----

function show(message) {
  if (message.knobs) knobs.build(message.knobs, page.state);
  page.picture = message.scene ? message : page.picture;
  if (message.focus !== page.focus) page.lines.delete(page.focus);
  page.focus = message.focus;
  for (const line of message.lines) page.lines.set(line.id, line);
  if (message.rows) {
    page.rows = message.rows;
    page.boxed = message.seq;
    const there = new Set(message.rows.map(row => row.id));
    for (const id of [...page.lines.keys()]) if (!there.has(id)) page.lines.delete(id);
    rows();
  }
  page.fine = message.kind === "fine";
  document.body.classList.toggle("rough", !page.fine);
  $("sentence").textContent = message.sentence;
  $("difference").hidden = !message.difference;
  $("difference").textContent = message.difference || "";
  $("alt").textContent = message.scene.alt;
  say(message.note || "");
  if (message.noted) noted(message.noted);
  draw();
  if (page.fine) {
    table(message.table);
    speak(message.sentence);
  }
  performance.mark("drawn-" + message.kind, { detail: message.seq });
  page.last = { kind: message.kind, seq: message.seq, at: performance.now(), work: message.work };
  document.dispatchEvent(new CustomEvent("drawn", { detail: page.last }));
}

// The other heads of a moment ago, while the one that is looked at is further on already: newer than what stands there, and nothing else of it is taken.
function late(message) {
  if (message.kind !== "box" || page.fine || message.seq <= page.boxed || message.focus !== page.focus || message.rows.length !== page.rows.length || message.rows.some((row, i) => row.id !== page.rows[i].id)) return;
  for (const line of message.lines) if (line.id !== page.focus) page.lines.set(line.id, line);
  page.boxed = message.seq;
  page.rows = message.rows;
  rows();
  draw();
  document.dispatchEvent(new CustomEvent("drawn", { detail: { kind: "box", seq: message.seq, late: true } }));
}

export function draw() {
  const message = page.picture;
  if (!message) return;
  const svg = $("picture");
  const width = Math.max(260, Math.floor(svg.parentElement.clientWidth));
  const row = page.rows.find(row => row.id === page.focus), line = page.lines.get(page.focus);
  const swept = !!(row && line && line.y && line.swept);
  // In a class the letters are as many times larger, and picture and knob have the screen to themselves.
  const large = room.open && width >= 560 ? 1.8 : 1;
  const most = room.open ? Math.max(240, innerHeight * 0.7 - (swept ? 130 : 0)) : Math.max(300, Math.min(innerHeight * 0.62, width * 1.1));
  if (!page.frozen || !page.view) page.view = viewOf(message.scene, width, most);
  $("stretch").textContent = page.view.narrow ? message.scene.narrowStretchText : message.scene.stretchText;
  const lines = page.rows.map(row => page.lines.get(row.id)).filter(line => line);
  page.taken = drawScene(svg, message.scene, lines, page.rows, page.view, {
    focus: page.focus,
    dark: dark.matches && !room.open,
    ghost: page.pin ? page.pin.lines : [],
    tries: page.tries?.tracks,
    large,
  });
  grips(svg, message.scene);
  const above = $("above");
  // An SVG has no property "hidden", only what the style sheet makes of the attribute.
  above.toggleAttribute("hidden", !swept);
  if (swept) {
    drawAbove(above, line, Math.min(width, 460), dark.matches && !room.open ? row.darkColor : row.color, line.swept, large);
    above.setAttribute("aria-label", "Seen from above: " + line.swept);
  }
  dot();
}

// Things in the picture that are knobs, each with a grip.
function grips(svg, scene) {
  const view = page.view;
  const group = el("g", { class: "grips" }, svg);
  const line = page.lines.get(page.focus);
  const at = (x, z) => place(view, x, z);
  const [, surface] = at(0, 0);
  const [, bottom] = at(0, scene.depth);
  const right = view.width;
  const toDepth = y => (y - view.surface) / view.stretch / view.scale;
  const zoneSide = knobs.all.get("zt")?.knob.name.includes("above bottom");
  const edge = y => zoneSide ? scene.depth - toDepth(y) : toDepth(y);

  const flowAt = surface + Math.min(30, (bottom - surface) * 0.2);
  const start = right * 0.62;
  const end = arrow(group, start, flowAt, scene.flow, scene.along, 130);
  label(group, start, flowAt + 24, scene.currentText, "start");
  const way = Math.abs(scene.along) < 0.35 ? 1 : scene.along >= 0 ? 1 : -1;
  grip(group, "cur", end, Math.abs(scene.along) < 0.35 && scene.flow ? flowAt - (16 + scene.flow * 130) * 0.28 : flowAt, "x", (x, from) => from.size + way * (x - from.x) / 130 * 155 / (Math.abs(scene.along) < 0.35 ? 0.8 : 1));

  const plate = knobs.all.get("clr");
  if (plate) {
    const x = right * 0.5;
    const y = at(0, Math.min(scene.plate, scene.depth * 1.02))[1];
    el("path", { d: `M${x} ${surface}V${y}`, class: "cord" }, group);
    el("ellipse", { cx: x, cy: y, rx: 15, ry: 4.5, class: "plate" }, group);
    grip(group, "clr", x, y, "y", y => toDepth(y));
  }
  const bx = right * 0.34;
  grip(group, "dep", bx, bottom, "y", y => toDepth(y));
  label(group, bx + 18, bottom + 44, scene.depthText + (scene.grassText ? ", " + scene.grassText : "") + ", " + scene.bottomText, "start");
  const zx = right * 0.87;
  const [, zt] = at(0, scene.zoneTop);
  // Where the count mark lies on an edge of the zone, the grip of the edge keeps clear of it.
  const [, zb] = at(0, scene.zoneBottom);
  const mark = line && line.start >= 0 ? at(line.x[line.start], line.z[line.start]) : [-99, -99];
  const clear = (places, y) => places.find(x => x <= right - 20 && Math.hypot(x - mark[0], y - mark[1]) > 44) ?? places[places.length - 1];
  grip(group, "zt", clear([zx, zx - 52], zt), zt, "y", edge);
  grip(group, "zb", clear([zx + 52, zx - 52, zx - 104], zb), zb, "y", edge);
  const [cx, cy] = at(scene.cast, 0);
  grip(group, "cst", Math.min(cx, right - 24), cy, "x", x => x / view.scale + view.from);
  label(group, Math.min(cx, right - 24), cy - 26, scene.castText, "end");
  if (line && line.start >= 0) {
    const [sx, sy] = at(line.x[line.start], line.z[line.start]);
    const fall = Math.max(1, sy - surface);
    grip(group, "cnt", sx, sy, "y", (y, from) => from.size > 90000 ? (y < sy - 12 ? ((line.t ? line.t[line.start] * 10 : 500) * (y - surface) / fall) : from.size) : Math.max(0, from.size === 0 ? (y - surface) * 6 : from.size * (y - surface) / Math.max(6, from.y - surface)));
    label(group, sx + (sx > right - 130 ? -20 : 20), sy + 5, scene.countText, sx > right - 130 ? "end" : "start");
  }
}

// A word beside a grip keeps clear of the names of the heads and of the other words.
function label(group, x, y, words, anchor) {
  if (page.view.narrow) return;
  const large = room.open ? 1.65 : 1, width = words.length * 7.6 * large;
  // Words that would run over the edge end at it.
  if (anchor === "start" && x + width > page.view.width - 6) { anchor = "end"; x = page.view.width - 6; }
  const left = anchor === "end" ? x - width : x;
  const clear = at => !page.taken.some(t => left < t.x + t.w && t.x < left + width && Math.abs(at - t.y) < 16 * large);
  for (const move of [0, 18, -18, 36, -36]) if (clear(y + move * large)) { y += move * large; break; }
  page.taken.push({ x: left, y, w: width });
  const made = el("text", { x: x.toFixed(1), y: y.toFixed(1), class: "grip-word", "text-anchor": anchor }, group);
  made.textContent = words;
}

let pulled = null;
function grip(group, id, x, y, axis, sizeAt) {
  const view = knobs.all.get(id);
  if (!view) return;
  const knob = view.knob;
  const now = knobs.at(id, page.state);
  const made = el("g", {
    class: "grip grip-" + axis + (pulled && pulled.id === id ? " held" : ""), transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})`, role: "slider", tabindex: "0", "data-grip": id,
    "aria-label": knob.name, "aria-valuemin": "0", "aria-valuemax": String(knob.values.length - 1), "aria-valuenow": String(now), "aria-valuetext": knob.labels[now],
    "aria-orientation": axis === "y" ? "vertical" : "horizontal",
  }, group);
  el("circle", { r: 22, class: "reach" }, made);
  el("circle", { r: 9, class: "button" }, made);
  el("path", { d: axis === "y" ? "M-3.5 -2L0 -5.5L3.5 -2M-3.5 2L0 5.5L3.5 2" : "M-2 -3.5L-5.5 0L-2 3.5M2 -3.5L5.5 0L2 3.5", class: "arrows" }, made);
  if (pulled && pulled.id === id) pulled.sizeAt = pulled.sizeAt ?? sizeAt;
  made.addEventListener("pointerdown", event => {
    event.preventDefault();
    const svg = $("picture");
    page.frozen = true;
    pulled = { id, sizeAt, axis, from: { x, y, size: knob.sizes[now] } };
    svg.setPointerCapture(event.pointerId);
  });
  made.addEventListener("keydown", event => {
    const steps = { ArrowRight: 1, ArrowUp: axis === "y" && id !== "cur" ? -1 : 1, ArrowLeft: -1, ArrowDown: axis === "y" && id !== "cur" ? 1 : -1, PageUp: 10, PageDown: -10 }[event.key];
    const to = event.key === "Home" ? 0 : event.key === "End" ? knob.values.length - 1 : steps ? knobs.at(id, page.state) + steps * (event.shiftKey ? 10 : 1) : null;
    if (to === null) return;
    event.preventDefault();
    knobs.turn(id, to, true);
    requestAnimationFrame(() => document.querySelector(`[data-grip="${id}"]`)?.focus());
  });
  if (document.activeElement?.dataset?.grip === id || page.gripFocus === id) made.focus({ preventScroll: true });
  made.addEventListener("focus", () => { page.gripFocus = id; });
  made.addEventListener("blur", () => { if (document.contains(made)) page.gripFocus = null; });
}

$("picture").addEventListener("pointermove", event => {
  if (!pulled) return;
  const box = $("picture").getBoundingClientRect();
  const scale = page.view.width / box.width;
  const wanted = pulled.sizeAt(pulled.axis === "x" ? (event.clientX - box.left) * scale : (event.clientY - box.top) * scale, pulled.from);
  const knob = knobs.all.get(pulled.id).knob;
  let best = 0;
  knob.sizes.forEach((size, i) => { if (size < 90000 || wanted > 90000) if (Math.abs(size - wanted) < Math.abs(knob.sizes[best] - wanted)) best = i; });
  if (best !== knobs.at(pulled.id, page.state)) knobs.turn(pulled.id, best, false);
});
for (const end of ["pointerup", "pointercancel"]) $("picture").addEventListener(end, () => {
  if (!pulled) return;
  pulled = null;
  page.frozen = false;
  released();
  draw();
});

// ---- the heads ----

function rows() {
  const list = $("rows");
  if (list.children.length !== page.rows.length || [...list.children].some((item, i) => item.dataset.id !== page.rows[i].id)) {
    list.replaceChildren(...page.rows.map(row => {
      const item = document.createElement("li");
      item.dataset.id = row.id;
      const press = document.createElement("button");
      press.type = "button";
const mark = el("svg", { class: "mark", width: 18, height: 18, "aria-hidden": "true" });
      const bars = span("bars", "");
      bars.setAttribute("aria-hidden", "true");
      for (const kind of ["above", "in", "below"]) bars.appendChild(document.createElement("i")).className = kind;
      bars.appendChild(document.createElement("b"));
      press.append(mark, span("head", ""), bars, span("share num", ""), span("when num", ""), span("word num", ""));
      press.addEventListener("click", () => { const knob = knobs.all.get("w").knob; knobs.turn("w", knob.values.indexOf(row.id), true); });
      item.appendChild(press);
      return item;
    }));
  }
  page.rows.forEach((row, i) => {
    const item = list.children[i];
    const press = item.firstChild;
    press.setAttribute("aria-pressed", String(row.id === page.focus));
    const mark = press.querySelector(".mark");
    mark.replaceChildren();
    marker(mark, row.marker, 9, 9, 6, dark.matches ? row.darkColor : row.color);
    press.querySelector(".head").textContent = row.name;
    const [above, zone, below] = press.querySelectorAll(".bars i");
    above.style.flexGrow = row.above;
    zone.style.flexGrow = row.zone;
    below.style.flexGrow = row.below;
    press.querySelector(".bars b").style.width = row.bottom + "%";
    press.querySelector(".share").textContent = row.share;
    press.querySelector(".when").textContent = row.when;
    press.querySelector(".word").textContent = row.words;
    item.classList.toggle("tie", row.tie > 0);
    item.classList.toggle("tie-first", row.tie > 0 && page.rows[i - 1]?.tie !== row.tie);
    item.classList.toggle("tie-last", row.tie > 0 && page.rows[i + 1]?.tie !== row.tie);
    item.title = row.tie > 0 ? "about the same" : "";
  });
}

function table(view) {
  if (!view) return;
  const made = document.createElement("table");
  made.createCaption().textContent = view.caption;
  const head = made.createTHead().insertRow();
  view.head.forEach((words, i) => { const cell = document.createElement("th"); cell.scope = "col"; cell.textContent = words; head.appendChild(cell); });
  const body = made.createTBody();
  for (const line of view.rows) {
    const row = body.insertRow();
    line.forEach((words, i) => {
      const cell = document.createElement(i ? "td" : "th");
      if (!i) cell.scope = "row";
      cell.textContent = words;
      row.appendChild(cell);
    });
  }
  $("twin").querySelector(".scroll").replaceChildren(made);
}

// ---- one cast, played ----

let playing = 0;
function dot() {
  const line = page.lines.get(page.focus);
  const scrub = $("scrub");
  $("clock").textContent = "";
  if (!line || !line.t || !page.view) return;
  const total = line.t[line.t.length - 1];
  const now = Number(scrub.value) / 1000 * total;
  let i = line.t.findIndex(t => t >= now);
  if (i < 1) i = 1;
  const span = Math.max(1, line.t[i] - line.t[i - 1]), f = Math.min(1, Math.max(0, (now - line.t[i - 1]) / span));
  const [x, y] = place(page.view, line.x[i - 1] + f * (line.x[i] - line.x[i - 1]), line.z[i - 1] + f * (line.z[i] - line.z[i - 1]));
  if (Number(scrub.value) > 0) {
    let mark = $("picture").querySelector(".now");
    if (!mark) mark = el("circle", { r: 8, class: "now" }, $("picture"));
    mark.setAttribute("cx", x.toFixed(1));
    mark.setAttribute("cy", y.toFixed(1));
    $("clock").textContent = Math.round(now / 10) + " s";
    scrub.setAttribute("aria-valuetext", Math.round(now / 10) + " seconds");
  }
}
$("scrub").addEventListener("input", () => { stop(); draw(); });
function stop() {
  cancelAnimationFrame(playing);
  playing = 0;
  $("play").textContent = "Play the cast";
}
$("play").addEventListener("click", () => {
  if (playing) { stop(); return; }
  $("play").textContent = "Stop";
  const from = performance.now() - (Number($("scrub").value) >= 1000 ? 0 : Number($("scrub").value) * 8);
  const tick = at => {
    const value = Math.min(1000, (at - from) / 8);
    $("scrub").value = String(value);
    dot();
    if (value < 1000) playing = requestAnimationFrame(tick); else stop();
  };
  playing = requestAnimationFrame(tick);
});

// ---- swimming, colors ----

function swim(view) {
  document.body.classList.remove("behind");
  swimmer.show(view);
  $("swim-words").textContent = view.words;
  $("swim-words").classList.toggle("fault", view.fault);
  $("swim-speed").textContent = view.speed;
  $("swim-slow").textContent = view.slow;
  $("swim-note").textContent = view.note;
}

let shades = null, glance = false;
function colors(view) {
  const keep = shades ? Number($("ruler").value) : -1;
  const moved = shades && keep !== shades.running;
  shades = view;
  $("colors-at").textContent = view.title;
  $("ruler").max = String(view.depths.length - 1);
  $("ruler").value = String(moved ? Math.min(keep, view.depths.length - 1) : view.running);
  $("seen-title").textContent = view.seenTitle;
  $("vision").textContent = view.vision;
  $("seen").replaceChildren(...view.seen.map(color => {
    const item = document.createElement("li");
    if (color.tie) item.className = "tie";
    const name = span("name", color.name), far = span("far", color.distance), bar = span("bar", ""), words = span("words", color.words);
    const fill = document.createElement("i");
    fill.style.width = color.share + "%";
    bar.appendChild(fill);
    bar.setAttribute("aria-hidden", "true");
    item.append(name, bar, far, words);
    return item;
  }));
  swatches();
}
function swatches() {
  if (!shades) return;
  const row = shades.depths[Number($("ruler").value)];
  $("ruler-at").textContent = row.depth;
  $("ruler").setAttribute("aria-valuetext", row.depth);
  $("swatches").replaceChildren(...row.swatches.map(color => {
    const item = document.createElement("li");
    const patch = span("patch", "");
    patch.style.background = glance ? color.glance : color.used;
    item.append(patch, span("name", color.name), span("words", color.word));
    return item;
  }));
}
function span(kind, words) {
  const made = document.createElement("span");
  made.className = kind;
  made.textContent = words;
  return made;
}
$("ruler").addEventListener("input", swatches);
for (const [id, value] of [["used", false], ["glance", true]]) $(id).addEventListener("click", () => {
  glance = value;
  $("used").setAttribute("aria-pressed", String(!value));
  $("glance").setAttribute("aria-pressed", String(value));
  swatches();
});

// ---- how sure ----

function clearTries() {
  page.trying = 0;
  $("seen-words").textContent = "";
  $("seen-changes").replaceChildren();
  if (page.tries) { page.tries = null; $("try-dots").replaceChildren(); $("try-marks").replaceChildren(); for (const id of ["try-counts", "try-about", "try-matters"]) $(id).textContent = ""; }
  $("choice").replaceChildren();
  $("try-stop").hidden = true;
  $("try-walk").hidden = true;
  clearInterval(walking);
}
$("try").addEventListener("click", () => {
  clearTries();
  $("try-counts").textContent = "Trying…";
  $("try-stop").hidden = false;
  send({ kind: "tries", seq: page.trying = ++page.seq, state: page.state });
});
$("try-stop").addEventListener("click", () => { send({ kind: "stop", seq: page.seq }); $("try-stop").hidden = true; $("try-counts").textContent += " Stopped."; });
function tries(view) {
  page.tries = view;
  $("try-stop").hidden = view.ended;
  $("try-walk").hidden = !view.ended || !view.tracks.length;
  $("try-counts").textContent = (view.ended ? "" : `${view.done} of ${view.total}: `) + view.counts;
  $("try-about").textContent = view.heads.length ? view.dots : "";
  $("try-matters").textContent = view.matters;
  $("try-marks").replaceChildren(...view.winners.map(winner => {
    const item = document.createElement("li");
    const head = view.heads.find(head => head.id === winner);
    item.textContent = head ? head.name : "=";
    item.className = head && view.heads.indexOf(head) === 0 ? "first" : head ? "second" : "even";
    return item;
  }));
  $("try-dots").replaceChildren(...view.heads.map(head => {
    const figure = document.createElement("figure");
    const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    svg.setAttribute("viewBox", "0 0 340 96");
    svg.setAttribute("role", "img");
    svg.setAttribute("aria-label", `${head.name}: ${head.medianText}`);
    el("path", { d: "M20 70H320", class: "axis" }, svg);
    for (const [at, words] of [[0, "0%"], [50, "50%"], [100, "100%"]]) {
      el("path", { d: `M${20 + 3 * at} 70v5`, class: "axis" }, svg);
      const made = el("text", { x: 20 + 3 * at, y: 90, "text-anchor": "middle" }, svg);
      made.textContent = words;
    }
    const stack = {};
    for (const dotAt of head.dots) {
      const bin = Math.round(dotAt / 3.4);
      stack[bin] = (stack[bin] || 0) + 1;
      el("circle", { cx: 20 + bin * 3.4 * 3, cy: 74 - 9.2 * stack[bin], r: 4.4, class: "dot" }, svg);
    }
    el("path", { d: `M${20 + 3 * head.median} 8V74`, class: "median" }, svg);
    const words = el("text", { x: 20 + 3 * head.median + (head.median > 70 ? -6 : 6), y: 14, "text-anchor": head.median > 70 ? "end" : "start" }, svg);
    words.textContent = head.medianText;
    const caption = document.createElement("figcaption");
    caption.textContent = head.name;
    figure.append(svg, caption);
    return figure;
  }));
  draw();
}
let walking = 0;
$("try-walk").addEventListener("click", () => {
  clearInterval(walking);
  const all = page.tries.tracks;
  let i = 0;
  walking = setInterval(() => {
    if (!page.tries || i >= all.length) { clearInterval(walking); if (page.tries) page.tries.tracks = all; draw(); return; }
    page.tries.tracks = [all[i++]];
    draw();
  }, 400);
});
$("choose").addEventListener("click", () => {
  $("choice").replaceChildren(span("small", "Working out the choice with the what-if tries; this takes some seconds…"));
  send({ kind: "choice", seq: page.trying = ++page.seq, state: page.state });
});
function choice(view) {
  const words = document.createElement("p");
  words.className = "chosen";
  words.textContent = view.words;
  const more = document.createElement("details"), head = document.createElement("summary"), why = document.createElement("ul");
  head.textContent = "Why";
  more.append(head, why);
  for (const reason of view.reasons) { const item = document.createElement("li"); item.textContent = reason; why.appendChild(item); }
  const go = document.createElement("button");
  go.type = "button";
  go.textContent = "Show it in the picture";
  go.addEventListener("click", () => { page.state = Object.assign({}, view.state, page.state.seen ? { seen: page.state.seen } : {}); look(); released(); });
  $("choice").replaceChildren(words, go, more);
}

// ---- what the angler saw: one tap for what, one for the count ----

for (const press of $("seen-what").querySelectorAll("[data-what]")) press.addEventListener("click", () => {
  for (const other of $("seen-what").querySelectorAll("[data-what]")) other.setAttribute("aria-pressed", String(other === press));
  const counts = [];
  for (let count = Number(press.dataset.from); count <= Number(press.dataset.to); count += Number(press.dataset.step || 1)) {
    const chip = document.createElement("button");
    chip.type = "button";
    chip.textContent = String(count);
    chip.setAttribute("aria-label", `${page.focus} ${press.dataset.what} ${count}`);
    chip.addEventListener("click", () => {
      $("seen-words").textContent = "Working it out…";
      $("seen-changes").replaceChildren();
      send({ kind: "seen", seq: page.trying = ++page.seq, state: Object.assign({}, page.state, { w: page.focus }), id: `${page.focus} ${press.dataset.what} ${count}` });
    });
    counts.push(chip);
  }
  $("seen-count").replaceChildren(...counts);
  $("seen-count").hidden = false;
});
$("seen-forget").addEventListener("click", () => {
  delete page.state.seen;
  clearTries();
  $("seen-words").textContent = "Forgotten; Undo brings it back.";
  look();
  released();
});

function seen(view) {
  $("seen-words").textContent = view.words;
  $("seen-changes").replaceChildren(...view.changes.map(change => { const item = document.createElement("li"); item.textContent = change; return item; }));
  if (view.taken && view.notes) {
    page.state.seen = view.notes;
    released();
  }
  noted(view.noted);
}

// What was seen at this spot, of the file and of the page; what the page noted can be forgotten.
function noted(lines) {
  $("seen-noted").replaceChildren(...lines.map(words => { const item = document.createElement("li"); item.textContent = words; return item; }));
  $("seen-forget").hidden = !page.state.seen;
}

// ---- keep, save ----

$("keep").addEventListener("click", () => {
  if (page.pin) page.pin = null;
  else page.pin = { state: Object.assign({}, page.state, { w: page.focus }), lines: [page.lines.get(page.focus)].filter(line => line) };
  $("keep").setAttribute("aria-pressed", String(!!page.pin));
  $("keep").textContent = page.pin ? "Let go of the kept one" : "Keep this one";
  look();
});

let again = false;
$("save").addEventListener("click", () => {
  send({ kind: "save", seq: ++page.seq, state: page.state, overwrite: again });
});
function saved(message) {
  again = !message.focus && /again/.test(message.note);
  say(message.note);
  $("save").textContent = again ? "Save over it" : "Save";
  if (message.focus) {
    const link = document.createElement("a");
    link.href = "/spot/" + message.focus;
    link.textContent = " Open it";
    $("note").appendChild(link);
  }
}

// ---- words for everybody ----

function say(words) {
  $("note").textContent = words || "";
}
let spoken = 0;
function speak(words) {
  clearTimeout(spoken);
  spoken = setTimeout(() => { $("spoken").textContent = words.slice(0, 140); }, SPEAK);
}

// ---- start ----

$("class").addEventListener("click", () => room.enter());
for (const query of [dark]) query.addEventListener("change", () => { rows(); draw(); });
addEventListener("resize", () => draw());

const hello = JSON.parse($("hello").textContent);
page.start = Object.assign({}, hello.state);
page.state = location.hash.length > 1 ? parsed(location.hash) : Object.assign({}, hello.state);
page.step = history.state?.step ?? 0;
page.most = page.step;
show(hello);
knobs.show(page.state);
steps();
connect();
window.luresim = page;
