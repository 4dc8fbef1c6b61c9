// In the field: keeps tonight's sheet on the phone, and keeps what is written down until there is reception.
// A form with data-field is sent by this script; where that fails, its words wait in the browser's own store.
(() => {
  const STORE = 'waiting';
  const AGAIN_MILLIS = 20000;
  const waitingLine = document.getElementById('waiting');

  function mark() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  }

  function opened() {
    return new Promise((resolve, reject) => {
      const request = indexedDB.open('duskline-field', 1);
      request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'id' });
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  }

  async function inStore(mode, work) {
    const database = await opened();
    try {
      return await new Promise((resolve, reject) => {
        const transaction = database.transaction(STORE, mode);
        const request = work(transaction.objectStore(STORE));
        transaction.oncomplete = () => resolve(request.result);
        transaction.onerror = () => reject(transaction.error);
      });
    } finally {
      database.close();
    }
  }

  const all = () => inStore('readonly', (store) => store.getAll());
  const keep = (entry) => inStore('readwrite', (store) => store.put(entry));
  const forget = (id) => inStore('readwrite', (store) => store.delete(id));

  function post(entry, token) {
    const fields = new URLSearchParams(entry.fields);
    fields.set('id', entry.id);
    if (!entry.fields.at) fields.set('agoSeconds', String(Math.max(0, Math.round((Date.now() - entry.tapped) / 1000))));
    fields.set('token', token);
    return fetch(entry.action, {
      method: 'POST',
      body: fields,
      headers: { 'Duskline-Token': token },
      credentials: 'same-origin',
    });
  }

  // A kept page may carry the token of an older session; a fresh page has the present one.
  async function freshToken() {
    const response = await fetch('/', { credentials: 'same-origin', headers: { 'Cache-Control': 'no-cache' } });
    const page = new DOMParser().parseFromString(await response.text(), 'text/html');
    return page.body.dataset.token || '';
  }

  async function send(entry) {
    const response = await post(entry, document.body.dataset.token || '');
    return response.status === 403 ? post(entry, await freshToken()) : response;
  }

  // Signed out meanwhile: what waits goes on waiting until its writer is back.
  function outside(response) {
    return response.redirected && ['/sign-in', '/join'].includes(new URL(response.url).pathname);
  }

  async function tell() {
    if (!waitingLine) return;
    const entries = await all();
    waitingLine.hidden = entries.length === 0;
    const refused = entries.filter((entry) => entry.refused);
    const words = refused.length > 0
      ? `${refused[0].said}: it was not taken (${refused[0].refused}). Open the trap’s page and write it down again.`
      : entries.map((entry) => entry.said).join(', ');
    const text = entries.length === 0 ? '' : refused.length > 0 ? words
      : `Kept on this phone, to be sent when there is reception: ${words}.`;
    if (waitingLine.textContent !== text) waitingLine.textContent = text;
  }

  let sending = false;
  async function sendWaiting() {
    if (sending) return;
    sending = true;
    try {
      let sent = 0;
      for (const entry of (await all()).sort((one, other) => one.tapped - other.tapped)) {
        if (entry.refused) continue;
        const response = await send(entry);
        if (outside(response)) {
          break;
        } else if (response.ok || response.redirected) {
          await forget(entry.id);
          sent += 1;
        } else if (response.status >= 400 && response.status < 500 && response.status !== 401 && response.status !== 403) {
          await keep({ ...entry, refused: response.status });
        } else {
          break;
        }
      }
      if (sent > 0 && window.htmx) {
        document.querySelectorAll('[data-region]').forEach((region) => htmx.trigger(region, 'refresh'));
      }
    } catch (noReception) {
      // It stays where it is and is tried again.
    } finally {
      sending = false;
      await tell();
    }
  }

  async function submitted(event) {
    const form = event.target.closest('form[data-field]');
    if (!form) return;
    event.preventDefault();
    const button = event.submitter;
    if (button) button.disabled = true;
    const entry = {
      id: mark(),
      action: form.getAttribute('action'),
      fields: Object.fromEntries([...new FormData(form)].filter(([name]) => name !== 'token' && name !== 'id')),
      said: form.dataset.field,
      tapped: Date.now(),
    };
    if (button && button.name) entry.fields[button.name] = button.value;
    try {
      const response = await send(entry);
      if (response.status >= 500) throw new Error('the service is down');
      if (outside(response)) {
        await keep(entry);
        location.assign(response.url);
      } else if (response.redirected) {
        location.assign(response.url);
      } else {
        const page = new DOMParser().parseFromString(await response.text(), 'text/html');
        const complaint = page.querySelector('.complaint, .lead');
        say(form, complaint ? complaint.textContent : 'It was not taken.');
        if (button) button.disabled = false;
      }
    } catch (noReception) {
      await keep(entry);
      say(form, 'Kept on this phone. It is sent when there is reception.');
      await tell();
    }
  }

  function say(form, words) {
    const said = form.querySelector('.form-said');
    said.textContent = words;
    said.hidden = false;
  }

  async function keepSheet() {
    if (!('serviceWorker' in navigator)) return;
    // A page that no worker served came with parts that none has kept yet.
    const first = !navigator.serviceWorker.controller;
    await navigator.serviceWorker.register('/worker.js');
    const registration = await navigator.serviceWorker.ready;
    const linked = (selector) => [...document.querySelectorAll(selector)].map((each) => each.getAttribute('href') || each.getAttribute('src'));
    const parts = first ? linked('link[rel=stylesheet], link[rel=icon], link[rel=manifest], script[src]') : [];
    const pages = linked('a[data-keep]').concat(first || location.pathname === '/' ? [location.pathname + location.search] : []);
    navigator.serviceWorker.addEventListener('message', (event) => {
      if (event.data.kept) document.documentElement.dataset.kept = 'yes';
    });
    if (pages.length + parts.length > 0) registration.active.postMessage({ keep: [...parts, ...pages] });
  }

  document.addEventListener('submit', submitted);
  document.addEventListener('click', (event) => {
    if (event.target.closest('#print-sheet')) window.print();
  });
  window.addEventListener('online', sendWaiting);
  setInterval(sendWaiting, AGAIN_MILLIS);
  sendWaiting();
  keepSheet().catch(() => {
    // Without a secure connection a browser keeps nothing; the pages work all the same while there is reception.
  });
})();
