// Findings and visits as marks in a lane above the curve; each is a link to its own page.
const shapes = { 'move-in': 'M12 4a8 8 0 1 0 .01 0zM12 8v8M8 12h8', scouting: 'M12 4a8 8 0 1 0 .01 0zM12 4v8l5 4', robbing: 'M6 6l12 12M18 6L6 18', departure: 'M12 20V5M6 11l6-6 6 6', visit: 'M4 13l5 5L20 6', unheard: 'M9 9a3 3 0 1 1 4 3c-1 .5-1 1-1 2M12 18v.5', disturbed: 'M2 12l4-6 4 12 4-12 4 12 4-6', soaked: 'M12 3c4 6 6 8 6 11a6 6 0 0 1-12 0c0-3 2-5 6-11z' };
const nothingSpecial = 'M12 5v9M12 18.5v.5';

export function marking(lane, full, readAt) {
  // Marks side by side, none over another, all within the lane as far as they fit.
  function spread(lefts) {
    const apart = Math.min(34, lane.clientWidth / Math.max(1, lefts.length));
    const places = [...lefts];
    places.forEach((left, index) => {
      places[index] = Math.max(left, index > 0 ? places[index - 1] + apart : 17);
    });
    for (let index = places.length - 1; index >= 0; index--) {
      places[index] = Math.min(places[index], index < places.length - 1 ? places[index + 1] - apart : lane.clientWidth - 17);
    }
    return places;
  }

  function drawn(path) {
    const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
    svg.setAttribute('viewBox', '0 0 24 24');
    svg.setAttribute('aria-hidden', 'true');
    const shape = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    shape.setAttribute('d', path);
    svg.append(shape);
    return svg;
  }

  function link(mark, left) {
    const one = document.createElement('a');
    one.href = mark.address;
    one.className = `mark ${mark.kind === 'visit' ? 'visit' : mark.standing ? 'stands' : 'past'}`;
    one.append(drawn(shapes[mark.kind] || nothingSpecial));
    one.setAttribute('aria-label', `${mark.said}, ${full(mark.at)}`);
    one.title = `${mark.said}, ${full(mark.at)}`;
    one.style.left = `${left}px`;
    one.addEventListener('focus', () => readAt(mark.at));
    one.addEventListener('pointerenter', () => readAt(mark.at));
    return one;
  }

  return function place(plot, marks, view) {
    const shown = marks.filter((mark) => mark.at >= view.from && mark.at <= view.until).sort((one, other) => one.at - other.at);
    const lefts = spread(shown.map((mark) => plot.over.offsetLeft + plot.valToPos(mark.at, 'x')));
    const held = lane.contains(document.activeElement) ? document.activeElement.href : null;
    lane.replaceChildren(...shown.map((mark, index) => link(mark, lefts[index])));
    // A curve that is drawn anew must not take the keyboard's place away.
    const again = held && [...lane.children].find((one) => one.href === held);
    if (again) again.focus({ preventScroll: true });
  };
}
