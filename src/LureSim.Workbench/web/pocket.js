// Sliders over a table that was computed at home. Nothing is computed past its ends; words come from the table.
const data = JSON.parse(document.getElementById("data").textContent);
const ZONE = 0, BOTTOM = 1, SCORE = 3, WAIT = 4, VERDICT = 5, MIDDLE = 6, PATH = 7, NEVER = 255;

// The numbers of the table: what each misses of what its neighbors along the axes foretell, one quantity after the other, deflated (PocketPacking has the other half).
async function unpack(text, heads, counts, size) {
  const packed = Uint8Array.from(atob(text.replace(/-/g, "+").replace(/_/g, "/")), letter => letter.charCodeAt(0));
  const missed = new Uint8Array(await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate-raw"))).arrayBuffer());
  const nodes = heads * counts[0] * counts[1] * counts[2], all = new Uint8Array(nodes * size);
  const steps = [counts[2], counts[1], counts[0]], back = [size, size * counts[2], size * counts[2] * counts[1]], whole = back[2] * counts[0];
  for (let at = 0; at < all.length; at++) {
    let sum = 0, planes = 0, near = -1;
    for (let a = 0; a < 3; a++) {
      if (Math.floor(at / back[a]) % steps[a] === 0) continue;
      const one = all[at - back[a]];
      if (near < 0) near = one;
      for (let b = a + 1; b < 3; b++) {
        if (Math.floor(at / back[b]) % steps[b] === 0) continue;
        sum += one + all[at - back[b]] - all[at - back[a] - back[b]];
        planes++;
      }
    }
    const told = planes ? Math.max(0, Math.min(255, Math.trunc(sum / planes))) : near >= 0 ? near : at >= whole ? all[at - whole] : 0;
    all[at] = told + missed[at % size * nodes + Math.floor(at / size)];
  }
  return all;
}

function find(steps, value) {
  if (value <= steps[0]) return [0, 0];
  const last = steps.length - 1;
  if (value >= steps[last]) return [last - 1, 1];
  let below = 0;
  while (value > steps[below + 1]) below++;
  return [below, (value - steps[below]) / (steps[below + 1] - steps[below])];
}

// One head at a place: between the steps read off, each quantity by itself.
function read(spot, head, values, water) {
  const steps = spot.axes.map(axis => axis.steps), method = spot.heads[head].method;
  const at = values.map((value, a) => find(steps[a], value));
  if (method === 2) for (const place of at) place[1] = place[1] < 0.499999 ? 0 : 1;
  const sum = new Float64Array(spot.size);
  let never = 0, waits = 0, weighed = 0, most = -1, verdict = 0;
  for (let corner = 0; corner < 8; corner++) {
    let weight = 1, node = 0;
    for (let a = 0; a < 3; a++) {
      const upper = (corner >> a) & 1;
      weight *= upper ? at[a][1] : 1 - at[a][1];
      node = node * steps[a].length + at[a][0] + upper;
    }
    if (weight === 0) continue;
    const from = (head * spot.nodes + node) * spot.size;
    for (let i = 0; i < spot.size; i++) sum[i] += weight * spot.bytes[from + i];
    if (spot.bytes[from + WAIT] === NEVER) never += weight; else { waits += weight * spot.bytes[from + WAIT]; weighed += weight; }
    if (weight > most) { most = weight; verdict = spot.bytes[from + VERDICT]; }
  }
  let zone = sum[ZONE] / 200;
  if (method === 1 || method === 3) {
    const first = method === 1 ? PATH : spot.lowest, count = method === 1 ? spot.slices : spot.spread;
    let inside = 0;
    for (let s = 0; s + 1 < count; s++) {
      const a = sum[first + s] / 255 * spot.tallest, b = sum[first + s + 1] / 255 * spot.tallest, low = Math.min(a, b), high = Math.max(a, b);
      inside += high - low < 1e-9 ? (a >= water.low && a <= water.high ? 1 : 0) : Math.max(0, Math.min(high, water.high) - Math.max(low, water.low)) / (high - low);
    }
    zone = inside / (count - 1);
  }
  return { zone, wait: never < 0.5 && weighed > 0 ? waits / weighed / 2 : NaN, middle: sum[MIDDLE] / 255 * spot.tallest, score: sum[SCORE] / 200, bottom: sum[BOTTOM] / 200, verdict, path: sum };
}

function make(name, words, parent, kind) {
  const made = document.createElement(name);
  if (words) made.textContent = words;
  if (kind) made.className = kind;
  if (parent) parent.appendChild(made);
  return made;
}

async function start(spot, number) {
  spot.bytes = await unpack(spot.cells, spot.heads.length, spot.axes.map(axis => axis.steps.length), spot.size);
  const room = document.getElementById("live" + number);
  room.hidden = false;
  document.getElementById("taps" + number).hidden = true;
  spot.nodes = spot.axes.reduce((product, axis) => product * axis.steps.length, 1);
  const at = spot.axes.map(axis => Math.max(0, axis.own));
  const say = make("p", "", room, "say");
  say.setAttribute("role", "status");
  const frame = make("div", "", room, "pic");
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  svg.setAttribute("role", "img");
  frame.appendChild(svg);
  make("p", spot.error, room, "small");
  const sliders = spot.axes.map((axis, a) => {
    const label = make("label", axis.name + ": ", room);
    const output = make("output", "", label);
    const row = make("div", "", room, "turn");
    const less = make("button", "−", row), input = make("input", "", row), more = make("button", "+", row);
    less.type = more.type = "button";
    less.setAttribute("aria-label", axis.name + ": less");
    more.setAttribute("aria-label", axis.name + ": more");
    input.type = "range"; input.min = 0; input.max = axis.stops.length - 1; input.step = 1; input.id = "s" + number + "-" + a;
    label.htmlFor = input.id;
    input.addEventListener("input", () => { at[a] = Number(input.value); past.textContent = ""; show(); });
    less.addEventListener("click", () => { at[a] = Math.max(0, at[a] - 1); show(); });
    more.addEventListener("click", () => { at[a] = Math.min(axis.stops.length - 1, at[a] + 1); show(); });
    return { input, output };
  });
  const other = make("details", "", room);
  make("summary", "Something else?", other);
  spot.axes.forEach((axis, a) => {
    const row = make("label", "", other, "else");
    make("span", axis.name + " in " + axis.symbol, row);
    const field = make("input", "", row);
    field.type = "text"; field.inputMode = "decimal";
    field.addEventListener("change", () => {
      const value = Number(field.value.replace(",", ".")) * axis.unit;
      if (!isFinite(value) || field.value.trim() === "") return;
      let near = 0;
      axis.stops.forEach((stop, i) => { if (Math.abs(stop - value) < Math.abs(axis.stops[near] - value)) near = i; });
      at[a] = near;
      past.textContent = value < axis.steps[0] - 1e-9 ? axis.low : value > axis.steps[axis.steps.length - 1] + 1e-9 ? axis.high : axis.near;
      show();
    });
  });
  const past = make("p", "", room);
  past.setAttribute("role", "status");
  if (spot.hours.length) {
    const hours = make("div", "", room, "hours");
    hours.setAttribute("role", "group");
    hours.setAttribute("aria-label", "Hour of the tide");
    spot.hours.forEach(hour => {
      const tap = make("button", hour.label, hours);
      tap.type = "button";
      tap.addEventListener("click", () => {
        spot.axes.forEach((axis, a) => { if (axis.kind === "current") at[a] = hour.flow; if (axis.kind === "depth") at[a] = hour.depth; });
        for (const button of hours.children) button.setAttribute("aria-pressed", String(button === tap));
        show();
      });
    });
  }
  const list = make("ol", "", room);
  make("h3", spot.colors.title, room);
  const colors = make("div", "", room, "colors");

  function show() {
    const values = spot.axes.map((axis, a) => axis.stops[at[a]]);
    const depthAxis = spot.axes.findIndex(axis => axis.kind === "depth"), flowAxis = spot.axes.findIndex(axis => axis.kind === "current"), castAxis = spot.axes.findIndex(axis => axis.kind === "cast");
    const water = spot.waters[at[depthAxis]];
    sliders.forEach((slider, a) => {
      slider.input.value = at[a];
      slider.output.textContent = spot.axes[a].labels[at[a]];
      slider.input.setAttribute("aria-valuetext", spot.axes[a].labels[at[a]]);
    });
    const found = spot.heads.map((head, i) => read(spot, i, values, water));
    let best = -1;
    // As light as will do the job; the planned head where it is as good as any.
    const most = Math.max(...found.map(one => one.score));
    if (most > 0) best = found[spot.preferred].score >= most - spot.asGood ? spot.preferred : found.findIndex(one => one.score >= most - spot.asGood);
    say.replaceChildren();
    if (best < 0) say.textContent = spot.none;
    else {
      make("strong", spot.best + " " + spot.heads[best].name, say);
      make("span", words(found[best]) + " (" + (spot.axes.every((axis, a) => axis.computed[at[a]]) ? spot.at : spot.read) + ")", say);
    }
    list.replaceChildren();
    found.forEach((one, i) => {
      const item = make("li", "", list, i === best ? "on" : "");
      make("span", spot.heads[i].name, item);
      const bar = make("span", "", item, "bar"), fill = make("i", "", bar);
      fill.style.width = Math.round(100 * one.zone) + "%";
      make("span", spot.shares[Math.round(100 * one.zone)], item, "share");
      make("span", spot.verdicts[one.verdict] + ", " + (isNaN(one.wait) ? spot.never : spot.there + " " + spot.waits[Math.round(2 * one.wait)]), item, "word");
    });
    picture(found, best < 0 ? 0 : best, water, flowAxis, castAxis < 0 ? spot.scene.cast : Math.round(100 * values[castAxis]));
    const depth = best < 0 ? 0 : water.depth / 100 - found[best].middle;
    let row = 0;
    spot.colors.depths.forEach((d, i) => { if (Math.abs(d - depth) < Math.abs(spot.colors.depths[row] - depth)) row = i; });
    colors.replaceChildren();
    spot.colors.names.forEach((name, i) => {
      const box = make("div", "", colors);
      make("i", "", box).style.background = spot.colors.cells[row][i][0];
      make("span", name + ": " + spot.colors.cells[row][i][1], box, "small");
    });
  }

  function words(one) {
    return (isNaN(one.wait) ? spot.never : spot.there + " " + spot.waits[Math.round(2 * one.wait)]) + ", " + spot.shares[Math.round(100 * one.zone)] + " " + spot.inZone;
  }

  function picture(found, best, water, flowAxis, cast) {
    const scene = Object.assign({}, spot.scene, { depth: water.depth, grass: water.grass, zoneTop: water.zoneTop, zoneBottom: water.zoneBottom, cast, to: cast * 1.06, from: -cast * 0.06 });
    const width = Math.max(260, frame.clientWidth - 4), view = viewOf(scene, width, 360);
    const lines = [], ghost = [];
    found.forEach((one, i) => {
      lines.push(line(spot.heads[i].name, one, 0, water, cast));
      if (spot.wanders && i === best) ghost.push(line("", one, spot.slices, water, cast), line("", one, 2 * spot.slices, water, cast));
    });
    drawScene(svg, scene, lines, spot.heads.map(head => ({ id: head.name, name: head.name, color: head.color, darkColor: head.darkColor, marker: head.marker, known: true })), view, { focus: spot.heads[best].name, ghost, dark: document.documentElement.classList.contains("night") });
    svg.setAttribute("aria-label", say.textContent);
  }

  function line(id, one, offset, water, cast) {
    const x = [cast], z = [0], end = spot.castEnd * 100;
    for (let s = 0; s < spot.slices; s++) {
      x.push(Math.round(cast - (cast - end) * (s + 0.5) / spot.slices));
      z.push(Math.max(0, Math.round(water.depth - 100 * one.path[PATH + offset + s] / 255 * spot.tallest)));
    }
    x.splice(1, 0, x[1]); z.splice(1, 0, z[1]);
    return { id, x, z, start: 1 };
  }

  show();
  addEventListener("resize", show);
  document.getElementById("night").addEventListener("click", () => setTimeout(show, 0));
  spot.read = spot.read || "";
  return { read: (head, values, w) => read(spot, head, values, spot.waters[w]), at, show };
}

const night = document.getElementById("night");
night.hidden = false;
night.addEventListener("click", () => {
  const on = document.documentElement.classList.toggle("night");
  night.setAttribute("aria-pressed", String(on));
});
const days = Math.floor((Date.now() - Date.parse(document.body.dataset.day)) / 86400000);
if (days > 0 && days < 4000) document.getElementById("age").textContent = "Computed " + days + (days === 1 ? " day ago." : " days ago.");
// A browser that cannot inflate keeps the taps.
if ("DecompressionStream" in window) Promise.all(data.map(start)).then(spots => { document.querySelector("main").pocket = spots; });
