// Pointing, swapping views, arrow keys in fields. Everything else is the server's.
const work = document.getElementById('work');
const said = document.getElementById('said');
let large = sessionStorage.getItem('view') ?? 'view-back';
let pinned = null;
let focused = null;
let opened = [];

const all = (selector) => [...work.querySelectorAll(selector)];

function showLarge(view) {
  large = view;
  sessionStorage.setItem('view', view);
  for (const figure of all('.view')) {
    const is = figure.dataset.view === view;
    figure.classList.toggle('large', is);
    figure.querySelector('.swap').setAttribute('aria-pressed', String(is));
  }
  work.dispatchEvent(new Event('view'));
}

function numbersAt(element) {
  const foil = element.closest?.('[data-number]');
  if (foil) return foil.dataset.number.split(' ');
  const card = element.closest?.('.card');
  return card ? numbersOf(card) : null;
}

/** The numbers of the foils of a card. */
function numbersOf(card) {
  const { numbers } = card.querySelector('[data-numbers]').dataset;
  return numbers ? numbers.split(' ') : [];
}

let lighted = '';

function light(numbers) {
  const wanted = new Set(numbers ?? (pinned ? [pinned] : []));
  const words = [...wanted].join(' ');
  if (words === lighted) return;
  lighted = words;
  for (const element of all('.lit[data-number]')) element.classList.remove('lit');
  for (const number of wanted) {
    for (const element of all(`[data-number="${number}"]`)) element.classList.add('lit');
  }
  head?.light(wanted);
  for (const card of all('.card')) {
    card.classList.toggle('lit', numbersOf(card).some((n) => wanted.has(n)));
  }
}

/** Lights what has come anew. */
function lightAnew() {
  const wanted = lighted;
  lighted = '';
  light(wanted ? wanted.split(' ') : null);
}

// The head to turn outlives each redrawing: its parts move into the new page.
const turn = document.getElementById('turn').content;
const turnParts = [...turn.children];
const [turnButton, turnFigure, turnWrong] = turnParts;
let head = null;
let pickedSection = null;

function placeTurn() {
  document.getElementById('turning')?.append(...turnParts);
}

async function showHead() {
  try {
    if (!head) {
      const { turningHead } = await import('/assets/head.js');
      head = turningHead(turnFigure.querySelector('canvas'), pin);
    }
    const answer = await fetch(`/head.json?${document.getElementById('now').dataset.query}`);
    if (!answer.ok) throw new Error('There is no plan to draw.');
    head.show(await answer.json());
    head.pick(pickedSection);
    turnFigure.dataset.shown = document.getElementById('now').dataset.query;
  } catch (error) {
    turnWrong.textContent = `The head to turn cannot be shown here. ${error.message}`;
  }
}

turnFigure.addEventListener('click', (event) => {
  const to = event.target.closest('[data-turn]:not(canvas)');
  if (to) head?.turnTo(...to.dataset.turn.split(' ').map(Number));
});
work.addEventListener('picked', (event) => {
  pickedSection = event.detail;
  head?.pick(pickedSection);
});

turnButton.addEventListener('click', () => {
  turnFigure.hidden = !turnFigure.hidden;
  turnButton.setAttribute('aria-expanded', String(!turnFigure.hidden));
  if (!turnFigure.hidden) showHead();
});

function pin(number) {
  pinned = pinned === number ? null : number;
  if (pinned) work.dispatchEvent(new CustomEvent('foil', { detail: pinned }));
  for (const button of all('.pin')) {
    button.setAttribute('aria-pressed', String(button.closest('tr').dataset.number === pinned));
  }
  light(null);
}

// A problem's pin on the head, its entry in the list and the one in its card point to each other.
let pinnedProblem = null;

function letterOf(mark) {
  const number = Number(mark.id.match(/problem-(\d+)$/)[1]);
  return number <= 26 ? String.fromCharCode(96 + number) : String(number);
}

const problemPins = () => all('.view svg .problem').filter((mark) => /problem-\d+$/.test(mark.id));

function lightProblem() {
  for (const mark of problemPins()) {
    const is = letterOf(mark) === pinnedProblem;
    mark.setAttribute('role', 'button');
    mark.setAttribute('tabindex', '0');
    mark.setAttribute('aria-pressed', String(is));
    mark.setAttribute('aria-label', `Pin ${letterOf(mark)}: show what to look at`);
    mark.classList.toggle('lit', is);
  }
  for (const look of all('.look[data-pin]')) {
    const is = look.dataset.pin === pinnedProblem;
    look.classList.toggle('lit', is);
    look.querySelector('.to-pin').setAttribute('aria-pressed', String(is));
  }
}

function reach(element) {
  element.scrollIntoView({ block: 'center' });
  element.focus({ preventScroll: true });
}

function fromPin(mark) {
  pinnedProblem = letterOf(mark);
  lightProblem();
  const its = all('.look[data-pin]').filter((look) => look.dataset.pin === pinnedProblem);
  const entry = its.find((look) => look.dataset.at === 'card') ?? its[0];
  if (entry) reach(entry);
}

function toPin(letter) {
  pinnedProblem = letter;
  lightProblem();
  const marks = problemPins().filter((mark) => letterOf(mark) === letter);
  const mark = marks.find((each) => each.closest('.view.large')) ?? marks[0];
  if (!mark) return;
  showLarge(mark.closest('.view').dataset.view);
  reach(mark);
}

work.addEventListener('click', (event) => {
  const to = event.target.closest('[data-to-pin]');
  if (to) toPin(to.dataset.toPin);
  const mark = event.target.closest('.view.large svg .problem');
  if (mark) fromPin(mark);
});

work.addEventListener('pointerover', (event) => light(numbersAt(event.target)));
work.addEventListener('pointerleave', () => light(null));
work.addEventListener('focusin', (event) => light(numbersAt(event.target)));
work.addEventListener('focusout', () => light(null));

// A measurement shows where the tape lies while its field is in use.
function lightDrawing(name) {
  for (const figure of all('figure[data-drawing]')) {
    figure.classList.toggle('lit', figure.dataset.drawing === name);
  }
}

work.addEventListener('focusin', (event) => lightDrawing(event.target.dataset?.drawing));

work.addEventListener('click', (event) => {
  const figure = event.target.closest('.view');
  if (figure && !figure.classList.contains('large')) {
    showLarge(figure.dataset.view);
    return;
  }
  const foil = event.target.closest('[data-number]');
  if (foil && (event.target.closest('svg') || event.target.closest('.pin'))) {
    pin(foil.dataset.number);
  }
  if (event.target.closest('#print')) window.print();
});

document.addEventListener('keydown', (event) => {
  if (event.key === 'Escape' && pinned) pin(pinned);
  const problem = event.target.closest?.('svg .problem');
  if (problem && (event.key === 'Enter' || event.key === ' ')) {
    event.preventDefault();
    fromPin(problem);
  }
  const field = event.target.closest?.('input[data-step]');
  const direction = { ArrowUp: 1, ArrowDown: -1 }[event.key];
  const step = Number(field?.dataset.step);
  if (!field || !direction || !step) return;
  const value = Number(field.value || 0);
  if (Number.isNaN(value)) return;
  event.preventDefault();
  field.value = String(Math.max(0, Math.round((value + direction * step) * 1000) / 1000));
  field.dispatchEvent(new Event('change', { bubbles: true }));
});

// What is changed while the page is being redrawn waits and is then done on the new page.
let busy = false;
const waiting = new Map();
let waitingStep = null;

work.addEventListener(
  'change',
  (event) => {
    if (!busy || !event.target.id) return;
    event.stopImmediatePropagation();
    waiting.set(event.target.id, [event.target.value, event.target.checked]);
  },
  true,
);

work.addEventListener(
  'click',
  (event) => {
    const step = event.target.closest('form[hx-post] button[id]');
    if (!busy || !step) return;
    event.stopImmediatePropagation();
    event.preventDefault();
    waitingStep = step.id;
  },
  true,
);

function goOn() {
  busy = false;
  const step = waitingStep && document.getElementById(waitingStep);
  waitingStep = null;
  const fields = [...waiting]
    .map(([id, value]) => [document.getElementById(id), value])
    .filter(([field]) => field);
  waiting.clear();
  for (const [field, [value, checked]] of fields) {
    if (field.type === 'checkbox') field.checked = checked;
    else field.value = value;
  }
  const forms = new Set(fields.map(([field]) => field.form));
  for (const form of forms) {
    fields.find(([field]) => field.form === form)[0].dispatchEvent(
      new Event('change', { bubbles: true }),
    );
  }
  step?.click();
}

document.body.addEventListener('htmx:beforeRequest', () => {
  busy = true;
});
// A change is answered with the parts of the page that differ from what it shows, the large view
// among them; all that the clocks tell and the other views follow when no other change is under way.
const LATER = ['part-timed', 'part-first', 'part-clock', 'part-foils', 'part-mix', 'part-looks'];
let asking = null;

function shown() {
  const marks = all('[data-mark]').map((part) => `${part.id}:${part.dataset.mark}`);
  return marks.length ? { have: marks.join(' '), large } : {};
}

/** Puts parts in place of those of the same names, the focus where it was; gives what was there. */
export function putParts(parts) {
  const before = [];
  const { id: reached } = document.activeElement ?? {};
  for (const part of parts) {
    const here = document.getElementById(part.id);
    if (here) {
      here.replaceWith(part);
      if (part.querySelector('[hx-post]')) window.htmx.process(part);
      before.push(here);
    }
  }
  if (reached && document.activeElement === document.body) {
    document.getElementById(reached)?.focus({ preventScroll: true });
  }
  return before;
}

const partsIn = (html) => [...document.createRange().createContextualFragment(html).children];

/** Asks for the parts of a page that differ from what is shown. */
export async function askParts(address, asks, signal) {
  const { value: token } = document.querySelector('#now [name="token"]');
  for (const [name, value] of Object.entries({ ...shown(), token })) asks.set(name, value);
  const answer = await fetch(address, { method: 'POST', body: asks, signal });
  if (!answer.ok) throw new Error(`status ${answer.status}`);
  return partsIn(await answer.text());
}

document.body.addEventListener('htmx:configRequest', (event) => {
  asking?.abort();
  Object.assign(event.detail.parameters, shown());
});

const laterParts = () => LATER.map((id) => document.getElementById(id));

async function fetchLater() {
  asking = new AbortController();
  const { signal } = asking;
  try {
    const asks = new URLSearchParams(document.getElementById('now').dataset.query);
    const parts = await askParts('/later', asks, signal);
    if (signal.aborted) return;
    putParts(parts);
    for (const part of laterParts()) part.removeAttribute('aria-busy');
    for (const button of all('.pin')) {
      button.setAttribute('aria-pressed', String(button.closest('tr').dataset.number === pinned));
    }
    lightAnew();
    lightProblem();
  } catch (error) {
    if (!signal.aborted) tell('Clock, foils and mix could not be shown. Load the page again.');
  }
}

document.body.addEventListener('htmx:afterSettle', (event) => {
  if (event.target !== work) return;
  goOn();
  if (!document.getElementById('now').dataset.later) return;
  for (const part of laterParts()) part.setAttribute('aria-busy', 'true');
  if (!busy) fetchLater();
});

function tell(words) {
  said.textContent = words;
  said.classList.remove('unseen');
  said.classList.add('notice');
}

function giveUp() {
  busy = false;
  waiting.clear();
  waitingStep = null;
}

// A section that was moved stays open, and the button that moved it stays in reach.
function afterMove(event) {
  const [, way, at] =
    /^(up|down) (\d+)$/.exec(event.detail.requestConfig?.parameters?.do ?? '') ?? [];
  if (!way || event.detail.xhr.status !== 200) return (id) => id;
  const from = Number(at);
  const to = from + (way === 'up' ? -1 : 1);
  const places = new Map([[from, to], [to, from]]);
  return (id) =>
    id.replace(/^(card-|more-|do-up-|do-down-)(\d+)$/, (all, name, n) =>
      name + (places.get(Number(n)) ?? n));
}

document.body.addEventListener('htmx:beforeSwap', (event) => {
  const now = afterMove(event);
  focused = now(document.activeElement?.id ?? '');
  opened = all('details[open]').map((details) => now(details.id || details.parentElement.id));
  // The button is gone with the problem that it cured.
  if (event.detail.requestConfig?.path === '/cure') focused = 'to-look-at';
  const made = event.detail.requestConfig?.path === '/patterns' && event.detail.xhr.status === 200;
  if (made) opened = [];
  // Parts take their places here; what is left to htmx is the address and what follows.
  if (event.detail.swapOverride === 'none') {
    putParts(partsIn(event.detail.serverResponse));
    event.detail.serverResponse = '';
  }
});

/** The section that was added last stands last; it is opened where it can be seen. */
function showAdded() {
  const card = all('.card').at(-1);
  if (!card.querySelector('details').open) card.querySelector('summary').click();
  card.scrollIntoView({ block: 'start' });
}

// All that is new stands in its place when this comes of the whole; it comes of each part besides.
document.body.addEventListener('htmx:afterSwap', (event) => {
  if (event.target !== work) return;
  const now = document.getElementById('now');
  said.textContent = now.dataset.said;
  document.title = `${now.dataset.title} \u2013 Foilwright`;
  // A part that took another's place has its details closed.
  for (const id of opened) {
    const kept = document.getElementById(id);
    (kept?.matches('details') ? kept : kept?.querySelector('details'))?.setAttribute('open', '');
  }
  if (now.dataset.later) {
    // A field that holds what means the same in other words says it in the program's words.
    const field = event.detail.requestConfig?.triggeringEvent?.target;
    if (field?.isConnected && field.matches('input[data-step]')) field.value = field.defaultValue;
  } else {
    placeTurn();
    showLarge(large);
  }
  if (!turnFigure.hidden) showHead();
  lightAnew();
  lightProblem();
  const before = focused && document.getElementById(focused);
  if (before && !before.disabled && before !== document.activeElement) {
    before.focus({ preventScroll: true });
  }
  work.dispatchEvent(new Event('redrawn'));
  const { requestConfig, xhr } = event.detail;
  if (xhr.status === 200 && requestConfig.parameters.do === 'add') showAdded();
  if (xhr.status !== 200) work.querySelector('.notice')?.scrollIntoView({ block: 'center' });
});

document.body.addEventListener('htmx:responseError', (event) => {
  giveUp();
  const answer = new DOMParser().parseFromString(event.detail.xhr.responseText, 'text/html');
  tell(answer.querySelector('main p:not(.maker)')?.textContent ?? 'That did not work.');
});

document.body.addEventListener('htmx:sendError', () => {
  giveUp();
  tell('The program does not answer. Start it again; nothing that was saved is lost.');
});

showLarge(large);
placeTurn();
lightProblem();
