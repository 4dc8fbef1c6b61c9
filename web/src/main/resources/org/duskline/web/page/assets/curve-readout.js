// Tells the values of one moment: in figures above the curve, and in words to a screen reader.
const units = { in: 'in a minute', out: 'out a minute', weight: 'kilograms', box: 'degrees in the box', cell: 'degrees in the shade' };

export function readout(root, slider, full) {
  function put(name, text) {
    const place = root.querySelector(`[data-read="${name}"]`);
    if (place.textContent !== text) place.textContent = text;
  }

  function words(time, values, beside) {
    if (time === ' ') return 'No samples in this stretch';
    const heard = Object.values(values).some((text) => text !== '–');
    const here = heard ? Object.entries(values).filter(([, text]) => text !== '–').map(([name, text]) => `${text} ${units[name]}`).join(', ') : 'not heard';
    return `${time}: ${here}${beside ? `. ${beside}` : ''}`;
  }

  // index: the moment that was chosen; below zero for the last one measured
  return function tell(data, index, besides) {
    const shown = index < 0 ? data.times.length - 1 : index;
    const value = (name, decimals) => {
      const number = shown < 0 || !data.json[name] ? null : data.json[name].high[shown];
      return number === null || number === undefined ? '–' : number.toFixed(decimals).replace('-', '−');
    };
    const time = shown < 0 ? ' ' : full(data.times[shown]);
    const values = { in: value('in', 0), out: value('out', 0), weight: value('weight', 2), box: value('box', 1), cell: value('cell', 1) };
    const width = data.times.length > 1 ? (data.times[data.times.length - 1] - data.times[0]) / data.times.length : 0;
    const beside = shown < 0 || !besides.any() ? '' : besides.said(data.times[shown], width);
    put('time', shown < 0 ? 'nothing measured' : index < 0 ? `last, ${time}` : time);
    Object.entries(values).forEach(([name, text]) => put(name, text));
    put('beside', beside || ' ');
    root.querySelector('[data-read="beside"]').hidden = !besides.any();
    slider.setAttribute('aria-valuemax', String(Math.max(0, data.times.length - 1)));
    slider.setAttribute('aria-valuenow', String(Math.max(0, shown)));
    slider.setAttribute('aria-valuetext', words(time, values, beside));
  };
}
