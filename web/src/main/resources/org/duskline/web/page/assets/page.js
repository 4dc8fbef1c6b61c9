// What every page does: the light, the ages, and knowing whether the page is live.
(() => {
  const lights = { auto: 'as the device', day: 'day', night: 'night' };
  const loadedAt = Date.now();
  const serverNow = Date.parse(document.body.dataset.now);

  function startLightSwitch() {
    const button = document.getElementById('light-switch');
    const show = () => {
      const light = document.documentElement.dataset.light || 'auto';
      button.setAttribute('aria-label', `Light: ${lights[light]}`);
      button.querySelector('.light-words').textContent = `Light: ${light}`;
    };
    button.addEventListener('click', () => {
      const order = Object.keys(lights);
      const light = document.documentElement.dataset.light || 'auto';
      const next = order[(order.indexOf(light) + 1) % order.length];
      if (next === 'auto') {
        delete document.documentElement.dataset.light;
        localStorage.removeItem('duskline-light');
      } else {
        document.documentElement.dataset.light = next;
        localStorage.setItem('duskline-light', next);
      }
      show();
      document.dispatchEvent(new CustomEvent('light-changed'));
    });
    show();
  }

  function age(minutes) {
    if (minutes < 1) return 'just now';
    if (minutes < 90) return `${Math.floor(minutes)} min ago`;
    const hours = Math.round(minutes / 60);
    return hours < 48 ? `${hours} h ago` : `${Math.round(hours / 24)} days ago`;
  }

  // The age of what was heard goes on growing on an open page, also when nothing comes any more.
  let base = { page: loadedAt, server: serverNow };
  function growOlder() {
    const now = base.server + (Date.now() - base.page);
    document.querySelectorAll('time[data-age]').forEach((time) => {
      const text = age((now - Date.parse(time.dateTime)) / 60000);
      if (time.textContent !== text) time.textContent = text;
    });
  }

  function startLive() {
    const live = document.getElementById('live');
    const words = live.querySelector('.live-words');
    let lost = false;
    const brokerDown = () => document.querySelector('.broken') !== null;
    const say = (state, text) => {
      live.dataset.live = state;
      if (words.textContent !== text) words.textContent = text;
    };
    let connected = false;
    const tell = () => {
      if (!connected) say('off', 'not live, trying again');
      else if (brokerDown()) say('off', 'no broker');
      else say('on', 'live');
    };
    document.addEventListener('part-changed', tell);
    document.body.addEventListener('htmx:sseOpen', () => {
      connected = true;
      tell();
      if (lost) document.querySelectorAll('[data-region]').forEach((region) => htmx.trigger(region, 'refresh'));
      lost = false;
    });
    document.body.addEventListener('htmx:sseError', () => {
      lost = true;
      connected = false;
      tell();
    });
  }

  // A part that is fetched anew keeps open what was open.
  function keepOpen() {
    let open = [];
    document.body.addEventListener('htmx:beforeSwap', (event) => {
      open = [...event.target.querySelectorAll('details[open][id]')].map((details) => details.id);
      const now = event.detail.xhr && event.detail.xhr.getResponseHeader('Duskline-Now');
      if (now) base = { page: Date.now(), server: Date.parse(now) };
    });
    document.body.addEventListener('htmx:afterSwap', () => {
      open.forEach((id) => document.getElementById(id)?.setAttribute('open', ''));
      document.dispatchEvent(new CustomEvent('part-changed'));
    });
  }

  startLightSwitch();
  startLive();
  keepOpen();
  setInterval(growOlder, 15000);
})();
