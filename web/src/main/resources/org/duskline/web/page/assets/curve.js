// The curve of one trap: fetches what is looked at, draws it, and lets mouse, finger and keys move about in it.
import { drawing } from './curve-drawing.js';
import { moving } from './curve-moving.js';

const root = document.getElementById('curve');
const address = root.dataset.address;
const zone = root.dataset.zone;
const lengths = { '6h': 6, day: 24, '3days': 72, week: 168 };
const shortest = 10 * 60;
const longest = 800 * 86400;

const view = {
  from: Date.parse(root.dataset.from) / 1000,
  until: Date.parse(root.dataset.until) / 1000,
  following: root.dataset.following,
};
let now = Date.parse(document.body.dataset.now) / 1000;
let asked = 0;

const curve = drawing(root, zone, () => JSON.parse(document.getElementById('marks').dataset.marks));

const iso = (seconds) => new Date(Math.round(seconds) * 1000).toISOString().replace('.000Z', 'Z');

const beside = document.getElementById('beside');
const besideIt = () => (beside.value ? `&beside=${encodeURIComponent(beside.value)}` : '');

function query() {
  return `from=${iso(view.from)}&until=${iso(view.until)}`;
}

async function fetchCurve() {
  const number = ++asked;
  root.dataset.busy = 'true';
  const columns = Math.max(200, Math.min(1200, Math.round(root.clientWidth * Math.min(2, devicePixelRatio))));
  try {
    const [answer, takeBesides] = await Promise.all([
      fetch(`/api/traps/${address}/curve?${query()}&columns=${columns}`),
      curve.besides.fetch(JSON.parse(beside.selectedOptions[0].dataset.curves), view, columns, iso),
    ]);
    if (number !== asked) return;
    if (!answer.ok) throw new Error((await answer.json()).detail);
    curve.show(await answer.json(), view, takeBesides);
  } catch (problem) {
    if (number === asked) curve.note(`The curve could not be fetched: ${problem.message || 'no connection'}. It is tried again with the next sample.`);
  } finally {
    if (number === asked) root.dataset.busy = 'false';
  }
}

// The address, the table in words and the links follow what is looked at, a moment later.
let later;
function settle() {
  clearTimeout(later);
  later = setTimeout(() => {
    fetchCurve();
    const address = view.following ? `?span=${view.following}` : `?${query()}`;
    history.replaceState(null, '', address + besideIt());
    document.querySelectorAll('#view-now input').forEach((input) => {
      if (input.name === 'beside') {
        input.disabled = !beside.value;
        input.value = beside.value;
        return;
      }
      input.disabled = (input.name === 'span') !== Boolean(view.following);
      input.value = input.name === 'span' ? view.following : iso(view[input.name]);
    });
    document.getElementById('get-csv').href = `/api/traps/${root.dataset.address}/curve.csv?${query()}`;
    document.getElementById('why-nothing').href = `/traps/${root.dataset.address}/why?${query()}`;
    htmx.trigger('#region', 'refresh');
  }, 160);
}

function look(from, until) {
  const middle = (from + until) / 2;
  const length = Math.max(shortest, Math.min(longest, until - from));
  view.from = middle - length / 2;
  view.until = middle + length / 2;
  view.following = '';
  changed();
}

function follow(span) {
  const recorded = Date.parse(root.dataset.recorded) / 1000;
  view.until = now;
  view.from = span === 'season' ? Math.min(recorded || now, now - 86400) : now - lengths[span] * 3600;
  view.following = span;
  changed();
}

function changed() {
  document.querySelectorAll('[data-span]').forEach((button) => {
    button.setAttribute('aria-pressed', String(button.dataset.span === view.following));
  });
  curve.scale(view);
  settle();
}

const steps = {
  earlier: () => shift(-0.5),
  later: () => shift(0.5),
  closer: () => zoom(0.5, 0.5),
  wider: () => zoom(2, 0.5),
};

function shift(share) {
  const by = (view.until - view.from) * share;
  look(view.from + by, view.until + by);
}

function zoom(factor, at) {
  const length = (view.until - view.from) * factor;
  const still = view.from + (view.until - view.from) * at;
  look(still - length * at, still + length * (1 - at));
}

document.querySelectorAll('[data-span]').forEach((button) => button.addEventListener('click', () => follow(button.dataset.span)));
document.querySelectorAll('[data-step]').forEach((button) => button.addEventListener('click', () => steps[button.dataset.step]()));
beside.addEventListener('change', settle);
moving(document.getElementById('panels'), curve, { look, shift, zoom, follow, view });

document.addEventListener('click', (event) => {
  const show = event.target.closest('[data-show-from]');
  if (!show) return;
  event.preventDefault();
  look(Date.parse(show.dataset.showFrom) / 1000, Date.parse(show.dataset.showUntil) / 1000);
  root.scrollIntoView({ block: 'start' });
  document.getElementById('panels').focus({ preventScroll: true });
});

const said = document.getElementById('curve-said');
const say = (text) => {
  said.textContent = text;
};

async function copy(text, what) {
  try {
    await navigator.clipboard.writeText(text);
    say(`${what} copied.`);
  } catch {
    say(`This browser doesn’t let the page copy. ${what === 'Link' ? 'Take the address from the address bar.' : 'Use “Save CSV” instead.'}`);
  }
}

document.getElementById('copy-link').addEventListener('click', () => {
  copy(`${location.origin}${location.pathname}?${query()}${besideIt()}`, 'Link');
});
document.getElementById('copy-csv').addEventListener('click', async () => {
  const answer = await fetch(`/api/traps/${address}/curve.csv?${query()}`);
  copy(await answer.text(), 'CSV');
});

// New samples: a view that goes along with the time moves on, a fixed one is only drawn anew.
document.body.addEventListener('htmx:afterRequest', (event) => {
  if (event.detail.elt.id !== 'region' || !event.detail.successful) return;
  now = Date.parse(event.detail.xhr.getResponseHeader('Duskline-Now')) / 1000;
  const cause = event.detail.requestConfig.triggeringEvent;
  if (!cause || !cause.type.startsWith('sse:')) return;
  if (view.following) {
    view.from = view.following === 'season' ? view.from : now - lengths[view.following] * 3600;
    view.until = now;
  }
  fetchCurve();
});
document.addEventListener('part-changed', () => curve.marks());
document.addEventListener('light-changed', () => curve.repaint());
matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => curve.repaint());
new ResizeObserver(() => curve.resize()).observe(root);

fetchCurve();
