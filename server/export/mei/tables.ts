/** The words of MEI 5.1 for what the notation writes. */
import type { AccidentalSign, BarlineShape } from '../../../grammar/tree';
import type { NoteValue } from '../values';

/** `data.DURATION` (CMN and mensural) by MusicXML's name of the value. */
export const DURATIONS: Readonly<Record<string, string>> = {
  maxima: 'maxima',
  long: 'long',
  breve: 'breve',
  whole: '1',
  half: '2',
  quarter: '4',
  eighth: '8',
  '16th': '16',
  '32nd': '32',
  '64th': '64',
  '128th': '128',
};

/** `dur` and `dots` of a value. */
export const durationOf = (
  value: NoteValue | undefined,
): { readonly dur?: string | undefined; readonly dots?: number | undefined } =>
  value === undefined ? {} : { dur: DURATIONS[value.type], dots: value.dots === 0 ? undefined : value.dots };

/** `data.ACCIDENTAL.WRITTEN` of the signs that are drawn: a double sharp is a cross. */
export const ACCIDENTALS: Readonly<Record<AccidentalSign, string>> = { '#': 's', '##': 'x', b: 'f', bb: 'ff', n: 'n' };

/** `data.ACCIDENTAL.GESTURAL` by the semitones that a note differs from its natural. */
export const SOUNDING: Readonly<Record<string, string>> = { '-2': 'ff', '-1': 'f', '0': 'n', '1': 's', '2': 'ss' };

/** `data.BARRENDITION` of a barline at the end and at the beginning of its bar. */
export const BARLINES: Readonly<
  Record<BarlineShape, { readonly right: string; readonly left: string | undefined; readonly nextLeft?: string }>
> = {
  '|': { right: 'single', left: undefined },
  '||': { right: 'dbl', left: 'dbl' },
  '|||': { right: 'end', left: 'heavy' },
  ':||': { right: 'rptend', left: undefined },
  '||:': { right: 'single', left: 'rptstart', nextLeft: 'rptstart' },
  ':||:': { right: 'rptboth', left: 'rptboth' },
};

/** Signs of measure that are no letter C, with their glyphs in SMuFL ("Mensural prolations", U+E910 to U+E92F). */
export const METER_GLYPHS: Readonly<Record<string, { readonly name: string; readonly number: string }>> = {
  O: { name: 'mensuralProlation2', number: 'U+E911' },
  'circle-dot': { name: 'mensuralProlation1', number: 'U+E910' },
};
