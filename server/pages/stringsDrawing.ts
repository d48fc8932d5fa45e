/**
 * The laying of a temperament as a picture: the strings that are laid, under a bentside, seen from above, and a rung from
 * string to string for each step.
 */
import { spellingOf } from '../../grammar/lanes/forms';
import type { Spelling } from '../../grammar/tree';
import { semitonesOf } from '../../grammar/vocabulary/pitches';
import { printedNames } from '../score/pitchNames';
import { beatsInFigures, signed } from '../tuning/figures';
import type { SheetNote, SheetStep, TuningSheet } from '../tuning/sheet';
import { type Html, tag, text } from './html';

interface DrawnString {
  /** With octave: `f3`. */
  readonly name: string;
  readonly offset: number;
  readonly x: number;
  /** Where it ends under the bentside. */
  readonly end: number;
}

const WIDTH = 680;
const HEIGHT = 600;
/** The line of the nut, where the strings begin. */
const NUT = HEIGHT - 70;
const SPINE = 30;
const CHEEK = WIDTH - 10;
const FIRST_STRING = SPINE + 30;
const LAST_STRING = CHEEK - 70;
const LONGEST = 490;
/** The last string as a part of the first: an octave and a third higher, a little foreshortened in the bass (common practice). */
const SHORTEST = 0.46;
const LOWEST_RUNG = 34;
const RUNG = 21;

/**
 * A picture with its description; all that it shows stands in the tables too. Who marks something in it finds each string by
 * its note (`data-string`) and each rung by its interval (`data-step`).
 * @param shown the steps that have a rung; as a rule all
 * @param id of a picture among several of one page
 */
export function stringsDrawing(
  { steps, notes, title }: TuningSheet,
  shown: readonly SheetStep[] = steps,
  id = 'strings',
): Html {
  const strings = stringsOf(steps, notes);
  const tuned = shown.filter(({ tunes }) => tunes !== null);
  const closing = shown.slice(-1).filter(({ tunes }) => tunes === null);
  const rungs = [...tuned, ...closing];
  // All of them lie below the end of the last string but the fork’s.
  const room = NUT - LOWEST_RUNG - (strings.at(-2)?.end ?? 0) - 10;
  const gap = Math.min(RUNG, room / Math.max(1, rungs.length - 1));
  return tag(
    'svg',
    { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, class: 'strings', role: 'img', 'aria-labelledby': `${id}-title ${id}-words` },
    tag('title', { id: `${id}-title` }, text(`The strings that are laid by ear, tuned by ${title}`)),
    tag('desc', { id: `${id}-words` }, text(inWords(tuned))),
    outline(),
    ...strings.map(drawnString),
    ...rungs.map((step, index) =>
      rung(strings, step, step.tunes === null ? '=' : `${index + 1}`, NUT - LOWEST_RUNG - index * gap),
    ),
  );
}

const inWords = (tuned: readonly SheetStep[]): string =>
  `Seen from above, bass on the left. ${tuned
    .map(
      ({ interval, beats, direction }, index) => `${index + 1}: ${interval} ${beats === 0 ? '' : beats} ${direction}`,
    )
    .join('; ')}.`;

/** The strings that any step touches, side by side as their keys lie; of a divided key the two stand closer. */
function stringsOf(steps: readonly SheetStep[], notes: readonly SheetNote[]): readonly DrawnString[] {
  const sounds = new Map(
    steps.flatMap(({ interval, hertz }) => interval.split('-').map((name, index) => [name, hertz[index] ?? 0])),
  );
  const found = [...sounds].sort(([, one], [, other]) => one - other).map(([name]) => name);
  const places: number[] = [];
  for (const [index, name] of found.entries()) {
    const key = keyNamed(name);
    const before = keyNamed(found[index - 1] ?? name);
    places.push((places[index - 1] ?? 0) + (index === 0 ? 0 : (APART[Math.min(2, key - before)] ?? 1)));
  }
  const whole = places.at(-1) ?? 1;
  return found.map((name, index) => {
    const part = (places[index] ?? 0) / whole;
    return {
      name,
      offset: offsetOf(name, notes),
      x: FIRST_STRING + part * (LAST_STRING - FIRST_STRING),
      end: endAt(part),
    };
  });
}

/** Between the strings of one key, of neighbours, and across the keys left out before the fork’s a. */
const APART = [0.9, 1, 1.6];

/** Where a string ends that stands at a part of the way to the last one. */
const endAt = (part: number): number => NUT - LONGEST * SHORTEST ** part;

/** MIDI key. */
const keyNamed = (name: string): number => semitonesOf(spellingOf(name) as Spelling);

const offsetOf = (name: string, notes: readonly SheetNote[]): number =>
  notes.find(({ note }) => note === name.slice(0, -1))?.offset ?? 0;

// ─── the case ────────────────────────────────────────────────────────────────────────────────────────────────────

/** Room between the strings’ ends and the bentside. */
const MARGIN = 20;
/** Through how many points the bentside is drawn. */
const POINTS = 12;

function outline(): Html {
  const side = Array.from({ length: POINTS + 1 }, (_, i): Point => {
    const x = FIRST_STRING + (i / POINTS) * (CHEEK - FIRST_STRING);
    return [x, endAt((x - FIRST_STRING) / (LAST_STRING - FIRST_STRING)) - MARGIN];
  });
  const [tail = [0, 0], ...rest] = side;
  const corners = `M ${SPINE} ${NUT + 24} L ${SPINE} ${tail[1] - 12} L ${tail[0]} ${tail[1]}`;
  const path = `${corners} ${smooth([tail, ...rest])} L ${CHEEK} ${NUT + 24} Z`;
  return [
    tag('path', { d: path, class: 'case' }),
    tag('line', { x1: SPINE, y1: NUT, x2: CHEEK, y2: NUT, class: 'nut' }),
  ].join('');
}

type Point = readonly [number, number];

/** A curve through all points (Catmull and Rom), from the first, where the pen stands. */
function smooth(points: readonly Point[]): string {
  const at = (index: number): Point => points[Math.min(points.length - 1, Math.max(0, index))] as Point;
  const pieces = points.slice(1).map((to, index) => {
    const [before, from, after] = [at(index - 1), at(index), at(index + 2)];
    const first = [from[0] + (to[0] - before[0]) / 6, from[1] + (to[1] - before[1]) / 6];
    const second = [to[0] - (after[0] - from[0]) / 6, to[1] - (after[1] - from[1]) / 6];
    return `C ${[...first, ...second, ...to].map((n) => n.toFixed(1)).join(' ')}`;
  });
  return pieces.join(' ');
}

// ─── strings and steps ───────────────────────────────────────────────────────────────────────────────────────────

const drawnString = ({ name, offset, x, end }: DrawnString): Html =>
  tag(
    'g',
    { 'data-string': name },
    tag('line', { x1: x.toFixed(1), y1: NUT + 12, x2: x.toFixed(1), y2: end.toFixed(1), class: 'string' }),
    tag('text', { x: x.toFixed(1), y: NUT + 42, class: 'note' }, text(printedNames(name))),
    tag('text', { x: x.toFixed(1), y: NUT + 57, class: 'cents' }, text(signed(offset, 1))),
  );

/** A step as a line from the string that is heard to the one that is tuned, which has the full dot. */
function rung(strings: readonly DrawnString[], step: SheetStep, number: string, y: number): Html {
  const [low = '', high = ''] = step.interval.split('-');
  const ends = [low, high].map((name) => ({ name, x: strings.find((one) => one.name === name)?.x ?? 0 }));
  const [from, to] = [Math.min(...ends.map(({ x }) => x)), Math.max(...ends.map(({ x }) => x))];
  const dots = ends.map(({ name, x }) =>
    tag('circle', { cx: x.toFixed(1), cy: y.toFixed(1), r: 4, class: name === step.tunes ? 'tuned' : 'heard' }),
  );
  return tag(
    'g',
    { 'data-step': step.interval },
    tag('line', {
      x1: from.toFixed(1),
      y1: y.toFixed(1),
      x2: to.toFixed(1),
      y2: y.toFixed(1),
      class: `rung ${step.direction}`,
    }),
    ...dots,
    tag('text', { x: (from - 9).toFixed(1), y: (y + 4).toFixed(1), class: 'number-of-step' }, text(number)),
    tag('text', { x: (to + 9).toFixed(1), y: (y + 4).toFixed(1), class: 'beats' }, text(beatsInFigures(step))),
  );
}

export const STRINGS_STYLE = `
.strings { display: block; width: 100%; max-height: 130mm; margin: 2mm 0; }
.strings text { font-family: Georgia, "DejaVu Serif", serif; font-size: 12px; fill: #111; }
.case { fill: none; stroke: #111; stroke-width: 2.4; stroke-linejoin: round; }
.nut { stroke: #111; stroke-width: 1.2; }
.string { stroke: #777; stroke-width: 0.8; }
.note, .cents { text-anchor: middle; }
.note { font-style: italic; font-size: 14px; }
.strings .cents { font-size: 10.5px; }
.number-of-step { text-anchor: end; }
.beats, .number-of-step { paint-order: stroke; stroke: #fff; stroke-width: 4px; }
.rung { stroke: #111; stroke-width: 1.6; }
.rung.narrow { stroke-dasharray: 6 3; }
.rung.wide { stroke-dasharray: 1.6 2.6; stroke-width: 2.4; }
.heard { fill: #fff; stroke: #111; stroke-width: 1.4; }
.tuned { fill: #111; stroke: #111; stroke-width: 1.4; }
`;
