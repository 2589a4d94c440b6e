// The charts, as SVG.

function svg(tag, attributes, ...children) {
  const e = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [k, v] of Object.entries(attributes)) e.setAttribute(k, v);
  e.append(...children);
  return e;
}
function figure(id, caption, label, height, draw) {
  const f = $(id);
  f.hidden = !draw;
  if (!draw) return f.replaceChildren();
  const s = svg("svg", { viewBox: `0 0 360 ${height}`, role: "img", "aria-label": label });
  draw(s);
  f.replaceChildren(...(caption ? [make("figcaption", {}, caption)] : []), s);
}
const round = (v) => Math.round(v * 10) / 10;
const path = (points, x, y) => points.map((p, i) => (i ? "L" : "M") + x(p[0]).toFixed(1) + " " + y(p[1]).toFixed(1)).join("");
function ticks(low, high, most) {
  const raw = (high - low) / most, power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= raw);
  const out = [];
  for (let v = Math.ceil(low / step) * step; v <= high + 1e-9; v += step) out.push(Math.round(v / step) * step);
  return out;
}
const tickText = (v) => String(Math.round(v * 1000) / 1000).replace("-", "−");

// bandChart draws the value that the charge is judged by against its target.
function bandChart(b) {
  if (!b) return figure("band");
  const from = Math.min(b.low, b.measured - 2 * b.std), to = Math.max(b.high, b.measured + 2 * b.std), room = 0.12 * (to - from) + 0.5;
  const x = (v) => 14 + (332 * (v - from + room)) / (to - from + 2 * room), say = (v) => tickText(round(v)).replace(".", t("decimal"));
  figure("band", "", `${b.of} ${b.text}; ${t("chart.target")} ${say(b.target)}, ${say(b.low)} – ${say(b.high)}`, 43, (s) => {
    s.append(
      svg("line", { x1: 14, x2: 346, y1: 12, y2: 12, class: "axis" }),
      svg("rect", { x: x(b.low), y: 2, width: x(b.high) - x(b.low), height: 20, class: "band", rx: 3 }),
      svg("line", { x1: x(b.target), x2: x(b.target), y1: 0, y2: 24, class: "target" }),
      svg("line", { x1: x(b.measured - 2 * b.std), x2: x(b.measured + 2 * b.std), y1: 12, y2: 12, class: "doubt" }),
      svg("circle", { cx: x(b.measured), cy: 12, r: 8, class: "dot" }),
      svg("text", { x: x(b.low), y: 38, "text-anchor": "middle" }, say(b.low)),
      svg("text", { x: x(b.high), y: 38, "text-anchor": "middle" }, say(b.high)),
      svg("text", { x: x(b.target), y: 38, "text-anchor": "middle" }, x(b.high) - x(b.low) > 150 ? t("chart.target") + " " + say(b.target) : say(b.target)),
    );
  });
}

// frame draws the axes of a chart and returns where its values lie.
function frame(s, h, xs, ys, xName, yName, log, low) {
  const left = 50, right = 350, top = low ? 18 : 24, bottom = h - (low ? 20 : 40);
  const f = log ? Math.log : (v) => v;
  const x = (v) => left + ((right - left) * (v - xs[0])) / (xs[1] - xs[0]);
  const y = (v) => bottom - ((bottom - top) * (f(v) - f(ys[0]))) / (f(ys[1]) - f(ys[0]));
  for (const t of ticks(xs[0], xs[1], 6)) s.append(svg("line", { x1: x(t), x2: x(t), y1: top, y2: bottom, class: "grid" }), svg("text", { x: x(t), y: bottom + 17, "text-anchor": "middle" }, tickText(t)));
  const yTicks = log ? [1, 2, 5].flatMap((m) => [1, 10, 100, 1000, 1e4].map((p) => m * p)).filter((t) => t >= ys[0] && t <= ys[1]) : ticks(ys[0], ys[1], h < 80 ? 2 : low ? 3 : 5);
  for (const t of yTicks) s.append(svg("line", { x1: left, x2: right, y1: y(t), y2: y(t), class: "grid" }), svg("text", { x: left - 5, y: y(t) + 5, "text-anchor": "end" }, tickText(t)));
  s.append(svg("path", { d: `M${left} ${top}V${bottom}H${right}`, class: "axis" }), svg("text", { x: right, y: low ? 14 : h - 4, "text-anchor": "end" }, xName), svg("text", { x: 2, y: 14 }, yName));
  return { x, y, left, right, top, bottom };
}
const span = (values, least) => {
  const low = Math.min(...values), high = Math.max(...values), room = Math.max(0.08 * (high - low), (least - (high - low)) / 2, 0);
  return [low - room, high + room];
};

// trendChart draws the log up to now; its height is what the screen leaves.
let lastTrend = null;
function trendChart(tr) {
  lastTrend = tr;
  $("trend").hidden = !tr;
  if (!tr) return figure("trend");
  const values = tr.points.map((p) => p[1]), minutes = [...tr.points.map((p) => p[0]), ...tr.moves.map((m) => m.minutes), elapsed() / 60];
  if (tr.band) values.push(tr.band.low, tr.band.high);
  if (tr.settled !== undefined) values.push(tr.settled);
  const xs = [Math.min(...minutes), Math.max(...minutes)], last = tr.points.at(-1);
  if (xs[1] - xs[0] < 5) xs[1] = xs[0] + 5;
  const h = Math.max(56, Math.min(200, Math.round((360 * $("trend").clientHeight) / Math.max(1, $("trend").clientWidth)) || 120));
  figure("trend", "", `${t("trend.title", { of: sentence(tr.of) })}: ${round(last[1])} ${tr.unit}${tr.text ? ". " + tr.text : ""}`, h, (s) => {
    const { x, y, left, right, top, bottom } = frame(s, h, xs, span(values, 4), t("trend.minutes"), `${tr.of}, ${tr.unit}`, false, true);
    if (tr.band) s.prepend(svg("rect", { x: left, width: right - left, y: y(tr.band.high), height: Math.max(1, y(tr.band.low) - y(tr.band.high)), class: "band" }));
    const late = (m) => x(m.minutes) > right - 70; // its words stand before its line
    if (tr.settled !== undefined) s.append(svg("line", { x1: left, x2: right, y1: y(tr.settled), y2: y(tr.settled), class: "rest" }));
    for (const m of tr.moves) s.append(svg("line", { x1: x(m.minutes), x2: x(m.minutes), y1: top, y2: bottom, class: "move" }), svg("text", { x: x(m.minutes) + (late(m) ? -3 : 3), y: top + 12, "text-anchor": late(m) ? "end" : "start", class: "halo" }, m.text));
    s.append(svg("path", { d: path(tr.points, x, y), class: "curve" }), svg("circle", { cx: x(last[0]), cy: y(last[1]), r: 6, class: "dot" }));
  });
}

// place sets the name of a point where it has room.
function named(s, p, x, y, above, toLeft) {
  s.append(svg("circle", { cx: x(p.x), cy: y(p.y), r: 5.5, class: "dot" }),
    svg("text", { x: x(p.x) + (toLeft ? -8 : 8), y: y(p.y) + (above ? -9 : 18), "text-anchor": toLeft ? "end" : "start", class: "halo" }, p.name));
}
function cycleChart(c) {
  if (!c) return figure("cycle");
  c.points.forEach((p) => (p.name = t("point." + p.name)));
  const all = [...(c.lines || []).flatMap((l) => l.points), ...c.points.map((p) => [p.x, p.y])];
  const ys = all.map((p) => p[1]);
  figure("cycle", t(c.ideal ? "chart.ideal" : "chart.cycle"), t("chart.cycle") + ". " + c.points.map((p) => `${p.name}: ${p.text}`).join("; "), 270, (s) => {
    const { x, y } = frame(s, 270, span(all.map((p) => p[0]), 1), [Math.min(...ys) * 0.9, Math.max(...ys) * 1.15], t("chart.enthalpy", { unit: c.xUnit }), t("chart.pressure", { unit: c.yUnit }), true);
    if (c.lines && c.lines.length === 2) s.append(svg("path", { d: path([...c.lines[0].points, ...c.lines[1].points.toReversed()], x, y), class: "curve" }));
    s.append(svg("path", { d: path([...c.points, c.points[0]].map((p) => [p.x, p.y]), x, y), class: "path" }));
    c.points.forEach((p, i) => named(s, p, x, y, i === 1 || i === 2, i === 1 || i === 2 || i === 0 ? x(p.x) > 240 : false));
  });
}
function airChart(c) {
  if (!c) return figure("airchart");
  c.points.forEach((p) => (p.name = t("point." + p.name)));
  const px = c.points.map((p) => p.x), py = c.points.map((p) => p.y);
  const unit = c.xUnit === "°C" ? 1 : 1.8;
  const xs = span(px, 14 * unit), top = Math.max(...py) * 1.5;
  figure("airchart", t("chart.air"), t("chart.air") + ". " + c.points.map((p) => `${p.name}: ${p.text}`).join("; "), 270, (s) => {
    const { x, y, left, right, bottom, top: head } = frame(s, 270, xs, [0, top], t("chart.dry", { unit: c.xUnit }), t("chart.ratio", { unit: c.yUnit }));
    const clip = "inside-air";
    s.append(svg("clipPath", { id: clip }, svg("rect", { x: left, y: head, width: right - left, height: bottom - head })));
    for (const l of c.lines) {
      const inside = l.points.filter((p) => p[0] >= xs[0] && p[0] <= xs[1] && p[1] <= top);
      if (inside.length < 2) continue;
      const end = inside.at(-1);
      s.append(svg("path", { d: path(l.points, x, y), class: l.name === "100 %" ? "curve" : "thin", "clip-path": `url(#${clip})` }), svg("text", { x: Math.min(x(end[0]), right - 2), y: Math.max(y(end[1]) - 4, head + 10), "text-anchor": "end", class: "halo" }, l.name));
    }
    if (c.points.length > 1) s.append(svg("path", { d: path(c.points.map((p) => [p.x, p.y]), x, y), class: "path" }));
    c.points.forEach((p, i) => named(s, p, x, y, i === 0, x(p.x) > 280));
  });
}
