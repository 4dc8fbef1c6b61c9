// What is painted into a panel apart from its lines, so that they can be read: nights beneath, the line of no traffic,
// the moments of findings and visits.
export function shade(plot, nights, view, colour) {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.fillStyle = colour('night');
  // By the week the nights give the rhythm; by the month they would be a fence in front of the curve.
  ctx.globalAlpha = view.until - view.from > 14 * 86400 ? 0.45 : 1;
  nights.forEach(([dusk, dawn]) => {
    const left = Math.max(bbox.left, plot.valToPos(dusk, 'x', true));
    const right = Math.min(bbox.left + bbox.width, plot.valToPos(dawn, 'x', true));
    if (right > left) ctx.fillRect(left, bbox.top, right - left, bbox.height);
  });
  ctx.restore();
}

export function drawNought(plot, colour) {
  const { bbox } = plot;
  const y = plot.valToPos(0, 'y', true);
  line(plot, [bbox.left, y], [bbox.left + bbox.width, y], colour('rule-strong'), []);
}

export function drawMoments(plot, marks, view, colour) {
  const { bbox } = plot;
  const scale = devicePixelRatio;
  marks.forEach((mark) => {
    if (mark.at < view.from || mark.at > view.until) return;
    const x = plot.valToPos(mark.at, 'x', true);
    const tint = mark.kind === 'visit' ? 'ink' : mark.standing ? 'act' : 'rule-strong';
    line(plot, [x, bbox.top], [x, bbox.top + bbox.height], colour(tint), [4 * scale, 3 * scale]);
  });
}

function line({ ctx }, from, to, stroke, dash) {
  ctx.save();
  ctx.beginPath();
  ctx.strokeStyle = stroke;
  ctx.lineWidth = 1.25 * devicePixelRatio;
  ctx.setLineDash(dash);
  ctx.moveTo(...from);
  ctx.lineTo(...to);
  ctx.stroke();
  ctx.restore();
}
