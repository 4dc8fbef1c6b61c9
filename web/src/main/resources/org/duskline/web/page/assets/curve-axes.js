// How far the axes of a curve reach and what is written on them, so that scouts and a rush, an hour and a season are read.
const round = [0, 5, 20, 50, 100, 200, 400, 800, 1600, 3200];
const least = { traffic: 5, weight: 1, warmth: 10 };

// Scouts are a few a minute and a rush is hundreds: on a scale of square roots both are seen in one picture.
export const rooted = (value, below) => (value === null ? null : (below ? -1 : 1) * Math.sqrt(value));

// The ends of an upright axis. beside: the ends of the curves that this one is set beside, null without any
export function ends(kind, lowest, highest, beside) {
  if (beside === null && (lowest === null || highest === null)) return [0, least[kind]];
  const low = Math.min(lowest ?? beside[0], beside ? beside[0] : lowest);
  const high = Math.max(highest ?? beside[1], beside ? beside[1] : highest);
  if (kind === 'traffic') return [Math.min(low, -least.traffic / 2) * 1.12, Math.max(high, least.traffic / 2) * 1.12];
  const missing = Math.max(0, least[kind] - (high - low)) / 2;
  const room = Math.max(least[kind], high - low) * 0.12;
  return [low - missing - room, high + missing + room];
}

// Round numbers of bees, as many as have room.
export function trafficTicks(plot, axis, low, high) {
  const upTo = (end) => {
    const fitting = round.filter((value) => Math.sqrt(value) <= end);
    const most = Math.max(2, Math.floor((plot.bbox.height / devicePixelRatio) * (end / (high - low)) / 26));
    const every = Math.ceil(fitting.length / most);
    return fitting.filter((value, index) => (fitting.length - 1 - index) % every === 0);
  };
  const below = upTo(-low).filter((value) => value > 0).map((value) => -Math.sqrt(value)).reverse();
  return [...below, 0, ...upTo(high).filter((value) => value > 0).map(Math.sqrt)];
}

export function label(kind, value, splits) {
  const step = splits.length > 1 ? Math.abs(splits[1] - splits[0]) : 1;
  const decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
  if (kind === 'traffic') return String(Math.round(value * value));
  return value.toFixed(decimals).replace('-', '−');
}

// Times of day, and a date where one begins. clock, day: formats in the trap's zone
export function hours(splits, view, clock, day) {
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
