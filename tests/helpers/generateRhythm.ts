/** Passages of several voices made of the figures that practices of rhythm act on, bar by bar, from a list of chances. */
import type { Chance } from './chance';
import type { Timed } from './rhythm';

/** A figure is typed with `?` for each new note and `=` for one that is tied to the note before. */
type Figures = readonly [string, ...string[]];

const CROTCHET: Figures = [
  '4 ?',
  '8. ? 16 ?',
  '8 ? ?',
  '8 ? 16 ? ?',
  '16 ? ? 8 ?',
  '16 ? 8. ?',
  '16 ? ? ? ?',
  '8x ? ? ?',
  '{3in2 4 ? 8 ?}',
  '{3in2 8 ? 4 ?}',
  '4 r',
  '8 r ?',
  '8. r 16 ?',
  '8 r 32 ? ? ? ?',
];

const MINIM: Figures = [
  '2 ?',
  '4. ? 8 ?',
  '4. ? 16 ? ?',
  '4. ? 32 ? ? ? ?',
  '4. ?= 32 = ? ? ?',
  '4. r 8 ?',
  '8 ? 4. ?',
  '4.. ? 16 ?',
  '{3in2 4 ? ? ?}',
  '8 ? 4 ? 8 ?',
];

const DOTTED: Figures = [
  '4. ?',
  '8 ? ? ?',
  '4 ? 8 ?',
  '8. ? 16 ? 8 ?',
  '8. ? ?',
  '{2in3 8 ? ?}',
  '{2in3 8. ? 16 ?}',
  '16 ? ? ? ? ? ?',
  '4 r 8 ?',
];

/** A meter, and ways in which the parts of its bar may be filled. */
interface Frame {
  readonly meter: string;
  readonly parts: readonly [readonly Figures[], ...(readonly Figures[])[]];
}

const FRAMES: readonly [Frame, ...Frame[]] = [
  {
    meter: 'C',
    parts: [
      [CROTCHET, CROTCHET, MINIM],
      [MINIM, MINIM],
      [MINIM, CROTCHET, CROTCHET],
    ],
  },
  {
    meter: '2',
    parts: [
      [MINIM, MINIM],
      [MINIM, CROTCHET, CROTCHET],
    ],
  },
  {
    meter: '3/4',
    parts: [
      [CROTCHET, CROTCHET, CROTCHET],
      [MINIM, CROTCHET],
      [CROTCHET, MINIM],
    ],
  },
  { meter: '6/8', parts: [[DOTTED, DOTTED]] },
];

const STEPS = ['c', 'd', 'e', 'f', 'g', 'a', 'b'] as const;

/** A voice that goes by steps and leaps within its octave. */
function lane(chance: Chance, { parts }: Frame, bars: number, octave: number): string {
  let step = chance.below(STEPS.length);
  const note = (): string => {
    step = Math.min(STEPS.length - 1, Math.max(0, step + chance.pick([1, -1, 0, 2, -3])));
    return `${STEPS[step]}${octave}`;
  };
  const typed = Array.from({ length: bars }, () =>
    chance
      .pick(parts)
      .map((figures) => chance.pick(figures).replace(/\?/g, note))
      .join(' '),
  );
  return typed.join(' | ');
}

const PRACTICES = [
  'overdot',
  'overdot shortest',
  'overdot double silent',
  'inegal 8 2:1',
  'inegal by-meter',
  'inegal 16 3:1 short-long',
  'assimilate triplet',
  'assimilate duple',
  'snap',
  'upbeats late',
  'hemiola',
] as const;

/** Two or three voices of a few bars, with one practice or several. */
export function passageByChance(chance: Chance, practices: number): Timed {
  const frame = chance.pick(FRAMES);
  const bars = chance.between(2, 4);
  const voices = chance.between(2, 3);
  return {
    meter: frame.meter,
    lanes: Array.from({ length: voices }, (_, voice) => lane(chance, frame, bars, 5 - voice)),
    practices: [...new Set(Array.from({ length: practices }, () => chance.pick(PRACTICES)))],
  };
}
