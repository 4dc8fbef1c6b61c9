// Draws a curve in three panels under one time axis: traffic (in above, out below), weight, warmth.
import { besides as besidesOf } from './curve-beside.js';
import { marking } from './curve-marks.js';
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

  function series(kind, json) {
    const get = (name, which) => (json[name] ? json[name][which] || json[name].high : null);
    if (kind === 'traffic') {
      return [
        { values: get('in', 'high'), tint: 'in', fill: true },
        { values: get('out', 'high'), tint: 'out', fill: true, below: true },
        json.in && json.in.mean ? { values: json.in.mean, tint: 'in', mean: true } : null,
        json.out && json.out.mean ? { values: json.out.mean, tint: 'out', mean: true, below: true } : null,
      ].filter((one) => one && one.values);
    }
    const names = kind === 'weight' ? ['evened', 'weight'] : ['box', 'cell'];
    return names.flatMap((name) => {
      if (!json[name]) return [];
      const low = json[name].low;
      const raw = name === 'weight' && json.evened;
      const look = { tint: raw ? 'cell' : name === 'evened' ? 'weight' : name, dash: name === 'cell' || raw };
      const high = { ...look, values: json[name].high };
      return low ? [high, { ...look, values: low, bandWith: true }] : [high];
    });
  }

  // Scouts are a few a minute and a rush is hundreds: on a scale of square roots both are seen in one picture.
  const rooted = (value, below) => (value === null ? null : (below ? -1 : 1) * Math.sqrt(value));
  const round = [0, 5, 20, 50, 100, 200, 400, 800, 1600, 3200];

  function trafficTicks(plot, axis, low, high) {
    const upTo = (end) => {
      const fitting = round.filter((value) => Math.sqrt(value) <= end);
      const most = Math.max(2, Math.floor((plot.bbox.height / devicePixelRatio) * (end / (high - low)) / 26));
      const every = Math.ceil(fitting.length / most);
      return fitting.filter((value, index) => (fitting.length - 1 - index) % every === 0);
    };
    const below = upTo(-low).filter((value) => value > 0).map((value) => -Math.sqrt(value)).reverse();
    return [...below, 0, ...upTo(high).filter((value) => value > 0).map(Math.sqrt)];
  }

  function range(kind) {
    const least = { traffic: 5, weight: 1, warmth: 10 }[kind];
    return (plot, lowest, highest) => {
      const reach = besides.reach(kind, data.json, view, rooted);
      if (reach === null && (lowest === null || highest === null)) return [0, least];
      const low = Math.min(lowest ?? reach[0], reach ? reach[0] : lowest);
      const high = Math.max(highest ?? reach[1], reach ? reach[1] : highest);
      if (kind === 'traffic') return [Math.min(low, -least / 2) * 1.12, Math.max(high, least / 2) * 1.12];
      const missing = Math.max(0, least - (high - low)) / 2;
      const room = Math.max(least, high - low) * 0.12;
      return [low - missing - room, high + missing + room];
    };
  }

  function hours(plot, splits) {
    let last = '';
    const span = view.until - view.from;
    return splits.map((seconds) => {
      const date = day.format(seconds * 1000);
      const time = clock.format(seconds * 1000);
      if (span > 9 * 86400) return date.replace(/^\S+ /, '');
      if (time === '00:00' || (date !== last && last !== '' && span > 3 * 86400)) {
        last = date;
        return date.replace(/,/, '');
      }
      last = date;
      return time;
    });
  }

  function options(kind, lines, box, hasHours) {
    const ink = colour('ink-soft');
    const font = `13px ${getComputedStyle(document.body).fontFamily}`;
    const axis = { stroke: ink, font, ticks: { stroke: colour('rule-strong'), width: 1, size: 4 }, grid: { stroke: colour('rule'), width: 1 } };
    return {
      width: box.clientWidth,
      height: box.clientHeight,
      padding: [26, rightMargin, hasHours ? 0 : 6, 0],
      legend: { show: false },
      tzDate: (seconds) => uPlot.tzDate(new Date(seconds * 1000), zone),
      scales: { x: { time: true, auto: false, range: () => [view.from, view.until] }, y: { range: range(kind) } },
      cursor: {
        sync: { key: 'trap', setSeries: false },
        y: false,
        points: { size: 8, fill: (plot, index) => colour(lines[index - 1] ? lines[index - 1].tint : 'ink') },
        drag: { x: true, y: false, setScale: false },
      },
      axes: [
        { ...axis, show: true, size: hasHours ? 30 : 0, values: hasHours ? hours : () => [], space: 62 },
        { ...axis, size: axisWidth, gap: 4, space: 34, ...(kind === 'traffic' ? { splits: (plot, index, low, high) => trafficTicks(plot, index, low, high) } : {}), values: (plot, splits) => splits.map((value) => label(kind, value, splits)) },
      ],
      series: [{}, ...lines.map((line) => ({
        stroke: colour(line.tint),
        width: line.fill ? 1 : 1.75,
        dash: line.dash ? [5, 3] : undefined,
        fill: line.fill ? tinted(line.tint, lines.some((other) => other.mean) ? '55' : 'c8') : undefined,
        fillTo: 0,
        points: { show: false },
        spanGaps: false,
      }))],
      bands: lines.flatMap((line, index) => (line.bandWith ? [{ series: [index, index + 1], fill: tinted(line.tint, '66') }] : [])),
      hooks: {
        drawClear: [shade],
        draw: [(plot) => drawMarks(plot, kind)],
        setCursor: [(plot) => moved(plot)],
        ready: [() => placeMarks()],
      },
    };
  }

  function label(kind, value, splits) {
    const step = splits.length > 1 ? Math.abs(splits[1] - splits[0]) : 1;
    const decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
    if (kind === 'traffic') return String(Math.round(value * value));
    return value.toFixed(decimals).replace('-', '−');
  }

  const tinted = (name, alpha) => colour(name) + alpha;

  function shade(plot) {
    const { ctx, bbox } = plot;
    ctx.save();
    ctx.fillStyle = colour('night');
    // By the week the nights give the rhythm; by the month they would be a fence in front of the curve.
    ctx.globalAlpha = view.until - view.from > 14 * 86400 ? 0.45 : 1;
    data.nights.forEach(([dusk, dawn]) => {
      const left = Math.max(bbox.left, plot.valToPos(dusk, 'x', true));
      const right = Math.min(bbox.left + bbox.width, plot.valToPos(dawn, 'x', true));
      if (right > left) ctx.fillRect(left, bbox.top, right - left, bbox.height);
    });
    ctx.restore();
  }

  function drawMarks(plot, kind) {
    const { ctx, bbox } = plot;
    const scale = devicePixelRatio;
    ctx.save();
    if (kind === 'traffic') line(plot, bbox.left, plot.valToPos(0, 'y', true), bbox.left + bbox.width, null, colour('rule-strong'), []);
    besides.draw(plot, kind, data.json, rooted, colour);
    readMarks().forEach((mark) => {
      if (mark.at < view.from || mark.at > view.until) return;
      const x = plot.valToPos(mark.at, 'x', true);
      const tint = mark.kind === 'visit' ? 'ink' : mark.standing ? 'act' : 'rule-strong';
      line(plot, x, bbox.top, null, bbox.top + bbox.height, colour(tint), [4 * scale, 3 * scale]);
    });
    ctx.restore();
  }

  function line(plot, x, y, toX, toY, stroke, dash) {
    const { ctx } = plot;
    ctx.beginPath();
    ctx.strokeStyle = stroke;
    ctx.lineWidth = 1.25 * devicePixelRatio;
    ctx.setLineDash(dash);
    ctx.moveTo(x, y);
    ctx.lineTo(toX ?? x, toY ?? y);
    ctx.stroke();
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
      const lines = series(kind, data.json);
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
