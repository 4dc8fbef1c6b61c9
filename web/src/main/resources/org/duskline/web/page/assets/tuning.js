// Tries thresholds: every turn of a dial asks the desk anew, and the wish before it is left.
const desk = document.getElementById('desk');
const dials = [...desk.querySelectorAll('[data-dial]')];
const trap = document.getElementById('trap');
const running = document.getElementById('running');
const untried = document.getElementById('untried');
const outcome = document.getElementById('outcome');
const adoptButton = document.getElementById('adopt-button');
const why = document.getElementById('why');
const seat = crypto.getRandomValues(new Uint32Array(2)).join('-');
const pauseMillis = 220;
let source = null;
let searching = null;
let waiting;

const stops = (dial) => JSON.parse(dial.dataset.stops);
const hidden = (dial) => desk.querySelector(`input[type=hidden][name="${dial.dataset.dial}"]`);
const kept = new Map(dials.map((dial) => [dial, hidden(dial).value]));

function show(dial) {
  const [value, said] = stops(dial)[Number(dial.value)];
  const asNow = dial.value === dial.dataset.now;
  hidden(dial).value = asNow ? kept.get(dial) : value;
  document.getElementById(`out-${dial.dataset.dial}`).textContent = said;
  dial.setAttribute('aria-valuetext', said);
  dial.closest('.dial').classList.toggle('turned', !asNow);
}

const turned = () => dials.some((dial) => dial.value !== dial.dataset.now);

function settle() {
  adoptButton.disabled = !turned();
  document.getElementById('until-field').hidden = trap.value === '';
}

function turn() {
  settle();
  clearTimeout(waiting);
  if (source) source.close();
  source = null;
  if (!turned()) {
    running.hidden = true;
    outcome.replaceChildren();
    untried.hidden = false;
    return;
  }
  waiting = setTimeout(ask, pauseMillis);
}

function query(more) {
  const asked = new URLSearchParams({ seat, trap: trap.value, ...more });
  return asked.toString();
}

function follow(address, place, listeners) {
  const feed = new EventSource(address);
  const bar = place.querySelector('progress');
  const words = place.querySelector('span');
  place.hidden = false;
  bar.removeAttribute('value');
  words.textContent = 'Waiting for the desk';
  feed.addEventListener('progress', (event) => {
    const [, percent, doing] = /^(\d+) (.*)$/.exec(event.data);
    bar.value = Number(percent);
    words.textContent = doing;
  });
  feed.addEventListener('over', () => {
    feed.close();
    place.hidden = true;
  });
  feed.addEventListener('trouble', (event) => listeners.trouble(event.data));
  feed.onerror = () => {
    feed.close();
    place.hidden = true;
    listeners.trouble('The connection to Duskline broke off. Turn a threshold again once it is back.');
  };
  Object.entries(listeners).forEach(([name, listener]) => {
    if (name !== 'trouble') feed.addEventListener(name, (event) => listener(event.data));
  });
  return feed;
}

function ask() {
  const values = Object.fromEntries(dials.map((dial) => [dial.dataset.dial, hidden(dial).value]));
  untried.hidden = true;
  outcome.dataset.stale = 'true';
  source = follow(`/tuning/replay?${query({ ...values, finding: desk.dataset.finding, zone: desk.dataset.zone })}`, running, {
    outcome: (html) => {
      outcome.innerHTML = html;
      delete outcome.dataset.stale;
    },
    trouble: (text) => {
      outcome.textContent = text;
    },
  });
}

function take(thresholds) {
  dials.forEach((dial) => {
    const wanted = thresholds[dial.dataset.dial];
    const nearest = stops(dial).reduce((best, [value], index, all) => (Math.abs(value - wanted) < Math.abs(all[best][0] - wanted) ? index : best), 0);
    dial.value = String(nearest);
    show(dial);
  });
  turn();
}

dials.forEach((dial) => dial.addEventListener('input', () => {
  show(dial);
  turn();
}));
trap.addEventListener('change', () => {
  const address = new URL(location.href);
  address.searchParams.set('trap', trap.value);
  // Another trap may run on other numbers: the page is made anew for it.
  location.assign(address);
});
document.getElementById('as-now').addEventListener('click', () => {
  dials.forEach((dial) => {
    dial.value = dial.dataset.now;
    show(dial);
  });
  turn();
});
document.getElementById('prices').addEventListener('submit', (event) => {
  event.preventDefault();
  if (searching) searching.close();
  const said = document.getElementById('suggested');
  const prices = Object.fromEntries(new FormData(event.target));
  said.textContent = '';
  searching = follow(`/tuning/suggestion?${query(prices)}`, document.getElementById('searching'), {
    suggested: (data) => {
      const suggestion = JSON.parse(data);
      if (suggestion.supported) take(suggestion);
    },
    words: (text) => {
      said.textContent = text;
      if (why.value === '') why.placeholder = 'As suggested';
    },
    trouble: (text) => {
      said.textContent = text;
    },
  });
});
settle();
