// The curves that a curve is set beside: earlier days of the same trap in the same hours, or a neighbour. Quiet lines.
const panelsOf = { traffic: ['in', 'out'], weight: ['weight'], warmth: ['box'] };

// Turns an answer of the curve's address into columns on the time of the curve that it lies beside.
function laid(json, other) {
  const times = [];
  let time = json.start + other.back;
  json.step.forEach((step) => times.push((time += step)));
  return { ...other, json, times };
}

const firstOf = (values) => (values ? values.find((value) => value !== null) : undefined);

export function besides() {
  let others = [];

  // A neighbour's box weighs what it weighs: its line begins where this trap's does.
  function lift(other, base) {
    const [here, there] = [firstOf(base.weight && base.weight.high), firstOf(other.json.weight && other.json.weight.high)];
    return other.neighbour && here !== undefined && there !== undefined ? here - there : 0;
  }

  function lines(kind, base, rooted) {
    return others.flatMap((other) => panelsOf[kind].filter((name) => other.json[name]).map((name) => {
      const by = name === 'weight' ? lift(other, base) : 0;
      const values = other.json[name].high;
      const placed = kind === 'traffic' ? values.map((value) => rooted(value, name === 'out')) : values.map((value) => (value === null ? null : value + by));
      return { times: other.times, values: placed, name };
    }));
  }

  const inView = (line, view) => line.values.filter((value, index) => value !== null && line.times[index] >= view.from && line.times[index] <= view.until);

  return {
    async fetch(wanted, view, columns, iso) {
      const answers = await Promise.all(wanted.map(async (other) => {
        const answer = await fetch(`/api/traps/${other.address}/curve?from=${iso(view.from - other.back)}&until=${iso(view.until - other.back)}&columns=${columns}`);
        if (!answer.ok) throw new Error((await answer.json()).detail);
        return laid(await answer.json(), other);
      }));
      return () => {
        others = answers;
      };
    },
    any: () => others.length > 0,
    reach(kind, base, view, rooted) {
      const all = lines(kind, base, rooted).flatMap((line) => inView(line, view));
      return all.length > 0 ? [Math.min(...all), Math.max(...all)] : null;
    },
    draw(plot, kind, base, rooted, colour) {
      const { ctx, bbox } = plot;
      ctx.save();
      ctx.beginPath();
      ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
      ctx.clip();
      ctx.lineWidth = 1.5 * devicePixelRatio;
      ctx.setLineDash([1.5 * devicePixelRatio, 2.5 * devicePixelRatio]);
      ctx.strokeStyle = colour('ink');
      lines(kind, base, rooted).forEach((line) => {
        let drawing = false;
        ctx.beginPath();
        line.values.forEach((value, index) => {
          if (value !== null) {
            const [x, y] = [plot.valToPos(line.times[index], 'x', true), plot.valToPos(value, 'y', true)];
            if (drawing) ctx.lineTo(x, y);
            else ctx.moveTo(x, y);
          }
          drawing = value !== null;
        });
        ctx.stroke();
      });
      ctx.restore();
    },
    // What was measured there at the same hour, within a quarter of an hour or the width of a column.
    said(seconds, width) {
      return others.map((other) => {
        let best = -1;
        other.times.forEach((time, index) => {
          if (best < 0 || Math.abs(time - seconds) < Math.abs(other.times[best] - seconds)) best = index;
        });
        const near = best >= 0 && Math.abs(other.times[best] - seconds) <= Math.max(900, width);
        const value = (name, decimals, unit) => {
          const number = near && other.json[name] ? other.json[name].high[best] : null;
          return number === null || number === undefined ? [] : [`${number.toFixed(decimals).replace('-', '−')} ${unit}`];
        };
        const values = [...value('in', 0, 'in'), ...value('out', 0, 'out'), ...value('weight', 2, 'kg')];
        return `${other.said}: ${values.length > 0 ? values.join(', ') : 'not heard'}`;
      }).join('; ');
    },
  };
}
