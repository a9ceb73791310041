// What is done to the elements in the page, again and again.

/** Put into a page of the elements before any round. */
export async function prepareElements() {
  const { patternFromText, planFromText } = await window.load('/halfhitch.js');
  const plans = [];
  for (const rows of [
    'bbo\nobo',
    'bobob\nbbbbb\nooboo\nbobob',
    'b\no\nb',
    'oooooo\nbbbbbb\nbobobo',
  ]) {
    plans.push(await planFromText(`b #1f6fb2 lake blue\no #e8742c buoy orange\n\n${rows}`));
  }
  const patterns = [];
  for (const rows of ['\\\\\\\n//\n>>>\n<<', '\\/\\\n<>\n\\\\\\\n//\n/\\/\n><']) {
    patterns.push(
      await patternFromText(
        `pattern diagonal\nb #1f6fb2 lake blue\no #e8742c buoy orange\n\nbobobo\n\n${rows}\n`,
      ),
    );
  }
  const rejected = [];
  window.addEventListener('unhandledrejection', ({ reason }) => rejected.push(String(reason)));
  Object.assign(window, { soak: { plans, patterns, rejected, gone: [] } });
}

/**
 * One round: an element of some kind is put into the page, played, sent hither and thither, shown
 * other work from other sides, taken out, put back elsewhere, and taken out for good. Every seventh
 * loses its context on the way and gets it back.
 */
export async function elementRound(round) {
  const { plans, patterns, gone } = window.soak;
  const pick = (list, other = 0) => list[(round + other) % list.length];
  const frames = (many) =>
    new Promise((resolve) => {
      const next = (left) => (left === 0 ? resolve() : requestAnimationFrame(() => next(left - 1)));
      next(many);
    });
  const kind = pick(['knot', 'row', 'piece', 'lesson', 'picture']);
  const element = document.createElement(`halfhitch-${kind}`);
  gone.push(new WeakRef(element));
  element.style.cssText = 'display:block;inline-size:120px;--halfhitch-stage-height:80px';
  const main = document.querySelector('main');
  const give = (which) => {
    if (kind === 'lesson') {
      element.setAttribute('name', pick(['strings', 'half-hitch', 'turn'], which));
    } else if (kind === 'picture') {
      element.kind = pick(['forward', 'backward', 'forward-backward'], which);
      element.pattern = which % 2 === 0 ? null : pick(patterns, which);
    } else if (kind === 'knot') {
      element.kind = pick(['forward', 'backward', 'forward-backward', 'backward-forward'], which);
    } else if ((round + which) % 3 === 2) element.pattern = pick(patterns, which);
    else element.plan = pick(plans, which);
  };
  const staged = kind === 'knot' || kind === 'row' || kind === 'piece';
  // Some are taken out again before they have drawn anything.
  const patient = round % 4 !== 3;
  give(0);
  main.append(element);
  await frames(patient ? 3 : 1);
  if (patient && staged) {
    for (let i = 0; i < 100 && !element.shadowRoot?.querySelector('canvas'); i++) await frames(1);
  }
  if (staged) {
    for (const view of ['back', 'side', 'edge', 'hands', 'front']) element.view = view;
    element.ghost = round % 2 === 0;
    element.trail = round % 3 === 0;
    element.magnifier = round % 5 === 0;
    element.mirror = round % 2 === 1;
    element.speed = 8;
    element.play();
    await frames(2);
    for (const share of [0.9, 0.1, 0.5]) element.seek(share * element.length);
    await frames(1);
    element.stepBack();
    element.loop = round % 2 === 0;
  }
  give(1);
  document.documentElement.style.colorScheme = round % 2 === 0 ? 'dark' : 'light';
  element.lang = round % 2 === 0 ? 'de' : 'en';
  await frames(patient ? 2 : 0);
  if (round % 7 === 6) {
    const lost = window.graphics.loseOne();
    await frames(2);
    if (round % 14 === 6) lost?.restoreContext();
    await frames(3);
  }
  element.remove();
  give(2);
  if (round % 2 === 0) {
    document.body.append(element);
    await frames(2);
    main.append(element);
    await frames(1);
    element.remove();
  }
}

/** Elements of earlier rounds that the browser has not let go of. */
export function elementsKept() {
  const { soak } = window;
  soak.gone = soak.gone.filter((one) => one.deref() !== undefined);
  return soak.gone.length;
}

/** Promises of the page that failed with nobody to hear of it. */
export function failuresUnheard() {
  return window.soak.rejected;
}
