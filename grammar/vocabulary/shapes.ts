/**
 * The catalogue of sign shapes: what a source draws for an ornament, and nothing about how it is played.
 *
 * Two tables that give one drawing two meanings share one shape. What is typed otherwise has no shape here: small notes
 * (`{small …}`), curves over several notes (`'u` … `'.`), dots (`'dot`) and accidentals at a sign (`'zs'#`).
 *
 * Glyphs are those of the Standard Music Font Layout (SMuFL, W3C), chosen by their outline, whatever meaning their name
 * claims. Which early table draws what: the tables in `server/signs/tables/`.
 */

/** Where a shape usually stands on the page, seen from the head of its note. */
export type ShapePlace = 'above' | 'below' | 'before' | 'after' | 'stem' | 'between' | 'beside';

/** One shape that a source draws for an ornament. */
export interface Shape {
  /** Our lasting name for what is seen: small letters, digits, `_`. */
  readonly name: string;
  /** What is typed after `'`: `zz`. No two shapes share a name or short name. */
  readonly short: string;
  /** What the eye sees, in plain words. */
  readonly description: string;
  readonly place: ShapePlace;
  /** Whether the drawing belongs to one note or to all notes of a chord. */
  readonly drawnFor: 'note' | 'chord';
  /** SMuFL's name of the glyph; absent where the standard has none of this outline. */
  readonly glyph?: string;
  /** The code point of `glyph`. */
  readonly codepoint?: number;
  /** Where there is no `glyph`: SMuFL's name of the closest one, if it can stand in. */
  readonly nearest?: string;
  /**
   * The element of MusicXML 4.0 that draws this, inside `ornaments`, `articulations` or `notations`: `other-ornament`
   * where none has the outline. A `wavy-line` has two ends, so its writer adds their `type`.
   */
  readonly musicxml: string;
  /** Attributes by which that element is drawn like this shape: a `mordent` that is `long`, a `turn` with a `slash`. */
  readonly musicxmlAttributes?: Readonly<Record<string, string>>;
}

/**
 * Every shape, kin beside kin.
 *
 * Short names are built alike: `z` a zigzag, `c` a comma or curve, `s` a stroke, `turn` an s, `arp` a wavy line at a
 * chord; then `b` before or `a` after the note, `u` up or `d` down.
 */
export const shapes: readonly Shape[] = [
  // ─── zigzags and wavy lines ────────────────────────────────────────────────────────────────────────────────────────
  {
    name: 'zigzag',
    short: 'zz',
    description: 'a short zigzag',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentShortTrill',
    codepoint: 0xe56c,
    musicxml: 'inverted-mordent',
  },
  {
    name: 'zigzag_long',
    short: 'zzz',
    description: 'a long zigzag, of three teeth or more',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentTremblement',
    codepoint: 0xe56e,
    musicxml: 'inverted-mordent',
    musicxmlAttributes: { long: 'yes' },
  },
  {
    name: 'zigzag_stroke',
    short: 'zs',
    description: 'a short zigzag crossed by an upright stroke',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentMordent',
    codepoint: 0xe56d,
    musicxml: 'mordent',
  },
  {
    name: 'zigzag_long_stroke',
    short: 'zzs',
    description: 'a long zigzag crossed by an upright stroke',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPinceCouperin',
    codepoint: 0xe588,
    musicxml: 'mordent',
    musicxmlAttributes: { long: 'yes' },
  },
  {
    name: 'wavy_line',
    short: 'wl',
    description: 'a wavy line drawn out as far as the note lasts',
    place: 'above',
    drawnFor: 'note',
    glyph: 'wiggleTrill',
    codepoint: 0xeaa4,
    musicxml: 'wavy-line',
  },
  {
    name: 'wavy_line_stroke',
    short: 'wls',
    description: 'a wavy line drawn out as far as the note lasts, crossed by an upright stroke near its beginning',
    place: 'above',
    drawnFor: 'note',
    nearest: 'ornamentPrecompTrillWithMordent',
    musicxml: 'other-ornament',
  },
  {
    name: 'zigzag_left_stroke',
    short: 'zl',
    description: 'a zigzag with a small stroke, upright or oblique, at its left end',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPrecompAppoggTrill',
    codepoint: 0xe5b2,
    musicxml: 'other-ornament',
  },
  {
    name: 'zigzag_hook_below',
    short: 'zhb',
    description: 'a zigzag whose left end is a curved hook hanging below it',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPrecompSlideTrillDAnglebert',
    codepoint: 0xe5b5,
    musicxml: 'inverted-mordent',
    musicxmlAttributes: { approach: 'below' },
  },
  {
    name: 'zigzag_hook_above',
    short: 'zha',
    description: 'a zigzag whose left end is a curved hook rising above it',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPrecompTurnTrillDAnglebert',
    codepoint: 0xe5b4,
    musicxml: 'inverted-mordent',
    musicxmlAttributes: { approach: 'above' },
  },
  {
    name: 'zigzag_curl',
    short: 'zr',
    description: 'a zigzag whose right end is a hook curling upwards',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPrecompTrillSuffixDandrieu',
    codepoint: 0xe5bb,
    musicxml: 'inverted-mordent',
    musicxmlAttributes: { departure: 'above' },
  },
  {
    name: 'zigzag_hook_curl',
    short: 'zhbr',
    description: 'a zigzag with a hook hanging below its left end and one curling upwards at its right',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPrecompSlideTrillMarpurg',
    codepoint: 0xe5b6,
    musicxml: 'inverted-mordent',
    musicxmlAttributes: { approach: 'below', departure: 'above' },
  },
  {
    name: 'zigzag_sweep',
    short: 'zu',
    description:
      'a zigzag with a long thin line sweeping up into its left end and another sweeping up out of its right',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPrecompSlideTrillMuffat',
    codepoint: 0xe5b9,
    musicxml: 'other-ornament',
  },
  {
    name: 'zigzag_sweep_curl',
    short: 'zur',
    description: 'a zigzag with a long thin line sweeping up into its left end and a hook curling upwards at its right',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPrecompSlideTrillSuffixMuffat',
    codepoint: 0xe5ba,
    musicxml: 'other-ornament',
  },
  {
    name: 'zigzag_comma',
    short: 'zc',
    description: 'a zigzag with a comma or closing half-circle directly to its right',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPrecompTrillWithMordent',
    codepoint: 0xe5bd,
    musicxml: 'other-ornament',
  },
  {
    name: 'arch_zigzag_stroke',
    short: 'azs',
    description: 'a zigzag crossed by an upright stroke, with a small arch at its left end',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentPrecompPortDeVoixMordent',
    codepoint: 0xe5bc,
    musicxml: 'other-ornament',
  },
  {
    name: 'wave_slope',
    short: 'ws',
    description: 'a small wave or zigzag running out into a line that slopes upwards',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentSchleifer',
    codepoint: 0xe587,
    musicxml: 'schleifer',
  },

  // ─── reclining and upright s ───────────────────────────────────────────────────────────────────────────────────────
  {
    name: 'reclining_s',
    short: 'turn',
    description: 'an s lying on its side, going up, then down',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentTurn',
    codepoint: 0xe567,
    musicxml: 'turn',
  },
  {
    name: 'reclining_s_reversed',
    short: 'turni',
    description: 'an s lying on its side, going down, then up',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentTurnInverted',
    codepoint: 0xe568,
    musicxml: 'inverted-turn',
  },
  {
    name: 'reclining_s_stroke',
    short: 'turns',
    description: 'an s lying on its side, going up, then down, crossed by an upright stroke',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentTurnSlash',
    codepoint: 0xe569,
    musicxml: 'turn',
    musicxmlAttributes: { slash: 'yes' },
  },
  {
    name: 'upright_s',
    short: 'turnu',
    description: 'an s standing upright',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentTurnUpS',
    codepoint: 0xe56b,
    musicxml: 'inverted-vertical-turn',
  },
  {
    name: 'upright_s_reversed',
    short: 'turnv',
    description: 'an s standing upright in mirror writing',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentTurnUp',
    codepoint: 0xe56a,
    musicxml: 'vertical-turn',
  },
  {
    name: 'turn_zigzag_below',
    short: 'tzb',
    description: 'an s lying on its side, then over the next note a zigzag with a hook hanging below its left end',
    place: 'above',
    drawnFor: 'note',
    nearest: 'ornamentTurn',
    musicxml: 'other-ornament',
  },
  {
    name: 'turn_zigzag_above',
    short: 'tza',
    description: 'an s lying on its side, then over the next note a zigzag with a hook rising above its left end',
    place: 'above',
    drawnFor: 'note',
    nearest: 'ornamentTurn',
    musicxml: 'other-ornament',
  },

  // ─── commas, half-circles, curves ──────────────────────────────────────────────────────────────────────────────────
  {
    name: 'comma_before',
    short: 'cb',
    description: 'a comma or opening half-circle to the left of the note',
    place: 'before',
    drawnFor: 'note',
    glyph: 'ornamentRightFacingHalfCircle',
    codepoint: 0xe571,
    musicxml: 'other-ornament',
  },
  {
    name: 'comma_after',
    short: 'ca',
    description: 'a comma or closing half-circle to the right of the note',
    place: 'after',
    drawnFor: 'note',
    glyph: 'ornamentLeftFacingHalfCircle',
    codepoint: 0xe572,
    musicxml: 'other-ornament',
  },
  {
    name: 'comma_after_long',
    short: 'lca',
    description: 'a comma or closing half-circle to the right of the note, drawn longer than usual',
    place: 'after',
    drawnFor: 'note',
    nearest: 'ornamentLeftFacingHook',
    musicxml: 'other-ornament',
  },
  {
    name: 'tall_curve_before',
    short: 'tcb',
    description: 'an upright curve to the left of two notes a third apart, as tall as both',
    place: 'before',
    drawnFor: 'chord',
    glyph: 'ornamentRightFacingHalfCircle',
    codepoint: 0xe571,
    musicxml: 'other-ornament',
  },
  {
    name: 'tall_curve_after',
    short: 'tca',
    description: 'an upright curve to the right of two notes a third apart, as tall as both',
    place: 'after',
    drawnFor: 'chord',
    glyph: 'ornamentLeftFacingHalfCircle',
    codepoint: 0xe572,
    musicxml: 'other-ornament',
  },
  {
    name: 'two_curves_before',
    short: 'ccb',
    description: 'two small curves, one behind the other, to the left of the note',
    place: 'before',
    drawnFor: 'note',
    nearest: 'ornamentPrecompSlide',
    musicxml: 'other-ornament',
  },
  {
    name: 'half_circle_in_chord',
    short: 'hc',
    description: 'a small half-circle among the notes of a chord, beside one of them',
    place: 'beside',
    drawnFor: 'note',
    nearest: 'ornamentRightFacingHalfCircle',
    musicxml: 'other-ornament',
  },
  {
    name: 'curve_joining',
    short: 'cj',
    description: 'a curve or slanting mark joining two successive notes a third apart',
    place: 'between',
    drawnFor: 'note',
    glyph: 'ornamentUpCurve',
    codepoint: 0xe577,
    musicxml: 'other-ornament',
  },
  {
    name: 'arch_small',
    short: 'arch',
    description: 'a small arch',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentUpCurve',
    codepoint: 0xe577,
    musicxml: 'other-ornament',
  },
  {
    name: 'arch_upright',
    short: 'archs',
    description: 'a small arch with a short upright stroke',
    place: 'above',
    drawnFor: 'note',
    nearest: 'ornamentUpCurve',
    musicxml: 'other-ornament',
  },

  // ─── strokes and crosses ───────────────────────────────────────────────────────────────────────────────────────────
  {
    name: 'one_stroke',
    short: 's',
    description: 'one oblique stroke through the stem, or above or below a head without stem',
    place: 'stem',
    drawnFor: 'note',
    glyph: 'ornamentObliqueLineBeforeNote',
    codepoint: 0xe57b,
    musicxml: 'other-ornament',
  },
  {
    name: 'two_strokes',
    short: 'ss',
    description: 'two oblique strokes through the stem, or above or below a head without stem',
    place: 'stem',
    drawnFor: 'note',
    glyph: 'ornamentDoubleObliqueLinesBeforeNote',
    codepoint: 0xe57d,
    musicxml: 'other-ornament',
  },
  {
    name: 'stroke_before_rising',
    short: 'sbu',
    description: 'one short stroke to the left of the note, rising to it',
    place: 'before',
    drawnFor: 'note',
    glyph: 'ornamentShortObliqueLineBeforeNote',
    codepoint: 0xe579,
    musicxml: 'other-ornament',
  },
  {
    name: 'stroke_before_falling',
    short: 'sbd',
    description: 'one short stroke to the left of the note, falling to it',
    place: 'before',
    drawnFor: 'note',
    glyph: 'ornamentShortObliqueLineAfterNote',
    codepoint: 0xe57a,
    musicxml: 'other-ornament',
  },
  {
    name: 'stroke_after',
    short: 'sa',
    description: 'a small stroke, upright or slanting, to the right of the note',
    place: 'after',
    drawnFor: 'note',
    glyph: 'ornamentVerticalLine',
    codepoint: 0xe583,
    musicxml: 'other-ornament',
  },
  {
    name: 'stroke_third_rising',
    short: 'stu',
    description: 'a slanting stroke, rising from left to right, between the two notes of a third',
    place: 'between',
    drawnFor: 'chord',
    glyph: 'ornamentObliqueLineBeforeNote',
    codepoint: 0xe57b,
    musicxml: 'other-ornament',
  },
  {
    name: 'stroke_third_falling',
    short: 'std',
    description: 'a slanting stroke, falling from left to right, between the two notes of a third',
    place: 'between',
    drawnFor: 'chord',
    glyph: 'ornamentObliqueLineAfterNote',
    codepoint: 0xe57c,
    musicxml: 'other-ornament',
  },
  {
    name: 'stroke_chord_rising',
    short: 'scu',
    description: 'an oblique stroke, rising from left to right, through the stem of a chord or between its notes',
    place: 'stem',
    drawnFor: 'chord',
    glyph: 'ornamentObliqueLineBeforeNote',
    codepoint: 0xe57b,
    musicxml: 'other-ornament',
  },
  {
    name: 'stroke_chord_falling',
    short: 'scd',
    description: 'an oblique stroke, falling from left to right, through the stem of a chord or between its notes',
    place: 'stem',
    drawnFor: 'chord',
    glyph: 'ornamentObliqueLineAfterNote',
    codepoint: 0xe57c,
    musicxml: 'other-ornament',
  },
  {
    name: 'stroke_chord_extra',
    short: 'scs',
    description: 'an oblique stroke through the stem of a chord, with a second, smaller stroke',
    place: 'stem',
    drawnFor: 'chord',
    nearest: 'ornamentDoubleObliqueLinesBeforeNote',
    musicxml: 'other-ornament',
  },
  {
    name: 'dash_upright',
    short: 'dash',
    description: 'a short upright dash',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentVerticalLine',
    codepoint: 0xe583,
    musicxml: 'spiccato',
  },
  {
    name: 'dashes_two',
    short: 'dashes',
    description: 'two upright dashes side by side',
    place: 'above',
    drawnFor: 'note',
    nearest: 'ornamentDoubleObliqueLinesBeforeNote',
    musicxml: 'other-ornament',
  },
  {
    name: 'wedge_upright',
    short: 'wedge',
    description: 'a short upright wedge, pointing down',
    place: 'above',
    drawnFor: 'note',
    glyph: 'articStaccatissimoWedgeAbove',
    codepoint: 0xe4a8,
    musicxml: 'staccatissimo',
  },
  {
    name: 'cross_upright',
    short: 'plus',
    description: 'a small cross with one upright and one level arm',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentShake3',
    codepoint: 0xe582,
    musicxml: 'other-ornament',
  },
  {
    name: 'cross_oblique',
    short: 'x',
    description: 'a small cross with both arms oblique',
    place: 'above',
    drawnFor: 'note',
    nearest: 'timeSigMultiply',
    musicxml: 'other-ornament',
  },

  // ─── chords ────────────────────────────────────────────────────────────────────────────────────────────────────────
  {
    name: 'wavy_upright',
    short: 'arp',
    description: 'an upright wavy line, as tall as the chord',
    place: 'before',
    drawnFor: 'chord',
    glyph: 'arpeggiato',
    codepoint: 0xe63c,
    musicxml: 'arpeggiate',
  },
  {
    name: 'wavy_upright_foot',
    short: 'arpu',
    description: 'an upright wavy line, as tall as the chord, with a hook at its foot',
    place: 'before',
    drawnFor: 'chord',
    glyph: 'arpeggiatoUp',
    codepoint: 0xe634,
    musicxml: 'arpeggiate',
    musicxmlAttributes: { direction: 'up' },
  },
  {
    name: 'wavy_upright_head',
    short: 'arpd',
    description: 'an upright wavy line, as tall as the chord, with a hook at its head',
    place: 'before',
    drawnFor: 'chord',
    glyph: 'arpeggiatoDown',
    codepoint: 0xe635,
    musicxml: 'arpeggiate',
    musicxmlAttributes: { direction: 'down' },
  },

  // ─── letters, and a link between staves ────────────────────────────────────────────────────────────────────────────
  {
    name: 'letter_t',
    short: 't',
    description: 'the letter t',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentShakeMuffat1',
    codepoint: 0xe584,
    musicxml: 'other-ornament',
  },
  {
    name: 'letter_t_wave',
    short: 'tw',
    description: 'the letter t followed by a wavy line',
    place: 'above',
    drawnFor: 'note',
    nearest: 'ornamentShakeMuffat1',
    musicxml: 'other-ornament',
  },
  {
    name: 'letters_tr',
    short: 'tr',
    description: 'the letters tr',
    place: 'above',
    drawnFor: 'note',
    glyph: 'ornamentTrill',
    codepoint: 0xe566,
    musicxml: 'trill-mark',
  },
  {
    name: 'letter_r',
    short: 'r',
    description: 'the letter R',
    place: 'above',
    drawnFor: 'note',
    musicxml: 'other-ornament',
  },
  {
    name: 'staves_link',
    short: 'link',
    description: 'a line that joins two notes standing on two staves',
    place: 'between',
    drawnFor: 'note',
    musicxml: 'other-ornament',
  },
];

const byName: ReadonlyMap<string, Shape> = new Map(
  shapes.flatMap((shape): [string, Shape][] => [
    [shape.name, shape],
    [shape.short, shape],
  ]),
);

/** The shape of this name or short name; undefined where there is none. */
export const shapeByName = (name: string): Shape | undefined => byName.get(name);

/** "a short zigzag, above the note": descriptions of shapes that are not above it say where they stand. */
export const shapeInWords = ({ description, place }: Shape): string =>
  place === 'above' ? `${description}, above the note` : description;
