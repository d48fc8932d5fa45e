/** The page of the tuning panel: shows what it is sent, walks through the steps, and says what is chosen. */
import { element, hostOfPage } from '../../panel/page/host';
import type { ChoiceGroup, ChoicesOfPage, FromPage, PageOfTuning, ShownChoice, ToPage, TuningState } from '../messages';
import { damp, pluckTogether } from './ringing';
import { fillTables } from './tables';
import { frequenciesOf, notYetLaid, stepFrom } from './walk';

interface Kept extends TuningState {
  /** Index of the step at which the walk stands. */
  readonly step: number;
}

const host = hostOfPage<FromPage, Kept>();
const tell = (message: FromPage): void => host.postMessage(message);

const tuning = element('tuning');
const status = element('status');
const wanted = element<HTMLSelectElement>('wanted');
const before = element<HTMLSelectElement>('before');
const words = element<HTMLInputElement>('words');
const pitch = element<HTMLInputElement>('pitch');
const standard = element<HTMLSelectElement>('standard');
const reading = element('reading');
const write = element<HTMLButtonElement>('write');
const list = element('steps');
const drawing = element('drawing');

/** Fields in which something was typed that is not asked for yet. */
const typedIn = new Set<HTMLInputElement>();

let kept = host.getState();
let page: PageOfTuning | undefined;
let at = kept?.step ?? 0;

// ─── what comes ──────────────────────────────────────────────────────────────────────────────────────────────────

window.addEventListener('message', ({ data: { choices, shown } }: MessageEvent<ToPage>) => {
  showChoices(choices);
  const isFailure = typeof shown === 'string';
  tuning.hidden = isFailure;
  status.textContent = isFailure ? shown : '';
  if (isFailure) damp();
  else showTuning(shown);
  keep(choices.state);
});

function showChoices(choices: ChoicesOfPage): void {
  fillChoice(wanted, choices.wanted);
  fillChoice(before, choices.before);
  fillStandards(choices);
  fillField(pitch, `${choices.pitch}`);
  reading.textContent = (reading.dataset.says ?? '').replace('{0}', choices.reading);
}

function fillStandards({ standards, pitch: hertz }: ChoicesOfPage): void {
  const named = standards.map((one) => new Option(`${one.hertz}: ${one.title}`, `${one.hertz}`));
  if (standard.options.length === 0) standard.append(new Option(standard.dataset.none, ''), ...named);
  standard.value = named.some(({ value }) => value === `${hertz}`) ? `${hertz}` : '';
}

/** What each choice offers, as text. */
const offered = new Map<HTMLSelectElement, string>();

/** A list that is open stays open as long as it offers the same. */
function fillChoice(select: HTMLSelectElement, { groups, chosen }: ShownChoice): void {
  const offers = JSON.stringify(groups);
  if (offered.get(select) !== offers) select.replaceChildren(...groups.map(optionGroup));
  offered.set(select, offers);
  select.value = chosen;
}

function optionGroup({ label, options }: ChoiceGroup): Element {
  const group = document.createElement('optgroup');
  group.label = label;
  group.append(...options.map((one) => new Option(one.label, one.value)));
  return group;
}

function fillField(field: HTMLInputElement, value: string): void {
  if (!typedIn.has(field)) field.value = value;
}

function showTuning(shown: PageOfTuning): void {
  const isOther =
    page?.steps.map(({ interval }) => interval).join() !== shown.steps.map(({ interval }) => interval).join();
  if (page !== undefined && isOther) at = 0;
  page = shown;
  element('title').textContent = shown.title;
  element('under').textContent = shown.under.join(' · ');
  fillField(words, shown.words);
  element('writes').textContent = shown.writes;
  write.setAttribute('aria-disabled', String(!shown.canWrite));
  element('steps-title').textContent = shown.stepsTitle;
  element('now-box').hidden = shown.steps.length === 0;
  list.hidden = shown.steps.length === 0;
  fillSteps(shown);
  fillDrawing(shown);
  fillTables(element('tables'), shown.tables);
  const [first = '', ...others] = shown.cautions;
  element('beware').textContent = first;
  element('cautions').replaceChildren(...others.map(paragraph));
  go(stepFrom(shown.steps, at, 0));
}

function paragraph(text: string): Element {
  const made = document.createElement('p');
  made.textContent = text;
  return made;
}

function fillSteps({ steps }: PageOfTuning): void {
  list.replaceChildren(
    ...steps.map(({ number, tunes, interval, kind, beats }, index) => {
      const item = document.createElement('li');
      item.id = `step-${index}`;
      item.setAttribute('role', 'option');
      item.classList.toggle('proof', tunes === '');
      for (const cell of [number, tunes, interval, kind, beats]) {
        const span = document.createElement('span');
        span.textContent = cell;
        item.append(span, ' ');
      }
      item.addEventListener('click', () => goAndLook(index));
      return item;
    }),
  );
}

function fillDrawing({ drawing: svg, steps }: PageOfTuning): void {
  element('strings').hidden = steps.length === 0;
  // Parsed as HTML it is known for SVG, though it names no namespace.
  const parsed = new DOMParser().parseFromString(svg, 'text/html').body.firstElementChild;
  drawing.replaceChildren(...(parsed === null ? [] : [document.importNode(parsed, true)]));
}

function keep(state: TuningState): void {
  kept = { ...state, step: at };
  host.setState(kept);
}

// ─── the walk ────────────────────────────────────────────────────────────────────────────────────────────────────

/** Stands at a step: tells it, marks it in the list and its strings in the drawing. */
function go(index: number): void {
  at = index;
  const step = page?.steps[at];
  if (page === undefined || step === undefined) return;
  const now = element('now');
  if (now.textContent !== step.says) now.textContent = step.says;
  list.setAttribute('aria-activedescendant', `step-${at}`);
  for (const [other, item] of [...list.children].entries()) item.setAttribute('aria-selected', String(other === at));
  bringIntoList(list.children[at]);
  const [later, strings] = [notYetLaid(page.steps, at), step.interval.split('-')];
  for (const string of drawing.querySelectorAll<SVGElement>('[data-string]')) {
    const name = string.dataset.string ?? '';
    string.classList.toggle('laid', !later.has(name));
    string.classList.toggle('now', strings.includes(name));
  }
  for (const rung of drawing.querySelectorAll<SVGElement>('[data-step]'))
    rung.classList.toggle('now', rung.dataset.step === step.interval);
  if (kept !== undefined) keep(kept);
}

/** The page around the list stays where it is: the drawing may be in view. */
function bringIntoList(item: Element | undefined): void {
  if (item === undefined) return;
  const [own, view] = [item.getBoundingClientRect(), list.getBoundingClientRect()];
  list.scrollTop += Math.min(0, own.top - view.top) + Math.max(0, own.bottom - view.bottom);
}

/** Goes to a step, and brings its strings into view: in a narrow panel they lie below the list. */
function goAndLook(index: number): void {
  go(index);
  drawing.scrollIntoView({ block: 'nearest' });
}

const walk = (by: number): void => {
  if (page !== undefined) goAndLook(stepFrom(page.steps, at, by));
};

async function sound(way: 'tempered' | 'pure'): Promise<void> {
  const step = page?.steps[at];
  if (step === undefined) return;
  const isHeard = await pluckTogether(frequenciesOf(step, way));
  status.textContent = isHeard ? '' : (status.dataset.noSound ?? '');
}

// ─── what is chosen and pressed ──────────────────────────────────────────────────────────────────────────────────

const keys: Readonly<Record<string, () => unknown>> = {
  ArrowDown: () => walk(1),
  ArrowUp: () => walk(-1),
  Home: () => walk(Number.NEGATIVE_INFINITY),
  End: () => walk(Number.POSITIVE_INFINITY),
  t: () => sound('tempered'),
  p: () => sound('pure'),
  Escape: damp,
};

document.addEventListener('keydown', (event) => {
  const { key, ctrlKey, altKey, metaKey, target } = event;
  const isTyping = (target as Element).closest('select, input') !== null;
  if (isTyping || ctrlKey || altKey || metaKey || !Object.hasOwn(keys, key)) return;
  event.preventDefault();
  keys[key]?.();
});

const pressed: Readonly<Record<string, () => unknown>> = {
  back: () => walk(-1),
  on: () => walk(1),
  tempered: () => sound('tempered'),
  pure: () => sound('pure'),
  silent: damp,
  reading: () => tell({ kind: 'reading' }),
  write: () => page?.canWrite && tell({ kind: 'write' }),
};
for (const [id, run] of Object.entries(pressed)) element(id).addEventListener('click', () => void run());

for (const field of [words, pitch]) {
  field.addEventListener('input', () => typedIn.add(field));
  field.addEventListener('change', () => typedIn.delete(field));
}
wanted.addEventListener('change', () => tell({ kind: 'wanted', value: wanted.value }));
before.addEventListener('change', () => tell({ kind: 'before', value: before.value }));
words.addEventListener('change', () => tell({ kind: 'words', words: words.value.trim() }));
pitch.addEventListener('change', () => {
  const isPitch = pitch.value !== '' && pitch.checkValidity();
  status.textContent = isPitch ? '' : (status.dataset.noPitch ?? '');
  if (isPitch) tell({ kind: 'pitch', pitch: pitch.valueAsNumber });
});
standard.addEventListener('change', () => {
  if (standard.value !== '') tell({ kind: 'pitch', pitch: Number(standard.value) });
});
element('choices').addEventListener('submit', (event) => event.preventDefault());

tell({ kind: 'ready' });
