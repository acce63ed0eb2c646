// Only in the preview: reloads the page when the site is a newer one, and shows the findings at the foot.
(function () {
  'use strict';
  const page = Number(document.currentScript.dataset.site);
  let bar = null;

  function line(finding) {
    const item = document.createElement('li');
    item.append(finding.severity + ' ' + finding.id + ': ' + finding.message + ' ');
    const place = document.createElement('code');
    place.textContent = finding.place;
    if (finding.quote === '') { item.append(place); return item; }
    // The place opens to the line itself and to what mends it.
    const lines = document.createElement('details');
    const head = document.createElement('summary');
    head.append(place);
    const quote = document.createElement('pre');
    quote.textContent = finding.quote;
    const mend = document.createElement('p');
    mend.textContent = finding.mend;
    lines.append(head, quote, mend);
    item.append(lines);
    return item;
  }

  function show(state) {
    if (bar) { bar.remove(); bar = null; }
    if (state.findings.length === 0) { return; }
    const worst = state.findings[0].severity;
    bar = document.createElement('details');
    bar.className = 'preview-bar';
    bar.dataset.worst = worst;
    bar.open = worst === 'error';
    const head = document.createElement('summary');
    head.textContent = state.all + (state.all === 1 ? ' finding' : ' findings')
      + (state.current ? '' : '. The page is that of the last state without errors');
    const list = document.createElement('ul');
    list.append(...state.findings.map(line));
    bar.append(head, list);
    document.body.append(bar);
  }

  new EventSource('/.preview/events').addEventListener('message', function (event) {
    const state = JSON.parse(event.data);
    if (state.site !== page) { location.reload(); return; }
    show(state);
  });
}());
