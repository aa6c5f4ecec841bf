// Handles on the head: dragging one changes a field of its section, tried live and saved at the end.
import { askParts, putParts } from '/assets/page.js';

const work = document.getElementById('work');
const layer = document.createElement('div');
layer.className = 'handles';
layer.setAttribute('role', 'group');
layer.setAttribute('aria-label', 'Handles on the head');
const lines = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
lines.setAttribute('aria-hidden', 'true');
const hint = document.createElement('p');
hint.className = 'quiet';
const APART = 46;
const PAUSE = 700;
// To find the ways of handles takes the server longer than a change does, so they wait for the last.
const QUIET = 400;
const ASK = 'Open a section or press a foil, and its handles appear on the head.';

let picked = null;
let turnTo = false;
let found = false;
let asked = 0;
let quiet = null;
let trial = null;
let focusedHandle = null;

const handles = () => [...layer.querySelectorAll('.handle')];
const query = () => document.getElementById('now').dataset.query;
const figure = () => work.querySelector('.view.large');

// ---- which section

function pick(index) {
  if (picked === index) return;
  finish();
  picked = index;
  turnTo = index !== null;
  found = false;
  for (const handle of handles()) if (handle.dataset.key !== 'part') handle.remove();
  mark();
  place();
  work.dispatchEvent(new CustomEvent('picked', { detail: picked }));
  refresh();
}

function mark() {
  for (const card of work.querySelectorAll('.card')) {
    card.classList.toggle('picked', card.id === `card-${picked}`);
  }
}

work.addEventListener('click', (event) => {
  const details = event.target.closest('.card > details');
  if (!details || !event.target.closest('summary') || event.target.closest('details') !== details) return;
  const index = details.parentElement.id.replace('card-', '');
  if (!details.open) pick(index);
  else if (picked === index) pick(null);
});

work.addEventListener('foil', (event) => {
  const card = [...work.querySelectorAll('.card')].find((c) =>
    c.querySelector('[data-numbers]').dataset.numbers.split(' ').includes(event.detail),
  );
  if (!card) return;
  card.querySelector('details').open = true;
  pick(card.id.replace('card-', ''));
});

// ---- what the server says of handles

async function refresh() {
  clearTimeout(quiet);
  const mine = ++asked;
  const section = picked === null ? '' : `&section=${picked}`;
  try {
    const answer = await fetch(`/handles?${query()}${section}`);
    if (!answer.ok || mine !== asked) return;
    const said = new DOMParser().parseFromString(await answer.text(), 'text/html');
    if (mine !== asked || trial) return;
    renew([...said.querySelectorAll('.handle')]);
  } catch {
    // The page itself says so when the program does not answer.
  }
}

function renew(served) {
  const wanted = new Set(served.map((handle) => handle.id));
  for (const handle of handles()) if (!wanted.has(handle.id)) handle.remove();
  for (const handle of served) {
    const here = document.getElementById(handle.id);
    if (here) {
      for (const { name, value } of handle.attributes) {
        if (name !== 'style') here.setAttribute(name, value);
      }
    } else {
      layer.append(document.adoptNode(handle));
    }
  }
  for (const handle of handles()) {
    handle.ways = new Map(
      handle.dataset.ways.split(';').map((way) => {
        const [view, facing, ...stops] = way.split(' ');
        return [view, { facing: Number(facing), stops: stops.map((s) => s.split(',').map(Number)) }];
      }),
    );
  }
  found = true;
  if (turnTo) turnToHandles();
  turnTo = false;
  place();
}

function turnToHandles() {
  const own = handles().filter((handle) => handle.dataset.key !== 'part');
  const here = figure()?.dataset.view;
  if (!own.length || own.some((handle) => handle.ways.has(here))) return;
  const [best] = [...own[0].ways].sort((a, b) => b[1].facing - a[1].facing);
  work.querySelector(`[data-view=${best[0]}] .swap`)?.click();
}

// ---- where they are

const wayOf = (handle) => handle.ways?.get(figure()?.dataset.view);

function pointAt(way, value) {
  const stops = way.stops;
  let i = 1;
  while (i < stops.length - 1 && stops[i][0] < value) i += 1;
  const [a, b] = [stops[i - 1], stops[i]];
  const share = b[0] === a[0] ? 0 : Math.max(0, Math.min(1, (value - a[0]) / (b[0] - a[0])));
  // Where the first values move nothing, the way leads on from where it begins to.
  const c = stops.slice(i).find((stop) => Math.hypot(stop[1] - a[1], stop[2] - a[2]) > 0.05) ?? b;
  return {
    x: a[1] + share * (b[1] - a[1]),
    y: a[2] + share * (b[2] - a[2]),
    angle: (Math.atan2(c[2] - a[2], c[1] - a[1]) * 180) / Math.PI,
  };
}

function valueAt(way, x, y) {
  let best = null;
  for (let i = 1; i < way.stops.length; i += 1) {
    const [a, b] = [way.stops[i - 1], way.stops[i]];
    const [dx, dy] = [b[1] - a[1], b[2] - a[2]];
    const size = dx * dx + dy * dy;
    if (size > 0) {
      const share = Math.max(0, Math.min(1, ((x - a[1]) * dx + (y - a[2]) * dy) / size));
      const off = Math.hypot(a[1] + share * dx - x, a[2] + share * dy - y);
      if (!best || off < best.off) best = { off, value: a[0] + share * (b[0] - a[0]) };
    }
  }
  return best ? best.value : way.stops[0][0];
}

/** From millimetres of the drawing to pixels of its figure. */
function scale() {
  const drawing = figure().querySelector('svg');
  const box = layer.getBoundingClientRect();
  const matrix = drawing.getScreenCTM();
  return {
    out: (p) => ({ x: matrix.a * p.x + matrix.e - box.left, y: matrix.d * p.y + matrix.f - box.top }),
    back: (x, y) => ({ x: (x - matrix.e) / matrix.a, y: (y - matrix.f) / matrix.d }),
  };
}

function line(from, to, name) {
  const drawn = document.createElementNS('http://www.w3.org/2000/svg', 'polyline');
  drawn.setAttribute('points', [from, ...to].map((p) => `${p.x},${p.y}`).join(' '));
  drawn.setAttribute('class', name);
  lines.append(drawn);
}

function place() {
  const view = figure();
  if (!view) return;
  if (layer.parentElement !== view) {
    view.querySelector('figcaption').before(layer);
    work.querySelector('.views').after(hint);
  }
  lines.replaceChildren();
  const { out } = scale();
  const shown = [];
  for (const handle of handles()) {
    const way = wayOf(handle);
    handle.hidden = !way;
    if (way) {
      const at = pointAt(way, now(handle));
      const anchor = out(at);
      handle.querySelector('g')?.setAttribute('transform', `rotate(${at.angle})`);
      shown.push({ handle, way, anchor, x: anchor.x, y: anchor.y });
    }
  }
  apart(shown);
  for (const { handle, way, anchor, x, y } of shown) {
    handle.style.left = `${x}px`;
    handle.style.top = `${y}px`;
    if (Math.hypot(anchor.x - x, anchor.y - y) > 6) {
      line(anchor, [{ x, y }], 'leader');
      line(anchor, [anchor], 'foot');
    }
    if (handle === trial?.handle) {
      const points = way.stops.map((s) => out({ x: s[1], y: s[2] }));
      line(points[0], points.slice(1), 'way');
    }
  }
  const own = handles().filter((handle) => handle.dataset.key !== 'part');
  const name = work.querySelector(`#card-${picked} .card-name`)?.textContent;
  hint.textContent = picked === null ? ASK : hintFor(own, name);
}

function hintFor(own, name) {
  if (!found) return `${name}: its handles are being found.`;
  if (!own.length) return `${name}: its values are in the fields of its card.`;
  if (own.some((handle) => !handle.hidden)) {
    return `${name}: drag a handle, or reach it by Tab and use the arrow keys. Escape puts a drag back.`;
  }
  const views = new Set(own.flatMap((handle) => [...handle.ways.keys()]));
  const names = [...views].map((v) => work.querySelector(`[data-view=${v}] .swap`)?.textContent);
  return `${name}: its handles are on ${names.join(', ')}.`;
}

/** Handles that would lie over one another are drawn apart; a line leads each back to its place. */
function apart(shown) {
  for (let round = 0; round < 30; round += 1) {
    for (let i = 0; i < shown.length; i += 1) {
      for (let j = i + 1; j < shown.length; j += 1) {
        const [a, b] = [shown[i], shown[j]];
        const far = Math.hypot(b.x - a.x, b.y - a.y);
        if (far < APART) {
          const [x, y] = far > 0.5 ? [(b.x - a.x) / far, (b.y - a.y) / far] : [1, 0];
          const push = (APART - far) / 2;
          a.x -= x * push;
          a.y -= y * push;
          b.x += x * push;
          b.y += y * push;
        }
      }
    }
  }
}

// ---- values

const now = (handle) => Number(handle.getAttribute('aria-valuenow'));

function text(handle, value) {
  const decimals = (handle.dataset.step.split('.')[1] ?? '').length;
  return String(Number(value.toFixed(decimals)));
}

function words(handle, value) {
  const { unit, key } = handle.dataset;
  if (key !== 'part') return unit === '\u00b0' ? `${text(handle, value)}\u00b0` : `${text(handle, value)} ${unit}`;
  if (value === 0) return 'on the centre line';
  return `${text(handle, Math.abs(value))} ${unit} to the client\u2019s ${value < 0 ? 'left' : 'right'}`;
}

function legal(handle, value) {
  const step = Number(handle.dataset.step);
  const least = Number(handle.getAttribute('aria-valuemin'));
  const most = Number(handle.getAttribute('aria-valuemax'));
  const rounded = Math.round(Math.max(least, Math.min(most, value)) / step) * step;
  const gap = Number(handle.dataset.gap ?? 0);
  if (Math.abs(rounded) < gap) return Math.abs(rounded) < gap / 2 ? 0 : Math.sign(rounded) * gap;
  return Number(text(handle, Math.max(least, Math.min(most, rounded))));
}

function field(handle) {
  return document.getElementById(`field-${picked}-${handle.dataset.key}`);
}

function begin(handle) {
  if (trial?.handle === handle) return;
  finish();
  const its = field(handle);
  trial = { handle, from: now(handle), typed: its?.value, shown: new Map(), wanted: null };
  handle.classList.add('held');
}

function set(handle, value) {
  if (value === now(handle)) return;
  handle.setAttribute('aria-valuenow', text(handle, value));
  handle.setAttribute('aria-valuetext', words(handle, value));
  handle.querySelector('.handle-value').textContent = words(handle, value);
  const its = field(handle);
  if (its) its.value = text(handle, value);
  place();
  trial.wanted = value;
  tryOut(trial);
}

function partWords(handle, value) {
  if (value === 0) return 'centre';
  return `${value < 0 ? 'left' : 'right'} ${text(handle, Math.abs(value))} ${handle.dataset.unit}`;
}

// ---- trying

/** One question at a time, the last value next; so that no older answer follows a newer one. */
async function tryOut(its) {
  if (its.asking) return;
  its.asking = new AbortController();
  while (its.wanted !== null && its === trial) {
    const ask = new URLSearchParams(query());
    const { handle } = its;
    if (handle.dataset.key === 'part') {
      ask.set('part', partWords(handle, its.wanted));
    } else {
      ask.set('section', picked);
      ask.set(handle.dataset.key, text(handle, its.wanted));
    }
    its.wanted = null;
    try {
      const parts = await askParts('/try', ask, its.asking.signal);
      if (its === trial) show(its, parts);
    } catch {
      break;
    }
  }
  its.asking = null;
}

/** Shows of a trial what is seen of it; its fields stay as they are typed. */
function show(its, parts) {
  const seen = parts.filter((part) => /^(drawing-|part-placed$|card-said-)/.test(part.id));
  for (const before of putParts(seen)) {
    if (!its.shown.has(before.id)) its.shown.set(before.id, before);
  }
  work.dispatchEvent(new Event('tried'));
  place();
}

function stop(its) {
  trial = null;
  clearTimeout(its.pause);
  its.asking?.abort();
  its.handle.classList.remove('held');
}

function putBack() {
  const its = trial;
  if (!its) return;
  stop(its);
  putParts(its.shown.values());
  const shownField = field(its.handle);
  if (shownField && its.typed !== undefined) shownField.value = its.typed;
  its.handle.setAttribute('aria-valuenow', its.from);
  its.handle.setAttribute('aria-valuetext', words(its.handle, its.from));
  its.handle.querySelector('.handle-value').textContent = words(its.handle, its.from);
  place();
}

/** Saves what was tried, as one change of its field. */
function finish() {
  const its = trial;
  if (!its) return;
  if (now(its.handle) === its.from) {
    putBack();
    return;
  }
  stop(its);
  place();
  if (its.handle.dataset.key === 'part') {
    const values = { to: partWords(its.handle, now(its.handle)) };
    window.htmx.ajax('POST', '/part', { source: '#undo', target: '#work', values });
  } else {
    field(its.handle)?.dispatchEvent(new Event('change', { bubbles: true }));
  }
}

// ---- by pointer

let held = null;

layer.addEventListener('pointerdown', (event) => {
  const handle = event.target.closest('.handle');
  if (!handle || event.button !== 0) return;
  event.preventDefault();
  handle.focus({ preventScroll: true });
  handle.setPointerCapture(event.pointerId);
  begin(handle);
  const { out } = scale();
  const box = layer.getBoundingClientRect();
  const at = out(pointAt(wayOf(handle), now(handle)));
  held = { id: event.pointerId, x: event.clientX - box.left - at.x, y: event.clientY - box.top - at.y };
  place();
});

layer.addEventListener('pointermove', (event) => {
  if (!held || event.pointerId !== held.id || !trial) return;
  const { back } = scale();
  const { x, y } = back(event.clientX - held.x, event.clientY - held.y);
  set(trial.handle, legal(trial.handle, valueAt(wayOf(trial.handle), x, y)));
});

layer.addEventListener('pointerup', (event) => {
  if (!held || event.pointerId !== held.id) return;
  held = null;
  finish();
});

layer.addEventListener('pointercancel', () => {
  held = null;
  putBack();
});

// ---- by keys

layer.addEventListener('keydown', (event) => {
  const handle = event.target.closest('.handle');
  if (!handle) return;
  if (event.key === 'Escape') {
    if (trial) {
      event.stopPropagation();
      held = null;
      putBack();
    }
    return;
  }
  const step = Number(handle.dataset.step) * (event.shiftKey ? 10 : 1);
  const value = now(handle);
  const to = {
    ArrowRight: value + step,
    ArrowUp: value + step,
    ArrowLeft: value - step,
    ArrowDown: value - step,
    PageUp: value + 10 * step,
    PageDown: value - 10 * step,
    Home: Number.NEGATIVE_INFINITY,
    End: Number.POSITIVE_INFINITY,
  }[event.key];
  if (to === undefined) return;
  event.preventDefault();
  event.stopPropagation();
  begin(handle);
  const gap = Number(handle.dataset.gap ?? 0);
  const over = gap && Math.abs(to) < gap && Math.abs(to) !== 0;
  set(handle, over ? (Math.abs(value) >= gap ? 0 : Math.sign(to) * gap) : legal(handle, to));
  if (!held) {
    clearTimeout(trial.pause);
    trial.pause = setTimeout(finish, PAUSE);
  }
});

layer.addEventListener('focusout', () => {
  if (!held) finish();
});

// ---- with the page

document.body.addEventListener('htmx:beforeSwap', () => {
  focusedHandle = document.activeElement?.closest?.('.handle')?.id ?? null;
});

work.addEventListener('redrawn', () => {
  if (picked !== null && !document.getElementById(`card-${picked}`)) picked = null;
  mark();
  place();
  const before = focusedHandle && document.getElementById(focusedHandle);
  if (before && !before.hidden) before.focus({ preventScroll: true });
  clearTimeout(quiet);
  quiet = setTimeout(refresh, QUIET);
});

work.addEventListener('view', place);
const sizes = new ResizeObserver(() => place());
sizes.observe(layer);
layer.append(lines);
place();
refresh();
