// Which lines each panel of a curve holds and how they look; apart from the drawing, which is the same for all of them.
export function linesOf(kind, json) {
  if (kind === 'traffic') return trafficLines(json);
  return measuredLines(kind === 'weight' ? ['evened', 'weight'] : ['box', 'cell'], json);
}

function trafficLines(json) {
  const peaks = (name) => (json[name] ? json[name].high : null);
  return [
    { values: peaks('in'), tint: 'in', fill: true },
    { values: peaks('out'), tint: 'out', fill: true, below: true },
    json.in && json.in.mean ? { values: json.in.mean, tint: 'in', mean: true } : null,
    json.out && json.out.mean ? { values: json.out.mean, tint: 'out', mean: true, below: true } : null,
  ].filter((one) => one && one.values);
}

// Where several samples share a column, a band reaches from the lowest to the highest.
function measuredLines(names, json) {
  return names.flatMap((name) => {
    if (!json[name]) return [];
    const low = json[name].low;
    const raw = name === 'weight' && json.evened;
    const look = { tint: raw ? 'cell' : name === 'evened' ? 'weight' : name, dash: name === 'cell' || raw };
    const high = { ...look, values: json[name].high };
    return low ? [high, { ...look, values: low, bandWith: true }] : [high];
  });
}

// The lines and the bands between them, in uPlot's words.
export function looks(lines, colour) {
  const tinted = (name, alpha) => colour(name) + alpha;
  const filling = lines.some((line) => line.mean) ? '55' : 'c8';
  return {
    series: [{}, ...lines.map((line) => ({
      stroke: colour(line.tint),
      width: line.fill ? 1 : 1.75,
      dash: line.dash ? [5, 3] : undefined,
      fill: line.fill ? tinted(line.tint, filling) : undefined,
      fillTo: 0,
      points: { show: false },
      spanGaps: false,
    }))],
    bands: lines.flatMap((line, index) => (line.bandWith ? [{ series: [index, index + 1], fill: tinted(line.tint, '66') }] : [])),
  };
}
