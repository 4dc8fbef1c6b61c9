// Draws a curve in three panels under one time axis: traffic (in above, out below), weight, warmth.
import { ends, hours, label, rooted, trafficTicks } from './curve-axes.js';
import { besides as besidesOf } from './curve-beside.js';
import { linesOf, looks } from './curve-lines.js';
import { marking } from './curve-marks.js';
import { drawMoments, drawNought, shade } from './curve-painting.js';
import { readout } from './curve-readout.js';

const axisWidth = 44;
const rightMargin = 12;

export function drawing(root, zone, readMarks) {
  const panels = [...root.querySelectorAll('[data-panel]')];
  const lane = document.getElementById('lane');
  const slider = document.getElementById('panels');
  const note = document.getElementById('panels-note');
  const plots = new Map();
  let data = null;
  let view = null;
  let cursor = -1;

  const colour = (name) => getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim();
  const format = (options) => new Intl.DateTimeFormat('en-GB', { timeZone: zone, ...options });
  const clock = format({ hour: '2-digit', minute: '2-digit' });
  const day = format({ weekday: 'short', day: 'numeric', month: 'short' });
  const full = (seconds) => `${day.format(seconds * 1000)}, ${clock.format(seconds * 1000)}`;
  const besides = besidesOf();
  const tellMoment = readout(root, slider, full);
  const mark = marking(lane, full, (seconds) => setMoment(nearest(seconds)));

  // Tells a column of numbers with its gaps; uPlot breaks a line at null.
  function read(json) {
    const times = [];
    let time = json.start;
    json.step.forEach((step) => times.push((time += step)));
    return { json, times, nights: json.nights };
  }

  function scales(kind) {
    const reach = (plot, lowest, highest) => ends(kind, lowest, highest, besides.reach(kind, data.json, view, rooted));
    return { x: { time: true, auto: false, range: () => [view.from, view.until] }, y: { range: reach } };
  }

  function axes(kind, hasHours) {
    const font = `13px ${getComputedStyle(document.body).fontFamily}`;
    const axis = { stroke: colour('ink-soft'), font, ticks: { stroke: colour('rule-strong'), width: 1, size: 4 }, grid: { stroke: colour('rule'), width: 1 } };
    const times = (plot, splits) => (hasHours ? hours(splits, view, clock, day) : []);
    const values = (plot, splits) => splits.map((value) => label(kind, value, splits));
    return [
      { ...axis, show: true, size: hasHours ? 30 : 0, values: times, space: 62 },
      { ...axis, size: axisWidth, gap: 4, space: 34, ...(kind === 'traffic' ? { splits: trafficTicks } : {}), values },
    ];
  }

  function options(kind, lines, box, hasHours) {
    return {
      width: box.clientWidth,
      height: box.clientHeight,
      padding: [26, rightMargin, hasHours ? 0 : 6, 0],
      legend: { show: false },
      tzDate: (seconds) => uPlot.tzDate(new Date(seconds * 1000), zone),
      scales: scales(kind),
      cursor: {
        sync: { key: 'trap', setSeries: false },
        y: false,
        points: { size: 8, fill: (plot, index) => colour(lines[index - 1] ? lines[index - 1].tint : 'ink') },
        drag: { x: true, y: false, setScale: false },
      },
      axes: axes(kind, hasHours),
      ...looks(lines, colour),
      hooks: {
        drawClear: [(plot) => shade(plot, data.nights, view, colour)],
        draw: [(plot) => drawOver(plot, kind)],
        setCursor: [(plot) => moved(plot)],
        ready: [() => placeMarks()],
      },
    };
  }

  function drawOver(plot, kind) {
    if (kind === 'traffic') drawNought(plot, colour);
    besides.draw(plot, kind, data.json, rooted, colour);
    drawMoments(plot, readMarks(), view, colour);
  }

  function rebuild() {
    plots.forEach((plot) => plot.destroy());
    plots.clear();
    const titles = { traffic: 'bees a minute, in above, out below, square-root scale', weight: data.json.evened ? 'weight at one temperature —   raw - -  kg' : 'weight, kg', warmth: 'box —   shade - -  °C' };
    const shown = panels.filter((box) => !box.hidden);
    shown.forEach((box) => {
      box.dataset.title = titles[box.dataset.panel];
    });
    shown.forEach((box, index) => {
      const kind = box.dataset.panel;
      const lines = linesOf(kind, data.json);
      if (lines.length === 0) lines.push({ values: data.times.map(() => null), tint: 'ink' });
      const columns = lines.map((one) => (kind === 'traffic' ? one.values.map((value) => rooted(value, one.below)) : one.values));
      const plot = new uPlot(options(kind, lines, box, index === 0), [data.times, ...columns], box);
      uPlot.sync('trap').sub(plot);
      plots.set(kind, plot);
    });
    note.hidden = data.json.points > 0;
    note.textContent = root.dataset.recorded ? 'No samples in this stretch. Go earlier, or wider.' : 'The curve begins with the first sample.';
    setMoment(-1);
  }

  function placeMarks() {
    const plot = plots.values().next().value;
    if (plot) mark(plot, readMarks(), view);
  }

  function nearest(seconds) {
    let best = -1;
    data.times.forEach((time, index) => {
      if (best < 0 || Math.abs(time - seconds) < Math.abs(data.times[best] - seconds)) best = index;
    });
    return best;
  }

  let placing = false;
  function moved(plot) {
    if (placing || plot.cursor.idx === undefined || data.times.length === 0) return;
    tell(plot.cursor.idx === null ? -1 : plot.cursor.idx);
  }

  function setMoment(index) {
    placing = true;
    plots.forEach((plot) => {
      const left = index < 0 ? -10 : plot.valToPos(data.times[index], 'x');
      plot.setCursor({ left, top: index < 0 ? -10 : plot.over.clientHeight / 2 }, false);
    });
    placing = false;
    tell(index);
  }

  function tell(index) {
    cursor = index;
    tellMoment(data, index, besides);
  }

  return {
    besides,
    show(json, newView, takeBesides) {
      takeBesides();
      const keep = cursor >= 0 && data ? data.times[cursor] : null;
      data = read(json);
      view = newView;
      rebuild();
      if (keep !== null && keep >= view.from && keep <= view.until) setMoment(nearest(keep));
      root.dataset.drawn = String(json.points);
    },
    scale(newView) {
      view = newView;
      if (!data) return;
      plots.forEach((plot) => plot.setScale('x', { min: view.from, max: view.until }));
      placeMarks();
    },
    note(text) {
      note.textContent = text;
      note.hidden = false;
      root.dataset.drawn = '0';
    },
    marks() {
      if (!data) return;
      plots.forEach((plot) => plot.redraw(false));
      placeMarks();
    },
    repaint() {
      if (data) rebuild();
    },
    resize() {
      if (!data) return;
      panels.forEach((box) => {
        const plot = plots.get(box.dataset.panel);
        if (plot && plot.width !== box.clientWidth) plot.setSize({ width: box.clientWidth, height: box.clientHeight });
      });
      placeMarks();
    },
    step(by) {
      if (!data || data.times.length === 0) return;
      const start = cursor < 0 ? data.times.length - 1 : cursor;
      setMoment(Math.max(0, Math.min(data.times.length - 1, cursor < 0 && by < 0 ? start : start + by)));
    },
    edge(end) {
      if (data && data.times.length > 0) setMoment(end ? data.times.length - 1 : 0);
    },
    readAt(share) {
      if (!data || data.times.length === 0) return;
      setMoment(nearest(view.from + (view.until - view.from) * share));
    },
    shareAt(clientX) {
      const plot = plots.values().next().value;
      if (!plot) return 0.5;
      const box = plot.over.getBoundingClientRect();
      return Math.max(0, Math.min(1, (clientX - box.left) / box.width));
    },
    plots: () => [...plots.values()],
  };
}
