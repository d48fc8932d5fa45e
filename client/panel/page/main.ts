/** The page of the score panel: shows what it is sent, and says what is clicked and pressed. */
import type { FromPage, PanelState, ShownPage, ToPage } from '../messages';
import { Differences } from './differences';
import { FacsimileStrip } from './facsimile';
import { element, hostOfPage } from './host';
import { Keyboard } from './keyboard';
import { beneath, idOf, isBeneath, Marks } from './marks';
import { patch } from './patch';
import { Playback } from './playback';
import { asToolbar } from './toolbar';
import { Weights } from './weights';

interface Kept extends PanelState {
  readonly top: number;
  readonly left: number;
}

const host = hostOfPage<FromPage, Kept>();
const tell = (message: FromPage): void => host.postMessage(message);

const pages = element('pages');
const score = element('score');
const status = element('status');
const clefs = element('clefs');
const ornaments = element('ornaments');
const reading = element('reading');

const strip = new FacsimileStrip(element('facsimile'), element('drag'), (system, region) =>
  tell({ kind: 'region', page: kept?.page ?? 0, system, region }),
);

/** Notes, chords, rests: whatever has a place in the text. */
const EVENTS = '[data-id^="e-"].note, [data-id^="e-"].rest, [data-id^="e-"].mRest, [data-id^="e-"].chord';
const AT_CARET = 'at-caret';

let kept = host.getState();
/** Until the first page has come the place is not known to be another. */
let isRestored = false;
/** The note that the user has gone to on the page: it is told of in words, those that the text's caret finds are not. */
let chosen: string | undefined;
/** What was told of it. */
let said = '';
/** The note at the caret. */
let marked: { readonly id: string; readonly bar: string } | undefined;
/** The note that was gone to last, here or in the text; the server may not have answered for it yet. */
let last: string | undefined;

const marks = new Marks(score);
const weights = new Weights(
  { score, button: element('weights'), field: element('weight-field'), slider: element('weight') },
  marks,
  (id, weight) => tell({ kind: 'weight', id, weight }),
);
const differences = new Differences(element('differences'), marks, goTo);
const playback = new Playback({
  marks,
  keyboard: new Keyboard(element('keys')),
  tell,
  say: (text) => {
    status.textContent = text;
  },
  marked: () => marked,
  hasTwo: () => kept?.beneath != null,
  leaf: () => kept?.page ?? 0,
  follow: bringIntoView,
});

// ─── what comes ──────────────────────────────────────────────────────────────────────────────────────────────────

const answers: {
  readonly [Kind in ToPage['kind']]: (message: Extract<ToPage, { kind: Kind }>) => void | Promise<void>;
} = {
  page: ({ shown }) => show(shown),
  failure: async ({ says }) => {
    // What was shown may be of another score.
    score.replaceChildren();
    pages.replaceChildren();
    await strip.load(undefined, false);
    status.textContent = says;
  },
  mark: ({ id, says, bar, system, follows }) => {
    mark(id, follows);
    if (id !== null) {
      marked = { id, bar };
      last = id;
    }
    weights.mark(id ?? undefined);
    if (system !== null) strip.turnTo(system);
    if (id === null || id !== chosen) return;
    said = says;
    status.textContent = says;
  },
  loop: ({ from, to }) => playback.loopOver(from, to),
  image: async ({ bytes, isDrawing }) => {
    if (!(await strip.load(bytes, isDrawing))) status.textContent = status.dataset.noPicture ?? '';
  },
  sound: ({ notes }) => playback.sound(notes),
  offers: ({ reading: name, readings, tunings }) => playback.offered(name, readings, tunings),
  playing: ({ number, playing }) => playback.begin(number, playing),
  togglePlaying: () => playback.toggle(),
};

window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
  // The host of the page may have something of its own to say to it.
  if (!Object.hasOwn(answers, data?.kind)) return;
  const answer = answers[data.kind] as (message: ToPage) => void | Promise<void>;
  void answer(data);
});

function show(shown: ShownPage): void {
  const isOther = kept !== undefined && (kept.uri !== shown.state.uri || kept.page !== shown.state.page);
  if (kept !== undefined && kept.uri !== shown.state.uri) playback.leave();
  showStrip(shown);
  clefs.setAttribute('aria-pressed', String(shown.state.clefs === 'modern'));
  reading.textContent = shown.reading;
  ornaments.textContent = ornaments.dataset[shown.state.ornaments] ?? '';
  showPictures(shown);
  differences.show(shown.differences);
  // Whoever hears what he weighs goes on hearing it.
  if (weights.show(shown.weights)) playback.goOn();
  strip.know(shown.facsimile?.regions ?? [], isOther);
  if (status.textContent !== said) status.textContent = '';
  if (shown.state.ornaments !== 'sign' && !shown.hasTable) status.textContent = ornaments.dataset.noTable ?? '';
  if (isOther) score.scrollTo(0, 0);
  else if (!isRestored && kept !== undefined) score.scrollTo(kept.left, kept.top);
  isRestored = true;
  playback.showBeneath(shown.state.beneath);
  keep(shown.state);
}

/** The buttons stay as long as the leaves are the same: one of them may have the focus. */
function showStrip({ labels, page }: ShownPage): void {
  const isSame =
    labels.length === pages.children.length && labels.every((label, at) => pages.children[at]?.textContent === label);
  if (!isSame) pages.replaceChildren(...labels.map(leafButton));
  for (const [index, button] of [...pages.children].entries()) {
    if (index === page) button.setAttribute('aria-current', 'page');
    else button.removeAttribute('aria-current');
  }
}

function leafButton(label: string, index: number): Element {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = label;
  button.addEventListener('click', () => tell({ kind: 'page', page: index }));
  return button;
}

function showPictures({ pictures, summary, labels, page }: ShownPage): void {
  marks.undraw();
  weights.undraw();
  const drawn = pictures.map((picture, index) => {
    const svg = new DOMParser().parseFromString(picture, 'image/svg+xml').documentElement;
    for (const style of svg.querySelectorAll('style')) style.remove();
    svg.setAttribute('role', 'img');
    const says = index === 0 ? `${labels[page] ?? ''}: ${summary.join('; ')}` : (labels[page] ?? '');
    svg.setAttribute('aria-label', says);
    return svg;
  });
  if (score.children.length !== drawn.length) score.replaceChildren(...drawn);
  else for (const [index, next] of drawn.entries()) patch(score.children[index] as Element, next);
  marks.drawn();
}

/** Marks a note, and brings it into view if it is out of it. */
function mark(id: string | null, follows: boolean): void {
  marks.show(AT_CARET, new Set(id === null ? [] : [id, beneath(id)]));
  const [found] = id === null ? [] : marks.of(id);
  if (follows && found !== undefined) bringIntoView(found);
}

function bringIntoView(found: Element): void {
  if (!isInView(found)) found.scrollIntoView({ block: 'center', inline: 'nearest' });
}

function isInView(found: Element): boolean {
  const [own, view] = [found.getBoundingClientRect(), score.getBoundingClientRect()];
  return own.top >= view.top && own.bottom <= view.bottom && own.left >= view.left && own.right <= view.right;
}

// ─── what is kept ────────────────────────────────────────────────────────────────────────────────────────────────

function keep(state: PanelState): void {
  kept = { ...state, top: score.scrollTop, left: score.scrollLeft };
  host.setState(kept);
}

score.addEventListener('scroll', () => {
  if (kept !== undefined && isRestored) keep(kept);
});

// ─── what is clicked and pressed ─────────────────────────────────────────────────────────────────────────────────

function choose(found: Element | null | undefined): void {
  if (found != null) goTo(idOf(found));
}

function goTo(id: string): void {
  chosen = id;
  last = id;
  mark(id, true);
  tell({ kind: 'note', id });
  if (playback.isPlaying) playback.playFrom(id);
}

const eventAt = ({ target }: Event): Element | null => (target as Element).closest(EVENTS);

score.addEventListener('click', (event) => {
  const found = eventAt(event);
  const before = last;
  choose(found);
  if (event.shiftKey && found !== null && before !== undefined) tell({ kind: 'loop', from: before, to: idOf(found) });
});
score.addEventListener('dblclick', (event) => {
  const found = eventAt(event);
  playback.playFrom(found === null ? undefined : idOf(found));
});

/** To the next or the last note before; of two readings in the upper one. */
function step(by: number): void {
  const ids = [...new Set([...score.querySelectorAll(EVENTS)].map(idOf))].filter((id) => !isBeneath(id));
  const at = ids.findIndex((id) => marks.of(id).some((one) => one.classList.contains(AT_CARET)));
  const next = ids[at < 0 ? 0 : Math.min(Math.max(at + by, 0), ids.length - 1)];
  if (next !== undefined) goTo(next);
}

const turn = (by: number): void => tell({ kind: 'page', page: (kept?.page ?? 0) + by });

const keys: Readonly<Record<string, () => void>> = {
  c: () => tell({ kind: 'clefs' }),
  s: () => tell({ kind: 'ornaments' }),
  r: () => tell({ kind: 'reading' }),
  n: () => tell({ kind: 'sound', what: 'note' }),
  b: () => tell({ kind: 'sound', what: 'bar' }),
  p: () => playback.toggle(),
  a: () => playback.swap(),
  l: () => playback.toggleLoop(),
  ArrowRight: () => step(1),
  ArrowLeft: () => step(-1),
  Escape: () => strip.giveUp(),
  '[': () => turn(-1),
  ']': () => turn(1),
};

document.addEventListener('keydown', (event) => {
  const { key, ctrlKey, altKey, metaKey } = event;
  // On many keyboards square brackets are typed with AltGr, which says that it is Control and Alt.
  const isTyped = event.getModifierState('AltGraph') || !(ctrlKey || altKey);
  if (metaKey || !isTyped || !Object.hasOwn(keys, key) || isOfControl(event, key)) return;
  event.preventDefault();
  keys[key]?.();
});

/** Fields and choices have these keys for themselves; a slider its arrows alone. */
function isOfControl({ target }: Event, key: string): boolean {
  const control = (target as Element).closest('input, select');
  return control !== null && (control.getAttribute('type') !== 'range' || key.startsWith('Arrow'));
}

clefs.addEventListener('click', () => tell({ kind: 'clefs' }));
ornaments.addEventListener('click', () => tell({ kind: 'ornaments' }));
reading.addEventListener('click', () => tell({ kind: 'reading' }));
element('note').addEventListener('click', () => tell({ kind: 'sound', what: 'note' }));
element('bar').addEventListener('click', () => tell({ kind: 'sound', what: 'bar' }));

for (const bar of document.querySelectorAll<HTMLElement>('[role="toolbar"]')) asToolbar(bar);

tell({ kind: 'ready' });
