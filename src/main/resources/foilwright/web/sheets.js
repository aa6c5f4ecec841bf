// Sheets: enlarging a page, printing, and telling what was drawn. The rest is the server's.
const drawn = document.getElementById('drawn');
const said = document.getElementById('said');

drawn.addEventListener('click', (event) => {
  const page = event.target.closest('.enlarge');
  if (page) {
    const large = page.getAttribute('aria-pressed') !== 'true';
    page.setAttribute('aria-pressed', String(large));
    page.setAttribute(
      'aria-label',
      page.getAttribute('aria-label').replace(/, .*/, large ? ', make smaller' : ', enlarge'),
    );
  }
  if (event.target.closest('#print-sheet')) {
    const pictures = [...drawn.querySelectorAll('img')].map((picture) => picture.decode());
    Promise.allSettled(pictures).then(() => window.print());
  }
});

document.body.addEventListener('htmx:beforeRequest', () => {
  said.textContent = 'Drawing the sheet.';
});

document.body.addEventListener('htmx:afterSwap', () => {
  const name = drawn.querySelector('h2')?.textContent ?? 'This sheet';
  said.textContent = `${name} is drawn: ${drawn.querySelectorAll('.leaf').length} pages.`;
  const chosen = new URLSearchParams(new FormData(document.getElementById('choosing')));
  history.replaceState(null, '', `/sheets?${chosen}`);
});

function wrong(words) {
  const told = document.createElement('p');
  told.setAttribute('role', 'alert');
  told.textContent = words;
  drawn.replaceChildren(told);
}

document.body.addEventListener('htmx:responseError', (event) => {
  const answer = new DOMParser().parseFromString(event.detail.xhr.responseText, 'text/html');
  wrong(answer.querySelector('main p')?.textContent ?? 'That did not work.');
});

document.body.addEventListener('htmx:sendError', () => {
  wrong('The program does not answer. Start it again; nothing that was saved is lost.');
});
