/**
 * How the font's own glyphs are put together: glyphs of SMuFL moved and scaled, and outlines of ours. Everything is
 * measured in stave spaces, x to the right, y up from the line or space on which the glyph stands.
 */

/** A glyph of SMuFL, moved and scaled. */
export interface Borrowed {
  readonly from: number;
  readonly x?: number;
  readonly y?: number;
  readonly scale?: number;
}

/** A straight stroke from one point to another. */
export interface Stroke {
  readonly stroke: readonly [x1: number, y1: number, x2: number, y2: number];
  readonly width: number;
}

/** An outline of ours: commands `M`, `L`, `C` and `Z` with absolute coordinates. */
export interface Drawn {
  readonly outline: string;
}

export type Part = Borrowed | Stroke | Drawn;

const TURN = 0xe567;
const LEFT_HALF_CIRCLE = 0xe572;
const RIGHT_HALF_CIRCLE = 0xe571;
const UP_CURVE = 0xe577;
const OBLIQUE = 0xe57b;
const LETTER_T = 0xe584;
const WIGGLE = 0xeaa4;
const HOOK_BELOW = 0xe5b5;
const HOOK_ABOVE = 0xe5b4;

/** A wavy line of so many waves, from x on; a wave of SMuFL's `wiggleTrill` is 0.948 stave spaces wide. */
const waves = (count: number, x = 0): Part[] =>
  Array.from({ length: count }, (_, i) => ({ from: WIGGLE, x: x + i * 0.948, y: -0.4 }));

/** Shapes of the catalogue that are put together here, by their names. */
export const composedShapes: Readonly<Record<string, readonly Part[]>> = {
  wavy_line: waves(4),
  wavy_line_stroke: [...waves(4), { stroke: [0.9, -0.7, 0.9, 1.1], width: 0.12 }],
  turn_zigzag_below: [{ from: TURN }, { from: HOOK_BELOW, x: 2.4 }],
  turn_zigzag_above: [{ from: TURN }, { from: HOOK_ABOVE, x: 2.4 }],
  comma_after_long: [{ from: LEFT_HALF_CIRCLE, scale: 1.2 }],
  two_curves_before: [
    { from: RIGHT_HALF_CIRCLE, scale: 0.75 },
    { from: RIGHT_HALF_CIRCLE, x: 0.55, scale: 0.75 },
  ],
  half_circle_in_chord: [{ from: RIGHT_HALF_CIRCLE, scale: 0.5 }],
  arch_upright: [{ from: UP_CURVE }, { stroke: [0.78, 0.25, 0.78, 1.15], width: 0.12 }],
  stroke_chord_extra: [
    { from: OBLIQUE, scale: 0.75 },
    { from: OBLIQUE, x: 0.7, y: 0.25, scale: 0.5 },
  ],
  dashes_two: [
    { stroke: [0.06, 0, 0.06, 1.1], width: 0.12 },
    { stroke: [0.56, 0, 0.56, 1.1], width: 0.12 },
  ],
  cross_oblique: [
    { stroke: [0.06, 0.06, 1.06, 1.06], width: 0.14 },
    { stroke: [0.06, 1.06, 1.06, 0.06], width: 0.14 },
  ],
  letter_t_wave: [{ from: LETTER_T, y: -0.25 }, ...waves(3, 1)],
  letter_r: [
    { outline: 'M 0 0 L 0.55 0 L 0.55 0.08 L 0.4 0.12 L 0.4 1.52 L 0.55 1.56 L 0 1.56 L 0.17 1.5 L 0.17 0.1 Z' },
    {
      outline:
        'M 0.4 1.56 L 0.75 1.56 C 1.3 1.56 1.3 0.74 0.75 0.74 L 0.4 0.74 L 0.4 0.84 L 0.7 0.84 C 1.02 0.84 1.02 1.46 0.7 1.46 L 0.4 1.46 Z',
    },
    { outline: 'M 0.62 0.8 L 0.86 0.78 L 1.2 0.12 L 1.36 0.08 L 1.36 0 L 1.02 0 Z' },
  ],
};

/** A filled breve: SMuFL's filled breves are those of mensural notation, with tails. */
export const blackBreve: readonly Part[] = [
  { outline: 'M 0.32 -0.42 L 2.08 -0.42 L 2.08 0.42 L 0.32 0.42 Z' },
  { stroke: [0.06, -0.62, 0.06, 0.62], width: 0.12 },
  { stroke: [0.28, -0.62, 0.28, 0.62], width: 0.12 },
  { stroke: [2.12, -0.62, 2.12, 0.62], width: 0.12 },
  { stroke: [2.34, -0.62, 2.34, 0.62], width: 0.12 },
];
