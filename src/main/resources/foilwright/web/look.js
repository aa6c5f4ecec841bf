// The look's panel: few hairs at once, then all; what is under way ends when something changes.
const bytes = crypto.getRandomValues(new Uint8Array(12));
const viewer = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
const other = viewer.split('').reverse().join('');
const work = document.getElementById('work');
const panel = document.getElementById('look-panel');
const besidePanel = document.getElementById('beside-panel');
const ways = panel.querySelector('.look-ways');
const shown = panel.querySelector('.look-shown');
const words = panel.querySelector('.look-words');
const state = panel.querySelector('.look-state');
const bar = state.querySelector('progress');
const said = state.querySelector('span');
const FINE_AFTER_MS = 500;
const TYPED_AFTER_MS = 120;
const TOLD_EVERY_MS = 300;

let large = sessionStorage.getItem('fall') ?? 'front';
let inSight = false;
let stale = true;
let latest = 0;
let asking = null;
let chosenPart = '';
let lastPlanned = '';
let wait = 0;

const query = () => document.getElementById('now').dataset.query;
const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

function tell(text, share = null) {
  said.textContent = text;
  bar.hidden = share === null;
  if (share !== null) bar.value = share;
}

function asked(extra) {
  const asks = new URLSearchParams(query());
  asks.set('months', ways.months.value);
  asks.set('style', ways.style.value);
  if (chosenPart) asks.set('combed', chosenPart);
  for (const [name, value] of Object.entries(extra)) asks.set(name, value);
  return asks;
}

/** Asks for a piece of page; empty when the server was asked for a newer one meanwhile. */
async function piece(address, signal) {
  const answer = await fetch(address, { signal });
  if (answer.status === 204) return null;
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  if (!answer.ok) throw new Error(page.querySelector('main p:not(.maker)')?.textContent ?? 'It failed.');
  return page;
}

async function telling(id, until, tellDone) {
  while (!until()) {
    await pause(TOLD_EVERY_MS);
    if (until()) return;
    const answer = await fetch(`/look/done?viewer=${id}`);
    const done = Number(await answer.text());
    if (!until() && done < 1) tellDone(done);
  }
}

/** What is shown is of before a change from now on; there is none before the first look. */
function old() {
  const figure = document.querySelector('#seen-figure dd');
  if (shown.querySelector('.looked')) {
    shown.classList.add('old');
    figure?.classList.add('old');
  }
}

async function look() {
  const turn = ++latest;
  asking?.abort();
  asking = new AbortController();
  const { signal } = asking;
  stale = false;
  old();
  const first = !shown.querySelector('.looked');
  if (first) document.querySelector('#seen-figure dd').textContent = 'being worked out';
  try {
    for (const extra of [{}, { fine: '1' }]) {
      if (extra.fine) await pause(FINE_AFTER_MS);
      if (turn !== latest) return;
      let there = false;
      const doing = extra.fine
        ? 'Following every hair'
        : first
          ? 'A first picture of few hairs'
          : 'The picture is of before the change';
      telling(
        viewer,
        () => there || turn !== latest,
        (done) => tell(`${doing}, ${Math.round(100 * done)} %`, done),
      );
      const page = await piece(`/look?${asked({ ...extra, viewer })}`, signal).finally(() => {
        there = true;
      });
      if (turn !== latest || !page) return;
      await place(page.querySelector('.looked'), turn);
    }
  } catch (error) {
    if (turn !== latest || signal.aborted) return;
    tell(`The look cannot be shown: ${error.message}`);
    shown.setAttribute('aria-busy', 'false');
  }
}

/** Puts a look in the place of the last when its pictures are there. */
async function place(looked, turn) {
  const told = looked.querySelector('.words');
  told.remove();
  const next = document.importNode(looked, true);
  await Promise.all([...next.querySelectorAll('img[src]')].map((image) => image.decode()));
  if (turn !== latest) return;
  const focus = document.activeElement?.closest?.('.fall')?.dataset.side;
  shown.replaceChildren(next);
  words.replaceChildren(document.importNode(told, true));
  shown.classList.remove('old');
  const fine = next.dataset.fine === 'true';
  shown.setAttribute('aria-busy', String(!fine));
  shown.dataset.fine = String(fine);
  tell(fine ? '' : 'A first picture of few hairs', null);
  if (!chosenPart) ways.elements.combed.value = next.dataset.part;
  turnTo(large);
  showFigure();
  if (focus) next.querySelector(`.fall[data-side="${focus}"] button`)?.focus();
}

/** The share among the figures that are always in sight. */
function showFigure() {
  const looked = shown.querySelector('.looked');
  const place = document.querySelector('#seen-figure dd');
  if (!looked || !place) return;
  const note = document.createElement('small');
  note.textContent = looked.dataset.note;
  place.replaceChildren(looked.dataset.seen, ' ', note);
  place.classList.toggle('old', shown.classList.contains('old'));
}

function turnTo(side) {
  large = side;
  sessionStorage.setItem('fall', side);
  for (const figure of shown.querySelectorAll('.fall')) {
    const is = figure.dataset.side === side;
    figure.classList.toggle('large', is);
    figure.querySelector('button').setAttribute('aria-pressed', String(is));
  }
  wipe();
}

/** Shows as much of before as is asked for; its picture comes when it is first wanted. */
function wipe() {
  const share = Number(ways.before.value);
  const before = shown.querySelector('.fall.large .was:not([src])');
  if (share > 0 && before) before.src = before.dataset.src;
  ways.before.setAttribute(
    'aria-valuetext',
    share === 0 ? 'after only' : share === 100 ? 'before only' : `before on ${share} % from the left`,
  );
  shown.style.setProperty('--before', `${share}%`);
  shown.classList.toggle('wiped', share > 0);
}

function soon() {
  stale = true;
  latest += 1;
  asking?.abort();
  old();
  clearTimeout(wait);
  wait = setTimeout(() => inSight && look(), TYPED_AFTER_MS);
}

ways.addEventListener('submit', (event) => event.preventDefault());
ways.addEventListener('input', (event) => {
  if (event.target.name === 'before') {
    wipe();
    return;
  }
  if (event.target.name === 'combed') chosenPart = event.target.value;
  panel.querySelector('.value').textContent = ways.months.value;
  ways.months.setAttribute('aria-valuetext', `${ways.months.value} months`);
  soon();
});

shown.addEventListener('click', (event) => {
  const figure = event.target.closest('.fall');
  if (figure) turnTo(figure.dataset.side);
});

function patterns() {
  const choice = besidePanel.querySelector('select');
  const chosen = choice.value;
  const all = document.getElementById('pick-pattern');
  choice.replaceChildren(
    ...[...all.options]
      .filter((option) => option.value !== all.value)
      .map((option) => new Option(option.text, option.value)),
  );
  if ([...choice.options].some((option) => option.value === chosen)) choice.value = chosen;
}

let comparing = 0;
const besideState = besidePanel.querySelector('.beside-state');
const beside = besidePanel.querySelector('.beside');

besidePanel.querySelector('form').addEventListener('submit', async (event) => {
  event.preventDefault();
  const turn = ++comparing;
  let there = false;
  const tellDone = (done) => {
    besideState.textContent = `Looking at both, ${Math.round(100 * done)} %`;
  };
  besideState.textContent = 'Looking at both.';
  telling(other, () => there || turn !== comparing, tellDone);
  try {
    const asks = asked({ viewer: other, fine: '1', other: event.target.other.value });
    const page = await piece(`/look/beside?${asks}`).finally(() => {
      there = true;
    });
    if (turn !== comparing || !page) return;
    beside.replaceChildren(...[...page.body.children].map((part) => document.importNode(part, true)));
    beside.classList.remove('old');
    besideState.textContent = 'Both are shown.';
  } catch (error) {
    if (turn === comparing) besideState.textContent = `Not compared: ${error.message}`;
  }
});

/** A guest, a part or a pattern that is chosen anew is looked at as planned. */
function replanned() {
  const asks = new URLSearchParams(query());
  const planned = `${asks.get('guest')} ${asks.get('part')}`;
  if (planned !== lastPlanned) chosenPart = '';
  lastPlanned = planned;
}

document.body.addEventListener('htmx:beforeRequest', (event) => {
  if (event.detail.target?.id !== 'work' || !asking) return;
  latest += 1;
  asking.abort();
  asking = null;
  stale = true;
  fetch(`/look/leave?viewer=${viewer}`).catch(() => {});
});

work.addEventListener('tried', showFigure);
work.addEventListener('redrawn', () => {
  replanned();
  patterns();
  if (beside.children.length > 0) {
    beside.classList.add('old');
    besideState.textContent = 'This is of before the last change. Compare again.';
  }
  showFigure();
  soon();
});

document.body.addEventListener('htmx:responseError', soon);

replanned();
patterns();
new IntersectionObserver((entries) => {
  inSight = entries.some((entry) => entry.isIntersecting);
  if (inSight && stale) look();
}).observe(panel);
