// Moves about in a curve by mouse, finger and keys. The buttons below the curve do the same without any of this.
export function moving(panels, curve, go) {
  const fingers = new Map();
  let grabbed = null;
  let chosen = null;

  const keys = {
    ArrowLeft: (event) => curve.step(event.shiftKey ? -10 : -1),
    ArrowRight: (event) => curve.step(event.shiftKey ? 10 : 1),
    ArrowDown: (event) => curve.step(event.shiftKey ? -10 : -1),
    ArrowUp: (event) => curve.step(event.shiftKey ? 10 : 1),
    PageDown: () => curve.step(-50),
    PageUp: () => curve.step(50),
    Home: () => curve.edge(false),
    End: () => curve.edge(true),
    '+': () => go.zoom(0.5, 0.5),
    '=': () => go.zoom(0.5, 0.5),
    '-': () => go.zoom(2, 0.5),
    ',': () => go.shift(-0.25),
    '.': () => go.shift(0.25),
    0: () => go.follow('day'),
  };
  panels.addEventListener('keydown', (event) => {
    const act = keys[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act(event);
  });

  panels.addEventListener('wheel', (event) => {
    if (event.ctrlKey) {
      event.preventDefault();
      go.zoom(event.deltaY > 0 ? 1.25 : 0.8, curve.shareAt(event.clientX));
    } else if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
      event.preventDefault();
      go.shift(event.deltaX / panels.clientWidth);
    }
  }, { passive: false });

  panels.addEventListener('dblclick', (event) => go.zoom(2, curve.shareAt(event.clientX)));

  panels.addEventListener('pointerdown', (event) => {
    if (event.pointerType === 'mouse') {
      const share = curve.shareAt(event.clientX);
      if (event.shiftKey || event.button === 1) grabbed = { x: event.clientX, from: go.view.from, until: go.view.until };
      else if (event.button === 0) chosen = share;
      return;
    }
    fingers.set(event.pointerId, event.clientX);
    if (fingers.size === 1) curve.readAt(curve.shareAt(event.clientX));
    if (fingers.size === 2) grabbed = { xs: [...fingers.values()], from: go.view.from, until: go.view.until };
  });

  panels.addEventListener('pointermove', (event) => {
    if (event.pointerType === 'mouse') {
      if (grabbed) dragTo(event.clientX);
      return;
    }
    if (!fingers.has(event.pointerId)) return;
    fingers.set(event.pointerId, event.clientX);
    if (fingers.size === 1) curve.readAt(curve.shareAt(event.clientX));
    if (fingers.size === 2 && grabbed) spread();
  });

  function dragTo(x) {
    const by = ((grabbed.x - x) / panels.clientWidth) * (grabbed.until - grabbed.from);
    go.look(grabbed.from + by, grabbed.until + by);
  }

  // Two fingers hold two moments of the curve; the view is the one that keeps both under the fingers.
  function spread() {
    const shares = (xs) => xs.map((x) => (x - panels.getBoundingClientRect().left) / panels.clientWidth);
    const [a, b] = shares(grabbed.xs);
    const [p, q] = shares([...fingers.values()]);
    if (Math.abs(q - p) < 0.04) return;
    const length = grabbed.until - grabbed.from;
    const newLength = (length * (b - a)) / (q - p);
    if (!(newLength > 0)) return;
    const from = grabbed.from + a * length - p * newLength;
    go.look(from, from + newLength);
  }

  function end(event) {
    fingers.delete(event.pointerId);
    if (event.pointerType === 'mouse' && chosen !== null && !grabbed) {
      const share = curve.shareAt(event.clientX);
      const [from, until] = [Math.min(chosen, share), Math.max(chosen, share)];
      const length = go.view.until - go.view.from;
      if (until - from > 0.015) go.look(go.view.from + from * length, go.view.from + until * length);
      curve.plots().forEach((plot) => plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false));
    }
    if (fingers.size < 2) grabbed = null;
    chosen = null;
  }
  addEventListener('pointerup', end);
  addEventListener('pointercancel', end);
}
